/**
 * The language reference as tests read it: Markdown sections whose fenced `draft` blocks are whole patterns, marked with
 * what is found in them, each followed by a picture of what it draws.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Pattern, Shape } from '../../server/drafting/model';
import { draw, place } from '../../server/drawing/draw';
import type { DrawnDot, DrawnLine, DrawnText, Drawing, PieceDrawing, Spot } from '../../server/drawing/model';
import { pathLine, spot } from '../../server/drawing/path';
import { toSvg } from '../../server/drawing/svg';
import { marked, readPage, tried, type Example } from './pages';
import { root } from './sources';

export const referencePath = join(root, 'grammar', 'REFERENCE.md');
export const pictureFolder = join(root, 'grammar', 'reference');

const FENCED = /^```draft ?(\S*)\n([\s\S]*?)^```\n(?:\n!\[[^\]]*\]\(([^)]*)\)\n)?/gm;

/** A block of a document: the pattern, the heading above it, the picture named below it. */
export interface Shown {
  readonly heading: string;
  readonly example: Example;
  readonly picture: string | undefined;
}

/** Every pattern of a document, in order. A block with a file name lies beside the next one without. */
export function shownIn(text: string): readonly Shown[] {
  const examples = readPage(text).examples;
  const mains = [...text.matchAll(FENCED)].filter(([, file]) => file === '');
  return mains.map(({ 3: picture, index }, i) => {
    const heading = [...text.slice(0, index).matchAll(/^#{2,4} (.+)$/gm)].at(-1)?.[1] ?? '';
    return { heading, example: examples[i]!, picture };
  });
}

/** Height of a capital in the names of a sketch, and how wide a letter is on average, mm. */
const NAME_SIZE_MM = 2;
const LETTER_WIDTH_MM = 1.7;

const thousandth = (mm: number): number => Math.round(mm * 1000) / 1000;

/** One sheet of paper as it fills: what is on it, and every place that it must hold. */
class Paper {
  private readonly lines: DrawnLine[] = [];
  private readonly dots: DrawnDot[] = [];
  private readonly texts: DrawnText[] = [];
  private readonly xs: number[] = [];
  private readonly ys: number[] = [];

  constructor(private readonly name: string) {}

  take(path: string, shape: Shape): void {
    const name = path.split('.').at(-1)!;
    if (shape.kind === 'point') {
      const at = spot(shape.point);
      this.dots.push({ role: 'mark', source: path, name, at });
      this.write(name, at);
      return;
    }
    this.lines.push(pathLine('mark', shape.path, { name, source: path, tip: name }));
    for (let i = 0; i <= 16; i++) this.hold(shape.path.pointAt((shape.path.length * i) / 16));
    this.write(name, spot(shape.path.pointAt(shape.path.length * 0.4)));
  }

  /** A name right of a place, a little above it. */
  private write(name: string, { x, y }: Spot): void {
    const width = name.length * LETTER_WIDTH_MM;
    const at = { x: thousandth(x + 1.5 + width / 2), y: thousandth(y - 1) };
    this.texts.push({ role: 'note', source: name, text: name, at, size: NAME_SIZE_MM, turn: 0 });
    this.hold({ x, y: y - 4 });
    this.hold({ x: x + width + 2, y: y + 1 });
  }

  private hold({ x, y }: Spot): void {
    this.xs.push(thousandth(x));
    this.ys.push(thousandth(y));
  }

  drawing(): PieceDrawing {
    const frame = {
      left: Math.min(...this.xs),
      top: Math.min(...this.ys),
      right: Math.max(...this.xs),
      bottom: Math.max(...this.ys),
    };
    const { name, lines, dots, texts } = this;
    return { name, source: name, frame, lines, dots, texts, spoken: `the draft ${name}` };
  }
}

/** The points and lines of the drafts themselves, a sheet each, for a pattern that has no piece yet. */
function sketch(pattern: Pattern): Drawing {
  const papers = new Map<string, Paper>();
  pattern.shapes.forEach((shape, path) => {
    const draft = path.split('.')[0]!;
    const paper = papers.get(draft) ?? new Paper(draft);
    papers.set(draft, paper);
    paper.take(path, shape);
  });
  const pieces = [...papers.values()].map((paper) => paper.drawing());
  return { title: pattern.title, body: '', unit: pattern.unit, pieces, ...place(pieces) };
}

/** What an example draws: its pieces, else its draft, else nothing. */
export function pictureOf(example: Example): string | undefined {
  const { pattern } = tried(example);
  const drawing = pattern.pieces.length > 0 ? draw(pattern) : sketch(pattern);
  if (pattern.pieces.length === 0 && pattern.shapes.size === 0) return undefined;
  return toSvg(drawing, { bare: true, margin: 5 });
}

/** The picture's file name: the heading in lower case, counted where a section shows several. */
export function pictureName(all: readonly Shown[], { heading }: Shown, index: number): string {
  const plain = heading
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  const count = all.slice(0, index).filter((other) => other.heading === heading).length;
  return `${plain}${count === 0 ? '' : `-${count + 1}`}.svg`;
}

/** The document with every block marked anew and every picture named below its block. */
export function rewrittenReference(text: string, pictures: boolean): string {
  const all = shownIn(text);
  let i = 0;
  return text.replace(FENCED, (whole: string, file: string) => {
    if (file !== '') return whole;
    const shown = all[i]!;
    const name = pictureName(all, shown, i);
    i += 1;
    const block = `\`\`\`draft\n${marked(shown.example)}\`\`\`\n`;
    if (!pictures || pictureOf(shown.example) === undefined) return block;
    return `${block}\n![${shown.heading}, drawn](reference/${name})\n`;
  });
}

/** The pictures as they should lie in the folder, by file name. */
export function pictures(text: string): ReadonlyMap<string, string> {
  const all = shownIn(text);
  return new Map(
    all.flatMap((shown, i) => {
      const svg = pictureOf(shown.example);
      return svg === undefined ? [] : [[pictureName(all, shown, i), svg] as const];
    }),
  );
}

/** The pictures that lie in the folder now. */
export function keptPictures(): ReadonlyMap<string, string> {
  const names = existsSync(pictureFolder) ? readdirSync(pictureFolder).sort() : [];
  return new Map(names.map((name) => [name, readFileSync(join(pictureFolder, name), 'utf8')]));
}

/**
 * The pages of the catalogue as tests read them: Markdown whose fenced `draft` blocks are whole patterns, annotated with
 * what is found in them. A block with a file name after `draft` lies beside the next block without one.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { check } from '../../server/checks/index';
import { withRanges } from './ranges';
import type { Door, Pattern, PlacedFinding, PlacedFix } from '../../server/drafting/model';
import { Workshop } from '../../server/drafting/workshop';
import { annotated, withoutAnnotations, type MarkWords } from './annotations';
import { root } from './sources';

export const folder = join(root, 'server', 'checks');

/** Codes whose fault no page can hold: the tests make it themselves. */
export const madeHere: ReadonlySet<string> = new Set(['too-long', 'rise-and-fall', 'internal-fault']);

/** Codes that have a page, in the order of the folder. */
export const pagedCodes = (): readonly string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.md') && name !== 'MESSAGES.md')
    .map((name) => name.slice(0, -3))
    .sort();

export const pageText = (code: string): string => readFileSync(join(folder, `${code}.md`), 'utf8');

/** One fenced block: where its inside stands in the page, and under which heading. */
export interface Block {
  readonly section: string;
  readonly file: string;
  readonly from: number;
  readonly to: number;
}

export interface Example {
  readonly section: string;
  readonly text: string;
  /** Files that lie beside it, by name. */
  readonly beside: ReadonlyMap<string, string>;
}

export interface Page {
  readonly title: string;
  readonly sections: readonly string[];
  readonly examples: readonly Example[];
}

const MAIN = 'pattern.draft';
const WARDROBE = 'file:///wardrobe/';

export function blocksOf(page: string): readonly Block[] {
  const found: Block[] = [];
  let section = '';
  for (const { 0: whole, 1: heading, 2: file = '', 3: inside = '', index } of page.matchAll(
    /^## (.+)$|^```draft ?(\S*)\n([\s\S]*?)^```$/gm,
  )) {
    if (heading !== undefined) section = heading;
    const from = index + whole.indexOf('\n') + 1;
    if (heading === undefined) found.push({ section, file, from, to: from + inside.length });
  }
  return found;
}

export function readPage(page: string): Page {
  const examples: Example[] = [];
  let beside = new Map<string, string>();
  for (const { section, file, from, to } of blocksOf(page)) {
    const text = page.slice(from, to);
    if (file !== '') {
      beside.set(file, text);
      continue;
    }
    examples.push({ section, text, beside });
    beside = new Map();
  }
  const headings = [...page.matchAll(/^(#+) (.+)$/gm)].filter(({ index }) => !insideBlock(page, index));
  const [title, ...rest] = headings.map(([, , words]) => words!);
  return { title: title ?? '', sections: rest, examples };
}

const insideBlock = (page: string, at: number): boolean =>
  blocksOf(page).some(({ from, to }) => from <= at && at < to);

/** A door to the example's own files; what lies above their folder is outside. */
function doorTo({ text, beside }: Example): Door {
  const files = new Map(
    [...beside, [MAIN, text] as const].map(([name, inside]) => [WARDROBE + name, inside]),
  );
  return {
    read: (uri) => files.get(uri),
    resolve: (from, path) => {
      if (path.startsWith('../')) return { outside: true };
      return { uri: new URL(path, from).href };
    },
  };
}

export interface Tried {
  readonly uri: string;
  readonly pattern: Pattern;
  readonly findings: readonly PlacedFinding[];
  textOf(uri: string): string;
}

/** Drafts an example and checks it; `text` stands in place of its own. */
export function tried(example: Example, text = example.text): Tried {
  const door = doorTo({ ...example, text });
  const pattern = new Workshop(door).pattern(WARDROBE + MAIN);
  const textOf = (uri: string): string => door.read(uri) ?? '';
  return { uri: WARDROBE + MAIN, pattern, findings: check(pattern), textOf };
}

/** The example with its findings written under the lines they concern. */
export function marked(example: Example, words?: MarkWords): string {
  const { uri, findings, textOf } = tried(example);
  return annotated(
    example.text,
    findings.filter(({ place }) => place.uri === uri),
    textOf,
    words,
  );
}

/** The example's text once a repair is taken. */
export function afterFix({ text }: Example, fix: PlacedFix): string {
  const edits = [...fix.edits].sort((a, b) => b.place.from - a.place.from);
  return edits.reduce(
    (was, { place, text: put }) => was.slice(0, place.from) + put + was.slice(place.to),
    text,
  );
}

/**
 * What stands under *How to fix* once the first repair of the firing example is taken, of the page's own code before any
 * other; undefined where none is offered.
 */
export function firstMended(firing: Example, code: string): string | undefined {
  const { findings } = tried(firing);
  const own = findings.filter((one) => one.code === code);
  const fix = [...own, ...findings].flatMap(({ fixes }) => fixes)[0];
  return fix === undefined ? undefined : withoutAnnotations(afterFix(firing, fix));
}

/** The page of a code with every block annotated anew, what is mended written anew, and its ranges. */
export const rewritten = (code: string, page: string): string => withRanges(code, withMarks(code, page));

function withMarks(code: string, page: string): string {
  const { examples } = readPage(page);
  const firing = examples.find(({ section }) => section === 'Example');
  const mains = blocksOf(page).filter(({ file }) => file === '');
  return mains.reduceRight((was, { from, to }, i) => {
    const example = examples[i]!;
    const first = examples.findIndex(({ section }) => section === 'How to fix') === i;
    const mended = first && firing !== undefined ? firstMended(firing, code) : undefined;
    return (
      was.slice(0, from) +
      marked(mended === undefined ? example : { ...example, text: mended }) +
      was.slice(to)
    );
  }, page);
}

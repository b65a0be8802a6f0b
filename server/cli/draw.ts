/** `draftwright draw`: one picture of a pattern, or one file for a cutter, written whole or not at all. */
import { tokensOf } from '../../grammar';
import { say } from '../../grammar/say';
import { basename, join } from 'node:path';
import { draw } from '../drawing/draw';
import { spelt } from '../drawing/dxf/ascii';
import { toDrawingDxf } from '../drawing/dxf/drawing';
import { draftedSize, toExchangeDxf } from '../drawing/dxf/exchange';
import { nest } from '../drawing/nest';
import { toPng } from '../drawing/png';
import { toSvg } from '../drawing/svg';
import type { Drawing } from '../drawing/model';
import type { Pattern } from '../drafting/model';
import { reportIn } from './check';
import { absolute, CLEAN, FAULTY, Unable, type Exit, type Io } from './io';
import { dialectIn } from './language';
import { Bench, beyondRange, type Choice, type Opened } from './open';
import { errorsIn, piecesIn } from './print/counts';
import { countOf, type Report } from './print/report';
import { drawnSizes, inSizes, lackingSizes } from './sizes';
import { somePieces } from './some-pieces';
import { writeWhole } from './write';

export interface DrawOptions extends Choice {
  /** The dialect of the trade. */
  readonly words: string;
  readonly out: string;
  readonly format: DrawFormat;
  readonly pieces?: readonly string[];
  /** Sizes to be drawn on one another, or each as a piece of its own in an exchange of pieces. */
  readonly sizes?: readonly string[];
}

/** What a file is called behind the pattern's name. */
const ENDINGS = { svg: '.svg', png: '.png', dxf: '.dxf', 'dxf-drawing': '-drawing.dxf' } as const;
export type DrawFormat = keyof typeof ENDINGS;

/** What was made: the file's content, and what is said of it. */
interface Made {
  readonly content: string | Uint8Array;
  readonly pieces: number;
  readonly sizes: string;
  /** What could not be had, a line each. */
  readonly lacking: readonly string[];
}

/** Draws what can be drawn and says what can't. */
export async function runDraw(path: string, options: DrawOptions, io: Io): Promise<Exit> {
  const bench = new Bench(io);
  const opened = bench.open(path, options);
  const report = reportIn(dialectIn(options.words, io), bench, opened);
  const whole = draw(opened.pattern);
  const lost = missing(opened.pattern, whole, report);
  [...beyondRange(opened.pattern, options), ...lost].forEach((line) => io.err(line));
  if (whole.pieces.length === 0) {
    io.err(`${nothingDrawn(path)}\n`);
    return FAULTY;
  }
  const make = options.format === 'dxf' ? exchanged : pictured;
  const made = await make({ bench, opened, whole, lost, options, io });
  made.lacking.forEach((line) => io.err(`${line}\n`));
  const file = join(options.out, `${basename(path).replace(/\.draft$/, '')}${ENDINGS[options.format]}`);
  writeWhole(absolute(io, file), made.content, file);
  io.out(`${file.split('\\').join('/')}: ${piecesIn(made.pieces)}${made.sizes}\n`);
  const errors = countOf(report, 'error');
  if (errors === 0) return made.lacking.length === 0 ? CLEAN : FAULTY;
  io.err(`${seeCheck(path, errors)}\n`);
  return FAULTY;
}

export const nothingDrawn = (path: string): string =>
  say`${path} has no piece that can be drawn, so no file was written.`;

export const seeCheck = (path: string, errors: number): string =>
  say`${path} has ${errorsIn(errors)}. See draftwright check ${path}.`;

/** What a file is made of. */
interface Making {
  readonly bench: Bench;
  readonly opened: Opened;
  readonly whole: Drawing;
  /** Lines about pieces that are not drawn. */
  readonly lost: readonly string[];
  readonly options: DrawOptions;
  readonly io: Io;
}

/** One drawing, in which several sizes lie on one another. */
async function pictured({ bench, opened, whole, options, io }: Making): Promise<Made> {
  const { sizes, pieces, format } = options;
  const sized = sizes === undefined ? [] : drawnSizes(bench, opened, sizes, options);
  const drawing = somePieces(sizes === undefined ? whole : nest(sized), pieces);
  return {
    content: await picture(drawing, format, io),
    pieces: drawing.pieces.length,
    sizes: drawing.sizes === undefined ? '' : say`, sizes ${drawing.sizes.join(', ')} on one another`,
    lacking: lackingSizes(sized.map(({ size, drawing: { pieces } }) => ({ size, pieces }))),
  };
}

/** Pieces for another pattern program, each size of a piece by itself. */
async function exchanged({ bench, opened, whole, lost, options }: Making): Promise<Made> {
  const { path, pattern } = opened;
  const { pieces, sizes: asked } = options;
  const names = new Set(somePieces(whole, pieces).pieces.map(({ name }) => name));
  const of = (drafted: Pattern) => draftedSize(drafted, draw(drafted));
  const sizes = asked === undefined ? [of(pattern)] : inSizes(bench, opened, asked, options, of);
  const wanted = sizes.map((one) => ({ ...one, pieces: one.pieces.filter(({ name }) => names.has(name)) }));
  const authored = bench.textsOf(pattern).flatMap(namesIn);
  const content = toExchangeDxf({
    title: pattern.title || basename(path).replace(/\.draft$/, ''),
    sampleSize: pattern.body?.size ?? pattern.body?.name ?? '',
    sizes: wanted,
    annotations: lost.map((line) => spelt(line.trim(), authored)),
  });
  const listed = asked === undefined ? '' : say`, each in ${wanted.map(({ size }) => size).join(', ')}`;
  return { content, pieces: names.size, sizes: listed, lacking: lackingSizes(wanted) };
}

/** Names as the author wrote them, which what is said of a fault may hold. */
const namesIn = (text: string): readonly string[] =>
  tokensOf(text)
    .filter(({ kind }) => kind === 'name')
    .map(({ from, to }) => text.slice(from, to));

/** A line for each piece that the text names and the drawing lacks. */
export const missing = (pattern: Pattern, drawing: Drawing, report: Report): readonly string[] =>
  notDrawn(pattern, drawing).map((name) => `${say`${name} is not drawn: ${reason(name, report)}`}\n`);

function notDrawn({ pieceNames, pieces: sound }: Pattern, { pieces }: Drawing): readonly string[] {
  // a step on the way to another piece is sound and never drawn
  const made = new Set([...pieces, ...sound].map(({ source }) => source));
  return pieceNames.filter((name) => !made.has(name));
}

/** The error on the piece's own lines where there is one, else that it rests on another. */
function reason(name: string, { problems }: Report): string {
  const errors = problems.filter(({ severity }) => severity === 'error');
  const own = errors.find(({ message }) => names(message).has(name));
  return own?.message ?? say`it rests on something that has an error.`;
}

/** Whole names: a piece called f is not meant wherever an f stands. */
const names = (message: string): ReadonlySet<string> => new Set(message.match(/[\p{L}\p{M}\d-]+/gu) ?? []);

async function picture(drawing: Drawing, format: DrawFormat, io: Io): Promise<string | Uint8Array> {
  if (format === 'dxf-drawing') return toDrawingDxf(drawing);
  const svg = toSvg(drawing);
  if (format === 'svg') return svg;
  const { value, problems } = await toPng(svg);
  problems.forEach((problem) => io.err(`${problem}\n`));
  if (value === undefined) throw new Unable(say`No picture was written.`);
  return value;
}

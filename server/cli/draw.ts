/** `draftwright draw`: one picture of a pattern, written whole or not at all. */
import { basename, join } from 'node:path';
import { draw } from '../drawing/draw';
import { nest } from '../drawing/nest';
import { toPng } from '../drawing/png';
import { toSvg } from '../drawing/svg';
import type { Drawing } from '../drawing/model';
import type { Pattern } from '../drafting/model';
import { reportOn } from './check';
import { absolute, CLEAN, FAULTY, Unable, type Exit, type Io } from './io';
import { Bench, type Choice } from './open';
import { counted } from './print/ink';
import { countOf, type Report } from './print/report';
import { drawnSizes } from './sizes';
import { somePieces } from './some-pieces';
import { writeWhole } from './write';

export interface DrawOptions extends Choice {
  readonly out: string;
  readonly format: 'svg' | 'png';
  readonly pieces?: readonly string[];
  /** Sizes to be drawn on one another. */
  readonly sizes?: readonly string[];
}

/** Draws what can be drawn and says what can't. */
export async function runDraw(path: string, options: DrawOptions, io: Io): Promise<Exit> {
  const bench = new Bench(io);
  const opened = bench.open(path, options);
  const report = reportOn(bench, [opened]);
  const whole = draw(opened.pattern);
  missing(opened.pattern, whole, report).forEach((line) => io.err(line));
  const all = options.sizes === undefined ? whole : nest(drawnSizes(bench, opened, options.sizes, options));
  const drawing = somePieces(all, options.pieces);
  const errors = countOf(report, 'error');
  if (drawing.pieces.length === 0) {
    io.err(`${path} has no piece that can be drawn, so no file was written.\n`);
    return FAULTY;
  }
  const file = join(options.out, `${basename(path).replace(/\.draft$/, '')}.${options.format}`);
  writeWhole(absolute(io, file), await picture(drawing, options, io), file);
  const sizes = drawing.sizes === undefined ? '' : `, sizes ${drawing.sizes.join(', ')} on one another`;
  io.out(`${file.split('\\').join('/')}: ${counted(drawing.pieces.length, 'piece')}${sizes}\n`);
  if (errors === 0) return CLEAN;
  io.err(`${path} has ${counted(errors, 'error')}. See draftwright check ${path}.\n`);
  return FAULTY;
}

/** A line for each piece that the text names and the drawing lacks. */
export const missing = (pattern: Pattern, drawing: Drawing, report: Report): readonly string[] =>
  notDrawn(pattern, drawing).map((name) => `${name} is not drawn: ${reason(name, report)}\n`);

function notDrawn({ pieceNames, pieces: sound }: Pattern, { pieces }: Drawing): readonly string[] {
  // a step on the way to another piece is sound and never drawn
  const made = new Set([...pieces, ...sound].map(({ source }) => source));
  return pieceNames.filter((name) => !made.has(name));
}

/** The error on the piece's own lines where there is one, else that it rests on another. */
function reason(name: string, { problems }: Report): string {
  const errors = problems.filter(({ severity }) => severity === 'error');
  const own = errors.find(({ message }) => names(message).has(name));
  return own?.message ?? 'it rests on something that has an error.';
}

/** Whole names: a piece called f is not meant wherever an f stands. */
const names = (message: string): ReadonlySet<string> => new Set(message.match(/[\p{L}\p{M}\d-]+/gu) ?? []);

async function picture(drawing: Drawing, { format }: DrawOptions, io: Io): Promise<string | Uint8Array> {
  const svg = toSvg(drawing);
  if (format === 'svg') return svg;
  const { value, problems } = await toPng(svg);
  problems.forEach((problem) => io.err(`${problem}\n`));
  if (value === undefined) throw new Unable('No picture was written.');
  return value;
}

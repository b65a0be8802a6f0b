/** `draftwright print`: a pattern on papers that are taped together, on a roll or on one sheet, as one PDF. */
import { say } from '../../grammar/say';
import { basename, join } from 'node:path';
import { draw } from '../drawing/draw';
import { fits, roomOn, type Turn } from '../drawing/paper/arrange';
import { LONGEST_MM, papers, paperNamed, rollNamed, type Paper, type Roll } from '../drawing/paper/papers';
import { MOST_PAPERS, papersOver } from '../drawing/paper/tiles';
import type { PdfResult } from '../drawing/paper/pdf';
import type { Printed, PrintedOptions } from '../drawing/paper/printed';
import type { Told } from '../drawing/paper/sheet-content';
import { check } from '../checks';
import { inSizes, lackingSizes } from './sizes';
import type { Drawing } from '../drawing/model';
import type { Pattern } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { reportIn } from './check';
import { missing, nothingDrawn, seeCheck } from './draw';
import { absolute, CLEAN, FAULTY, Unable, type Exit, type Io } from './io';
import { dialectIn } from './language';
import { longWork, type Tell } from './long-work';
import { Bench, beyondRange, type Choice, type Opened } from './open';
import { errorsIn, piecesIn } from './print/counts';
import { countOf } from './print/report';
import { somePieces } from './some-pieces';
import { writeWhole } from './write';

export interface PrintOptions extends Choice {
  /** The dialect of the trade. */
  readonly words: string;
  readonly out: string;
  /** A paper's name, `roll 914mm`, or `whole`. */
  readonly paper: string;
  readonly pieces?: readonly string[];
  /** Names of the sheets that are printed again. */
  readonly sheets?: readonly string[];
  readonly asLaid?: boolean;
  /** 5 for one to five. */
  readonly scale?: number;
  /** Sizes to be drawn on one another. */
  readonly sizes?: readonly string[];
  readonly date?: string;
  readonly revision?: string;
}

/** Prints what can be drawn and says what can't. */
export const runPrint = (path: string, options: PrintOptions, io: Io): Promise<Exit> =>
  longWork(io, (tell) => printing(path, options, io, tell));

async function printing(path: string, options: PrintOptions, io: Io, tell: Tell): Promise<Exit> {
  await tell(say`drafting ${path}`);
  const bench = new Bench(io);
  const opened = bench.open(path, options);
  const report = reportIn(dialectIn(options.words, io), bench, opened);
  const errors = countOf(report, 'error');
  const whole = draw(opened.pattern);
  const lost = missing(opened.pattern, whole, report);
  [...beyondRange(opened.pattern, options), ...lost].forEach((line) => io.err(line));
  if (somePieces(whole, options.pieces).pieces.length === 0) {
    io.err(`${nothingDrawn(path)}\n`);
    return FAULTY;
  }
  const notes = [...lost.map((line) => line.trim()), ...(errors === 0 ? [] : [faultWords(errors)])];
  const { value, words, lacking } = await print(bench, opened, options, notes, tell);
  io.progress?.('');
  lacking.forEach((line) => io.err(`${line}\n`));
  const file = join(options.out, `${basename(path).replace(/\.draft$/, '')}.pdf`);
  writeWhole(absolute(io, file), value, file);
  io.out(`${file.split('\\').join('/')}: ${words}\n`);
  io.out(`${lastWords(options)}\n`);
  if (errors === 0) return CLEAN;
  io.err(`${seeCheck(path, errors)}\n`);
  return FAULTY;
}

const faultWords = (errors: number): string => say`The pattern has ${errorsIn(errors)}: mend before you cut.`;

const lastWords = ({ scale = 1 }: PrintOptions): string =>
  scale === 1
    ? say`Print at 100 %, and measure the test square before you cut.`
    : say`It is drawn at 1:${scale}, to be kept and not to be cut by.`;

/** The bytes, and what is said of them. */
async function print(
  bench: Bench,
  opened: Opened,
  options: PrintOptions,
  notes: readonly string[],
  tell: Tell,
): Promise<{ readonly value: Uint8Array; readonly words: string; readonly lacking: readonly string[] }> {
  const { sheets: only, asLaid = false } = options;
  await tell(say`lettering the pieces`);
  // the PDF library takes a while to load, and no other command needs it
  const [{ toPdf }, { printed, toldBy }, { missingLetters }] = await Promise.all([
    import('../drawing/paper/pdf'),
    import('../drawing/paper/printed'),
    import('../drawing/paper/font'),
  ]);
  const drawn =
    options.sizes === undefined
      ? { ...printed(opened.pattern, optionsFor(opened.pattern, options)), lacking: [] }
      : await printedSizes(bench, opened, options.sizes, options, toldIn(options));
  const { drawing, turn, off, lacking } = drawn;
  await tell(say`laying out the sheets`);
  const besides = [...lacking, ...lostWords(missingLetters(textsOf(drawing, options)))];
  const told = { ...toldBy(opened.pattern), ...toldIn(options), notes: [...notes, ...besides] };
  const paper = paperFor(options.paper, drawing, turn);
  if (only !== undefined && (paper === undefined || 'roll' in paper))
    throw new Unable(
      say`Single sheets can be had of papers that are taped together, not of one large sheet.`,
    );
  const made = await toPdf(drawing, {
    ...told,
    ...(paper && { paper }),
    ...(only && { only }),
    asLaid,
    turn,
    off,
    tick: (page, of) => tell(say`sheet ${page} of ${of}`),
  });
  await tell(say`writing`);
  const names = made.tiling?.tiles.map(({ name }) => name) ?? [];
  const lost = only?.find((name) => !names.includes(name));
  if (lost !== undefined) throw new Unable(say`There is no sheet ${lost}. Sheets are ${names.join(', ')}.`);
  const sizes = drawing.sizes === undefined ? '' : say`, sizes ${drawing.sizes.join(', ')} on one another`;
  return {
    value: made.value,
    lacking: besides,
    words: say`${piecesIn(drawing.pieces.length)} on ${onWhat(made, paper)}` + sizes,
  };
}

const textsOf = (
  { title, body, pieces }: Drawing,
  { date = '', revision = '' }: PrintOptions,
): readonly string[] => [
  ...[title, body, date, revision],
  ...pieces.flatMap((piece) => piece.texts.map(({ text }) => text)),
];

/** A letter that is not in the font is no reason to print nothing; it is told. */
const lostWords = ({ length }: readonly string[]): readonly string[] =>
  length === 0
    ? []
    : length === 1
      ? [say`1 letter of its words the font does not have: an empty box stands for each.`]
      : [say`${length} letters of its words the font does not have: an empty box stands for each.`];

async function printedSizes(
  bench: Bench,
  opened: Opened,
  names: readonly string[],
  options: PrintOptions,
  told: Told,
): Promise<Printed & { readonly lacking: readonly string[] }> {
  const { nested, sizedFacts } = await import('../drawing/paper/nested');
  const all = { ...told, ...pieceOptions(opened.pattern, options) };
  const sizeOf = ({ body }: Pattern): string => body?.size ?? '';
  const sizes = inSizes(bench, opened, names, options, sizeOf);
  const sized = inSizes(bench, opened, names, options, (pattern) =>
    // what is wrong in one size may be right in another
    sizedFacts(pattern, sizeOf(pattern), sizes, { ...all, ...pieceOptions(pattern, options) }),
  );
  const lacking = lackingSizes(sized.map(({ size, drawing: { pieces } }) => ({ size, pieces })));
  return { ...nested(sized, all), lacking };
}

const toldIn = ({ scale, date, revision }: PrintOptions): Told => ({
  ...(scale !== undefined && { scale }),
  ...(date !== undefined && { date }),
  ...(revision !== undefined && { revision }),
});

const optionsFor = (pattern: Pattern, options: PrintOptions): PrintedOptions => ({
  ...toldIn(options),
  ...pieceOptions(pattern, options),
});

function pieceOptions(
  pattern: Pattern,
  { pieces }: PrintOptions,
): Pick<PrintedOptions, 'pieces' | 'errorsOf'> {
  const errors = check(pattern).filter(({ severity }) => severity === 'error');
  const errorsOf = (name: string): number => errors.filter(({ piece }) => piece === name).length;
  return { errorsOf, ...(pieces !== undefined && { pieces }) };
}

function onWhat({ sheets, drawing }: PdfResult, paper: Paper | Roll | undefined): string {
  if (paper === undefined) return say`one sheet`;
  if (!('roll' in paper))
    return sheets === 1 ? say`1 sheet of ${paper.name}` : say`${sheets} sheets of ${paper.name}`;
  const { top, bottom } = drawing.frame;
  return sheets === 1
    ? say`${printLength(bottom - top, drawing.unit)} of a ${paper.name}`
    : say`${sheets} lengths of a ${paper.name}`;
}

/** Undefined: one sheet as large as the drawing. */
function paperFor(name: string, drawing: Drawing, turn: Turn): Paper | Roll | undefined {
  const roll = rollNamed(name);
  if (typeof roll === 'string') throw new Unable(roll);
  if (roll !== undefined) return wideEnough(roll, drawing, turn);
  const { frame } = drawing;
  if (name.toLowerCase() !== 'whole') return few(known(name), frame);
  const longest = Math.max(frame.right - frame.left, frame.bottom - frame.top);
  if (longest > LONGEST_MM - 50)
    throw new Unable(
      say`The drawing is too long for one sheet of a PDF (5 m). Print it on papers, or some pieces only.`,
    );
  return undefined;
}

/** A piece that fits no way is told before anything is printed. */
function wideEnough(roll: Roll, { pieces, unit }: Drawing, turn: Turn): Roll {
  const room = roomOn(roll);
  const large = pieces.filter((piece) => !fits(piece, room, turn));
  if (large.length === 0) return roll;
  const length = (mm: number): string => printLength(Math.round(mm * 10) / 10, unit);
  const told = large.map(({ name, frame }) => {
    const [wide, high] = [frame.right - frame.left, frame.bottom - frame.top];
    const over = Math.min(wide, high) - room.wide;
    const sides = [length(wide), length(high)] as const;
    return over > 0
      ? say`${name} is ${sides[0]} by ${sides[1]}, ${length(over)} too wide for it even when turned.`
      : say`${name} is ${sides[0]} by ${sides[1]}, too long for one length.`;
  });
  throw new Unable(
    say`A ${roll.name} takes ${length(room.wide)} between its margins. ${told.join(' ')} Take a wider roll, print on papers that are taped together (--paper A4), or print the other pieces (--pieces).`,
  );
}

function few(paper: Paper, frame: Drawing['frame']): Paper {
  const count = papersOver(frame, paper);
  if (count <= MOST_PAPERS) return paper;
  throw new Unable(
    say`The drawing would take ${count} sheets of ${paper.name}; more than ${MOST_PAPERS} are a slip of the unit, most likely. draftwright measure tells the size of every piece.`,
  );
}

function known(name: string): Paper {
  const paper = paperNamed(name);
  if (paper !== undefined) return paper;
  const names = papers.map((one) => one.name).join(', ');
  throw new Unable(
    say`No paper is called ${name}. Papers are ${names}, "roll 914mm" for a roll of that width, or whole for one sheet as large as the drawing.`,
  );
}

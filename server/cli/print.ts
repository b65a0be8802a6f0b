/** `draftwright print`: a pattern in full size on papers that are taped together, as one PDF. */
import { basename, join } from 'node:path';
import { draw } from '../drawing/draw';
import { LONGEST_MM, papers, paperNamed, type Paper } from '../drawing/paper/papers';
import { MOST_PAPERS, papersOver } from '../drawing/paper/tiles';
import type { Drawing } from '../drawing/model';
import { reportOn } from './check';
import { missing } from './draw';
import { absolute, CLEAN, FAULTY, Unable, type Exit, type Io } from './io';
import { Bench, type Choice } from './open';
import { counted } from './print/ink';
import { countOf } from './print/report';
import { somePieces } from './some-pieces';
import { writeWhole } from './write';

export interface PrintOptions extends Choice {
  readonly out: string;
  /** A paper's name, or `whole`. */
  readonly paper: string;
  readonly pieces?: readonly string[];
  readonly asLaid?: boolean;
}

/** Prints what can be drawn and says what can't. */
export async function runPrint(path: string, options: PrintOptions, io: Io): Promise<Exit> {
  const bench = new Bench(io);
  const opened = bench.open(path, options);
  const report = reportOn(bench, [opened]);
  const whole = draw(opened.pattern);
  missing(opened.pattern, whole, report).forEach((line) => io.err(line));
  const drawing = somePieces(whole, options.pieces);
  if (drawing.pieces.length === 0) {
    io.err(`${path} has no piece that can be drawn, so no file was written.\n`);
    return FAULTY;
  }
  const paper = paperFor(options.paper, drawing);
  // the PDF library takes a while to load, and no other command needs it
  const { toPdf } = await import('../drawing/paper/pdf');
  const { value, sheets } = await toPdf(drawing, {
    ...(paper && { paper }),
    ...(options.asLaid && { asLaid: true }),
  });
  const file = join(options.out, `${basename(path).replace(/\.draft$/, '')}.pdf`);
  writeWhole(absolute(io, file), value, file);
  const kind = paper === undefined ? 'one sheet' : `${counted(sheets, 'sheet')} of ${paper.name}`;
  io.out(`${file.split('\\').join('/')}: ${counted(drawing.pieces.length, 'piece')} on ${kind}\n`);
  io.out('Print at 100 %, and measure the test square before you cut.\n');
  const errors = countOf(report, 'error');
  if (errors === 0) return CLEAN;
  io.err(`${path} has ${counted(errors, 'error')}. See draftwright check ${path}.\n`);
  return FAULTY;
}

/** Undefined: one sheet as large as the drawing. */
function paperFor(name: string, { frame }: Drawing): Paper | undefined {
  if (name.toLowerCase() !== 'whole') return few(known(name), frame);
  const longest = Math.max(frame.right - frame.left, frame.bottom - frame.top);
  if (longest > LONGEST_MM - 50)
    throw new Unable(
      'The drawing is too long for one sheet of a PDF (5 m). Print it on papers, or some pieces only.',
    );
  return undefined;
}

function few(paper: Paper, frame: Drawing['frame']): Paper {
  const count = papersOver(frame, paper);
  if (count <= MOST_PAPERS) return paper;
  throw new Unable(
    `The drawing would take ${count} sheets of ${paper.name}; more than ${MOST_PAPERS} are a slip of the unit, most likely. ` +
      'draftwright measure tells the size of every piece.',
  );
}

function known(name: string): Paper {
  const paper = paperNamed(name);
  if (paper !== undefined) return paper;
  const names = papers.map((one) => one.name).join(', ');
  throw new Unable(
    `No paper is called ${name}. Papers are ${names}, or whole for one sheet as large as the drawing.`,
  );
}

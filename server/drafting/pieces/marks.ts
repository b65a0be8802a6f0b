/** Reads what is marked on a piece: balance lines, labels, marks and rows of marks. */
import { say } from '../../../grammar/say';
import type { MarkNode, MarksNode, MarkWord, Statement, StatementNode } from '../../../grammar/syntax';
import { Path } from '../../geometry';
import type { BalanceLine, Edge, Mark, Piece, Shape } from '../model';
import { ofNode } from '../names/mentions';
import { shapeOfMark } from '../shapes/parts';
import { pointOf, shapeOf, shapeWords } from '../shapes/phrase';
import { lengthOf } from '../values/arithmetic';
import { report, wordsOf, type Reader } from '../values/reader';
import { barAt, USUAL_BUTTONHOLE } from './buttonholes';
import { rowOfMarks } from './mark-rows';
import type { OwnParts } from './parts';

export type Marked = Pick<Piece, 'balance' | 'marks' | 'labels'>;

/** Kinds of mark that are a place, and those that are a line; the others may be either. */
const PLACES: ReadonlySet<MarkWord> = new Set(['button', 'drill', 'eyelet']);
const LINES: ReadonlySet<MarkWord> = new Set(['bone', 'tape', 'topstitch', 'crease']);

/** What a mark is read against. */
export interface MarkBench {
  readonly reader: Reader;
  readonly parts: OwnParts;
  /** The outline that the piece has by now. */
  readonly edges: readonly Edge[];
  /** Path of the piece. */
  readonly source: string;
}

/** The marks of a block: a line may name another that stands below it. */
export function readMarked(bench: MarkBench, block: readonly Statement[]): Marked {
  const { reader, parts, source } = bench;
  const labels = readLabels(reader, block, source);
  const found: { balance: BalanceLine[]; marks: Mark[] } = { balance: [], marks: [] };
  let waiting = onceEach(bench, block);
  while (waiting.length > 0) {
    const ready = waiting.filter((line) => !mentionsAny(line, waiting));
    if (ready.length === 0) {
      inCircle(reader, waiting);
      break;
    }
    for (const line of ready) {
      reader.statement = line;
      if (line.node.kind === 'balance') {
        const read = balanceLine(reader, line.node, source);
        if (read === undefined) continue;
        found.balance.push(read);
        parts.replace(read.name, { kind: 'line', path: read.path });
      } else if (line.node.kind === 'mark' || line.node.kind === 'marks') {
        const read = line.node.kind === 'mark' ? readMark(bench, line.node) : rowOfMarks(bench, line.node);
        if (read === undefined) continue;
        found.marks.push(read);
        rememberMark(parts, read);
      }
    }
    waiting = waiting.filter((line) => !ready.includes(line));
  }
  return { ...found, marks: inTextOrder(found.marks, block), labels };
}

const inTextOrder = (marks: readonly Mark[], block: readonly Statement[]): readonly Mark[] =>
  block.flatMap((line) => marks.filter(({ statement }) => statement === line));

const nameOf = (node: StatementNode) =>
  node.kind === 'balance' || node.kind === 'mark' || node.kind === 'marks' ? node.name : undefined;

/** Lines that name something on the piece; a name that is taken on it is told. */
function onceEach({ reader, edges }: MarkBench, block: readonly Statement[]): readonly Statement[] {
  const taken = new Map<string, string>(edges.map(({ name }) => [name, say`an edge`]));
  for (const { node } of block)
    if (node.kind === 'dart' || node.kind === 'fish-dart') taken.set(node.name.text, say`a dart`);
  return block.filter((line) => {
    const name = nameOf(line.node);
    if (name === undefined) return false;
    const other = taken.get(name.text);
    taken.set(name.text, other ?? say`a mark`);
    if (other === undefined) return true;
    reader.statement = line;
    report(
      reader,
      'defined-twice',
      name.at,
      say`This piece has ${other} called ${name.text} already; give the mark a name of its own.`,
    );
    return false;
  });
}

function mentionsAny(line: Statement, others: readonly Statement[]): boolean {
  const own = nameOf(line.node)!.text;
  const names = new Set(others.map(({ node }) => nameOf(node)!.text));
  let found = false;
  ofNode(line.node, (ref) => {
    const name = ref.path[0]!.text;
    found ||= name !== own && names.has(name);
  });
  return found;
}

function inCircle(reader: Reader, lines: readonly Statement[]): void {
  const names = lines.map(({ node }) => nameOf(node)!.text);
  reader.statement = lines[0]!;
  report(
    reader,
    'circle',
    nameOf(lines[0]!.node)!.at,
    say`${names.join(say` and `)} are placed from each other, so neither has a place: let one of them lie by the outline.`,
  );
}

function balanceLine(
  reader: Reader,
  { from, to, name }: Extract<StatementNode, { kind: 'balance' }>,
  source: string,
): BalanceLine | undefined {
  const [a, b] = [pointOf(reader, from, 'from'), pointOf(reader, to, 'to')];
  return a && b && { name: name.text, source: `${source}/${name.text}`, path: Path.line(a, b) };
}

function readLabels(reader: Reader, block: readonly Statement[], source: string): Piece['labels'] {
  return block.flatMap((line): Piece['labels'] => {
    if (line.node.kind !== 'label') return [];
    reader.statement = line;
    const { text, place } = line.node;
    const own = { text: text.text, source: `${source}/label` };
    if (place === undefined) return [own];
    const at = pointOf(reader, place, 'at');
    return at === undefined ? [] : [{ ...own, at }];
  });
}

/** Later lines of the piece, and other pieces, know a mark by its name. */
export function rememberMark(parts: OwnParts, mark: Mark): void {
  const shape = shapeOfMark(mark);
  if (shape !== undefined) parts.replace(mark.name, shape);
}

function readMark(bench: MarkBench, node: MarkNode): Mark | undefined {
  const { reader, source } = bench;
  const { word, name } = node;
  const shape = shapeOf(reader, node.phrase, LINES.has(word) ? 'path' : 'point');
  const size = sizeOf(reader, node);
  if (shape === undefined || size === 'none') return undefined;
  const own = { name: name.text, source: `${source}/${name.text}`, statement: reader.statement, word };
  const sized = size === undefined ? own : { ...own, size };
  if (shape.kind !== 'point') {
    if (!PLACES.has(word)) return { ...sized, points: [], paths: [shape.path] };
    return wrongShape(reader, node, shape, say`a point`);
  }
  if (LINES.has(word)) return wrongShape(reader, node, shape, say`a line`);
  const paths =
    word === 'buttonhole' ? [barAt(bench, shape.point, size ?? USUAL_BUTTONHOLE, node.lengthways)] : [];
  return { ...sized, points: [shape.point], paths };
}

const ARTICLED: Partial<Record<MarkWord, string>> = {
  get eyelet() {
    return say`an eyelet`;
  },
  get tape() {
    return say`a tape`;
  },
  topstitch: 'topstitching',
};

export const aMark = (word: MarkWord): string => ARTICLED[word] ?? say`a ${word}`;

function wrongShape(reader: Reader, node: MarkNode, shape: Shape, wanted: string): undefined {
  const what = aMark(node.word);
  const advice =
    wanted === say`a line`
      ? say`Two points in a bracket make a line: (A to B).`
      : say`Take a place on it: on … halfway.`;
  return report(
    reader,
    'wrong-kind',
    node.phrase.at,
    say`${wordsOf(reader, node.phrase)} is ${shapeWords(shape.kind)}, but ${what} is ${wanted}. ${advice}`,
  );
}

/** What is stated of a button's width or a buttonhole's length; `none` where it can't be had. */
export function sizeOf(reader: Reader, { size }: MarkNode | MarksNode): number | 'none' | undefined {
  if (size === undefined) return undefined;
  const amount = lengthOf(reader, size.by, size.word);
  if (amount === undefined) return 'none';
  if (amount > 0 && amount <= LARGEST) return amount;
  report(
    reader,
    'no-such-number',
    size.by.at,
    say`No button and no buttonhole is as large as that: it lies between 0 and 20cm.`,
  );
  return 'none';
}

/** mm; frogs and cloak clasps stay below (common practice). */
const LARGEST = 200;

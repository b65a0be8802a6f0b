/** Makes a piece: its outline walked, and the lines that say how it is cut. */
import type { Statement, StatementNode } from '../../../grammar/syntax';
import { areaOf, Path } from '../../geometry';
import type { BalanceLine, Edge, Piece } from '../model';
import { edgeShape } from '../shapes/parts';
import { pointOf } from '../shapes/phrase';
import { report, type Reader } from '../values/reader';
import { allowances, cutWords, foldEdge, grainLine } from './cutting';
import { walkOutline, type Walked } from './outline';
import type { OwnParts } from './parts';

/** Lines of later parts of the language: read, named to the user, not drawn. */
const UNBUILT: ReadonlySet<StatementNode['kind']> = new Set<StatementNode['kind']>([
  'dart',
  'fish-dart',
  'mark',
  'marks',
  'pleats',
  'gathers',
  'hole',
  'inlay',
  'corner',
  'swing',
  'close',
  'slash',
  'spread',
  'lengthen',
  'shorten',
  'widen',
  'true',
  'smooth',
]);

export interface PieceRequest {
  readonly name: string;
  readonly source: string;
  readonly statement: Statement;
  readonly parts: OwnParts;
}

/** @returns undefined when the outline can't be walked; findings say why, or the reading is blocked */
export function readPiece(reader: Reader, request: PieceRequest): Piece | undefined {
  const { statement, name, source, parts } = request;
  const block = statement.block ?? [];
  const node = statement.node;
  if (node.kind !== 'piece' || node.of === undefined) return unbuiltPiece(reader, statement);
  const outlines = block.filter((line) => line.node.kind === 'outline');
  if (outlines[0] === undefined) {
    if (block.some((line) => line.node.kind === 'broken')) return blocked(reader);
    return report(reader, 'no-outline', node.name.at, `${name} has no outline: say outline from P { … }, with an edge a line.`);
  }
  if (outlines[1] !== undefined) {
    reader.statement = outlines[1];
    report(reader, 'defined-twice', outlines[1].node.at, `${name} has an outline already; a piece has one. Holes are cut with hole NAME from P { … }.`);
  }
  const walked = walkOutline(reader, outlines[0], source);
  if (walked === undefined) return undefined;
  for (const edge of walked.edges) parts.set(edge.name, edgeShape(edge));
  for (const { name: corner, point } of walked.corners) parts.set(corner, { kind: 'point', point });
  return { ...assembled(reader, request, walked, block), unbuilt: unbuilt(reader, walked, block) };
}

function blocked(reader: Reader): undefined {
  reader.blocked = true;
  return undefined;
}

function unbuiltPiece(reader: Reader, statement: Statement): undefined {
  const node = statement.node;
  const what = node.kind === 'piece' ? 'Pieces worked from other pieces' : `${node.kind[0]!.toUpperCase()}${node.kind.slice(1)} pieces`;
  return report(reader, 'not-built-yet', node.at, `${what} are not built yet: this one is read, but not drawn, and its seams are not checked.`);
}

function assembled(reader: Reader, request: PieceRequest, walked: Walked, block: readonly Statement[]): Omit<Piece, 'unbuilt'> {
  const { name, source, statement } = request;
  const { edges, corners, gaps } = walked;
  const of = statement.node.kind === 'piece' ? statement.node.of : undefined;
  const paths: Path[] = edges.map((edge) => edge.path);
  return {
    name,
    base: name,
    source,
    statement,
    remarks: [],
    draft: of === undefined ? '' : of.path.map(({ text }) => text).join('.'),
    edges,
    corners,
    gaps,
    area: gaps.some((gap) => gap.closing) ? 0 : areaOf(paths),
    ...single(reader, block, edges, source),
    allowances: allowances(reader, edges, block),
    notches: [],
    balance: balanceLines(reader, block, source),
    labels: labels(reader, block, source),
  };
}

/** Lines of which a piece has one each. */
function single(reader: Reader, block: readonly Statement[], edges: readonly Edge[], source: string): Pick<Piece, 'cut' | 'fold' | 'grain'> {
  const found: { cut?: Piece['cut']; fold?: Piece['fold']; grain?: Piece['grain'] } = {};
  const seen = new Set<string>();
  for (const line of block) {
    const { node } = line;
    if (node.kind !== 'cut' && node.kind !== 'fold' && node.kind !== 'grain') continue;
    reader.statement = line;
    if (seen.has(node.kind)) {
      report(reader, 'defined-twice', node.at, `This piece has a ${node.kind} line already; only one can hold.`);
      continue;
    }
    seen.add(node.kind);
    if (node.kind === 'cut') found.cut = cutWords(reader, node);
    if (node.kind === 'grain') found.grain = grainLine(reader, node, `${source}/grain`);
    if (node.kind === 'fold') {
      const edge = foldEdge(reader, edges, node.edge);
      if (edge !== undefined) found.fold = { edge: edge.name, source: edge.source };
    }
  }
  return found;
}

function balanceLines(reader: Reader, block: readonly Statement[], source: string): readonly BalanceLine[] {
  const found: BalanceLine[] = [];
  for (const line of block) {
    if (line.node.kind !== 'balance') continue;
    reader.statement = line;
    const { from, to, name } = line.node;
    const [a, b] = [pointOf(reader, from, 'from'), pointOf(reader, to, 'to')];
    if (a && b) found.push({ name: name.text, source: `${source}/${name.text}`, path: Path.line(a, b) });
  }
  return found;
}

function labels(reader: Reader, block: readonly Statement[], source: string): Piece['labels'] {
  const found: Piece['labels'][number][] = [];
  for (const line of block) {
    if (line.node.kind !== 'label') continue;
    reader.statement = line;
    const { text, place } = line.node;
    const at = place === undefined ? undefined : pointOf(reader, place, 'at');
    if (place === undefined || at !== undefined) found.push({ text: text.text, at, source: `${source}/label` });
  }
  return found;
}

/** Names each later word once, where it first stands. */
function unbuilt(reader: Reader, walked: Walked, block: readonly Statement[]): readonly string[] {
  const words = new Set<string>();
  const say = (line: Statement, word: string, at = line.node.at): void => {
    if (words.has(word)) return;
    words.add(word);
    reader.statement = line;
    report(reader, 'not-built-yet', at, `${word} is not built yet: the piece is drawn without it, and its seams are not compared.`);
  };
  for (const line of block) {
    const { node } = line;
    if (node.kind === 'allow' && node.running !== undefined) say(line, 'a running allowance');
    else if (UNBUILT.has(node.kind)) say(line, line.text.trim().split(/\s/)[0]!);
  }
  for (const { statement } of walked.edges) {
    if (statement.node.kind !== 'edge') continue;
    const dart = statement.node.runs.find((run) => run.kind === 'dart');
    if (dart !== undefined) say(statement, 'dart', dart.at);
  }
  return [...words];
}

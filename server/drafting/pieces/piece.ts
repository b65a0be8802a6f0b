/** Makes a piece: its outline walked, and the lines that say how it is cut. */
import type { Ref, Statement, StatementNode } from '../../../grammar/syntax';
import { areaOf, Path, signedArea } from '../../geometry';
import type { BalanceLine, Dart, Edge, Piece, Trued } from '../model';
import { dartPoint, edgeShape } from '../shapes/parts';
import { pointOf } from '../shapes/phrase';
import { report, type Reader } from '../values/reader';
import { allowances, cornerCuts, cutWords, foldEdge, grainLine, runningAllowances } from './cutting';
import { cutDarts, draftedDart, laidDart } from './darts';
import { walkOutline, type Walked } from './outline';
import type { OwnParts } from './parts';
import { trueEdge } from './truing';
import { mirroredPiece, workPiece } from './working/work';

/** Lines of later parts of the language: read, named to the user, not drawn. */
const UNBUILT: ReadonlySet<StatementNode['kind']> = new Set<StatementNode['kind']>([
  'fish-dart',
  'mark',
  'marks',
  'pleats',
  'gathers',
  'hole',
  'inlay',
  'shorten',
  'widen',
]);

export interface PieceRequest {
  readonly name: string;
  readonly source: string;
  readonly statement: Statement;
  readonly parts: OwnParts;
  /** The edge that is sewn to its pair, when a seam says so. */
  readonly paired?: string | undefined;
}

/** @returns undefined when the outline can't be walked; findings say why, or the reading is blocked */
export function readPiece(reader: Reader, request: PieceRequest): Piece | undefined {
  const { statement, name, source, parts } = request;
  const block = statement.block ?? [];
  const node = statement.node;
  if (node.kind === 'piece' && node.workedFrom !== undefined)
    return workedPiece(reader, request, node.workedFrom, node.mirrored);
  if (node.kind !== 'piece' || node.of === undefined) return unbuiltPiece(reader, statement);
  const outlines = block.filter((line) => line.node.kind === 'outline');
  if (outlines[0] === undefined) {
    if (block.some((line) => line.node.kind === 'broken')) return blocked(reader);
    return report(
      reader,
      'no-outline',
      node.name.at,
      `${name} has no outline: say outline from P { … }, with an edge a line.`,
    );
  }
  if (outlines[1] !== undefined) {
    reader.statement = outlines[1];
    report(
      reader,
      'defined-twice',
      outlines[1].node.at,
      `${name} has an outline already; a piece has one. Holes are cut with hole NAME from P { … }.`,
    );
  }
  const walked = walkOutline(reader, outlines[0], source);
  if (walked === undefined) return undefined;
  for (const edge of walked.edges) parts.set(edge.name, edgeShape(edge));
  for (const { name: corner, point } of walked.corners) parts.set(corner, { kind: 'point', point });
  nameCentre(parts, walked, block, request.paired);
  const shaped = withDarts(reader, walked, block, source);
  if (shaped === undefined) return undefined;
  for (const edge of shaped.edges) parts.replace(edge.name, edgeShape(edge));
  for (const dart of shaped.darts) {
    for (const word of ['inner', 'outer', 'pivot', 'tip'])
      parts.set(`${dart.name}.${word}`, dartPoint(dart, word)!);
  }
  return { ...assembled(reader, request, shaped, block), unbuilt: unbuilt(reader, block) };
}

/** `centre` means the fold, else the edge that is sewn to its pair, unless an edge bears that name itself. */
function nameCentre(
  parts: OwnParts,
  { edges }: Walked,
  block: readonly Statement[],
  paired: string | undefined,
): void {
  const fold = block.find(({ node }) => node.kind === 'fold')?.node;
  const name = fold?.kind === 'fold' ? fold.edge.path[0]!.text : paired;
  const centre = edges.find((edge) => edge.name === name);
  if (centre !== undefined) parts.set('centre', edgeShape(centre));
}

/** The outline with its darts cut in and its edges trued. */
interface Shaped extends Walked {
  readonly darts: readonly Dart[];
  readonly trued: readonly Trued[];
}

function withDarts(
  reader: Reader,
  walked: Walked,
  block: readonly Statement[],
  source: string,
): Shaped | undefined {
  // an edge that is bridged over a gap is no edge to lay a dart on
  if (walked.gaps.length > 0) return { ...walked, darts: [], trued: [] };
  const paths = walked.edges.map(({ path }) => path);
  reader.inward = signedArea(paths) < 0 ? -1 : 1;
  const darts: Dart[] = walked.drafted.map((drafted) => draftedDart(reader, drafted, block, source));
  const lines = block.filter((line) => line.node.kind === 'dart');
  const stray = lines.find(
    ({ node }) =>
      node.kind === 'dart' && node.on === undefined && !darts.some(({ name }) => name === node.name.text),
  );
  if (stray?.node.kind === 'dart') {
    reader.statement = stray;
    report(
      reader,
      'unknown-name',
      stray.node.name.at,
      `The outline has no dart called ${stray.node.name.text}. A dart laid on an edge says where: dart ${stray.node.name.text} on EDGE at PLACE.`,
    );
  }
  const before = reader.findings.length;
  const laid = lines.flatMap((line) => {
    if (line.node.kind !== 'dart' || line.node.on === undefined) return [];
    return laidDart(reader, walked.edges, line, line.node) ?? [];
  });
  // a dart that can't be had leaves the piece without its shape: better no piece than a false one
  if (reader.findings.length > before || reader.blocked) return blocked(reader);
  const trued: Trued[] = [];
  const edges = walked.edges.map((edge) => {
    const own = laid.filter((one) => one.edge === edge);
    if (own.length === 0) return edge;
    const cut = cutDarts(reader, edge, own, source);
    const node = edge.statement.node;
    const result =
      node.kind === 'edge' && node.untrued ? { ...cut, trued: undefined } : trueEdge(cut.edge, cut.darts);
    darts.push(...result.darts);
    if (result.trued !== undefined) trued.push(result.trued);
    return result.edge;
  });
  return { ...walked, edges, darts, trued };
}

/** A piece worked from another: a copy, its steps done, its own cutting lines on top of those it inherits. */
function workedPiece(reader: Reader, request: PieceRequest, from: Ref, mirrored: boolean): Piece | undefined {
  const base = basePiece(reader, from);
  if (base === undefined) return undefined;
  return workedOn(reader, request, mirrored ? mirroredPiece(base) : base, request.statement.block ?? []);
}

export function basePiece(reader: Reader, ref: Ref): Piece | undefined {
  const found = reader.find(ref);
  if (found === undefined) return undefined;
  if (found.answer.is === 'piece' && found.rest.length === 0) {
    const { unbuilt: missing, gaps } = found.answer.piece;
    if (missing.length > 0 || gaps.length > 0) return blocked(reader);
    return found.answer.piece;
  }
  return report(
    reader,
    'wrong-kind',
    ref.at,
    `${ref.path.map(({ text }) => text).join('.')} is no piece; a piece is worked from another piece.`,
  );
}

/** Does the work of a block on a piece, and reads its cutting lines; what it does not say again is kept. */
export function workedOn(
  reader: Reader,
  request: PieceRequest,
  base: Piece,
  block: readonly Statement[],
): Piece | undefined {
  const { name, source, statement, parts } = request;
  const worked = workPiece(reader, base, block, parts);
  if (worked === undefined) return undefined;
  const own = single(reader, block, worked.edges, source);
  const stated = allowances(reader, worked.edges, block);
  const { cut: _, ...kept } = worked;
  return {
    ...kept,
    ...own,
    ...{ name, base: name, source, statement },
    edges: worked.edges.map((edge) => ({ ...edge, source: `${source}/${edge.name}` })),
    allowances: stated.size === 0 ? worked.allowances : new Map([...worked.allowances, ...stated]),
    running: [...worked.running, ...runningAllowances(reader, worked.edges, worked.corners, block)],
    cornerCuts: [...worked.cornerCuts, ...cornerCuts(reader, block)],
    balance: [...worked.balance, ...balanceLines(reader, block, source)],
    labels: [...worked.labels, ...labels(reader, block, source)],
    unbuilt: unbuilt(reader, block),
  };
}

function blocked(reader: Reader): undefined {
  reader.blocked = true;
  return undefined;
}

function unbuiltPiece(reader: Reader, statement: Statement): undefined {
  const node = statement.node;
  const what =
    node.kind === 'piece'
      ? 'Pieces worked from other pieces'
      : `${node.kind[0]!.toUpperCase()}${node.kind.slice(1)} pieces`;
  return report(
    reader,
    'not-built-yet',
    node.at,
    `${what} are not built yet: this one is read, but not drawn, and its seams are not checked.`,
  );
}

function assembled(
  reader: Reader,
  request: PieceRequest,
  walked: Shaped,
  block: readonly Statement[],
): Omit<Piece, 'unbuilt'> {
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
    running: runningAllowances(reader, edges, corners, block),
    cornerCuts: cornerCuts(reader, block),
    darts: walked.darts,
    trued: walked.trued,
    hems: new Map(),
    notches: [],
    balance: balanceLines(reader, block, source),
    labels: labels(reader, block, source),
  };
}

/** Lines of which a piece has one each. */
function single(
  reader: Reader,
  block: readonly Statement[],
  edges: readonly Edge[],
  source: string,
): Pick<Piece, 'cut' | 'fold' | 'grain'> {
  const found: { cut?: Piece['cut']; fold?: Piece['fold']; grain?: Piece['grain'] } = {};
  const seen = new Set<string>();
  for (const line of block) {
    const { node } = line;
    if (node.kind !== 'cut' && node.kind !== 'fold' && node.kind !== 'grain') continue;
    reader.statement = line;
    if (seen.has(node.kind)) {
      report(
        reader,
        'defined-twice',
        node.at,
        `This piece has a ${node.kind} line already; only one can hold.`,
      );
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
    if (place === undefined || at !== undefined)
      found.push({ text: text.text, at, source: `${source}/label` });
  }
  return found;
}

/** Names each later word once, where it first stands. */
function unbuilt(reader: Reader, block: readonly Statement[]): readonly string[] {
  const words = new Set<string>();
  const say = (line: Statement, word: string): void => {
    if (words.has(word)) return;
    words.add(word);
    reader.statement = line;
    report(
      reader,
      'not-built-yet',
      line.node.at,
      `${word} is not built yet: the piece is drawn without it, and its seams are not compared.`,
    );
  };
  for (const line of block) {
    const { node } = line;
    if (UNBUILT.has(node.kind)) say(line, line.text.trim().split(/\s/)[0]!);
  }
  return [...words];
}

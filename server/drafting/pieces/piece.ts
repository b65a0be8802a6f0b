/** Makes a piece: its outline walked, and the lines that say how it is cut. */
import { say } from '../../../grammar/say';
import type { Ref, Statement } from '../../../grammar/syntax';
import type { Edge, Piece } from '../model';
import { dartPoint, edgeShape, everyEdge } from '../shapes/parts';
import { report, type Reader } from '../values/reader';
import { basePiece } from './base';
import { allowedAnew, readAllowing } from './allowing';
import { asLining } from './beside/lined';
import { foldEdge, grainLine } from './cutting';
import { cutWords } from './cut-words';
import { areaLeft, readHoles } from './holes';
import { readMarked, type Marked } from './marks';
import { walkOutline, type Walked } from './outline';
import type { OwnParts } from './parts';
import { withDarts, type Shaped } from './with-darts';
import { shapedFurther } from './working/shaping';
import { mirroredPiece, workPiece } from './working/work';

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
    return workedPiece(reader, request, node.workedFrom, node.mirrored ? mirroredPiece : undefined);
  // a lining is cut after its piece, with cutting words of its own
  if (node.kind === 'lining') return workedPiece(reader, request, node.of, asLining);
  if (node.kind !== 'piece' || node.of === undefined) return blocked(reader);
  const outlines = block.filter((line) => line.node.kind === 'outline');
  if (outlines[0] === undefined) {
    if (block.some((line) => line.node.kind === 'broken')) return blocked(reader);
    return report(
      reader,
      'no-outline',
      node.name.at,
      say`${name} has no outline: say outline from P { … }, with an edge a line.`,
    );
  }
  if (outlines[1] !== undefined) {
    reader.statement = outlines[1];
    report(
      reader,
      'defined-twice',
      outlines[1].node.at,
      say`${name} has an outline already; a piece has one. Holes are cut with hole NAME from P { … }.`,
    );
  }
  const walked = walkOutline(reader, outlines[0], source);
  if (walked === undefined) return undefined;
  for (const edge of walked.edges) parts.set(edge.name, edgeShape(edge));
  for (const { name: corner, point } of walked.corners) parts.set(corner, { kind: 'point', point });
  nameCentre(parts, walked, block, request.paired);
  const shaped = withDarts(reader, walked, block, source);
  for (const edge of shaped.edges) parts.replace(edge.name, edgeShape(edge));
  for (const dart of shaped.darts) {
    for (const word of ['inner', 'outer', 'pivot', 'tip'])
      parts.set(`${dart.name}.${word}`, dartPoint(dart, word)!);
  }
  const piece = assembled(reader, request, shaped, block);
  const missing = [...shaped.missing, ...unreadable(block)];
  const flat = { ...piece, unbuilt: missing };
  const further = shapedFurther(reader, request, flat, block);
  return further === flat ? flat : { ...further, ...allowedAgain(reader, further, block) };
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

/** A piece worked from another: a copy, its steps done, its own cutting lines on top of those it inherits. */
function workedPiece(
  reader: Reader,
  request: PieceRequest,
  from: Ref,
  taken: (base: Piece) => Piece = (base) => base,
): Piece | undefined {
  const base = basePiece(reader, from);
  return base && workedOn(reader, request, taken(base), request.statement.block ?? []);
}

/** Does the work of a block on a piece, and reads its cutting lines; what it does not say again is kept. */
export function workedOn(
  reader: Reader,
  request: PieceRequest,
  base: Piece,
  block: readonly Statement[],
): Piece | undefined {
  const { name, source, statement, parts } = request;
  const worked = workPiece(reader, base, block, request);
  if (worked === undefined) return undefined;
  const own = single(reader, block, worked.edges, source);
  const cut = readHoles(reader, block, everyEdge(worked), source, parts);
  const holes = [...worked.holes, ...cut.holes];
  const marked = readMarked({ reader, parts, edges: worked.edges, source }, block);
  const every = everyEdge({ edges: worked.edges, holes });
  const allowing = readAllowing(reader, { edges: worked.edges, corners: worked.corners, every }, block);
  const { cut: _, fold, ...kept } = worked;
  // whoever cuts a pair from a half opens its fold: what was the middle is an edge as others are
  const opened = own.cut !== undefined && own.cut.layers.every(({ as }) => as !== 'fold' && as !== 'open');
  return {
    ...kept,
    ...(fold !== undefined && !opened && { fold }),
    ...own,
    ...{ name, base: name, source, statement },
    edges: worked.edges.map((edge) => ({ ...edge, source: `${source}/${edge.name}` })),
    holes,
    gaps: [...worked.gaps, ...cut.gaps],
    area: areaLeft(worked.edges, holes),
    ...allowedAnew(worked, allowing),
    balance: added(worked.balance, marked.balance),
    marks: added(worked.marks, marked.marks),
    labels: [...worked.labels, ...marked.labels],
    unbuilt: [...worked.unbuilt, ...unreadable(block)],
  };
}

/** What a block names anew takes the place of what was inherited under that name. */
const added = <T extends { readonly name: string }>(
  before: readonly T[],
  own: readonly T[],
): readonly T[] => [...before.filter(({ name }) => !own.some((one) => one.name === name)), ...own];

/** Edges that pleats have moved take their allowances where they are now; what there is to say of them has been said. */
function allowedAgain(reader: Reader, piece: Piece, block: readonly Statement[]): Partial<Piece> {
  const said = reader.findings.length;
  const { edges, corners, holes } = piece;
  const allowing = readAllowing(reader, { edges, corners, every: everyEdge({ edges, holes }) }, block);
  reader.findings.length = said;
  return allowing;
}

/** Darts, pleats and gathers whose lines could not be read. */
const unreadable = (block: readonly Statement[]): readonly string[] =>
  block.flatMap(({ node }) =>
    node.kind === 'broken' && SHAPING.has(node.word ?? '') ? [node.name?.text ?? node.word!] : [],
  );

const SHAPING: ReadonlySet<string> = new Set(['dart', 'fish', 'pleats', 'gathers']);

function blocked(reader: Reader): undefined {
  reader.blocked = true;
  return undefined;
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
  const cut = readHoles(reader, block, edges, source, request.parts);
  const every = everyEdge({ edges, holes: cut.holes });
  const marked: Marked = readMarked({ reader, parts: request.parts, edges, source }, block);
  return {
    name,
    base: name,
    source,
    statement,
    remarks: [],
    draft: of === undefined ? '' : of.path.map(({ text }) => text).join('.'),
    edges,
    corners,
    gaps: [...gaps, ...cut.gaps],
    holes: cut.holes,
    area: gaps.some((gap) => gap.closing) ? 0 : areaLeft(edges, cut.holes),
    ...single(reader, block, edges, source),
    ...readAllowing(reader, { edges, corners, every }, block),
    darts: walked.darts,
    trued: walked.trued,
    hems: new Map(),
    notches: [],
    ...marked,
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
        say`This piece has a ${node.kind} line already; only one can hold.`,
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

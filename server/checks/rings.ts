/** Rings round the body and its limbs: balance lines that meet, seam by seam, until they close. */
import type { BalanceLine, Edge, Pattern, Piece, Seam } from '../drafting/model';
import { timesRound } from '../drafting/sewing/ring';

/** A piece with the line that crosses it from edge to edge. */
interface Crossed {
  readonly piece: Piece;
  readonly line: BalanceLine;
  readonly ends: readonly Edge[];
}

export interface Ring {
  readonly pieces: readonly Piece[];
  readonly line: string;
  /** All round, mm. */
  readonly length: number;
}

/** How near the end of a line must lie to an edge to end on it, mm. */
const ON_EDGE = 0.5;

/** Rings of the lines of a name that certainly close; round the body, or each round one limb of a pair. */
export function ringsAlong(pattern: Pattern, name: string, round: 'body' | 'limb'): readonly Ring[] {
  const left = new Set(pattern.pieces.flatMap((piece) => crossed(piece, name)));
  const rings: Ring[] = [];
  for (const first of left) {
    const ring = walked(pattern, first, left);
    ring.pieces.forEach((one) => left.delete(one));
    const length = ring.closed ? lengthOf(ring, round) : undefined;
    if (length !== undefined)
      rings.push({ pieces: ring.pieces.map(({ piece }) => piece), line: name, length });
  }
  return rings;
}

/** Only what lies plain: where darts, pleats or gathers may take of the width, or the sides differ, nothing is said. */
function crossed(piece: Piece, name: string): readonly Crossed[] {
  const line = piece.balance.find((one) => one.name === name);
  const plain = piece.cut !== undefined && piece.side === undefined && piece.unbuilt.length === 0;
  if (line === undefined || !plain || piece.shaping !== undefined || takesWidth(piece, line)) return [];
  const ends = [line.path.start, line.path.end].flatMap(
    (point) => piece.edges.find(({ path }) => path.locate(point).distance <= ON_EDGE) ?? [],
  );
  return ends.length === 2 ? [{ piece, line, ends }] : [];
}

/** A dart that reaches over the line. */
function takesWidth({ darts }: Piece, { path }: BalanceLine): boolean {
  const { start, end } = path;
  const side = (p: { x: number; y: number }): number =>
    (end.x - start.x) * (p.y - start.y) - (end.y - start.y) * (p.x - start.x);
  return darts.some(({ from, to, tip }) => side(from) * side(tip) < 0 || side(to) * side(tip) < 0);
}

interface Walked {
  readonly pieces: readonly Crossed[];
  readonly closed: boolean;
  /** It ends on a fold, or where a piece is sewn to its own pair: it is half of what goes round. */
  readonly halved: boolean;
}

function walked(pattern: Pattern, first: Crossed, all: ReadonlySet<Crossed>): Walked {
  const pieces = new Set([first]);
  let [closed, halved] = [true, false];
  for (const { piece, ends } of pieces) {
    for (const edge of ends) {
      if (piece.fold?.edge === edge.name) {
        halved = true;
        continue;
      }
      const seams = pattern.seamsOf(piece.base).filter((seam) => takes(seam, piece, edge));
      const [seam] = seams;
      if (seams.length !== 1 || !meets(seam!)) closed = false;
      else if (seam!.itsPair) halved = true;
      else {
        const next = [...all].filter((one) => isAcross(seam!, { piece, edge }, one));
        closed &&= next.length === 1;
        next.forEach((one) => pieces.add(one));
      }
    }
  }
  return { pieces: [...pieces], closed, halved };
}

const holds = (side: Seam['left'], piece: Piece, edge: Edge): boolean =>
  side.some((sewn) => sewn.piece === piece.base && sewn.edge === edge.name);

const takes = (seam: Seam, piece: Piece, edge: Edge): boolean =>
  holds(seam.left, piece, edge) || holds(seam.right, piece, edge);

/** Laced edges do not meet, and of a seam along a stretch it is not plain whether it meets at the line. */
function meets({ statement: { node } }: Seam): boolean {
  if (node.kind !== 'seam' || node.openings.some(({ how }) => how === 'laced')) return false;
  const parts = [...node.left.parts, ...(node.right === 'its-pair' ? [] : node.right.parts)];
  return parts.every(({ from }) => from === undefined);
}

function isAcross(seam: Seam, from: { piece: Piece; edge: Edge }, { piece, ends }: Crossed): boolean {
  const other = holds(seam.left, from.piece, from.edge) ? seam.right : seam.left;
  return ends.some((edge) => holds(other, piece, edge));
}

function lengthOf({ pieces, halved }: Walked, round: 'body' | 'limb'): number | undefined {
  const times = pieces.map(({ piece }) => timesRound(piece));
  const sum = (of: (at: number) => number): number =>
    pieces.reduce((total, { line }, i) => total + of(i) * line.path.length, 0);
  if (round === 'limb') return halved || times.some((count) => count !== 2) ? undefined : sum(() => 1);
  return halved || times.every((count) => count === 1) ? sum((i) => times[i]!) : undefined;
}

/** A cut becomes a seam of itself: the edges that a division made are sewn together again. */
import type { Edge, Piece, Seam, SewnEdge } from '../model';
import type { SeamCourse } from '../sewing-model';
import { usualTolerance } from './seam';

interface Made {
  readonly piece: Piece;
  readonly edge: Edge;
}

/** Seams between the pieces that are cut and have an edge of one and the same division. */
export function cutSeams(pieces: readonly Piece[]): readonly Seam[] {
  const made = new Map<string, Made[]>();
  for (const piece of pieces) {
    if (piece.cut === undefined) continue;
    for (const edge of piece.edges) {
      if (edge.divided === undefined) continue;
      const key = `${edge.divided} ${piece.side ?? ''}`;
      made.set(key, [...(made.get(key) ?? []), { piece, edge }]);
    }
  }
  return [...made.values()].flatMap((both) => (both.length === 2 ? [kept(both[0]!, both[1]!)] : []));
}

/** Whether a seam of the text sews up a cut: it may say how, with ease or an opening. */
export function sewsTheSame(written: Seam, cut: Seam): boolean {
  const takes = (side: readonly SewnEdge[], [edge]: readonly SewnEdge[]): boolean =>
    side.some((one) => one.piece === edge!.piece && one.edge === edge!.edge);
  const { left, right } = written;
  return (
    (takes(left, cut.left) && takes(right, cut.right)) || (takes(right, cut.left) && takes(left, cut.right))
  );
}

/** The same object while both edges stay the same. */
const seams = new WeakMap<Edge, { readonly other: Edge; readonly seam: Seam }>();

function kept(one: Made, other: Made): Seam {
  const before = seams.get(one.edge);
  if (before?.other === other.edge) return before.seam;
  const seam = seamOf(one, other);
  seams.set(one.edge, { other: other.edge, seam });
  return seam;
}

function seamOf(one: Made, other: Made): Seam {
  const [left, right] = [sewn(one), sewn(other)];
  return {
    name: one.edge.name,
    source: one.edge.source,
    statement: one.piece.statement,
    left: [left],
    right: [right],
    itsPair: false,
    leftLength: left.length,
    rightLength: right.length,
    difference: right.length - left.length,
    tolerance: usualTolerance(Math.max(left.length, right.length)),
    toleranceStated: false,
    comparable: one.piece.unbuilt.length === 0 && other.piece.unbuilt.length === 0,
    course: courseOf(one, other),
    ...(one.piece.side !== undefined && { side: one.piece.side }),
  };
}

/** Both parts lie as they did before the cut, so that their outlines pass it in opposite directions. */
function courseOf(one: Made, other: Made): SeamCourse {
  const run = ({ piece, edge }: Made, from: number, to: number) => [
    { piece: piece.base, edge: edge.name, from, to, start: 0 },
  ];
  const [left, right] = [one.edge.sewn, other.edge.sewn];
  return {
    left: run(one, 0, left),
    right: run(other, right, 0),
    meets: [
      { left: 0, right: 0 },
      { left, right },
    ],
  };
}

function sewn({ piece, edge }: Made): SewnEdge {
  const { node } = piece.statement;
  const at = 'name' in node && node.name !== undefined ? node.name.at : node.at;
  return { piece: piece.base, edge: edge.name, source: edge.source, length: edge.sewn, at, of: piece };
}

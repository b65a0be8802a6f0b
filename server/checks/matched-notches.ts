/** Which notches of a seam's two sides belong together, as somebody at the machine would pair them: in order, alike. */
import type { Notch, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';
import type { SeamRun } from '../drafting/sewing-model';
import { alongSide, sideLength } from '../drafting/sewing/course';

/** A notch along a side of a seam. */
export interface SeamNotch {
  readonly notch: Notch;
  readonly at: number;
}

export interface NotchPair {
  readonly left: SeamNotch;
  readonly right: SeamNotch;
}

/** Notches of the pieces that a side takes, from its beginning; those at its ends are corners. */
function along(
  pattern: Pattern,
  seam: Seam,
  edges: readonly SewnEdge[],
  runs: readonly SeamRun[],
): SeamNotch[] {
  const total = sideLength(runs);
  const found = [...new Set(edges.map(({ piece }) => piece))].flatMap((base) => {
    const piece = pattern.pieces.find(
      (one) => one.base === base && (one.side === undefined || one.side === (seam.side ?? 'right')),
    );
    return (piece?.notches ?? []).flatMap((notch) => {
      const at = alongSide(runs, { piece: base, edge: notch.edge, distance: notch.distance });
      return at === undefined || at < 1 || at > total - 1 ? [] : [{ notch, at }];
    });
  });
  return found.sort((a, b) => a.at - b.at);
}

/** Pairs from the beginning to the end of a seam; none unless both sides carry as many of each kind in the same order. */
export function notchPairs(pattern: Pattern, seam: Seam): readonly NotchPair[] {
  const { course, left, right, itsPair } = seam;
  if (course === undefined || itsPair) return [];
  const one = along(pattern, seam, left, course.left);
  const other = along(pattern, seam, right, course.right);
  const alike =
    one.length === other.length && one.every(({ notch }, i) => notch.count === other[i]!.notch.count);
  return alike ? one.map((notch, i) => ({ left: notch, right: other[i]! })) : [];
}

/** The pieces whose notches and edges a judgement of a seam reads. */
export const piecesOf = ({ pieces }: Pattern, { left, right }: Seam): readonly unknown[] => {
  const named = byBase(pieces);
  const bases = new Set([...left, ...right].map(({ piece }) => piece));
  return [...bases].flatMap((base) => named.get(base) ?? []);
};

const indexed = new WeakMap<Pattern['pieces'], ReadonlyMap<string, readonly Piece[]>>();

/** The pieces by their name in the text, put in order once for a list of them. */
function byBase(pieces: Pattern['pieces']): ReadonlyMap<string, readonly Piece[]> {
  const kept = indexed.get(pieces);
  if (kept !== undefined) return kept;
  const found = new Map<string, Piece[]>();
  for (const piece of pieces) found.set(piece.base, [...(found.get(piece.base) ?? []), piece]);
  indexed.set(pieces, found);
  return found;
}

/** Which notches of a seam's two sides belong together, as somebody at the machine would pair them: in order, alike. */
import type { Notch, Seam, SewnEdge } from '../drafting/model';
import type { SeamRun } from '../drafting/sewing-model';
import { alongSide, sideLength } from '../drafting/sewing/course';
import type { AroundSeam } from './around';

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
  around: AroundSeam,
  seam: Seam,
  edges: readonly SewnEdge[],
  runs: readonly SeamRun[],
): SeamNotch[] {
  const total = sideLength(runs);
  const found = [...new Set(edges.map(({ piece }) => piece))].flatMap((base) => {
    const piece = around
      .piecesNamed(base)
      .find(({ side }) => side === undefined || side === (seam.side ?? 'right'));
    return (piece?.notches ?? []).flatMap((notch) => {
      const at = alongSide(runs, { piece: base, edge: notch.edge, distance: notch.distance });
      return at === undefined || at < 1 || at > total - 1 ? [] : [{ notch, at }];
    });
  });
  return found.sort((a, b) => a.at - b.at);
}

/** Pairs from the beginning to the end of a seam; none unless both sides carry as many of each kind in the same order. */
export function notchPairs(around: AroundSeam, seam: Seam): readonly NotchPair[] {
  const { course, left, right, itsPair } = seam;
  if (course === undefined || itsPair) return [];
  const one = along(around, seam, left, course.left);
  const other = along(around, seam, right, course.right);
  const alike =
    one.length === other.length && one.every(({ notch }, i) => notch.count === other[i]!.notch.count);
  return alike ? one.map((notch, i) => ({ left: notch, right: other[i]! })) : [];
}

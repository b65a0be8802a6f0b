/** What a seam asks of its lengths: ease, stretching, gathers; and where along the seam the ease lies. */
import { say } from '../../../grammar/say';
import type { Ease, Expr, SeamNode } from '../../../grammar/syntax';
import { called } from '../names/spelling';
import type { SeamCourse, SeamPlace } from '../sewing-model';
import { flatAt } from '../shapes/parts';
import { ofKind, quantity, widthOf } from '../values/arithmetic';
import { replace, report, wordsOf, type Reader } from '../values/reader';
import { edgeNamed, meetingPlaces, sewnPath, sideLength, type EaseShared } from './course';
import type { TakenEdge } from './edges';
import type { Runs } from './pairing';
import { placeOnSeam, type NamedNotch } from './seam-places';

/** How much longer one side is meant to be: between `low` and `high`, of the piece `of`; or a gathered ratio. */
export interface Asked {
  readonly low: number;
  readonly high: number;
  readonly of: string;
  readonly ratio?: number;
}

const NOTHING_ASKED: Asked = { low: 0, high: 0, of: '' };

export function askedEase(reader: Reader, node: SeamNode): Asked | undefined {
  for (const ease of node.eases) {
    switch (ease.kind) {
      case 'within':
        continue;
      case 'gathered':
        return gathered(reader, ease);
      case 'stretched': {
        const by = widthOf(reader, ease.by, 'stretched');
        return by === undefined ? undefined : asked(reader, node, ease.of, -by, -by);
      }
      case 'easing': {
        const range = easeRange(reader, ease);
        return range === undefined ? undefined : asked(reader, node, ease.of, ...range);
      }
    }
  }
  return NOTHING_ASKED;
}

/** `gathered 2.5 to 1`: more cloth drawn up to less. */
function gathered(reader: Reader, ease: Extract<Ease, { kind: 'gathered' }>): Asked | undefined {
  const full = ofKind(reader, ease.ratio, 'ratio', 'gathered');
  const drawnUp = ofKind(reader, ease.to, 'ratio', 'gathered');
  if (full === undefined || drawnUp === undefined) return undefined;
  if (drawnUp > 0 && full >= drawnUp) return { ...NOTHING_ASKED, ratio: full / drawnUp };
  const words = `${wordsOf(reader, ease.ratio)} to ${wordsOf(reader, ease.to)}`;
  return report(
    reader,
    'no-such-number',
    ease.at,
    say`Gathers draw more cloth up to less, such as 2 to 1; ${words} does not.`,
  );
}

/** `easing 6mm`, `easing 2cm .. 4cm`: the least and the most. */
function easeRange(
  reader: Reader,
  ease: Extract<Ease, { kind: 'easing' }>,
): readonly [number, number] | undefined {
  const low = widthOf(reader, ease.low, 'easing');
  const high = ease.high === undefined ? low : widthOf(reader, ease.high, 'easing');
  if (low === undefined || high === undefined) return undefined;
  if (low <= high) return [low, high];
  const at = { from: ease.low.at.from, to: ease.high!.at.to };
  const [least, most] = [wordsOf(reader, ease.high!), wordsOf(reader, ease.low)];
  report(
    reader,
    'range-turned-about',
    at,
    say`This range runs from ${most} down to ${least}: the lower end comes first.`,
    { fixes: [replace(reader, say`Put the lower end first`, at, `${least} .. ${most}`)] },
  );
  return [high, low];
}

type PieceRef = Extract<Ease, { kind: 'easing' }>['of'];

const partsOf = (node: SeamNode) => [
  ...node.left.parts,
  ...(node.right === 'its-pair' ? [] : node.right.parts),
];

/** The piece that is eased must be in the seam. */
function asked(reader: Reader, node: SeamNode, of: PieceRef, low: number, high: number): Asked | undefined {
  if (of === undefined) return { low, high, of: '' };
  const name = of.path[of.path.length - 1]!.text;
  if (isSewn(node, name)) return { low, high, of: name };
  return report(
    reader,
    'unknown-name',
    of.at,
    say`${wordsOf(reader, of)} is not sewn in this seam, so it can't be eased here.`,
  );
}

const isSewn = (node: SeamNode, piece: string): boolean =>
  partsOf(node).some(({ edge }) => edge.path.slice(0, -1).some(({ text }) => text === piece));

export interface Sides {
  readonly left: readonly TakenEdge[];
  readonly right: readonly TakenEdge[];
  readonly leftLength: number;
  readonly rightLength: number;
}

/** Right minus left, less what was asked for; 0 inside a range of ease. */
export function differenceAfter(want: Asked, sides: Sides): number {
  const { leftLength, rightLength } = sides;
  // either side may be the one that is gathered: it is the longer
  if (want.ratio !== undefined) {
    return rightLength > leftLength
      ? rightLength - leftLength * want.ratio
      : rightLength - leftLength / want.ratio;
  }
  const bare = rightLength - leftLength;
  if (want.low === 0 && want.high === 0) return bare;
  const onRight =
    want.of !== ''
      ? sides.right.some(({ piece }) => piece === want.of)
      : bare * Math.sign(want.low || want.high) > 0;
  const [low, high] = onRight ? [want.low, want.high] : [-want.high, -want.low];
  return bare < low ? bare - low : bare > high ? bare - high : 0;
}

/** Where the ease lies: which places of the two sides come to lie on each other. */
export function sharedEase(
  reader: Reader,
  node: SeamNode,
  taken: readonly TakenEdge[],
  runs: Runs,
  notch: NamedNotch,
): readonly SeamPlace[] | undefined {
  const [leftLength, rightLength] = [sideLength(runs.left), sideLength(runs.right)];
  const eased = leftLength > rightLength ? 'left' : 'right';
  const bounds = easeBounds(reader, node, taken, runs, notch);
  const shares = statedShares(reader, node);
  if (bounds === undefined || shares === undefined) return undefined;
  const other = runs[eased === 'left' ? 'right' : 'left'];
  return meetingPlaces(leftLength, rightLength, eased, {
    ...bounds,
    joins: joinsOf(node, other, shares),
  });
}

type Bounds = Pick<EaseShared, 'before' | 'after'>;

/** `between P and Q`, `none below P and Q`: the stretches at both ends that are sewn without ease. */
function easeBounds(
  reader: Reader,
  node: SeamNode,
  taken: readonly TakenEdge[],
  runs: Runs,
  notch: NamedNotch,
): Bounds | undefined {
  let [before, after] = [0, 0];
  const placed = (expr: Expr) => placeOnSeam(reader, taken, runs, expr, notch);
  for (const ease of node.eases) {
    if (ease.kind !== 'easing' || ease.between === undefined) continue;
    const ends = [placed(ease.between.one), placed(ease.between.other)];
    const [one, other] = ends;
    if (one === undefined || other === undefined) return undefined;
    const near = one.at / sideLength(runs[one.side]) < other.at / sideLength(runs[other.side]);
    const [low, high] = near ? [one, other] : [other, one];
    before = Math.max(before, low.at);
    after = Math.max(after, sideLength(runs[high.side]) - high.at);
  }
  for (const sharing of node.sharing) {
    if (sharing.kind !== 'none') continue;
    for (const point of sharing.points) {
      const place = placed(point);
      if (place === undefined) return undefined;
      const rest = sideLength(runs[place.side]) - place.at;
      const onward = isDownward(taken, place) === (sharing.side === 'below');
      if (onward) after = Math.max(after, rest);
      else before = Math.max(before, place.at);
    }
  }
  return { before, after };
}

/** Whether the seam runs down the paper at a place. */
function isDownward(
  taken: readonly TakenEdge[],
  { run, distance }: NonNullable<ReturnType<typeof placeOnSeam>>,
): boolean {
  const { of } = taken.find(({ piece, edge }) => piece === run.piece && edge === run.edge)!;
  const edge = edgeNamed(of, run.edge)!;
  const { y } = sewnPath(edge).tangentAt(flatAt(edge, distance));
  return y * (run.to >= run.from ? 1 : -1) > 0;
}

/** `45% of front, 55% of back`, by piece. */
function statedShares(reader: Reader, node: SeamNode): ReadonlyMap<string, number> | undefined {
  const shares = new Map<string, number>();
  for (const sharing of node.sharing) {
    if (sharing.kind !== 'share') continue;
    const share = quantity(reader, sharing.share);
    if (share === undefined) return undefined;
    const name = sharing.of.path[sharing.of.path.length - 1]!.text;
    if (!isSewn(node, name)) {
      return report(
        reader,
        'unknown-name',
        sharing.of.at,
        say`${wordsOf(reader, sharing.of)} is not sewn in this seam, so it can't take a share of its ease.`,
      );
    }
    if (share.kind !== 'ratio' || share.amount < 0 || share.amount > 1) {
      return report(
        reader,
        'no-such-number',
        sharing.share.at,
        say`A share of the ease lies between 0% and 100%; ${wordsOf(reader, sharing.share)} does not.`,
      );
    }
    shares.set(name, share.amount);
  }
  return wholeShares(reader, node, shares);
}

/** Shares are of the whole ease: together they are all of it. */
function wholeShares(
  reader: Reader,
  node: SeamNode,
  shares: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> | undefined {
  const total = [...shares.values()].reduce((sum, share) => sum + share, 0);
  if (shares.size < 2 || Math.abs(total - 1) < 1e-6) return shares;
  const at = node.sharing.filter(({ kind }) => kind === 'share').at(-1)!.at;
  return report(
    reader,
    'no-such-number',
    at,
    say`The shares of the ease come to ${Math.round(total * 1000) / 10}%, and they should be all of it: 100%.`,
  );
}

/** Of a set-in sleeve's ease the front takes less than the back (common practice: 45 to 55). */
const FRONT_SHARE = 0.45;

/** The share of the ease up to each join of the side that is not eased. */
function joinsOf(node: SeamNode, other: SeamCourse['left'], stated: ReadonlyMap<string, number>) {
  if (other.length < 2) return [];
  const shares = stated.size > 0 ? stated : usualShares(node, other);
  const known = other.map(({ piece }) => shares.get(piece));
  const missing = known.filter((share) => share === undefined).length;
  if (shares.size === 0 || missing > 1) return [];
  const rest = 1 - known.reduce<number>((sum, share) => sum + (share ?? 0), 0);
  let share = 0;
  return other.slice(1).map((run, i) => {
    share += known[i] ?? rest;
    return { at: run.start, share };
  });
}

/** An armhole of a front and a back, eased above two pitches. */
function usualShares(node: SeamNode, other: SeamCourse['left']): ReadonlyMap<string, number> {
  const armhole = other.length === 2 && other.every(({ edge }) => called(edge, 'armhole'));
  const front = other.find(({ piece }) => called(piece, 'front'));
  const back = other.find(({ piece }) => called(piece, 'back'));
  const pitched = node.sharing.some(({ kind }) => kind === 'none');
  if (!armhole || !pitched || front === undefined || back === undefined) return new Map();
  return new Map([
    [front.piece, FRONT_SHARE],
    [back.piece, 1 - FRONT_SHARE],
  ]);
}

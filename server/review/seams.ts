/** Whether what was changed still sews together: every seam before and after, with what is said of it. */
import { matches } from '../checks/mismatched-seam';
import type { Seam } from '../drafting/model';
import { both } from './causes';
import { TOLERANCE, type Both, type SeamChange, type SeamSide, type SeamVerdict } from './model';
import type { Renamed } from './pairs';
import { Naming } from './pieces';
import type { Taken, TakenSize } from './take';

type Measured = Pick<Taken, 'places'> & TakenSize;

/** Seams whose lengths or verdict changed, in the order of the new side, those that are gone at the end. */
export function seamChanges(before: Measured, after: Measured, renamed: readonly Renamed[]): SeamChange[] {
  const naming = new Naming(renamed);
  const names = new Set(after.seams.map(nameOf));
  const old = new Map<string, Seam>();
  const gone: Seam[] = [];
  for (const seam of before.seams) {
    const name = naming.now(nameOf(seam), names);
    if (name === undefined || old.has(name)) gone.push(seam);
    else old.set(name, seam);
  }
  const pairs: Both<Seam>[] = [
    ...after.seams.map((now) => both(old.get(nameOf(now)), now)),
    ...gone.map((was) => ({ was })),
  ];
  return pairs.flatMap(({ was, now }) => {
    if (was === now) return [];
    const seam = both(was && sideOf(was, before), now && sideOf(now, after));
    return isSame(seam) ? [] : [{ name: both(was && nameOf(was), now && nameOf(now)), seam }];
  });
}

/** One name for each of the wearer's sides, where they come out differently. */
const nameOf = ({ name, side }: Seam): string => (side === undefined ? name : `${name}, ${side}`);

function sideOf(seam: Seam, { places }: Measured): SeamSide {
  const { leftLength: left, rightLength: right, difference, tolerance } = seam;
  const place = places.get(seam.source);
  return { left, right, difference, tolerance, verdict: verdictOf(seam), ...(place && { place }) };
}

function verdictOf(seam: Seam): SeamVerdict {
  if (seam.itsPair) return 'its pair';
  if (!seam.comparable) return 'not compared';
  return matches(seam) ? 'matches' : 'apart';
}

function isSame({ was, now }: Both<SeamSide>): boolean {
  if (was === undefined || now === undefined) return false;
  const near = (a: number, b: number): boolean => !(Math.abs(a - b) > TOLERANCE);
  return (
    was.verdict === now.verdict &&
    near(was.left, now.left) &&
    near(was.right, now.right) &&
    near(was.difference, now.difference)
  );
}

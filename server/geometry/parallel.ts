/** Paths beside paths, as a chalk wheel draws them. */
import { FIT_TOLERANCE, SAME_POINT } from './accuracy';
import { type Box } from './box';
import { directionAt, line, type Segment } from './cubic';
import { extension, runOnTo } from './corner';
import { offsetSegment, type TightSpan } from './fitoffset';
import { Path } from './path';
import { cross, distance, type Point } from './point';
import { selfCrossingsOf } from './self';

/** Mitres of corners inside a run end at this many widths from the corner, as collar points do. */
export const MITRE_LIMIT = 2.5;

/** A stretch of the source, millimetres from its start. */
export interface Stretch {
  readonly s0: number;
  readonly s1: number;
}

export interface Parallel {
  /** Usually one; none where the source is tighter than the distance all along. */
  readonly paths: readonly Path[];
  /** Where the source bends more sharply than the distance lets a parallel follow; trimmed away there. */
  readonly tight: readonly Stretch[];
}

/**
 * The path at an even distance from an open run: to the left of travel as seen on paper where the distance is positive,
 * to the right where it is negative. Within `tolerance` millimetres; outer corners are mitred (to 2.5 widths, then
 * blunt), inner ones and too tight curves trimmed cleanly.
 */
export const parallel = (path: Path, distanceLeft: number, tolerance = FIT_TOLERANCE): Path[] => [
  ...parallelWithTight(path, distanceLeft, tolerance).paths,
];

export function parallelWithTight(path: Path, distanceLeft: number, tolerance = FIT_TOLERANCE): Parallel {
  if (distanceLeft === 0) return { paths: [path], tight: [] };
  if (!Number.isFinite(distanceLeft)) return { paths: [], tight: [] };
  const raw = rawOffset(path, { from: distanceLeft, to: distanceLeft }, tolerance);
  if (!raw) return { paths: [], tight: [] };
  return { paths: trimmed(raw.path, path, Math.abs(distanceLeft) - 3 * tolerance), tight: raw.tight };
}

export interface RawOffset {
  readonly path: Path;
  readonly tight: readonly Stretch[];
}

/**
 * Nothing larger than this (millimetres; a hundred kilometres) is offset. Whoever has a piece of that size has a mistake in
 * it, and a hundredth of a millimetre would take millions of curves.
 */
const LARGEST = 1e8;

/**
 * The offset with everything still in it: backward stretches, and overshooting inner corners joined by a straight line.
 * The width runs evenly along the whole path. Undefined for a path of no size or beyond all size.
 */
export function rawOffset(
  path: Path,
  widths: { from: number; to: number },
  tolerance: number,
): RawOffset | undefined {
  if (!(sizeOf(path.box) < LARGEST)) return undefined;
  const out: Segment[] = [];
  const tight: Stretch[] = [];
  const growth = path.length > 0 ? (widths.to - widths.from) / path.length : 0;
  let lastSource: Segment | undefined;
  path.segments.forEach((seg, index) => {
    const before = growth === 0 ? 0 : path.lengthTo({ index, t: 0 });
    const after = growth === 0 ? 0 : path.lengthTo({ index, t: 1 });
    const beside: Segment[] = [];
    const spans: TightSpan[] = [];
    const local = {
      from: widths.from + growth * before,
      to: growth === 0 ? widths.to : widths.from + growth * after,
    };
    offsetSegment(seg, local, tolerance, beside, spans);
    if (beside.length === 0) return;
    if (lastSource) join(out, beside, seg.p0, lastSource, seg, local.from);
    out.push(...beside);
    lastSource = seg;
    for (const { t0, t1 } of spans) {
      noteStretch(tight, path.lengthTo({ index, t: t0 }), path.lengthTo({ index, t: t1 }));
    }
  });
  return out.length > 0 ? { path: Path.of(out), tight } : undefined;
}

const sizeOf = (box: Box): number => Math.max(box.maxX - box.minX, box.maxY - box.minY);

function noteStretch(tight: Stretch[], s0: number, s1: number): void {
  const last = tight[tight.length - 1];
  if (last && s0 - last.s1 <= SAME_POINT) tight[tight.length - 1] = { s0: last.s0, s1 };
  else tight.push({ s0, s1 });
}

/** Joints smoother than this (millimetres between the two offset ends) are simply drawn together. */
const SMOOTH = 1e-6;

function join(
  out: Segment[],
  next: Segment[],
  at: Point,
  source: Segment,
  onward: Segment,
  width: number,
): void {
  const before = out[out.length - 1]!;
  const after = next[0]!;
  const gap = distance(before.p3, after.p0);
  if (gap <= SMOOTH) {
    next[0] = { ...after, p0: before.p3 };
    return;
  }
  const arriving = directionAt(source, 1, 'before');
  const leaving = directionAt(onward, 0, 'after');
  const points: Point[] = [];
  if (arriving && leaving && cross(arriving, leaving) * width > 0) {
    const ends = { at, from: before.p3, arriving, to: after.p0, leaving };
    const met = extension(ends);
    if (met && met.forward >= 0 && met.back >= 0)
      points.push(...runOnTo(ends, met, MITRE_LIMIT * Math.abs(width)));
  } else if (trimLines(out, next)) return;
  let from = before.p3;
  for (const p of [...points, after.p0]) {
    if (distance(from, p) > SAME_POINT) out.push(line(from, p));
    from = p;
  }
}

/** An inner corner of two straight lines, long enough to meet, is cut off where they do. */
function trimLines(out: Segment[], next: Segment[]): boolean {
  const before = out[out.length - 1]!;
  const after = next[0]!;
  if (before.kind !== 'line' || after.kind !== 'line') return false;
  const arriving = directionAt(before, 1);
  const leaving = directionAt(after, 0);
  if (!arriving || !leaving) return false;
  const met = extension({ at: before.p3, from: before.p3, arriving, to: after.p0, leaving });
  if (!met || met.forward > 0 || met.back > 0) return false;
  if (-met.forward >= distance(before.p0, before.p3) || -met.back >= distance(after.p0, after.p3))
    return false;
  out[out.length - 1] = line(before.p0, met.tip);
  next[0] = line(met.tip, after.p3);
  return true;
}

/** The stretches of a raw offset that keep their distance from the source, chained where they touch. */
function trimmed(raw: Path, source: Path, least: number): Path[] {
  const crossings = selfCrossingsOf(raw, false);
  const cuts = [0, ...crossings.flatMap((m) => [m.sA, m.sB]), raw.length].sort((a, b) => a - b);
  const kept: Path[] = [];
  for (let i = 0; i + 1 < cuts.length; i++) {
    const s0 = cuts[i]!;
    const s1 = cuts[i + 1]!;
    if (!(s1 - s0 > SMOOTH)) continue;
    const keeps = [0.23, 0.5, 0.81].every((share) => {
      return source.locate(raw.pointAt(s0 + (s1 - s0) * share)).distance >= least;
    });
    if (!keeps) continue;
    const part = raw.part(s0, s1);
    const last = kept[kept.length - 1];
    if (last && distance(last.end, part.start) <= 1e-5) kept[kept.length - 1] = last.joinedTo(part);
    else kept.push(part);
  }
  return kept;
}

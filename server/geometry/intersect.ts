/** Where paths, straight lines and circles meet, and how near two paths come. */
import { TOUCH } from './accuracy';
import { bernsteinRoots } from './bernstein';
import { boxesMeet } from './box';
import { crossSegments } from './cross';
import { asCubic, pointAt, type Segment } from './cubic';
import type { Path } from './path';
import {
  add,
  cross,
  distance,
  dot,
  isFinitePoint,
  lengthOf,
  normalised,
  type Point,
  scale,
  subtract,
} from './point';

/** `sA` and `sB` are millimetres from the start of each path. */
export interface Meeting {
  readonly point: Point;
  readonly sA: number;
  readonly sB: number;
}

/** `u` counts the direction vector from the origin of the line; with a unit vector it is in millimetres. */
export interface LineMeeting {
  readonly point: Point;
  readonly s: number;
  readonly u: number;
}

export interface CircleMeeting {
  readonly point: Point;
  readonly s: number;
}

/** Two meetings nearer than this along both paths may be one touching seen twice. */
const NEIGHBOURS = 0.2;

/**
 * All places where two paths cross or touch (come within `TOUCH`), by the distance along the first. A joint counts once,
 * a tangency once; of a stretch that both run along the two ends are given.
 */
export function intersections(a: Path, b: Path): Meeting[] {
  const found: Meeting[] = [];
  const [boxesA, boxesB] = [a.controlBoxes, b.controlBoxes];
  for (let i = 0; i < boxesA.length; i++) {
    for (let j = 0; j < boxesB.length; j++) {
      const boxA = boxesA[i]!;
      const boxB = boxesB[j]!;
      if (!boxesMeet(boxA, boxB, TOUCH)) continue;
      for (const { t, u } of crossSegments(a.segments[i]!, b.segments[j]!, boxA, boxB)) {
        const sA = a.lengthTo({ index: i, t });
        const sB = b.lengthTo({ index: j, t: u });
        found.push({ point: pointAt(a.segments[i]!, t), sA, sB });
      }
    }
  }
  return found.length < 2 ? found : withoutInnerJoints(a, b, singleMeetings(a, b, found));
}

/**
 * The same meetings, each once. Two are one where neither path leaves the other between them; a place in the midst of a
 * shared stretch is none.
 */
export function singleMeetings(a: Path, b: Path, found: readonly Meeting[]): Meeting[] {
  const sorted = found.slice().sort((p, q) => p.sA - q.sA || p.sB - q.sB);
  const groups: Meeting[][] = [];
  for (const meeting of sorted) {
    const home = groups.find((group) => sameMeeting(a, b, group[group.length - 1]!, meeting));
    if (home) home.push(meeting);
    else groups.push([meeting]);
  }
  return groups.map(representative).sort((p, q) => p.sA - q.sA || p.sB - q.sB);
}

function sameMeeting(a: Path, b: Path, p: Meeting, q: Meeting): boolean {
  const alongA = around(a, p.sA, q.sA);
  const alongB = around(b, p.sB, q.sB);
  if (alongA <= TOUCH && alongB <= TOUCH) return true;
  if (alongA > NEIGHBOURS || alongB > NEIGHBOURS) return false;
  const short = stretch(a, p.sA, q.sA);
  return stretch(b, p.sB, q.sB).locate(short.pointAt(short.length / 2)).distance <= 2 * TOUCH;
}

/** The stretch between two places, over the start where that is the shorter way of a closed path. */
function stretch(path: Path, s0: number, s1: number): Path {
  const [lo, hi] = s0 < s1 ? [s0, s1] : [s1, s0];
  if (around(path, lo, hi) === hi - lo) return path.part(lo, hi);
  return path.part(hi, path.length).joinedTo(path.part(0, lo));
}

/** Leaves out the joints in the midst of a stretch that both paths run along. */
function withoutInnerJoints(a: Path, b: Path, found: readonly Meeting[]): Meeting[] {
  const shares = (s0: number, s1: number): boolean =>
    [0.3, 0.5, 0.7].every((share) => b.locate(a.pointAt(s0 + (s1 - s0) * share)).distance <= TOUCH);
  const onward = found.map((m, i) => i + 1 < found.length && shares(m.sA, found[i + 1]!.sA));
  return found.filter((_, i) => !(onward[i] && onward[i - 1]));
}

/** Distance along a path between two places, the short way round where it is closed. */
function around(path: Path, s0: number, s1: number): number {
  const along = Math.abs(s1 - s0);
  return path.isClosed(TOUCH) ? Math.min(along, path.length - along) : along;
}

function representative(group: readonly Meeting[]): Meeting {
  const first = group[0]!;
  return distance(first.point, group[group.length - 1]!.point) <= TOUCH ? first : group[group.length >> 1]!;
}

/** Where an endless straight line meets a path, by the distance along the path. Empty where the line has no direction. */
export function lineIntersections(origin: Point, direction: Point, path: Path): LineMeeting[] {
  const along = normalised(direction);
  if (!along || !isFinitePoint(origin)) return [];
  const height = (p: Point): number => along.x * (p.y - origin.y) - along.y * (p.x - origin.x);
  const found: CircleMeeting[] = [];
  path.segments.forEach((seg, index) => {
    if (isAside(seg, height)) return;
    const { p0, p1, p2, p3 } = asCubic(seg);
    const heights = [height(p0), height(p1), height(p2), height(p3)];
    for (const t of rootsOrEnds(heights, TOUCH / 2)) {
      found.push({ point: pointAt(seg, t), s: path.lengthTo({ index, t }) });
    }
  });
  if (found.length === 0) return [];
  const per = 1 / lengthOf(direction);
  const strays = (p: Point): number => Math.abs(height(p));
  return singleOn(path, found, strays).map((m) => ({ ...m, u: dot(subtract(m.point, origin), along) * per }));
}

/** Whether all control points, and with them the whole segment, lie to one side of the line they are measured from. */
function isAside(seg: Segment, height: (p: Point) => number): boolean {
  const side = Math.sign(height(seg.p0));
  const beyond = (p: Point): boolean => side * height(p) > TOUCH / 2;
  return beyond(seg.p0) && beyond(seg.p3) && (seg.kind === 'line' || (beyond(seg.p1) && beyond(seg.p2)));
}

/** Where a circle meets a path (the compass), by the distance along the path. */
export function circleIntersections(centre: Point, radius: number, path: Path): CircleMeeting[] {
  if (!(radius > 0) || !Number.isFinite(radius) || !isFinitePoint(centre)) return [];
  const found: CircleMeeting[] = [];
  path.segments.forEach((seg, index) => {
    const { p0, p1, p2, p3 } = asCubic(seg);
    const sextic = squaredDistance([p0, p1, p2, p3].map((p) => subtract(p, centre)));
    const inside = sextic.map((value) => value - radius * radius);
    for (const t of rootsOrEnds(inside, TOUCH * radius)) {
      found.push({ point: pointAt(seg, t), s: path.lengthTo({ index, t }) });
    }
  });
  return singleOn(path, found, (p) => Math.abs(distance(p, centre) - radius));
}

/** |q(t)|² of a cubic with these control vectors, as a sextic in Bernstein form. */
function squaredDistance(q: readonly Point[]): number[] {
  const choose3 = [1, 3, 3, 1];
  const choose6 = [1, 6, 15, 20, 15, 6, 1];
  return choose6.map((whole, k) => {
    let sum = 0;
    for (let i = Math.max(0, k - 3); i <= Math.min(3, k); i++) {
      sum += choose3[i]! * choose3[k - i]! * dot(q[i]!, q[k - i]!);
    }
    return sum / whole;
  });
}

/** Roots, or both ends where the polynomial is nought all along. */
function rootsOrEnds(coefficients: readonly number[], zero: number): number[] {
  return coefficients.every((c) => Math.abs(c) <= zero) ? [0, 1] : bernsteinRoots(coefficients, zero);
}

/** Sorted along the path, each once; a stretch that lies on the line or circle is given by its ends. */
function singleOn(
  path: Path,
  found: readonly CircleMeeting[],
  strays: (p: Point) => number,
): CircleMeeting[] {
  const groups: CircleMeeting[][] = [];
  for (const meeting of found.slice().sort((p, q) => p.s - q.s)) {
    const group = groups[groups.length - 1];
    const last = group?.[group.length - 1];
    const joined =
      last &&
      (meeting.s - last.s <= TOUCH || strays(path.pointAt((meeting.s + last.s) / 2)) <= 2 * TOUCH) &&
      (meeting.s - last.s <= NEIGHBOURS ||
        strays(path.pointAt(last.s + (meeting.s - last.s) * 0.3)) <= 2 * TOUCH);
    if (group && joined) group.push(meeting);
    else groups.push([meeting]);
  }
  const out: CircleMeeting[] = [];
  for (const group of groups) {
    const first = group[0]!;
    const last = group[group.length - 1]!;
    if (last.s - first.s > NEIGHBOURS) out.push(first, last);
    else out.push(last.s - first.s <= TOUCH ? first : group[group.length >> 1]!);
  }
  const ends = out.length > 1 && path.isClosed(TOUCH) && out[0]!.s <= TOUCH;
  return ends && out[out.length - 1]!.s >= path.length - TOUCH ? out.slice(0, -1) : out;
}

/** Where two endless lines meet; undefined where they are parallel within 1e-12 radians. */
export function lineLine(o1: Point, d1: Point, o2: Point, d2: Point): Point | undefined {
  const a = normalised(d1);
  const b = normalised(d2);
  if (!a || !b) return undefined;
  const turn = cross(a, b);
  if (!(Math.abs(turn) > 1e-12)) return undefined;
  return add(o1, scale(a, cross(subtract(o2, o1), b) / turn));
}

/** Where a path crosses itself. */
import { TOUCH } from './accuracy';
import { boxesMeet } from './box';
import { crossSegments, type Hit } from './cross';
import { type Cubic, pointAt, type Segment } from './cubic';
import { type Meeting, singleMeetings } from './intersect';
import type { Path } from './path';
import { add, angleBetween, cross, dot, lengthOf, normalised, type Point, scale, subtract } from './point';

/** Two hits nearer along the path than this (millimetres) are one place of it, a joint. */
const JOINT = 1e-5;

/**
 * How far from a meeting (millimetres) it is first looked on which side of the one branch the other lies. A loop smaller than
 * this goes unseen; nearer by, rounding would have a say in the answer.
 */
const BESIDE = 1e-4;

/**
 * Crossings of a path with itself, `sA` before `sB`, in order of `sA`. Joints are none, nor is a touching (up to
 * `TOUCH` deep), nor a stretch walked twice. `closed`: the end runs on into the start.
 */
export function selfCrossingsOf(path: Path, closed: boolean): Meeting[] {
  const { segments, controlBoxes: boxes } = path;
  const legs = segments.map(legsOf);
  const found: Meeting[] = [];
  const last = segments.length - 1;
  const note = (i: number, j: number, { t, u }: Hit): void => {
    const s = path.lengthTo({ index: i, t });
    const r = path.lengthTo({ index: j, t: u });
    const apart = Math.abs(r - s);
    if (apart <= JOINT || (closed && path.length - apart <= JOINT)) return;
    found.push({ point: pointAt(segments[i]!, t), sA: Math.min(s, r), sB: Math.max(s, r) });
  };
  for (let i = 0; i <= last; i++) {
    const own = runOn(legs[i]!) ? undefined : ownLoop(segments[i]!);
    if (own) note(i, i, own);
    for (let j = i + 1; j <= last; j++) {
      if (!boxesMeet(boxes[i]!, boxes[j]!, TOUCH)) continue;
      if (
        j === i + 1 ? runOn(legs[i]!, legs[j]) : closed && i === 0 && j === last && runOn(legs[j]!, legs[i])
      )
        continue;
      for (const hit of crossSegments(segments[i]!, segments[j]!, boxes[i], boxes[j])) note(i, j, hit);
    }
  }
  if (found.length === 0) return found;
  const through = singleMeetings(path, path, found).filter((m) => passesThrough(path, closed, m));
  return withoutFarEnds(path, through);
}

/** The legs of a segment's control line, with their directions. */
interface Legs {
  readonly legs: readonly Point[];
  readonly units: readonly (Point | undefined)[];
}

function legsOf(seg: Segment): Legs {
  const legs =
    seg.kind === 'line'
      ? [subtract(seg.p3, seg.p0)]
      : [subtract(seg.p1, seg.p0), subtract(seg.p2, seg.p1), subtract(seg.p3, seg.p2)];
  return { legs, units: legs.map(normalised) };
}

/** Whether the legs of a segment, and of the one it runs on into, go forward in one direction: then neither meets itself. */
function runOn(one: Legs, onward?: Legs): boolean {
  let x = 0;
  let y = 0;
  for (const unit of one.units) {
    x += unit?.x ?? 0;
    y += unit?.y ?? 0;
  }
  for (const unit of onward?.units ?? []) {
    x += unit?.x ?? 0;
    y += unit?.y ?? 0;
  }
  return forward(one.legs, x, y) && (onward === undefined || forward(onward.legs, x, y));
}

function forward(legs: readonly Point[], x: number, y: number): boolean {
  for (const leg of legs) if (!(leg.x * x + leg.y * y > 0) && (leg.x !== 0 || leg.y !== 0)) return false;
  return true;
}

/**
 * The two parameters at which a cubic is at one point. With a t³ + b t² + c t the difference of two places, divided by
 * t - u, is a(s² - p) + b s + c for s = t + u and p = tu; crossing it with a leaves one unknown.
 */
function ownLoop(seg: Segment): Hit | undefined {
  if (seg.kind === 'line') return undefined;
  const { a, b, c } = powers(seg);
  const s = -cross(a, c) / cross(a, b);
  const p = s * s + dot(a, add(scale(b, s), c)) / dot(a, a);
  const root = Math.sqrt(s * s - 4 * p);
  const t = (s - root) / 2;
  const u = (s + root) / 2;
  return t >= 0 && u <= 1 && u > t ? { t, u } : undefined;
}

function powers({ p0, p1, p2, p3 }: Cubic): { a: Point; b: Point; c: Point } {
  const c = scale(subtract(p1, p0), 3);
  const b = scale(add(subtract(p2, p1), subtract(p0, p1)), 3);
  return { a: subtract(subtract(subtract(p3, p0), b), c), b, c };
}

/** One of the four ways out of a meeting: along the path from s, forwards or backwards. */
interface Ray {
  readonly s: number;
  readonly way: 1 | -1;
}

/** From the meeting to a point of the ray some millimetres along it; undefined beyond an open end. */
function reached(path: Path, closed: boolean, { s, way }: Ray, reach: number): Point | undefined {
  const ahead = stepped(path, closed, s + way * reach);
  return ahead && subtract(ahead, path.pointAt(s));
}

/** Whether, a little before and a little after, the one branch lies on different sides of the other. */
function passesThrough(path: Path, closed: boolean, { sA, sB }: Meeting): boolean {
  const sides = ([-1, 1] as const).map((way) => side(path, closed, { s: sA, way }, sB));
  return sides[0] !== undefined && sides[1] !== undefined && sides[0] !== sides[1];
}

/** On which side of the branch through sB a ray lies; undefined where it never leaves that branch by more than a touch. */
function side(path: Path, closed: boolean, ray: Ray, sB: number): 'right' | 'left' | undefined {
  const out = reached(path, closed, ray, BESIDE);
  const behind = reached(path, closed, { s: sB, way: -1 }, BESIDE);
  const ahead = reached(path, closed, { s: sB, way: 1 }, BESIDE);
  if (!out || !behind || !ahead) return undefined;
  if (alike(out, behind)) return leaves(path, closed, ray, { s: sB, way: -1 }, 'right', 'left');
  if (alike(out, ahead)) return leaves(path, closed, ray, { s: sB, way: 1 }, 'left', 'right');
  return turned(behind, out) < turned(behind, ahead) ? 'left' : 'right';
}

/** Whether two rays of the same length run together within a touch. */
const alike = (a: Point, b: Point): boolean => dot(a, b) > 0 && Math.abs(cross(a, b)) <= TOUCH * lengthOf(a);

/** Follows two rays that run together until they part; `clockwise` is the answer where the first turns off that way. */
function leaves<T>(
  path: Path,
  closed: boolean,
  ray: Ray,
  other: Ray,
  anticlockwise: T,
  clockwise: T,
): T | undefined {
  for (let reach = BESIDE * 2; reach < path.length / 2; reach *= 2) {
    const a = reached(path, closed, ray, reach);
    const b = reached(path, closed, other, reach);
    if (!a || !b) return undefined;
    if (!alike(a, b)) return cross(b, a) > 0 ? clockwise : anticlockwise;
  }
  return undefined;
}

/** Leaves out a crossing that is the far end of a stretch which the two branches share with the crossing before it. */
function withoutFarEnds(path: Path, found: readonly Meeting[]): Meeting[] {
  return found.filter((m, i) => {
    const before = found[i - 1];
    if (!before || Math.abs(m.sA - before.sA - Math.abs(m.sB - before.sB)) > 1e-3) return true;
    const shared = path.part(Math.min(before.sB, m.sB), Math.max(before.sB, m.sB));
    const along = [0.25, 0.5, 0.75].map((share) => path.pointAt(before.sA + (m.sA - before.sA) * share));
    return along.some((p) => shared.locate(p).distance > TOUCH);
  });
}

/** Angle from one ray to another in 0..2π. */
function turned(from: Point, to: Point): number {
  const angle = angleBetween(from, to);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

function stepped(path: Path, closed: boolean, s: number): Point | undefined {
  const { length } = path;
  if (s >= 0 && s <= length) return path.pointAt(s);
  return closed ? path.pointAt(s < 0 ? s + length : s - length) : undefined;
}

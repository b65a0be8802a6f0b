/** Cutting lines: an outline moved outward by the allowance of each edge, with its corners as a cutter draws them. */
import { FIT_TOLERANCE, SAME_POINT } from './accuracy';
import { extension, runOnTo, type CornerEnds } from './corner';
import { directionAt, line, type Segment } from './cubic';
import { leftOf } from './fitoffset';
import { intersections } from './intersect';
import type { CornerKind, CornerRule, CutCorner, Joint, Run } from './joint';
import { signedArea } from './outline';
import { MITRE_LIMIT, rawOffset, type Stretch } from './parallel';
import { Path } from './path';
import { add, angleBetween, distance, normalised, type Point, scale } from './point';
import { withoutLoops } from './loops';
import { ruledJoint } from './ruled-corner';

export interface CutEdge {
  readonly path: Path;
  /** Millimetres outward; 0 keeps the edge (a fold). Less than nothing counts as 0. */
  readonly allowance: number;
  /** Where given, the allowance runs evenly from `allowance` at the edge's start to this at its end. */
  readonly allowanceAtEnd?: number;
  /** How the corner at its end is cut; not said, it is mitred. */
  readonly corner?: CornerRule;
}

export interface CutOptions {
  readonly tolerance?: number;
  /** A corner's tip further away than this many of the larger allowance is cut blunt. */
  readonly mitreLimit?: number;
  /** The outline is that of a hole: the allowance lies within it. */
  readonly hole?: boolean;
}

export interface TightStretch extends Stretch {
  readonly edge: number;
}

export interface CuttingLine {
  /** One path an edge, end to end round the piece; the corner's joins belong to the edge before. */
  readonly outline: Path[];
  /** One an edge, at its end. */
  readonly corners: CutCorner[];
  /** Stretches of the sewing line too tight for the allowance. */
  readonly tight: TightStretch[];
}

/** Between directions that differ by less, two edges run smoothly on (radians; a tenth of a degree). */
const SMOOTH_TURN = 0.002;

/**
 * Below this turn (radians; 15 degrees) two allowances are joined by a step. A mitre there would lie so far along the edge
 * that nobody would know what it was for.
 */
const STEP_TURN = Math.PI / 12;

/**
 * The cutting line of a closed outline given as edges in order, clockwise or anticlockwise. It never crosses itself: what
 * an inner corner or a tight curve would make it cut twice is left out. Edges of no size keep a path of no size.
 */
export function cuttingLine(edges: readonly CutEdge[], options: CutOptions = {}): CuttingLine {
  const tolerance = options.tolerance ?? FIT_TOLERANCE;
  const limit = options.mitreLimit ?? MITRE_LIMIT;
  const side = signedArea(edges.map((edge) => edge.path)) < 0 !== (options.hole === true) ? -1 : 1;
  const tight: TightStretch[] = [];
  const runs = edges.map((edge, index) => {
    const widths = {
      from: side * allowed(edge.allowance),
      to: side * allowed(edge.allowanceAtEnd ?? edge.allowance),
    };
    if (widths.from === 0 && widths.to === 0) return runOf(edge.path, edge.path, widths);
    const raw = rawOffset(edge.path, widths, tolerance);
    for (const stretch of raw?.tight ?? []) tight.push({ edge: index, ...stretch });
    return runOf(edge.path, raw?.path ?? edge.path, widths);
  });
  const joints = runs.map((run, i) => {
    const next = runs[(i + 1) % runs.length]!;
    return jointOf(run, next, { at: edges[i]!.path.end, side, limit, rule: edges[i]!.corner });
  });
  const rough = runs.map((run, i) =>
    assembled(run.path, joints[(i + runs.length - 1) % runs.length]!, joints[i]!),
  );
  return { outline: withoutLoops(connected(rough)), corners: joints.map((joint) => joint.corner), tight };
}

function runOf(source: Path, path: Path, widths: { from: number; to: number }): Run {
  const { length } = source;
  const growth = length > 0 ? (widths.to - widths.from) / length : 0;
  const along = (direction: Point): Point => {
    const leaning = add(direction, scale(leftOf(direction), growth));
    return normalised(leaning) ?? direction;
  };
  const [leaving, arriving] = [source.tangentAt(0, 'after'), source.tangentAt(length, 'before')];
  return {
    sewn: { leaving, arriving },
    path,
    width: Math.abs(widths.from),
    widthAtEnd: Math.abs(widths.to),
    leaving: along(leaving),
    arriving: along(arriving),
  };
}

const allowed = (width: number): number => (width > 0 && Number.isFinite(width) ? width : 0);

/** What is known of a corner: where it lies, on which side the allowance, how far it may reach, how it is to be cut. */
interface Where {
  readonly at: Point;
  readonly side: number;
  /** In widths. */
  readonly limit: number;
  readonly rule: CornerRule | undefined;
}

function jointOf(run: Run, next: Run, { at, side, limit, rule }: Where): Joint {
  const from = run.path.end;
  const to = next.path.start;
  if (run.widthAtEnd === 0 && next.width === 0) return plain('smooth', at, from, to);
  const ends: CornerEnds = {
    at,
    from,
    arriving: run.arriving,
    to,
    leaving: next.leaving,
  };
  const turn = side * angleBetween(ends.arriving, ends.leaving);
  const larger = Math.max(run.widthAtEnd, next.width);
  const even = Math.abs(run.widthAtEnd - next.width) < 1e-6;
  if (even && Math.abs(turn) < SMOOTH_TURN) return plain('smooth', at, from, to);
  if (!even && Math.abs(turn) < STEP_TURN) return plain('stepped', at, from, to);
  const ruled = rule && turn > SMOOTH_TURN && ruledJoint(rule, run, next, { at, reach: limit * larger });
  if (ruled) return ruled;
  const met = extension(ends);
  if (met && met.forward >= -SAME_POINT && met.back >= -SAME_POINT && turn > 0)
    return outer(ends, met, limit * larger);
  const crossed = crossing(run, next, ends, met, limit * larger);
  return crossed ?? (turn > 0 ? plain('stepped', at, from, to) : throughCorner(at));
}

/** The two ends joined by a straight line, if they are not one point. */
function plain(kind: CornerKind, at: Point, from: Point, to: Point): Joint {
  const tip = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return { corner: { kind, at, tip }, endAt: undefined, startAt: undefined, between: [] };
}

/**
 * Lines that miss each other at an inner corner are led through the corner itself: whatever comes of it lies in a loop,
 * and the loops are taken out afterwards.
 */
const throughCorner = (at: Point): Joint => ({
  corner: { kind: 'inner', at, tip: at },
  endAt: undefined,
  startAt: undefined,
  between: [at],
});

function outer(ends: CornerEnds, met: NonNullable<ReturnType<typeof extension>>, limit: number): Joint {
  const between = runOnTo(ends, met, limit);
  const kind = between.length > 1 ? 'blunt' : 'mitred';
  const first = between[0]!;
  const last = between[between.length - 1]!;
  const tip = { x: (first.x + last.x) / 2, y: (first.y + last.y) / 2 };
  return { corner: { kind, at: ends.at, tip }, endAt: undefined, startAt: undefined, between };
}

/**
 * The lines cross before one of them ends, or before one of them starts: each is run on as far as it may have to be, and
 * both are cut where they meet nearest the corner.
 */
function crossing(
  run: Run,
  next: Run,
  ends: CornerEnds,
  met: ReturnType<typeof extension>,
  limit: number,
): Joint | undefined {
  const forward = met && met.forward > 0 ? Math.min(met.forward, limit) * 1.01 + SAME_POINT : 0;
  const back = met && met.back > 0 ? Math.min(met.back, limit) * 1.01 + SAME_POINT : 0;
  const onward = line(ends.from, add(ends.from, scale(ends.arriving, forward)));
  const first = forward > 0 ? run.path.joinedTo(Path.of([onward])) : run.path;
  const early = line(add(ends.to, scale(ends.leaving, -back)), ends.to);
  const second = back > 0 ? Path.of([early]).joinedTo(next.path) : next.path;
  let best: { point: Point; sA: number; sB: number } | undefined;
  for (const meeting of intersections(first, second)) {
    if (!best || distance(meeting.point, ends.at) < distance(best.point, ends.at)) best = meeting;
  }
  if (!best || distance(best.point, ends.at) > limit + SAME_POINT) return undefined;
  const kind = met && (met.forward > 0 || met.back > 0) ? 'mitred' : 'inner';
  const before = back > 0 ? early : undefined;
  const startAt = best.sB - (before ? distance(before.p0, before.p3) : 0);
  return {
    corner: { kind, at: ends.at, tip: best.point },
    endAt: Math.min(best.sA, run.path.length),
    startAt: Math.max(0, startAt),
    between: [best.point],
  };
}

/**
 * A run cut at both its corners, with the joining points after it. A run that its two corners cut away altogether is walked
 * backwards between them, which makes a loop of it.
 */
function assembled(path: Path, before: Joint, after: Joint): Segment[] {
  const whole = before.startAt === undefined && after.endAt === undefined;
  const cut = whole ? path : path.part(before.startAt ?? 0, after.endAt ?? path.length);
  const out: Segment[] = cut.segments.slice();
  let from = cut.end;
  for (const part of after.between) {
    const to = part instanceof Path ? part.start : part;
    if (distance(from, to) > SAME_POINT) out.push(line(from, to));
    if (part instanceof Path) out.push(...part.segments);
    from = part instanceof Path ? part.end : to;
  }
  return out;
}

/** The runs as a ring without gaps: what is missing between one and the next is added to the one. */
function connected(runs: readonly Segment[][]): Path[] {
  return runs.map((run, i) => {
    const next = runs[(i + 1) % runs.length]!;
    const to = next[0]!.p0;
    const from = run[run.length - 1]!.p3;
    const gap = distance(from, to);
    if (gap > 1e-6) return Path.of([...run.filter(hasSize), line(from, to)]);
    const kept = run.filter(hasSize);
    return Path.of(
      kept.length > 0 ? [...kept.slice(0, -1), { ...kept[kept.length - 1]!, p3: to }] : [line(to, to)],
    );
  });
}

const hasSize = (seg: Segment): boolean =>
  seg.p0.x !== seg.p3.x || seg.p0.y !== seg.p3.y || directionAt(seg, 0) !== undefined;

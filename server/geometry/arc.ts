/** Arcs and circles as chains of cubics. */
import { cubic, type Segment } from './cubic';
import { Path } from './path';
import { add, angleBetween, angleOf, distance, type Point, point, scale, subtract } from './point';

/**
 * No cubic covers more than ten degrees. The radius is then nowhere more than 5.2e-10 of itself too large (a quarter
 * circle in one piece: 2.7e-4, falling with the sixth power of the angle), so half a thousandth of a micrometre on a
 * metre. A whole circle costs 36 pieces; twice the angle would halve that and be 64 times less true.
 */
const MAX_STEP = Math.PI / 18;

/**
 * The arc from one point to another about a centre, the shorter way round unless `longWay`; half a circle goes clockwise
 * on paper. Where the ends lie at different distances from the centre the radius runs evenly from one to the other, so
 * that the arc still ends where it was told to; callers report that.
 */
export function arc(centre: Point, from: Point, to: Point, longWay: boolean): Path {
  const a = subtract(from, centre);
  const b = subtract(to, centre);
  const angle = angleBetween(a, b);
  // Rounding must not choose the side of half a circle.
  const short = Math.PI - Math.abs(angle) < 1e-12 ? Math.PI : angle;
  const sweep = longWay ? short - Math.sign(short || 1) * 2 * Math.PI : short;
  const path = chain(centre, angleOf(a), sweep, distance(centre, from), distance(centre, to));
  return withEnds(path, from, to);
}

/** The arc that starts at `from` and turns by an angle in radians, clockwise on paper where positive. */
export function arcByAngle(centre: Point, from: Point, sweepRadians: number): Path {
  const radius = distance(centre, from);
  const path = chain(centre, angleOf(subtract(from, centre)), sweepRadians, radius, radius);
  return withEnds(path, from, path[path.length - 1]!.p3);
}

/** A whole circle, clockwise on paper, from the given angle (radians from x towards y). */
export function circle(centre: Point, radius: number, startAngle = 0): Path {
  const path = chain(centre, startAngle, 2 * Math.PI, radius, radius);
  return withEnds(path, path[0]!.p0, path[0]!.p0);
}

function chain(centre: Point, start: number, sweep: number, r0: number, r1: number): Segment[] {
  const turns = Math.abs(sweep) / MAX_STEP;
  const count = Math.min(3600, Math.max(1, Number.isFinite(turns) ? Math.ceil(turns - 1e-9) : 1));
  const step = sweep / count;
  const handle = (4 / 3) * Math.tan(step / 4);
  const growth = sweep === 0 ? 0 : (r1 - r0) / sweep;
  const place = (i: number): { at: Point; along: Point } => {
    const angle = start + step * i;
    const radius = r0 + (r1 - r0) * (i / count);
    const out = point(Math.cos(angle), Math.sin(angle));
    return {
      at: add(centre, scale(out, radius)),
      along: point(growth * out.x - radius * out.y, growth * out.y + radius * out.x),
    };
  };
  const segments: Segment[] = [];
  let here = place(0);
  for (let i = 1; i <= count; i++) {
    const next = place(i);
    segments.push(
      cubic(
        here.at,
        add(here.at, scale(here.along, handle)),
        subtract(next.at, scale(next.along, handle)),
        next.at,
      ),
    );
    here = next;
  }
  return segments;
}

/** The chain with its two ends exactly where they were asked for, free of the rounding of sine and cosine. */
function withEnds(chainOf: readonly Segment[], from: Point, to: Point): Path {
  const segments = chainOf.slice();
  segments[0] = { ...segments[0]!, p0: from };
  segments[segments.length - 1] = { ...segments[segments.length - 1]!, p3: to };
  return Path.of(segments);
}

/** Points and vectors in the plane: millimetres, x to the right, y down, as on paper seen from above. */
import { SAME_POINT } from './accuracy';

/** A point, also used as a vector. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export const point = (x: number, y: number): Point => ({ x, y });

export const ORIGIN: Point = point(0, 0);

export const add = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });

export const subtract = (a: Point, b: Point): Point => ({ x: a.x - b.x, y: a.y - b.y });

export const scale = (v: Point, factor: number): Point => ({ x: v.x * factor, y: v.y * factor });

export const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

/** Positive where b lies clockwise of a as seen on paper (y down). */
export const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x;

export const lengthOf = (v: Point): number => Math.sqrt(v.x * v.x + v.y * v.y);

export const distance = (a: Point, b: Point): number => lengthOf(subtract(b, a));

/** The unit vector of v; undefined where v has no direction (zero or not finite). */
export function normalised(v: Point): Point | undefined {
  const reach = Math.max(Math.abs(v.x), Math.abs(v.y));
  if (!(reach > 0) || !Number.isFinite(reach)) return undefined;
  const x = v.x / reach;
  const y = v.y / reach;
  const length = Math.sqrt(x * x + y * y);
  return { x: x / length, y: y / length };
}

/** Turned by an angle in radians; positive turns x towards y, which is clockwise on paper. */
export function rotate(v: Point, radians: number): Point {
  const c = Math.cos(radians);
  const s = Math.sin(radians);
  return { x: v.x * c - v.y * s, y: v.x * s + v.y * c };
}

/** v turned a quarter from x towards y: to the right of travel as seen on paper. */
export const perpendicular = (v: Point): Point => ({ x: -v.y, y: v.x });

export const lerp = (a: Point, b: Point, t: number): Point => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
});

export const midpoint = (a: Point, b: Point): Point => lerp(a, b, 0.5);

/** Direction of v in radians from x towards y, in (-π, π]. */
export const angleOf = (v: Point): number => Math.atan2(v.y, v.x);

/** The angle from a to b in radians, signed as `rotate` turns, in (-π, π]. */
export const angleBetween = (a: Point, b: Point): number => Math.atan2(cross(a, b), dot(a, b));

/** Whether two points are one within a tolerance in millimetres. */
export const samePoint = (a: Point, b: Point, tolerance = SAME_POINT): boolean => distance(a, b) <= tolerance;

export const isFinitePoint = (p: Point): boolean => Number.isFinite(p.x) && Number.isFinite(p.y);

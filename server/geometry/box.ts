/** Upright boxes around points and curves, used to rule out work early. */
import type { Point } from './point';

/** Millimetres; empty where minX > maxX. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export const EMPTY_BOX: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

export function boxOf(points: readonly Point[]): Box {
  let { minX, minY, maxX, maxY } = EMPTY_BOX;
  for (const p of points) {
    if (p.x < minX) minX = p.x;
    if (p.y < minY) minY = p.y;
    if (p.x > maxX) maxX = p.x;
    if (p.y > maxY) maxY = p.y;
  }
  return { minX, minY, maxX, maxY };
}

export const union = (a: Box, b: Box): Box => ({
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
});

/** Whether two boxes meet when each gap up to `margin` millimetres counts as meeting. */
export const boxesMeet = (a: Box, b: Box, margin = 0): boolean =>
  a.minX <= b.maxX + margin &&
  b.minX <= a.maxX + margin &&
  a.minY <= b.maxY + margin &&
  b.minY <= a.maxY + margin;

export const boxContains = (box: Box, p: Point, margin = 0): boolean =>
  p.x >= box.minX - margin &&
  p.x <= box.maxX + margin &&
  p.y >= box.minY - margin &&
  p.y <= box.maxY + margin;

/** Distance of a point from a box; zero inside. */
export function distanceToBox(box: Box, p: Point): number {
  const dx = Math.max(box.minX - p.x, 0, p.x - box.maxX);
  const dy = Math.max(box.minY - p.y, 0, p.y - box.maxY);
  return Math.sqrt(dx * dx + dy * dy);
}

/** Distance between two boxes; zero where they meet. */
export function distanceBetweenBoxes(a: Box, b: Box): number {
  const dx = Math.max(a.minX - b.maxX, 0, b.minX - a.maxX);
  const dy = Math.max(a.minY - b.maxY, 0, b.minY - a.maxY);
  return Math.sqrt(dx * dx + dy * dy);
}

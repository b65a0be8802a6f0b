/** Whether two results are the same, so that an edit stops where nothing came out different. */
import { Path, type Segment } from '../geometry';

/**
 * Deep equality of plain data, numbers to the last bit. Paths are compared by their segments, not by what they have
 * worked out meanwhile; statements and other objects shared between versions are equal by being the same object first.
 */
export function equal(a: unknown, b: unknown): boolean {
  if (a === b || (a !== a && b !== b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (a instanceof Path || b instanceof Path) return a instanceof Path && b instanceof Path && samePath(a, b);
  if (a instanceof Map || b instanceof Map) return a instanceof Map && b instanceof Map && sameMap(a, b);
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  if (isStatement(a) || isStatement(b)) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  return keys.every((key) => equal((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]));
}

/** Statements are compared by identity alone: their text and their node never change. */
const isStatement = (value: object): boolean => 'node' in value && 'text' in value && 'start' in value;

const samePath = (a: Path, b: Path): boolean =>
  a.segments.length === b.segments.length &&
  a.segments.every((segment, i) => sameSegment(segment, b.segments[i]!));

const samePlace = (a: { x: number; y: number }, b: { x: number; y: number }): boolean =>
  a.x === b.x && a.y === b.y;

function sameSegment(a: Segment, b: Segment): boolean {
  if (a.kind !== b.kind || !samePlace(a.p0, b.p0) || !samePlace(a.p3, b.p3)) return false;
  return a.kind === 'line' || b.kind === 'line' || (samePlace(a.p1, b.p1) && samePlace(a.p2, b.p2));
}

function sameMap(a: ReadonlyMap<unknown, unknown>, b: ReadonlyMap<unknown, unknown>): boolean {
  if (a.size !== b.size) return false;
  for (const [key, value] of a) if (!b.has(key) || !equal(value, b.get(key))) return false;
  return true;
}

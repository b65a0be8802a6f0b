/** Takes the loops out of an outline that crosses itself. */
import { line } from './cubic';
import type { Meeting } from './intersect';
import { ringOf, signedArea } from './outline';
import { Path } from './path';
import { selfCrossingsOf } from './self';

/** Millimetres along the ring; runs over the start where `from` > `to`. */
interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Rounds of looking for crossings; the second finds none unless loops were nested in odd ways. */
const MAX_ROUNDS = 4;

/**
 * The outline without the smaller part at each crossing, one path an edge still. An edge that is lost altogether becomes a
 * path of no size where it was.
 */
export function withoutLoops(edges: Path[]): Path[] {
  let outline = edges;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const ring = ringOf(outline);
    const crossings = selfCrossingsOf(ring, true);
    if (crossings.length === 0) return outline;
    outline = cutOut(outline, ring.length, losses(ring, crossings));
  }
  return outline;
}

/** The stretches to leave out, smallest loops first; a crossing on a stretch already lost is none any more. */
function losses(ring: Path, crossings: readonly Meeting[]): Interval[] {
  const total = signedArea([ring]);
  const choices = crossings.map(({ sA, sB }) => {
    const loop = signedArea([ring.part(sA, sB)]);
    const inner = Math.abs(loop) <= Math.abs(total - loop);
    const interval = inner ? { from: sA, to: sB } : { from: sB, to: sA };
    return { interval, sA, sB, size: inner ? sB - sA : ring.length - (sB - sA) };
  });
  choices.sort((a, b) => a.size - b.size);
  const lost: Interval[] = [];
  for (const { interval, sA, sB } of choices) {
    if (lost.some((gone) => strictlyIn(gone, sA) || strictlyIn(gone, sB))) continue;
    lost.push(interval);
  }
  return lost;
}

const strictlyIn = ({ from, to }: Interval, s: number): boolean =>
  from <= to ? s > from && s < to : s > from || s < to;

function cutOut(outline: readonly Path[], length: number, lost: readonly Interval[]): Path[] {
  const spans = lost.flatMap(({ from, to }) =>
    from <= to
      ? [[from, to]]
      : [
          [from, length],
          [0, to],
        ],
  ) as [number, number][];
  let start = 0;
  const kept = outline.map((edge) => {
    const here = start;
    start += edge.length;
    return remaining(
      edge,
      spans.map(([from, to]) => [from - here, to - here]),
    );
  });
  return kept.map((edge, i) => edge ?? vanished(kept, i));
}

/** What is left of an edge; undefined for nothing. */
function remaining(edge: Path, spans: readonly (readonly [number, number])[]): Path | undefined {
  const inside = spans
    .filter(([from, to]) => to > 1e-9 && from < edge.length - 1e-9)
    .sort((a, b) => a[0] - b[0]);
  if (inside.length === 0) return edge;
  let left: Path | undefined;
  let at = 0;
  for (const [from, to] of [...inside, [edge.length, edge.length] as const]) {
    if (from - at > 1e-9) {
      const part = edge.part(at, from);
      left = left ? left.joinedTo(part) : part;
    }
    at = Math.max(at, to);
  }
  return left;
}

/** A lost edge shrinks to the point where the ring now passes. */
function vanished(kept: readonly (Path | undefined)[], index: number): Path {
  for (let away = 1; away < kept.length; away++) {
    const before = kept[(index - away + kept.length) % kept.length];
    if (before) return Path.of([line(before.end, before.end)]);
  }
  return Path.of([]);
}

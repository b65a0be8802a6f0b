/** What is drawn, laid elsewhere on the paper: moved, turned or mirrored, with its numbers rounded again. */
import { apply, type Affine } from '../geometry';
import type { DrawnDot, DrawnLine, DrawnText, Spot, Stretch } from './model';
import { rounded } from './path';

export function movedSpot(at: Spot, m: Affine): Spot {
  const { x, y } = apply(m, at);
  return { x: rounded(x), y: rounded(y) };
}

export const movedLine = (line: DrawnLine, m: Affine): DrawnLine => ({
  ...line,
  start: movedSpot(line.start, m),
  stretches: line.stretches.map((stretch) => movedStretch(stretch, m)),
  ...(line.drilled && { drilled: movedSpot(line.drilled, m) }),
});

export const movedDot = (dot: DrawnDot, m: Affine): DrawnDot => ({ ...dot, at: movedSpot(dot.at, m) });

/** Turned with its paper; words are not mirrored. */
export const movedText = (text: DrawnText, m: Affine): DrawnText => ({
  ...text,
  at: movedSpot(text.at, m),
  turn: rounded(text.turn + (Math.atan2(m.b, m.a) * 180) / Math.PI),
});

function movedStretch(stretch: Stretch, m: Affine): Stretch {
  const flat: number[] = [];
  for (let i = 0; i < stretch.length; i += 2) {
    const { x, y } = movedSpot({ x: stretch[i]!, y: stretch[i + 1]! }, m);
    flat.push(x, y);
  }
  return flat as unknown as Stretch;
}

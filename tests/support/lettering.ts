/** Where the words of a drawn piece stand, worked out anew: which of them lie on a line or on other words. */
import assert from 'node:assert/strict';
import type { Drawing, DrawnText, PieceDrawing } from '../../server/drawing/model';
import { metrics } from '../../server/drawing/paper/font';
import type { Tiling } from '../../server/drawing/paper/tiles';

interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The corners of what the letters cover, from the foot of a p to the head of a capital, worked out here anew. */
function cornersOf({ at, text, size, turn }: DrawnText): readonly Spot[] {
  const half = (metrics().widthOf(text) * size) / 0.714 / 2;
  const angle = (turn * Math.PI) / 180;
  return [
    [-half, -size],
    [half, -size],
    [half, size * 0.25],
    [-half, size * 0.25],
  ].map(([x, y]) => ({
    x: at.x + x! * Math.cos(angle) - y! * Math.sin(angle),
    y: at.y + x! * Math.sin(angle) + y! * Math.cos(angle),
  }));
}

const sidesOf = (ring: readonly Spot[]) => ring.map((a, i) => [a, ring[(i + 1) % ring.length]!] as const);
const turnOf = (a: Spot, b: Spot, c: Spot) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
const cross = ([a, b]: readonly [Spot, Spot], [c, d]: readonly [Spot, Spot]) =>
  turnOf(a, b, c) * turnOf(a, b, d) < 0 && turnOf(c, d, a) * turnOf(c, d, b) < 0;

/** How far a spot lies from a stretch, mm. */
export function awayFrom({ x, y }: Spot, [a, b]: readonly [Spot, Spot]): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - a.x - t * dx, y - a.y - t * dy);
}

/** Every line as chords, finer than the lettering takes them. */
export function chordsOf({ lines }: Pick<PieceDrawing, 'lines'>): (readonly [Spot, Spot])[] {
  return lines.flatMap(({ start, stretches, closed }) => {
    const spots: Spot[] = [start];
    for (const stretch of stretches) {
      const from = spots[spots.length - 1]!;
      if (stretch.length === 2) spots.push({ x: stretch[0], y: stretch[1] });
      else
        for (let i = 1; i <= 40; i++) {
          const [t, u] = [i / 40, 1 - i / 40];
          const mix = (p: number, q: number, r: number, s: number) =>
            u ** 3 * p + 3 * u * u * t * q + 3 * u * t * t * r + t ** 3 * s;
          spots.push({
            x: mix(from.x, stretch[0], stretch[2], stretch[4]),
            y: mix(from.y, stretch[1], stretch[3], stretch[5]),
          });
        }
    }
    const all = closed ? [...spots, start] : spots;
    return all.slice(1).map((spot, i) => [all[i]!, spot] as const);
  });
}

/** Words on lines and words on words, a line each. */
export function collisions(piece: PieceDrawing): string[] {
  const own = piece.texts.filter(({ role }) => role !== 'note');
  const rings = own.map((text) => ({ text: text.text, sides: sidesOf(cornersOf(text)) }));
  const lines = chordsOf(piece);
  return rings.flatMap(({ text, sides }, i) => [
    ...(sides.some((side) => lines.some((line) => cross(side, line)))
      ? [`${piece.name}: ${text} on a line`]
      : []),
    ...rings
      .slice(i + 1)
      .filter((other) => sides.some((side) => other.sides.some((line) => cross(side, line))))
      .map((other) => `${piece.name}: ${text} on ${other.text}`),
  ]);
}

type Role = DrawnText['role'];

/** The words of labels that lie whole on no sheet. */
export const cutLabels = (drawing: Drawing, tiling: Tiling): readonly string[] =>
  cutWords(drawing, tiling, ['title', 'detail']);

/** The words of some kinds that lie whole on no sheet. */
export function cutWords(
  { pieces, placements }: Drawing,
  { tiles }: Tiling,
  roles: readonly Role[],
): readonly string[] {
  const moved = pieces.flatMap((piece) => {
    const { by } = placements.find((one) => one.piece === piece.name)!;
    return piece.texts
      .filter(({ role }) => roles.includes(role))
      .map((text) => ({ ...text, at: { x: text.at.x + by.x, y: text.at.y + by.y } }));
  });
  assert.ok(moved.length > 5);
  const isWhole = (text: DrawnText): boolean =>
    tiles.some(({ frame: { left, top, right, bottom } }) =>
      cornersOf(text).every(({ x, y }) => x > left && x < right && y > top && y < bottom),
    );
  return moved.filter((text) => !isWhole(text)).map(({ text }) => text);
}

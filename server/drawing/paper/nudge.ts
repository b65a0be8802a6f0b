/** Pieces that lie already, moved a little where that spares a paper: into the hollows of their neighbours, off a paper's edge. */
import { keptFor } from '../../../grammar/kept';
import type { Drawing, Frame, PieceDrawing, Placement, Spot } from '../model';
import { rounded } from '../path';
import { coarseInk, inkOfAll } from './ink';
import type { Paper } from './papers';
import { chordsOf, distanceTo, within } from './space';
import { gridFor, MARGIN_MM, neededFor, OVERLAP_MM } from './tiles';

interface Laid {
  readonly piece: PieceDrawing;
  readonly by: Spot;
}

export interface Ways {
  /** Between two pieces, and from a piece to the frame, mm. */
  readonly gap: number;
  readonly edge: number;
  /** A piece as it may lie, by its name: upright and turned. */
  readonly lying: ReadonlyMap<string, readonly PieceDrawing[]>;
}

/** Rounds through all pieces: what one gives up another takes. */
const ROUNDS = 4;

/**
 * Each piece goes where it needs the fewest papers besides those of the others, and of such places where it lies on the
 * fewest itself: there is less to tape.
 */
export function nudged(drawing: Drawing, paper: Paper, ways: Ways): Drawing {
  const { edge } = ways;
  const named = new Map(drawing.pieces.map((piece) => [piece.name, piece]));
  const laid = drawing.placements.flatMap(({ piece: name, by }): Laid[] => {
    const piece = named.get(name);
    return piece === undefined ? [] : [{ piece, by }];
  });
  let moved = true;
  for (let round = 0; moved && round < ROUNDS; round++) {
    moved = false;
    for (const [i, one] of laid.entries()) {
      const better = betterFor(
        one,
        laid.filter((_, k) => k !== i),
        drawing.frame,
        paper,
        ways,
      );
      if (better === undefined) continue;
      laid[i] = better;
      moved = true;
    }
  }
  return { ...drawing, ...placed(laid), frame: frameOf(laid, drawing.frame, edge) };
}

/** Its upper left corner stays, or the papers would lie otherwise. */
const frameOf = (laid: readonly Laid[], { left, top }: Frame, edge: number): Frame => ({
  left,
  top,
  right: Math.max(left, ...laid.map(({ piece, by }) => rounded(piece.frame.right + by.x + edge))),
  bottom: Math.max(top, ...laid.map(({ piece, by }) => rounded(piece.frame.bottom + by.y + edge))),
});

function betterFor(
  one: Laid,
  others: readonly Laid[],
  frame: Frame,
  paper: Paper,
  { gap, edge, lying }: Ways,
): Laid | undefined {
  const papers = (laid: readonly Laid[]): ReadonlySet<number> =>
    neededFor(frame, inkOfAll(placed(laid), 'coarse').flat(), paper);
  const theirs = papers(others);
  const cost = (laid: Laid): { readonly besides: number; readonly own: number } => {
    const all = [...papers([laid])];
    return { besides: all.filter((number) => !theirs.has(number)).length, own: all.length };
  };
  let [best, least]: [Laid | undefined, ReturnType<typeof cost>] = [undefined, cost(one)];
  for (const piece of lying.get(one.piece.name) ?? [one.piece])
    for (const by of placesFor(piece, one, frame, paper, edge)) {
      const there = { piece, by };
      if (wantsMore(there, least.besides + 1, theirs, frame, paper)) continue;
      if (others.some((other) => tooNear(there, other, gap))) continue;
      const found = cost(there);
      const { besides, own } = least;
      if (found.besides < besides || (found.besides === besides && found.own < own))
        [best, least] = [there, found];
    }
  return best;
}

/** Whether a place needs so many papers besides, as far as it can be told at a glance: most places are passed over. */
function wantsMore(
  { piece, by }: Laid,
  most: number,
  theirs: ReadonlySet<number>,
  frame: Frame,
  paper: Paper,
): boolean {
  const { columns, rows } = gridFor(frame, paper);
  const [wide, high] = [paper.width - 2 * MARGIN_MM, paper.height - 2 * MARGIN_MM];
  const found = new Set<number>();
  for (const { left, top, right, bottom } of coarseInk(piece)) {
    const column = onlyOne(left + by.x - frame.left, right + by.x - frame.left, wide, columns);
    const row = onlyOne(top + by.y - frame.top, bottom + by.y - frame.top, high, rows);
    if (column < 0 || row < 0 || theirs.has(row * columns + column)) continue;
    if (found.add(row * columns + column).size >= most) return true;
  }
  return false;
}

/** The row or column on which alone a stretch lies; -1 where there is a choice. */
function onlyOne(from: number, to: number, long: number, count: number): number {
  const step = long - OVERLAP_MM;
  const first = Math.max(0, Math.floor((from - long) / step) + 1);
  const last = Math.min(count - 1, Math.ceil(to / step) - 1);
  return first >= last ? Math.min(first, count - 1) : -1;
}

const placed = (laid: readonly Laid[]): { pieces: PieceDrawing[]; placements: Placement[] } => ({
  pieces: laid.map(({ piece }) => piece),
  placements: laid.map(({ piece: { name }, by }) => ({ piece: name, by })),
});

/** Begun or ended with a paper, across or down or both: other places need no fewer. */
function placesFor(
  piece: PieceDrawing,
  now: Laid,
  frame: Frame,
  paper: Paper,
  edge: number,
): readonly Spot[] {
  const { left, top, right, bottom } = piece.frame;
  const own = piece === now.piece ? [now.by] : [];
  const xs = beginnings(right - left, frame.left, frame.right, paper.width, edge);
  const ys = beginnings(bottom - top, frame.top, frame.bottom, paper.height, edge);
  const across = [...own.map(({ x }) => x), ...xs.map((x) => rounded(x - left))];
  const down = [...own.map(({ y }) => y), ...ys.map((y) => rounded(y - top))];
  return down.flatMap((y) => across.map((x) => ({ x, y })));
}

/** Up to the end of the last paper, though nothing may lie there yet. */
function beginnings(long: number, start: number, end: number, side: number, edge: number): readonly number[] {
  const printed = side - 2 * MARGIN_MM;
  const step = printed - OVERLAP_MM;
  const count = Math.max(1, Math.ceil((end - start - OVERLAP_MM) / step - 1e-9));
  const last = start + count * step + OVERLAP_MM - edge;
  const papers = Array.from({ length: count }, (_, i) => start + i * step);
  const found = papers.flatMap((at) => [at + edge, at + printed - edge - long]).map(rounded);
  return [...new Set(found)]
    .filter((at) => at >= start + edge - 1e-6 && at + long <= last + 1e-6)
    .sort((x, y) => x - y);
}

/** Chords so short that two lines that cross have a corner nearer to each other than any gap. */
const CHORD_MM = 15;

/** What a piece is cut along; its frame, where words stand below it or no line goes round it. */
const ringOf = keptFor(({ lines, frame }: PieceDrawing): readonly Spot[] => {
  const cutting = lines.filter(({ role }) => role === 'cutting').flatMap(chordsOf);
  const bottom = Math.max(...cutting.map(({ y }) => y));
  const { left, top, right, bottom: foot } = frame;
  const box = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: foot },
    { x: left, y: foot },
  ];
  const ring = cutting.length === 0 || foot > bottom + 1 ? box : cutting;
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const parts = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / CHORD_MM));
    return Array.from({ length: parts }, (_, k) => ({
      x: a.x + ((b.x - a.x) * k) / parts,
      y: a.y + ((b.y - a.y) * k) / parts,
    }));
  });
});

function tooNear(a: Laid, b: Laid, gap: number): boolean {
  const by = { x: a.by.x - b.by.x, y: a.by.y - b.by.y };
  const [f, g] = [a.piece.frame, b.piece.frame];
  if (f.left + by.x > g.right + gap || f.right + by.x < g.left - gap) return false;
  if (f.top + by.y > g.bottom + gap || f.bottom + by.y < g.top - gap) return false;
  const [here, there] = [ringOf(a.piece), ringOf(b.piece)];
  const inside = (ring: readonly Spot[], other: readonly Spot[], sign: 1 | -1): boolean =>
    ring.some(
      ({ x, y }, i) =>
        i % Math.ceil(ring.length / LOOKS) === 0 && within(other, { x: x + sign * by.x, y: y + sign * by.y }),
    );
  if (inside(here, there, 1) || inside(there, here, -1)) return true;
  const moved = here.map(({ x, y }) => ({ x: x + by.x, y: y + by.y }));
  return reach(moved, there, gap) || reach(there, moved, gap);
}

/** Pieces that lie on each other are told by a look at so many corners, most of the time. */
const LOOKS = 12;

/** Whether a corner of one ring lies nearer to the other than the gap. */
function reach(corners: readonly Spot[], ring: readonly Spot[], gap: number): boolean {
  const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
  const [left, right] = [Math.min(...xs) - gap, Math.max(...xs) + gap];
  const [top, bottom] = [Math.min(...ys) - gap, Math.max(...ys) + gap];
  return corners.some(({ x, y }) => {
    if (x < left || x > right || y < top || y > bottom) return false;
    return ring.some((p, i) => {
      if (Math.abs(p.x - x) > gap + CHORD_MM || Math.abs(p.y - y) > gap + CHORD_MM) return false;
      const q = ring[(i + 1) % ring.length]!;
      return distanceTo(x, y, p.x, p.y, q.x, q.y) < gap - 0.01;
    });
  });
}

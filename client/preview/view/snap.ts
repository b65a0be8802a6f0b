/** The place of the drawing that a pointer means: a point near it, else the nearest place on a line. Knows no DOM. */
import type { DrawnLine, PieceDrawing, Spot, Stretch } from '../../../server/drawing/model';
import type { Matrix, Pin } from '../protocol';

/** A piece as it lies in front of the person. */
export interface Spread {
  readonly drawing: PieceDrawing;
  readonly by: Matrix;
}

/** A place with what it is, in words. */
export interface Snapped extends Pin {
  readonly words: string;
}

export const movedBy = (by: Spot): Matrix => [1, 0, 0, 1, by.x, by.y];

export const onPaper = ([a, b, c, d, e, f]: Matrix, { x, y }: Spot): Spot => ({
  x: a * x + c * y + e,
  y: b * x + d * y + f,
});

/** Pieces are never stretched, so that the way back is turned the other way. */
export const inPiece = ([a, b, c, d, e, f]: Matrix, { x, y }: Spot): Spot => ({
  x: a * (x - e) + b * (y - f),
  y: c * (x - e) + d * (y - f),
});

/** Steps along a curve that is searched for its nearest place. */
const STEPS = 24;

interface Near {
  readonly own: Spot;
  readonly words: string;
  readonly away: number;
}

/**
 * @param reach how far off the pointer a point or a line is still meant, mm
 * @param quiet whether lines and points of the draft are out of sight
 */
export function snapped(spreads: readonly Spread[], at: Spot, reach: number, quiet: boolean): Snapped {
  const close = spreads.filter(({ drawing, by }) => within(drawing, inPiece(by, at), reach));
  const best = nearest(close, at, reach, pointsNear, quiet) ?? nearest(close, at, reach, linesNear, quiet);
  if (best === undefined) return { at, words: '' };
  const { spread, own, words } = best;
  return {
    at: onPaper(spread.by, own),
    piece: spread.drawing.name,
    own,
    words: `${spread.drawing.name} ${words}`,
  };
}

/** Every point that the keyboard can hop to. */
export function pointsOf(spreads: readonly Spread[], quiet: boolean): Snapped[] {
  return spreads.flatMap(({ drawing, by }) =>
    namedPoints(drawing, quiet).map(({ own, words }) => ({
      ...{ at: onPaper(by, own), piece: drawing.name, own },
      words: `${drawing.name} ${words}`,
    })),
  );
}

/** The nearest of these in the direction of an arrow; those straight ahead before those aside. */
export function hop(points: readonly Snapped[], from: Spot, x: number, y: number): Snapped | undefined {
  let [best, least] = [undefined as Snapped | undefined, Infinity];
  for (const point of points) {
    const [dx, dy] = [point.at.x - from.x, point.at.y - from.y];
    const ahead = dx * x + dy * y;
    const aside = Math.abs(dx * y - dy * x);
    if (ahead <= 0.01 || aside > 2 * ahead) continue;
    const far = ahead + 2 * aside;
    if (far < least) [best, least] = [point, far];
  }
  return best;
}

const within = ({ frame }: PieceDrawing, { x, y }: Spot, reach: number): boolean =>
  x >= frame.left - reach && x <= frame.right + reach && y >= frame.top - reach && y <= frame.bottom + reach;

type Search = (drawing: PieceDrawing, at: Spot, quiet: boolean) => readonly Near[];

/** The nearest of what is searched for in all pieces, within reach. */
function nearest(
  spreads: readonly Spread[],
  at: Spot,
  reach: number,
  search: Search,
  quiet: boolean,
): (Near & { readonly spread: Spread }) | undefined {
  let best: (Near & { readonly spread: Spread }) | undefined;
  for (const spread of spreads) {
    for (const near of search(spread.drawing, inPiece(spread.by, at), quiet)) {
      if (near.away <= reach && (best === undefined || near.away < best.away)) best = { ...near, spread };
    }
  }
  return best;
}

const pointsNear: Search = (drawing, at, quiet) =>
  namedPoints(drawing, quiet).map(({ own, words }) => ({ own, words, away: apart(own, at) }));

const linesNear: Search = (drawing, at, quiet) =>
  drawing.lines
    .filter((line) => !quiet || line.role !== 'construction')
    .map((line) => {
      const own = nearestOn(line, at);
      return { own, words: line.name, away: apart(own, at) };
    });

function namedPoints({ dots, lines }: PieceDrawing, quiet: boolean): { own: Spot; words: string }[] {
  const shown = dots.filter(({ role }) => !quiet || role !== 'point');
  const ends = lines
    .filter(({ role }) => role !== 'construction' && role !== 'cutting')
    .flatMap((line) => [line.start, endOf(line)].map((own) => ({ own, words: line.name })));
  return [...shown.map(({ at, name }) => ({ own: at, words: name })), ...ends];
}

const apart = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);

const lastOf = (stretch: Stretch): Spot => ({ x: stretch.at(-2)!, y: stretch.at(-1)! });

const endOf = ({ start, stretches }: DrawnLine): Spot => {
  const last = stretches.at(-1);
  return last === undefined ? start : lastOf(last);
};

/** The place of a line that lies nearest to a spot. */
export function nearestOn(line: DrawnLine, at: Spot): Spot {
  let [best, from] = [line.start, line.start];
  const closing: readonly Stretch[] = line.closed ? [[line.start.x, line.start.y]] : [];
  for (const stretch of [...line.stretches, ...closing]) {
    const found = stretch.length === 2 ? onStraight(from, lastOf(stretch), at) : onCurve(from, stretch, at);
    if (apart(found, at) < apart(best, at)) best = found;
    from = lastOf(stretch);
  }
  return best;
}

function onStraight(from: Spot, to: Spot, at: Spot): Spot {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const size = dx * dx + dy * dy;
  const t = size === 0 ? 0 : Math.min(Math.max(((at.x - from.x) * dx + (at.y - from.y) * dy) / size, 0), 1);
  return { x: from.x + t * dx, y: from.y + t * dy };
}

/** The nearest of some places on the curve, then nearer by halves. */
function onCurve(from: Spot, stretch: readonly number[], at: Spot): Spot {
  const spot = (t: number): Spot => {
    const s = 1 - t;
    const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    return {
      x: a * from.x + b * stretch[0]! + c * stretch[2]! + d * stretch[4]!,
      y: a * from.y + b * stretch[1]! + c * stretch[3]! + d * stretch[5]!,
    };
  };
  const away = (t: number): number => apart(spot(t), at);
  let best = 0;
  for (let i = 1; i <= STEPS; i++) if (away(i / STEPS) < away(best)) best = i / STEPS;
  for (let step = 0.5 / STEPS; step > 1e-6; step /= 2) {
    const tries = [Math.max(best - step, 0), Math.min(best + step, 1)];
    for (const t of tries) if (away(t) < away(best)) best = t;
  }
  return spot(best);
}

/**
 * A changed piece as it is drawn for a review: the new one laid on the old, what is unchanged told from what was and what
 * is, the areas between them, arrows for points that moved, and a mark for every row. Millimetres in the old piece's place.
 */
import type { Piece, Seam } from '../drafting/model';
import { halfLines, type Around } from '../drawing/draw';
import { grainDrawn } from '../drawing/grain';
import { pathOf } from '../drawing/path';
import {
  boxOf,
  boxOfPaths,
  distance,
  identity,
  Path,
  type Box,
  type Point,
  type Region,
  type Rigid,
} from '../geometry';
import { grainWord } from './details';
import { TOLERANCE, type PieceChange, type Review } from './model';
import { rowsOf, type Row } from './rows';
import { spread, type PlacedMark } from './spread';
import type { Taken } from './take';
import { changeWords, nameOf } from './words';

export type Look = 'same' | 'was' | 'now';

export interface PlateLine {
  readonly look: Look;
  /** An outline is drawn heavier than what lies on the piece. */
  readonly outline: boolean;
  readonly path: Path;
}

export interface Plate {
  readonly number: number;
  readonly title: string;
  readonly lines: readonly PlateLine[];
  readonly lost: readonly Region[];
  readonly gained: readonly Region[];
  /** From where a point was to where it is. */
  readonly arrows: readonly { readonly from: Point; readonly to: Point }[];
  readonly marks: readonly PlacedMark[];
  readonly rows: readonly Row[];
  /** What all of it takes, the marks as well. */
  readonly frame: Box;
  /** Height of its letters, mm: what a person can read once the whole plate fits on a screen. */
  readonly size: number;
}

/** The share of a plate's longer side that a letter is high, and the least and the most that it is, mm. */
const LETTER = 1 / 48;
const SMALLEST = 3;
const LARGEST = 16;

export function platesOf(review: Review, before: Taken, after: Taken): Plate[] {
  return review.pieces.map((change) => plateOf(change, review, before, after));
}

function plateOf(change: PieceChange, review: Review, before: Taken, after: Taken): Plate {
  const { was, now } = change.piece;
  const move = change.anchor?.move ?? identity;
  const old = was === undefined ? [] : outlineOf(was);
  const fresh = now === undefined ? [] : outlineOf(now).map((path) => path.transformed(move));
  const turned = change.details.some(({ thing }) => thing === grainWord());
  const lines = [
    ...outlines(old, fresh),
    ...onPiece(
      was && linesOn(was, before, turned),
      now && linesOn(now, after, turned).map((path) => path.transformed(move)),
    ),
    ...(change.words.includes('allowance') ? cuttingLines(was, now, move) : []),
  ];
  const box = boxOfPaths(lines.map(({ path }) => path));
  const size = Math.min(
    LARGEST,
    Math.max(SMALLEST, Math.max(box.maxX - box.minX, box.maxY - box.minY) * LETTER),
  );
  const rows = rowsOf(change, review.unit);
  const marks = spread(rows, box, size, [...old, ...fresh]);
  const points = marks.map(({ at }) => at);
  const around = boxOf([...points, { x: box.minX, y: box.minY }, { x: box.maxX, y: box.maxY }]);
  return {
    ...{ number: change.number, title: `${change.number} ${nameOf(change.name)}: ${changeWords(change)}` },
    ...{ lines, lost: change.lost, gained: change.gained, marks, rows, size },
    arrows: change.points.map(({ point }) => ({ from: point.was!, to: point.now! })),
    frame: grown(around, 1.5 * size),
  };
}

const grown = ({ minX, minY, maxX, maxY }: Box, by: number): Box => ({
  ...{ minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by },
});

const outlineOf = ({ edges, holes }: Piece): Path[] =>
  [...edges, ...holes.flatMap((hole) => hole.edges)].map(({ path }) => path);

/** A look along an outline every so far, mm; between two looks the place where it leaves the other is searched for. */
const STEP = 2;
const MOST_LOOKS = 400;
const HALVINGS = 10;

/** Stretches of the new outline that lie on the old, stretches that do not, and what of the old lies under neither. */
function outlines(old: readonly Path[], fresh: readonly Path[]): PlateLine[] {
  const [was, now] = [
    Path.of(old.flatMap(({ segments }) => segments)),
    Path.of(fresh.flatMap(({ segments }) => segments)),
  ];
  const line = (look: Look, path: Path): PlateLine => ({ look, outline: true, path });
  const apart = (paths: readonly Path[], other: Path, others: readonly Path[], look: Look): PlateLine[] =>
    paths.flatMap((path) =>
      others.length === 0
        ? [line(look, path)]
        : stretches(path, other).flatMap(({ from, to, same }) =>
            same && look === 'was' ? [] : [line(same ? 'same' : look, path.part(from, to))],
          ),
    );
  return [...apart(old, now, fresh, 'was'), ...apart(fresh, was, old, 'now')];
}

function stretches(path: Path, other: Path): { from: number; to: number; same: boolean }[] {
  const on = (s: number): boolean => other.locate(path.pointAt(s)).distance <= TOLERANCE;
  const steps = Math.min(MOST_LOOKS, Math.max(8, Math.ceil(path.length / STEP)));
  const found: { from: number; to: number; same: boolean }[] = [];
  let [from, same] = [0, on(path.length / steps / 2)];
  for (let i = 1; i < steps; i++) {
    let [low, high] = [((i - 0.5) * path.length) / steps, ((i + 0.5) * path.length) / steps];
    if (on(high) === same) continue;
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (low + high) / 2;
      if (on(middle) === same) low = middle;
      else high = middle;
    }
    found.push({ from, to: high, same });
    [from, same] = [high, !same];
  }
  return [...found, { from, to: path.length, same }];
}

/** Marks, darts and notches of a piece, of the half that is drafted; its grain where that changed, for it is drawn wherever there is room. */
function linesOn(piece: Piece, side: Taken, grain: boolean): Path[] {
  const seams = side.seams.filter((seam) => sews(seam, piece.base));

  const around: Around = { unit: side.unit, title: side.title, body: side.body, seams };
  return [...halfLines(piece, around), ...(grain ? grainDrawn(piece) : [])]
    .filter(({ role }) => !['sewing', 'cutting', 'construction', 'hole', 'fold', 'centre'].includes(role))
    .map(pathOf);
}

const sews = ({ left, right }: Seam, base: string): boolean =>
  [...left, ...right].some(({ piece }) => piece === base);

/** What lies on the piece: on both sides in one place, or on one side. */
function onPiece(old: readonly Path[] = [], fresh: readonly Path[] = []): PlateLine[] {
  const waiting = [...old];
  const line = (look: Look, path: Path): PlateLine => ({ look, outline: false, path });
  const now = fresh.map((path) => {
    const at = waiting.findIndex((one) => isNear(one, path));
    if (at >= 0) waiting.splice(at, 1);
    return line(at >= 0 ? 'same' : 'now', path);
  });
  return [...waiting.map((path) => line('was', path)), ...now];
}

const isNear = (a: Path, b: Path): boolean =>
  a.segments.length === b.segments.length &&
  a.segments.every(
    (one, i) =>
      distance(one.p0, b.segments[i]!.p0) <= TOLERANCE && distance(one.p3, b.segments[i]!.p3) <= TOLERANCE,
  );

function cuttingLines(was: Piece | undefined, now: Piece | undefined, move: Rigid): PlateLine[] {
  const old = was?.cutting ?? [];
  const fresh = (now?.cutting ?? []).map((path) => path.transformed(move));
  return onPiece(old, fresh);
}

/** Pieces laid together at an end of a seam, edge to edge, so that it is seen how the edges beside it run on across it. */
import { say } from '../../../grammar/say';
import type { Edge, Pattern, Piece } from '../../drafting/model';
import type { SeamRun } from '../../drafting/sewing-model';
import { loopOf, sizeOf } from '../../drafting/sewing/course';
import { identity, scale, type Affine, type Point } from '../../geometry';
import { laidAgainst, laidPieces, type EdgePlace, type LaidOut, type Lying } from './paper';
import { laidSeam, partnerOf, partnerOfRight, placeOnRun, type LaidSeam, type Side } from './sides-of-seam';
import { lengthsWords } from './walk';

type End = 'start' | 'end';

export function together(pattern: Pattern, source: string, end: End): LaidOut | undefined {
  const laid = laidSeam(pattern, source);
  if (laid === undefined) return undefined;
  const lying = laidRuns(laid, end);
  const once = new Map<string, Lying>();
  for (const { run, side, ...one } of lying) {
    const key = laid.seam.itsPair ? side : run.piece;
    if (!once.has(key)) once.set(key, one);
  }
  return {
    words: [lengthsWords(laid, pattern.unit), ...cornerWords(laid, end)],
    ...laidPieces(pattern, [...once.values()]),
    lines: [],
    dots: [],
  };
}

interface LyingRun extends Lying {
  readonly run: SeamRun;
  readonly side: Side;
}

/** From the first run of the left side on, each run laid on one of the other side that lies already and meets it. */
function laidRuns(laid: LaidSeam, end: End): readonly LyingRun[] {
  const waiting = (['left', 'right'] as const).flatMap((side) =>
    laid.course[side].map((run) => ({ side, run })),
  );
  const first = waiting.shift()!;
  const lying: LyingRun[] = [{ ...first, piece: laid.pieces.get(first.run.piece)!, by: identity }];
  for (let i = 0; i < waiting.length;) {
    const next = waiting[i]!;
    const on = lying.find((one) => one.side !== next.side && overlap(laid, one, next) !== undefined);
    if (on === undefined) {
      i++;
      continue;
    }
    lying.push({ ...next, piece: laid.pieces.get(next.run.piece)!, by: laidOn(laid, on, next, end) });
    waiting.splice(i, 1);
    i = 0;
  }
  return lying;
}

interface SideRun {
  readonly side: Side;
  readonly run: SeamRun;
}

/** Counted along the left side. */
function spanOf(laid: LaidSeam, { side, run }: SideRun): readonly [number, number] {
  const ends = [run.start, run.start + sizeOf(run)] as const;
  if (side === 'left') return ends;
  return [partnerOfRight(laid, ends[0]), partnerOfRight(laid, ends[1])];
}

/** Shorter than this, mm, two edges touch at a corner only. */
const LEAST = 1;

function overlap(laid: LaidSeam, a: SideRun, b: SideRun): readonly [number, number] | undefined {
  const [one, other] = [spanOf(laid, a), spanOf(laid, b)];
  const [from, to] = [Math.max(one[0], other[0]), Math.min(one[1], other[1])];
  return to - from > LEAST ? [from, to] : undefined;
}

/** At one end of what they share, both edges run the same way; cloth on either side. */
function laidOn(laid: LaidSeam, on: LyingRun, next: SideRun, end: End): Affine {
  const shared = overlap(laid, on, next)!;
  const s = end === 'start' ? shared[0] : shared[1];
  return laidAgainst(placeOfRun(laid, on, s), on.by, placeOfRun(laid, next, s));
}

/** @param s counted along the left side */
function placeOfRun(laid: LaidSeam, { side, run }: SideRun, s: number): EdgePlace {
  const at = side === 'left' ? s : partnerOf(laid, s);
  const along = Math.min(Math.max(at - run.start, 0), sizeOf(run));
  return placeOnRun(laid, run, run.from + Math.sign(run.to - run.from) * along);
}

/** How the edges beside the seam meet across it there: in one line at 180 degrees. */
function cornerWords(laid: LaidSeam, end: End): readonly string[] {
  const [left, right] = [cornerAt(laid, 'left', end), cornerAt(laid, 'right', end)];
  if (left === undefined || right === undefined) return [];
  const degrees = Number(degreesOf(left, right).toFixed(1));
  const where = end === 'start' ? say`Where it begins` : say`Where it ends`;
  const run = degrees === 180 ? say`run on in one line` : say`meet at ${degrees}°, ${bent(degrees)}`;
  return [say`${where}, ${left.name} and ${right.name} ${run}.`];
}

const degreesOf = (left: CornerOfSeam, right: CornerOfSeam): number =>
  ((left.angle + right.angle) * 180) / Math.PI;

/** By how much the edges beside the seam bend across it there, degrees; 0 where it can't be said, or a corner is meant. */
export function bendAt(laid: LaidSeam, end: End): number {
  const [left, right] = [cornerAt(laid, 'left', end), cornerAt(laid, 'right', end)];
  const bend = left && right ? Math.abs(degreesOf(left, right) - 180) : 0;
  return bend > MEANT ? 0 : bend;
}

/** A bend of more, degrees, is a corner that is meant, as the check of bends has it. */
const MEANT = 30;

const bent = (degrees: number): string =>
  say`${Number(Math.abs(180 - degrees).toFixed(1))}° ${degrees > 180 ? say`more` : say`less`} than one line`;

interface CornerOfSeam {
  /** The edge beside it, with its piece. */
  readonly name: string;
  /** Between the seam's edge and the edge beside it, through the cloth. */
  readonly angle: number;
}

/** Undefined where the seam ends within an edge. */
function cornerAt(laid: LaidSeam, side: Side, end: 'start' | 'end'): CornerOfSeam | undefined {
  const runs = laid.course[side];
  const run = end === 'start' ? runs[0]! : runs[runs.length - 1]!;
  const distance = end === 'start' ? run.from : run.to;
  const place = placeOnRun(laid, run, distance);
  const { piece, edge } = place;
  const atStart = distance < LEAST / 10;
  if (!atStart && distance < edge.sewn - LEAST / 10) return undefined;
  const beside = neighbour(piece, edge, atStart ? -1 : 1);
  if (beside === undefined) return undefined;
  const away = atStart
    ? scale(beside.path.tangentAt(beside.path.length, 'before'), -1)
    : beside.path.tangentAt(0, 'after');
  const into = atStart
    ? edge.path.tangentAt(0, 'after')
    : scale(edge.path.tangentAt(edge.path.length, 'before'), -1);
  return {
    name: `${piece.base} ${beside.name}`,
    angle: through(into, away, place.cloth, forwardOf(run), atStart),
  };
}

const forwardOf = ({ from, to }: SeamRun): boolean => to >= from;

function neighbour(piece: Piece, edge: Edge, by: 1 | -1): Edge | undefined {
  const loop = loopOf(piece, edge);
  const index = loop.indexOf(edge);
  return loop.length < 2 ? undefined : loop[(index + by + loop.length) % loop.length];
}

/** The angle from one way to the other on the side where the cloth is, radians. */
function through(into: Point, away: Point, cloth: 1 | -1, forward: boolean, atStart: boolean): number {
  const turn = Math.atan2(into.x * away.y - into.y * away.x, into.x * away.x + into.y * away.y);
  // looking along the edge away from the corner, cloth lies to the right when it does in the outline's direction
  const right = ((cloth === 1) === forward) === atStart;
  const angle = right ? turn : -turn;
  return angle < 0 ? angle + 2 * Math.PI : angle;
}

/** Finds trousers whose fork, or whose length from waist to waist between the legs, is unusual for the body. */
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { BodySheet, Edge, Pattern, Piece } from '../drafting/model';
import { printLength, printLengthFine } from '../drafting/values/quantity';
import { distance, dot, normalised, subtract } from '../geometry';
import { finding, type Judged } from './check';
import { ofBodyDraftedFor, taken, whose } from './measurements';
import { edgeOfPiece } from './places';
import { called } from './seam-ends';
import { amountInWords, isUsual, rangeInWords, usualRange, type Usual } from './usual';

const share = (name: string, low: number, high: number, standing: string): Usual => ({
  ...{ name, low, high, standing },
  kind: 'ratio',
});

const FRONT = share('front-fork', 0.04, 0.065, 'common practice: of the hip');
const BACK = share(
  'back-fork',
  0.12,
  0.16,
  'common practice: of the hip, both forks together 12 to 14.5%, and up to 1.5% more for the slant of the back',
);

const ROUND: Usual = {
  name: 'crotch-ease',
  kind: 'length',
  low: 10,
  high: 30,
  standing: 'common practice',
};

export const unusualFork: Judged = {
  code: 'unusual-fork',
  severity: 'warning',
  title: 'Trousers with an unusual fork',
  by: 'judgement',
  usual: [FRONT, BACK, ROUND],
  ofPattern: ofBodyDraftedFor(['hip', 'crotch-length'], (pattern, sheet) => judged(pattern, sheet)),
};

function judged(pattern: Pattern, sheet: BodySheet): readonly SourcedFinding[] {
  const legs = pattern.pieces.flatMap((piece) => legOf(piece) ?? []);
  return [...legs.flatMap((leg) => forkOf(leg, sheet, pattern)), ...roundOf(legs, sheet, pattern)];
}

const RISE = ['rise', 'crotch'] as const;
const INSIDE = ['inseam', 'inside-leg', 'inner-leg'] as const;

/** A piece of a leg: the edge that runs between the legs, and the one that goes on from it down the inside. */
interface Leg {
  readonly piece: Piece;
  readonly is: 'front' | 'back';
  readonly rise: Edge;
  readonly inside: Edge;
}

function legOf(piece: Piece): Leg | undefined {
  const { base, cut, side, unbuilt, edges } = piece;
  const is = called(base, 'front') ? 'front' : called(base, 'back') ? 'back' : undefined;
  if (is === undefined || cut === undefined || side === 'left' || unbuilt.length > 0) return undefined;
  const rise = edges.find(({ name }) => called(name, ...RISE));
  const inside = edges.find(({ name }) => INSIDE.some((word) => name === word || called(name, word)));
  return rise === undefined || inside === undefined ? undefined : { piece, is, rise, inside };
}

/** A line ends on an edge, and two edges meet, within this, mm. */
const MEETS = 1;

/** How far the fork reaches beyond the end of the seat line, along that line; undefined where there is none. */
function reachOf({ piece, rise, inside }: Leg): number | undefined {
  const line = piece.balance.find(({ name }) => name === 'seat-line' || name === 'hip-line');
  const ends = [inside.path.start, inside.path.end];
  const fork = [rise.path.start, rise.path.end].find((p) => ends.some((end) => distance(p, end) < MEETS));
  if (line === undefined || fork === undefined) return undefined;
  const { start, end } = line.path;
  const [on, from] =
    rise.path.locate(start).distance < rise.path.locate(end).distance ? [start, end] : [end, start];
  const outward = normalised(subtract(on, from));
  if (outward === undefined || rise.path.locate(on).distance > MEETS) return undefined;
  return dot(subtract(fork, on), outward);
}

function forkOf(leg: Leg, sheet: BodySheet, pattern: Pattern): readonly SourcedFinding[] {
  const hip = taken(sheet, 'hip');
  const reach = reachOf(leg);
  if (hip === undefined || reach === undefined) return [];
  const range = usualRange(pattern, leg.is === 'front' ? FRONT : BACK);
  const part = reach / hip;
  if (isUsual(range, part, 5e-4)) return [];
  const { unit } = pattern;
  const advice =
    part < range.low
      ? say`A short fork cuts in between the legs: lengthen it.`
      : say`A long fork hangs in folds between the legs: shorten it.`;
  const message = say`The fork of ${leg.piece.base} reaches ${printLength(reach, unit)} beyond the seat line, ${amountInWords('ratio', part, unit)} of the hip of ${whose(sheet)} (${printLengthFine(hip, unit)}); ${rangeInWords(range, unit)}. ${advice}`;
  return [told(leg, message)];
}

/** From waist to waist between the legs, of one front and one back. */
function roundOf(legs: readonly Leg[], sheet: BodySheet, pattern: Pattern): readonly SourcedFinding[] {
  const body = taken(sheet, 'crotch-length');
  const [fronts, backs] = (['front', 'back'] as const).map((is) => legs.filter((leg) => leg.is === is));
  const [front, back] = [fronts![0], backs![0]];
  if (body === undefined || front === undefined || back === undefined) return [];
  if (fronts!.length > 1 || backs!.length > 1) return [];
  const { unit } = pattern;
  const length = front.rise.sewn + back.rise.sewn;
  const range = usualRange(pattern, ROUND);
  const ease = length - body;
  if (isUsual(range, ease, 0.05)) return [];
  const much =
    ease < 0 ? say`${printLength(-ease, unit)} less than` : say`${printLength(ease, unit)} more than`;
  const message = say`From waist to waist between the legs the trousers measure ${printLengthFine(length, unit)} (${front.piece.base}.${front.rise.name} + ${back.piece.base}.${back.rise.name}), ${much} ${whose(sheet)} (${printLengthFine(body, unit)}); ${rangeInWords(range, unit)}. Lower or raise the fork, or the waist at the back.`;
  return [told(back, message)];
}

const told = ({ piece, rise }: Leg, message: string): SourcedFinding => ({
  source: piece.source,
  finding: finding('unusual-fork', edgeOfPiece(rise), message, { piece: piece.name }),
});

/**
 * Drill holes of darts: where the awl goes through all layers, so that the machinist finds the dart. They lie within it,
 * so that sewing hides them: 12 mm short of its end, 3 mm inside its legs (common practice).
 */
import { say } from '../../grammar/say';
import type { Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { add, circle, distance, midpoint, normalised, scale, subtract, type Point } from '../geometry';
import type { Around } from './draw';
import type { DrawnLine } from './model';
import { pathLine, spot } from './path';

const SHORT_OF_END = 12;
const INSIDE = 3;
/** Of the hole itself, mm. */
const RADIUS = 1;
/** Darts shorter than this are notched and marked by their end alone, mm. */
const SHORTEST = 40;

interface Drilled {
  readonly name: string;
  readonly source: string;
  readonly at: Point;
  readonly short: number;
}

export const drillLines = (piece: Piece, { unit }: Around): DrawnLine[] =>
  piece.cut === undefined
    ? []
    : [...ofDarts(piece), ...ofFishDarts(piece)].map(({ name, source, at, short }) => {
        const tip = say`${name}, drill hole, ${printLength(short, unit)} inside`;
        return {
          ...pathLine('mark', circle(at, RADIUS), { name, source, tip }),
          closed: true,
          drilled: spot(at),
        };
      });

const ofDarts = ({ darts }: Piece): readonly Drilled[] =>
  darts.flatMap(({ name, source, from, to, tip }) => {
    const at = inward(tip, midpoint(from, to), SHORT_OF_END, SHORTEST);
    return at === undefined ? [] : [{ name, source, at, short: SHORT_OF_END }];
  });

const ofFishDarts = ({ shaping }: Piece): readonly Drilled[] =>
  (shaping?.fishDarts ?? []).flatMap(({ name, source, from, to, left, right }) => {
    const ends = [inward(from, to, SHORT_OF_END, SHORTEST), inward(to, from, SHORT_OF_END, SHORTEST)];
    const sides = [inward(left, right, INSIDE, 4 * INSIDE), inward(right, left, INSIDE, 4 * INSIDE)];
    return [
      ...ends.flatMap((at) => (at === undefined ? [] : [{ name, source, at, short: SHORT_OF_END }])),
      ...sides.flatMap((at) => (at === undefined ? [] : [{ name, source, at, short: INSIDE }])),
    ];
  });

function inward(from: Point, toward: Point, by: number, shortest: number): Point | undefined {
  const way = normalised(subtract(toward, from));
  return way === undefined || distance(from, toward) < shortest ? undefined : add(from, scale(way, by));
}

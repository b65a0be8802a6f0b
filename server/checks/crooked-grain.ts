/** Finds grain lines that are not along the edge they name: cloth's threads are straight, and work may have turned the edge. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Edge, Piece } from '../drafting/model';
import { finding, type Judged, type Judging } from './check';
import { lineOf, placeOfLine } from './places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const OFF: Usual = {
  name: 'off-grain',
  kind: 'angle',
  low: 0,
  high: 1,
  standing: 'common practice: a degree is 17mm over a metre, and what hangs from it twists',
};

export const crookedGrain: Judged = {
  code: 'crooked-grain',
  severity: 'warning',
  title: 'A grain line off the edge it is laid by',
  by: 'judgement',
  usual: [OFF],
  ofPiece: (piece, pattern) => crooked(piece, pattern),
};

function crooked(piece: Piece, pattern: Judging): readonly Finding[] {
  const { grain } = piece;
  const node = lineOf(piece, 'grain')?.node;
  const named = node?.along ?? node?.biasTo;
  if (piece.cut === undefined || grain === undefined || named?.kind !== 'ref') return [];
  const edge = piece.edges.find(({ name }) => named.path.length === 1 && name === named.path[0]!.text);
  if (edge === undefined || edge.path.length < SHORT) return [];
  const off = Math.max(...directions(edge).map((way) => between(way, angleOf(grain), grain.bias ? 45 : 0)));
  const range = usualRange(pattern, OFF);
  if (isUsual(range, Math.round(off * 100) / 100)) return [];
  const words = `${Math.round(off * 10) / 10}°`;
  const laid = grain.bias ? say`at 45° to` : say`along`;
  const message = say`The grain of ${piece.name} is laid ${laid} ${edge.name}, but the edge runs up to ${words} off it (${rangeInWords(range, pattern.unit)}): threads are straight, and this edge bends. Lay the grain by a straight edge, or from one point to another.`;
  return [finding('crooked-grain', placeOfLine(piece, 'grain'), message, { piece: piece.name })];
}

/** An edge shorter than this says nothing of the grain, mm. */
const SHORT = 10;

type Vector = { readonly x: number; readonly y: number };

const degrees = ({ x, y }: Vector): number => (Math.atan2(y, x) * 180) / Math.PI;

const angleOf = ({ from, to }: NonNullable<Piece['grain']>): number =>
  degrees({ x: to.x - from.x, y: to.y - from.y });

/** Where the edge begins, in its middle and where it ends. */
const directions = ({ path }: Edge): readonly number[] =>
  [0, path.length / 2, path.length].map((s) => degrees(path.tangentAt(s)));

/** How far two lines are from standing at an angle to each other, degrees; lines have no sense. */
function between(one: number, other: number, wanted: 0 | 45): number {
  const apart = Math.abs(one - other) % 180;
  return Math.abs(Math.min(apart, 180 - apart) - wanted);
}

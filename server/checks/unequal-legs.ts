/** Finds darts drafted in the outline whose two legs differ in length: laid darts are made equal, these are as drawn. */
import { say } from '../../grammar/say';
import type { Dart, Piece } from '../drafting/model';
import type { Finding } from '../drafting/finding';
import { printLength, printLengthFine } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';

export const unequalLegs: Judged = {
  code: 'unequal-legs',
  severity: 'error',
  title: 'A dart whose legs differ in length',
  by: 'judgement',
  ofPiece: (piece, pattern) => piece.darts.filter(uneven).map((dart) => unequal(piece, dart, pattern)),
};

/** *Common practice*: what the needle can ease away along a dart, mm. */
const ALLOWED = 1;

/** A hair on top, so that a difference of exactly the allowed passes whatever the rounding. */
const ROUNDING = 1e-6;

const legs = ({ from, to, pivot }: Dart): readonly [number, number] => [
  Math.hypot(from.x - pivot.x, from.y - pivot.y),
  Math.hypot(to.x - pivot.x, to.y - pivot.y),
];

function uneven(dart: Dart): boolean {
  const [a, b] = legs(dart);
  return dart.drafted && Math.abs(a - b) > ALLOWED + ROUNDING;
}

function unequal(piece: Piece, dart: Dart, { unit }: Judging): Finding {
  const [a, b] = legs(dart);
  const apart = printLength(Math.abs(a - b), unit);
  const message = say`The legs of ${dart.name} are ${printLengthFine(a, unit)} and ${printLengthFine(b, unit)} long: they differ by ${apart}, and ${dart.edge} will step when the dart is sewn (${printLength(ALLOWED, unit)} is allowed). Move the end of one leg along it, or draw both with one compass about the point of the dart.`;
  return finding('unequal-legs', { statement: dart.statement, at: placeOf(dart) }, message, {
    piece: piece.name,
  });
}

/** The run of the outline that draws the dart, or the dart's own line. */
function placeOf({ name, statement: { node } }: Dart): { from: number; to: number } {
  if (node.kind === 'edge')
    return node.runs.find((run) => run.kind === 'dart' && run.name.text === name)?.at ?? node.at;
  return node.kind === 'dart' ? node.name.at : node.at;
}

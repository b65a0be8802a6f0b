/** Finds darts that open too close to each other or to a seam. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Dart, Edge, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { betweenDarts, dartsOf, placeOf } from './dart-places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const APART: Usual = {
  name: 'dart-spacing',
  kind: 'length',
  low: 30,
  high: Infinity,
  standing: 'common practice; 19 mm in a tight bodice (Hecklinger 1884)',
};

const TO_SEAM: Usual = {
  name: 'dart-to-seam',
  kind: 'length',
  low: 25,
  high: Infinity,
  standing: 'common practice: folded, the dart must not lie in the seam allowance',
};

/** Legs that swing open shift their mouth by less than a pencil line, mm: tuned so that darts as written are as usual. */
const DRAWN = 0.2;

export const crowdedDarts: Judged = {
  code: 'crowded-darts',
  severity: 'warning',
  title: 'Darts that open close to each other or to a seam',
  by: 'judgement',
  usual: [APART, TO_SEAM],
  ofPiece: (piece, pattern) => piece.edges.flatMap((edge, i) => ofEdge(piece, edge, i, pattern)),
};

function ofEdge(piece: Piece, edge: Edge, index: number, pattern: Judging): readonly Finding[] {
  const darts = dartsOf(piece);
  if (!edge.parts.some((part) => darts.some(({ name }) => name === part.dart))) return [];
  const count = piece.edges.length;
  const [apart, toSeam] = [usualRange(pattern, APART), usualRange(pattern, TO_SEAM)];
  return betweenDarts(edge, darts).flatMap(({ length, before, after }) => {
    if (before !== 'end' && after !== 'end')
      return isUsual(apart, length, DRAWN)
        ? []
        : [
            said(
              piece,
              after,
              say`${before.name} and ${after.name} open`,
              say`apart`,
              length,
              apart,
              pattern,
            ),
          ];
    const dart = before === 'end' ? after : before;
    const beside = piece.edges[(index + (before === 'end' ? count - 1 : 1)) % count]!;
    // at a fold the other half goes on
    if (dart === 'end' || beside.name === piece.fold?.edge || isUsual(toSeam, length, DRAWN)) return [];
    return [said(piece, dart, say`${dart.name} opens`, say`from ${beside.name}`, length, toSeam, pattern)];
  });
}

function said(
  piece: Piece,
  dart: Dart,
  what: string,
  from: string,
  length: number,
  range: Parameters<typeof rangeInWords>[0],
  { unit }: Judging,
): Finding {
  const message = say`${what} ${printLength(length, unit)} ${from} on ${dart.edge}; ${rangeInWords(range, unit)}. Folded, they lie on top of each other: move the dart, or make one dart of two.`;
  return finding('crowded-darts', { statement: dart.statement, at: placeOf(dart) }, message, {
    piece: piece.name,
  });
}

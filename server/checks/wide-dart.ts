/** Finds darts that open wider than cloth can be pressed to a point. */
import { say } from '../../grammar/say';
import { finding, type Judged } from './check';
import { dartsOf, placeOf } from './dart-places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

export const ANGLE: Usual = {
  name: 'dart-angle',
  kind: 'angle',
  low: 0,
  high: 25,
  standing: 'common practice: a bust dart opens 7° to 22°',
};

export const wideDart: Judged = {
  code: 'wide-dart',
  severity: 'warning',
  title: 'A dart that opens wider than cloth can be pressed to a point',
  by: 'judgement',
  usual: [ANGLE],
  ofPiece: (piece, pattern) => {
    const range = usualRange(pattern, ANGLE);
    return dartsOf(piece)
      .filter(({ angle }) => !isUsual(range, angle))
      .map((dart) => {
        const message = say`${dart.name} opens ${Math.round(dart.angle * 10) / 10}° at its point; ${rangeInWords(range, pattern.unit)}. Wider darts end in a cone: take it in two, swing a share of it elsewhere, or make it longer.`;
        return finding('wide-dart', { statement: dart.statement, at: placeOf(dart) }, message, {
          piece: piece.name,
        });
      });
  },
};

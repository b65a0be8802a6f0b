/** Finds single notches on the armhole of a back: two strokes tell the back of a sleeve from its front. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { nameOfPiece } from './places';
import { called } from './seam-ends';

export const singleBackNotch: Judged = {
  code: 'single-back-notch',
  severity: 'note',
  title: 'A single notch on the armhole of a back',
  by: 'judgement',
  ofPiece: (piece) => judged(piece),
};

function judged(piece: Piece): readonly Finding[] {
  const { base, cut, side, notches } = piece;
  if (notches.length === 0 || cut === undefined || side === 'left' || !called(base, 'back')) return [];
  const own = notches.filter(({ edge, count }) => count === 1 && called(edge, 'armhole', 'scye'));
  return own.map(({ name, edge, source }) => {
    const message = say`${name} is a single notch on ${base}.${edge}: by two strokes at the back and one in front nobody sets a sleeve into the wrong armhole. Make it double.`;
    return finding('single-back-notch', nameOfPiece(piece), message, {
      piece: piece.name,
      related: [{ source, message: say`${name} is placed here.` }],
    });
  });
}

/** Finds pieces cut for one side of the wearer that do not say which face of the cloth lies up. */
import { inWords, say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { placeOfLine } from './places';

export const noRightSideUp: Judged = {
  code: 'no-right-side-up',
  severity: 'error',
  title: 'A piece for one side that does not say which way up it is cut',
  by: 'judgement',
  ofPiece: (piece) => (isOneSided(piece) && !piece.cut!.rightSideUp ? [turned(piece)] : []),
};

const isOneSided = ({ cut }: Piece): boolean =>
  cut?.layers.some(({ as }) => as === 'left' || as === 'right') ?? false;

function turned(piece: Piece): Finding {
  const side = inWords(piece.cut!.layers.find(({ as }) => as === 'left' || as === 'right')!.as);
  const at = placeOfLine(piece, 'cut');
  const message = say`${piece.name} is cut for the ${side} side alone, but not which way up: laid on the wrong face of the cloth it becomes the other side. Add right side up.`;
  const end = at.statement.text.trimEnd().length;
  const fixes =
    at.statement.node.kind === 'cut'
      ? [
          {
            title: say`Add right side up`,
            edits: [{ statement: at.statement, at: { from: end, to: end }, text: ', right side up' }],
          },
        ]
      : [];
  return finding('no-right-side-up', at, message, { piece: piece.name, fixes });
}

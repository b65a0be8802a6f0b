/** Finds edges so short that they are more likely a slip of the outline than a thing to sew. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Edge, Piece } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { rangeInWords, usualRange, type Usual } from './usual';

const LENGTH: Usual = {
  name: 'edge-length',
  kind: 'length',
  low: 5,
  high: Infinity,
  standing: 'common practice: a machine makes two stitches of it',
};

export const shortEdge: Judged = {
  code: 'short-edge',
  severity: 'note',
  title: 'An edge too short to be sewn',
  by: 'judgement',
  usual: [LENGTH],
  ofPiece: (piece, pattern) => {
    const range = usualRange(pattern, LENGTH);
    const isShort = ({ drawn, path }: Edge): boolean => Math.max(drawn, path.length) < range.low - 1e-6;
    return piece.cut === undefined
      ? []
      : everyEdge(piece)
          .filter(isShort)
          .map((edge) => short(piece, edge, pattern));
  },
};

function short(piece: Piece, edge: Edge, pattern: Judging): Finding {
  const range = rangeInWords(usualRange(pattern, LENGTH), pattern.unit);
  const message = say`${edge.name} of ${piece.name} is ${printLength(edge.drawn, pattern.unit)} long (${range}): nobody sews so little by itself. Make it a run of the edge beside it, or look at the points between which it runs.`;
  const { node } = edge.statement;
  const at = node.kind === 'edge' ? node.name.at : node.at;
  return finding('short-edge', { statement: edge.statement, at }, message, { piece: piece.name });
}

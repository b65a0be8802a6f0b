/** Finds pieces cut on the bias on a fold: cloth can't be folded true on the bias. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { placeOfLine } from './places';

export const biasOnFold: Judged = {
  code: 'bias-on-fold',
  severity: 'warning',
  title: 'A piece cut on the bias, on a fold',
  by: 'judgement',
  ofPiece: (piece) => (isFolded(piece) && runsAskew(piece) ? [askew(piece)] : []),
};

/** A half that is drawn and cut open is laid single. */
const isFolded = ({ cut, fold }: Piece): boolean =>
  fold !== undefined && (cut?.layers.some(({ as }) => as === 'fold') ?? false);

/** Cloth folds along its thread or across it; in between the two layers shift against each other. */
function runsAskew({ grain, edges, fold }: Piece): boolean {
  const path = edges.find(({ name }) => name === fold?.edge)?.path;
  if (grain === undefined || path === undefined) return false;
  if (grain.bias) return true;
  const along = path.tangentAt(0);
  const way = { x: grain.to.x - grain.from.x, y: grain.to.y - grain.from.y };
  const angle = Math.abs(Math.atan2(along.x * way.y - along.y * way.x, along.x * way.x + along.y * way.y));
  const off = Math.abs(((angle * 180) / Math.PI) % 90);
  return Math.min(off, 90 - off) > ASKEW;
}

/** Between a fold and the thread, degrees, before a cutter would call it a bias (common practice). */
const ASKEW = 5;

function askew(piece: Piece): Finding {
  const fold = piece.fold!.edge;
  const message = say`${piece.name} is cut on the fold with its grain neither along nor across ${fold}: two layers folded on the bias shift against each other, and the halves come out unlike. Say cut 1 open, and lay it single.`;
  const at = placeOfLine(piece, 'cut');
  const { node } = at.statement;
  const layer = node.kind === 'cut' ? node.layers.find(({ as }) => as === 'fold') : undefined;
  const fixes =
    layer === undefined
      ? []
      : [
          {
            title: say`Cut it open, single`,
            edits: [{ statement: at.statement, at: layer.at, text: openWords(at.statement.text, layer.at) }],
          },
        ];
  return finding('bias-on-fold', at, message, { piece: piece.name, fixes });
}

const openWords = (text: string, at: { from: number; to: number }): string =>
  text.slice(at.from, at.to).replace(/\bon\s+fold\b/, 'open');

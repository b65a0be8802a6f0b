/** Finds pieces on the fold, and pairs, that would have to differ from side to side: such cloth comes out alike. */
import { say } from '../../grammar/say';
import type { PieceNode } from '../../grammar/syntax';
import type { Fix, SourcedFinding } from '../drafting/finding';
import type { Pattern, Piece, SidedReason } from '../drafting/model';
import { finding, type Judged } from './check';
import { listed } from './words';

export const sidedFold: Judged = {
  code: 'sided-fold',
  severity: 'error',
  title: 'A piece on the fold, or a pair, that rests on a measurement with two sides',
  by: 'judgement',
  ofPattern: (pattern) =>
    pattern.pieces.flatMap((piece): readonly SourcedFinding[] => {
      const node = piece.statement.node as PieceNode;
      if (node.eachSide || (piece.fold === undefined && !isPair(piece))) return [];
      const reasons = pattern.sidedReasons(piece.source);
      return reasons.length === 0
        ? []
        : [{ source: piece.source, finding: sided(piece, node, reasons, pattern) }];
    }),
};

/** Cut twice from one half; what is worked from another piece is judged where that is drawn. */
const isPair = ({ cut, statement }: Piece): boolean =>
  (cut?.layers ?? []).some((layer) => layer.as === 'pairs') && statement.node.kind === 'piece';

function sided(
  piece: Piece,
  node: PieceNode,
  reasons: readonly SidedReason[],
  pattern: Pattern,
): SourcedFinding['finding'] {
  const names = [...new Set(reasons.map(({ measurement }) => measurement))];
  const body = pattern.body?.name ?? say`this body`;
  const fold = piece.statement.block?.find((line) => line.node.kind === 'fold');
  const differs = names.length === 1 ? say`differs` : say`differ`;
  const message =
    piece.fold === undefined
      ? say`${piece.name} is cut as a pair from one half, so both come out alike, but ${listed(names)} of ${body} ${differs} from side to side. Draft it each side, or say which measurement both take.`
      : say`${piece.name} lies on the fold, so both halves come out alike, but ${listed(names)} of ${body} ${differs} from side to side. Draft it each side, or say which measurement both halves take.`;
  const place =
    fold === undefined
      ? { statement: piece.statement, at: node.name.at }
      : { statement: fold, at: fold.node.at };
  return finding('sided-fold', place, message, {
    piece: piece.name,
    related: reasons.map(({ source, measurement }) => ({
      source,
      message: say`${measurement} is taken here.`,
    })),
    fixes: [
      eachSide(piece, node),
      ...(['average', 'larger'] as const).map((which) => take(which, names, reasons)),
    ],
  });
}

function eachSide(piece: Piece, node: PieceNode): Fix {
  const end = node.of?.at.to ?? node.name.at.to;
  return {
    title: say`Draft ${piece.name} each side`,
    edits: [{ statement: piece.statement, at: { from: end, to: end }, text: ' each side' }],
  };
}

/** Every place takes the same side of the measurement. */
function take(which: 'average' | 'larger', names: readonly string[], reasons: readonly SidedReason[]): Fix {
  return {
    title:
      which === 'average'
        ? say`Take the average ${listed(names)} for both halves`
        : say`Take the larger ${listed(names)} for both halves`,
    edits: reasons.map(({ statement, at, source }) => ({
      statement,
      at: { from: at.to, to: at.to },
      text: `.${which}`,
      source,
    })),
  };
}

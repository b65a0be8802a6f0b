/** Finds pieces on the fold that would have to differ from side to side: cloth on the fold can't. */
import { say } from '../../grammar/say';
import type { PieceNode } from '../../grammar/syntax';
import type { Fix, SourcedFinding } from '../drafting/finding';
import type { Pattern, Piece, SidedReason } from '../drafting/model';
import { finding, type Judged } from './check';
import { listed } from './words';

export const sidedFold: Judged = {
  code: 'sided-fold',
  severity: 'error',
  title: 'A piece on the fold that rests on a measurement with two sides',
  by: 'judgement',
  ofPattern: (pattern) =>
    pattern.pieces.flatMap((piece): readonly SourcedFinding[] => {
      const node = piece.statement.node as PieceNode;
      if (piece.fold === undefined || node.eachSide) return [];
      const reasons = pattern.sidedReasons(piece.source);
      return reasons.length === 0
        ? []
        : [{ source: piece.source, finding: sided(piece, node, reasons, pattern) }];
    }),
};

function sided(
  piece: Piece,
  node: PieceNode,
  reasons: readonly SidedReason[],
  pattern: Pattern,
): SourcedFinding['finding'] {
  const names = [...new Set(reasons.map(({ measurement }) => measurement))];
  const body = pattern.body?.name ?? say`this body`;
  const fold = piece.statement.block?.find((line) => line.node.kind === 'fold');
  const message = say`${piece.name} lies on the fold, so both halves come out alike, but ${listed(names)} of ${body} ${names.length === 1 ? say`differs` : say`differ`} from side to side. Draft it each side, or say which measurement both halves take.`;
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

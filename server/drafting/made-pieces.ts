/** Hands each kind of piece to the one who makes it. */
import type { Sewn, Statement, StatementNode } from '../../grammar/syntax';
import type { Piece } from './model';
import { readFacing } from './pieces/beside/facing';
import { readJoin } from './pieces/beside/join';
import { readStrip } from './pieces/beside/strip';
import type { OwnParts } from './pieces/parts';
import { readPiece } from './pieces/piece';
import { readShare } from './pieces/working/shares';
import { readBand } from './sewing/band';
import { withCopies } from './sewing/copies';
import type { Reader } from './values/reader';

/** Statements that make a piece. */
export const PIECE_KINDS: readonly StatementNode['kind'][] = [
  'piece',
  'lining',
  'divide',
  'join',
  'facing',
  'band',
  'strip',
];

export interface PieceMaking {
  readonly name: string;
  readonly source: string;
  readonly statement: Statement;
  readonly parts: OwnParts;
  /** For a band: the edges it goes round. */
  readonly bandEdges: readonly Sewn[];
  /** For a piece: the edge that a seam sews to its pair. */
  readonly pairedEdge: string | undefined;
  /** Its edges that seams sew to its own kind. */
  readonly selfSewn: ReadonlySet<string>;
}

export function madePiece(reader: Reader, making: PieceMaking): Piece | undefined {
  const piece = made(reader, making);
  return piece && withCopies(piece, making.selfSewn);
}

function made(reader: Reader, making: PieceMaking): Piece | undefined {
  const { node } = making.statement;
  switch (node.kind) {
    case 'divide':
      return readShare(reader, node, making);
    case 'join':
      return readJoin(reader, node, making);
    case 'facing':
      return readFacing(reader, node, making);
    case 'strip':
      return readStrip(reader, node, making);
    case 'band':
      return readBand(reader, node, { ...making, edges: making.bandEdges });
    default:
      return readPiece(reader, { ...making, paired: making.pairedEdge });
  }
}

/** A piece with nothing on it yet, for pieces that are made rather than drawn. */
import type { Statement } from '../../../../grammar/syntax';
import type { Piece } from '../../model';

export interface MadePiece {
  readonly name: string;
  readonly source: string;
  readonly statement: Statement;
}

export const blankPiece = ({ name, source, statement }: MadePiece): Piece => ({
  ...{ name, base: name, source, statement, draft: '' },
  ...{ edges: [], corners: [], gaps: [], running: [], cornerCuts: [], darts: [], trued: [], notches: [] },
  ...{ balance: [], marks: [], holes: [], labels: [], remarks: [], unbuilt: [] },
  ...{ area: 0, allowances: new Map(), hems: new Map() },
});

/** Where in the text a finding of a piece or of one of its lines is shown. */
import type { Statement, StatementNode } from '../../grammar/syntax';
import type { Finding, FixEdit } from '../drafting/finding';
import type { Edge, Mark, Piece } from '../drafting/model';

type Spot = Pick<Finding, 'statement' | 'at'>;

/** The name of the piece where it is made. */
export function nameOfPiece(piece: Piece): Spot {
  const { statement } = piece;
  return { statement, at: madeAt(statement.node, piece.base) };
}

function madeAt(node: StatementNode, name: string): Spot['at'] {
  if (node.kind === 'divide') return node.into.find((share) => share.name.text === name)?.name.at ?? node.at;
  if (node.kind === 'join') return node.into.at;
  return 'name' in node && node.name !== undefined ? node.name.at : node.at;
}

/** The name of an edge where it is drawn. */
export function edgeOfPiece({ statement }: Pick<Edge, 'statement'>): Spot {
  const { node } = statement;
  return { statement, at: node.kind === 'edge' ? node.name.at : node.at };
}

/** A line of the piece's own block. */
export const lineOf = <K extends StatementNode['kind']>(
  { statement }: Piece,
  kind: K,
): (Statement & { readonly node: Extract<StatementNode, { kind: K }> }) | undefined =>
  statement.block?.find(
    (line): line is Statement & { readonly node: Extract<StatementNode, { kind: K }> } =>
      line.node.kind === kind,
  );

/** A line of the piece's block as a whole; the piece's name where the line was inherited. */
export function placeOfLine(piece: Piece, kind: StatementNode['kind']): Spot {
  const line = lineOf(piece, kind);
  return line === undefined ? nameOfPiece(piece) : { statement: line, at: line.node.at };
}

/** The name of a mark in its own line. */
export function nameOfMark({ statement }: Pick<Mark, 'statement'>): Spot {
  const { node } = statement;
  return { statement, at: 'name' in node && node.name !== undefined ? node.name.at : node.at };
}

/** A line set below a whole definition: a block grows and shrinks while its piece stays the same, so its end is asked late. */
export const lineBelow = (statement: Statement, line: string): FixEdit => ({
  statement,
  text: `\n${line}`,
  get at() {
    const end = statement.end - statement.start;
    return { from: end, to: end };
  },
});

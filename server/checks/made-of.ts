/** Which pieces a statement makes others of, and what is cut in the place of a piece that is not. */
import { keptFor } from '../../grammar/kept';
import type { Expr, Ref, StatementNode } from '../../grammar/syntax';
import type { Piece } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';

/** All that it needs, also what is cut beside it. */
export function basesOf(node: StatementNode): readonly string[] {
  return node.kind === 'lining' || node.kind === 'facing' ? namesOf(node.of) : replacedBy(node);
}

/** Those in the place of which it is cut: what it works further, divides or joins. */
export function replacedBy(node: StatementNode): readonly string[] {
  switch (node.kind) {
    case 'piece':
      return namesOf(node.workedFrom);
    case 'divide':
      return namesOf(node.piece);
    case 'join':
      return [...namesOf(node.one), ...namesOf(node.other)];
    default:
      return [];
  }
}

const namesOf = (expr: Expr | Ref | undefined): readonly string[] =>
  expr?.kind === 'ref' ? [expr.path[0]!.text] : [];

/** A piece that is not cut, and the pieces that are cut in its place. */
export interface Step {
  readonly piece: Piece;
  readonly cut: readonly Piece[];
}

export const stepsOf = keptFor((pieces: readonly Piece[]): ReadonlyMap<string, Step> => {
  const made = new Map<string, Piece[]>();
  for (const piece of pieces.filter(({ side }) => side !== 'left'))
    for (const base of replacedBy(piece.statement.node)) made.set(base, [...(made.get(base) ?? []), piece]);
  const cutOf = (base: string, seen: readonly string[]): readonly Piece[] =>
    (made.get(base) ?? []).flatMap((piece) =>
      piece.cut !== undefined
        ? [piece]
        : seen.includes(piece.base)
          ? []
          : cutOf(piece.base, [...seen, piece.base]),
    );
  const found = new Map<string, Step>();
  for (const piece of pieces) {
    const cut = piece.cut === undefined ? cutOf(piece.base, [piece.base]) : [];
    if (cut.length > 0) found.set(piece.base, { piece, cut: [...new Set(cut)] });
  }
  return found;
});

/** What bears the edge's name on the pieces that are cut, or is what a cut left of it. */
export const inPlaceOf = ({ cut }: Step, edge: string): readonly CutEdge[] =>
  cut.flatMap(({ base, ...piece }) =>
    everyEdge(piece).flatMap(({ name }) =>
      name === edge || name === `${edge}-further` ? [{ piece: base, edge: name }] : [],
    ),
  );

export interface CutEdge {
  readonly piece: string;
  readonly edge: string;
}

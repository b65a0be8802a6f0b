/** Which pieces a statement makes others of. */
import type { Expr, Ref, StatementNode } from '../../grammar/syntax';

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

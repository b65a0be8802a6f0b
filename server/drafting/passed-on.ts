/** Pieces that are not cut themselves, because others made of them are: what is cut is the last of a chain. */
import { keptFor } from '../../grammar/kept';
import type { Expr, StatementNode } from '../../grammar/syntax';
import type { FileNames } from './names/files';
import type { Piece } from './model';

/** Kinds of statement that pass a piece's cutting words on, or take them over unsaid. */
const KINDS: readonly StatementNode['kind'][] = ['divide', 'join', 'piece'];

/**
 * Names of the file's pieces that are divided or joined, or that were worked further with words they only inherited.
 *
 * @param isLeftOut whether the piece of a name is not part of this garment: nothing is passed on to it
 */
export function passedOn(root: FileNames, isLeftOut: (name: string) => boolean): ReadonlySet<string> {
  const all = KINDS.flatMap((kind) => root.ofKind(kind));
  const tops = all.filter(({ statement: { node } }) => !isLeftOut(madeBy(node)));
  return new Set(tops.flatMap(({ statement: { node } }) => namesOf(node, root)));
}

/** The pieces, or edges of pieces, that another one is made of: where one of them is left out, so is what is made of it. */
export function madeOf(node: StatementNode): readonly Expr[] {
  switch (node.kind) {
    case 'divide':
      return [node.piece];
    case 'join':
      return [node.one, node.other];
    case 'facing':
    case 'lining':
      return [node.of];
    case 'piece':
      return node.workedFrom === undefined ? [] : [node.workedFrom];
    default:
      return [];
  }
}

function namesOf(node: StatementNode, root: FileNames): readonly string[] {
  const names = madeOf(node).flatMap(pieceName);
  return node.kind === 'piece' ? names.filter((name) => inherits(root, name)) : names;
}

/** The piece that a join or a piece's own statement makes, or one of those that a divide makes. */
function madeBy(node: StatementNode): string {
  if (node.kind === 'divide') return node.into[0]?.name.text ?? '';
  return node.kind === 'join' ? node.into.text : 'name' in node ? (node.name?.text ?? '') : '';
}

const pieceName = (expr: Expr): readonly string[] => (expr.kind === 'ref' ? [expr.path[0]!.text] : []);

/** Whether a piece has cutting words that no line of its own says. */
function inherits(root: FileNames, name: string): boolean {
  const statement = root.get(name)?.statement;
  switch (statement?.node.kind) {
    case 'join':
    case 'facing':
      return true;
    case 'divide': {
      const share = (statement.block ?? []).find(
        ({ node }) => node.kind === 'share' && node.name.text === name,
      );
      return !(share?.block ?? []).some(({ node }) => node.kind === 'cut');
    }
    default:
      return false;
  }
}

/** The piece without its cutting words, the same object while it stays the same. */
export const uncut = keptFor(({ cut: _, ...rest }: Piece): Piece => rest);

/** What the seams of a file say of a piece by themselves: which of its edges are sewn to its own kind. */
import { keptFor } from '../../../grammar/kept';
import type { SeamNode, Statement, TopLevel } from '../../../grammar/syntax';
import type { FileNames } from './files';

interface SelfSewn {
  /** The edge that is sewn to its pair, the first one written. */
  readonly paired?: string;
  /** All that are sewn to their pair, or to another edge of the piece. */
  readonly edges: ReadonlySet<string>;
}

/** By piece, kept while the seams of the file stay the same. */
const ofSeams = keptFor(read);

function of(file: FileNames, piece: string): SelfSewn | undefined {
  return ofSeams(file.ofKind('seam')).get(piece);
}

/** The edge of a piece that is sewn to its own pair: where it has no fold, that is its centre. */
export const pairedEdge = (file: FileNames, piece: string): string | undefined => of(file, piece)?.paired;

export const selfSewn = (file: FileNames, piece: string): ReadonlySet<string> =>
  of(file, piece)?.edges ?? NONE;

const NONE: ReadonlySet<string> = new Set();

function read(seams: readonly TopLevel[]): ReadonlyMap<string, SelfSewn> {
  const found = new Map<string, { paired?: string; edges: Set<string> }>();
  for (const { statement } of seams) {
    const { node } = statement;
    if (node.kind !== 'seam') continue;
    for (const [piece, name] of ownEdges(node)) {
      let known = found.get(piece);
      if (known === undefined) found.set(piece, (known = { edges: new Set() }));
      known.edges.add(name);
      if (node.right === 'its-pair') known.paired ??= name;
    }
  }
  return found;
}

/** The edges of a seam whose piece it has on both sides. */
function* ownEdges({ left, right }: SeamNode): Iterable<readonly [piece: string, edge: string]> {
  if (right !== 'its-pair' && !left.parts.some(({ edge }) => holds(right, edge.path[0]!.text))) return;
  const sides = right === 'its-pair' ? [left] : [left, right];
  for (const [i, side] of sides.entries()) {
    for (const { edge } of side.parts) {
      const [piece, name] = edge.path;
      const other = sides[1 - i];
      if (edge.path.length !== 2 || (right !== 'its-pair' && !holds(other!, piece!.text))) continue;
      yield [piece!.text, name!.text];
    }
  }
}

const holds = ({ parts }: SeamNode['left'], piece: string): boolean =>
  parts.some(({ edge }) => edge.path[0]!.text === piece);

/** The pieces whose own kind a seam sews them to: what it says of them is part of them. */
export function selfSewnBy({ node }: Statement): readonly string[] {
  return node.kind === 'seam' ? [...ownEdges(node)].map(([piece]) => piece) : [];
}

/** Finds edges that are neither sewn, nor on a fold, nor finished: somebody will ask at the machine what becomes of them. */
import type { SourcedFinding } from '../drafting/finding';
import type { Edge, Finish, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';
import { finding, type Judged } from './check';

export const unfinishedEdge: Judged = {
  code: 'unfinished-edge',
  severity: 'warning',
  title: 'An edge that is neither sewn, folded nor finished',
  by: 'judgement',
  ofPattern: (pattern) => unfinished(pattern),
};

function unfinished(pattern: Pattern): readonly SourcedFinding[] {
  const doubtful = doubtfulEdges(pattern.doubtful);
  return pattern.pieces.flatMap((piece) => {
    const [seams, finishes] = [pattern.seamsOf(piece.base), pattern.finishesOf(piece.base)];
    return openOf(piece, { seams, finishes, doubtful: doubtful.get(piece.base) ?? '' });
  });
}

/** Edges of which nothing is said, by piece, as one string each. */
function doubtfulEdges(names: ReadonlySet<string>): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const name of [...names].sort()) {
    const dot = name.indexOf('.');
    const piece = name.slice(0, dot);
    found.set(piece, `${found.get(piece) ?? ' '}${name.slice(dot + 1)} `);
  }
  return found;
}

/** What else than the piece itself says which of its edges are open. */
interface Around {
  readonly seams: readonly Seam[];
  readonly finishes: readonly Finish[];
  readonly doubtful: string;
}

const kept = new WeakMap<Piece, { readonly around: Around; readonly findings: readonly SourcedFinding[] }>();

const sameAround = (a: Around, b: Around): boolean =>
  a.seams === b.seams && a.finishes === b.finishes && a.doubtful === b.doubtful;

function openOf(piece: Piece, around: Around): readonly SourcedFinding[] {
  const before = kept.get(piece);
  if (before !== undefined && sameAround(before.around, around)) return before.findings;
  const open = isJudged(piece) ? openEdges(piece, around) : [];
  const findings = open.map((edge) => ({ source: piece.source, finding: openEdge(piece, edge) }));
  kept.set(piece, { around, findings });
  return findings;
}

function openEdges(piece: Piece, { seams, finishes, doubtful }: Around): readonly Edge[] {
  const taken = new Set<string>();
  for (const { left, right } of seams) for (const edge of [...left, ...right]) note(taken, piece, edge);
  for (const { edges } of finishes) for (const edge of edges) note(taken, piece, edge);
  const folds = folded(piece);
  const isSaid = ({ name }: Edge): boolean =>
    taken.has(name) || folds.has(name) || doubtful.includes(` ${name} `);
  return piece.edges.filter((edge) => !isSaid(edge) && !otherHalf(edge));
}

function note(taken: Set<string>, { base }: Piece, { piece, edge }: SewnEdge): void {
  if (piece === base) taken.add(edge);
}

/** Where the wearer's sides differ, the right one speaks for both. */
const isJudged = ({ cut, statement, unbuilt, side }: Piece): boolean =>
  cut !== undefined && statement.node.kind !== 'band' && unbuilt.length === 0 && side !== 'left';

/** Of an open piece drafted each side the half as drawn speaks for both. */
const otherHalf = ({ name, source }: Edge): boolean =>
  name === `${source.slice(source.lastIndexOf('/') + 1)}-other`;

/** Edges that a fold line names, whether or not they can be folded. */
function folded({ statement }: Piece): ReadonlySet<string> {
  const lines = statement.block ?? [];
  return new Set(
    lines.flatMap(({ node }) => (node.kind === 'fold' ? node.edge.path.map(({ text }) => text) : [])),
  );
}

function openEdge(piece: Piece, edge: Edge): SourcedFinding['finding'] {
  const { node } = edge.statement;
  const at = node.kind === 'edge' ? node.name.at : node.at;
  const name = `${piece.base}.${edge.name}`;
  const message = `Nothing is said of ${name}: it is neither sewn to anything, nor on a fold, nor finished. Add a seam or a finish (finish ${edge.name} ${name} turned up 2cm; raw, if that is meant).`;
  return finding('unfinished-edge', { statement: edge.statement, at }, message, { piece: piece.name });
}

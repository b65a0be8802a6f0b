/** Finds edges that are neither sewn, nor on a fold, nor finished: somebody will ask at the machine what becomes of them. */
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { Edge, Finish, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { finding, type Judged } from './check';
import { halfSaid, stretchesInWords, type Left } from './half-said';
import { nameOfPiece } from './places';
import { listed } from './words';

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
    const { unit } = pattern;
    return openOf(piece, { unit, seams, finishes, doubtful: doubtful.get(piece.base) ?? '' });
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
  readonly unit: Pattern['unit'];
  readonly seams: readonly Seam[];
  readonly finishes: readonly Finish[];
  readonly doubtful: string;
}

const kept = new WeakMap<Piece, { readonly around: Around; readonly findings: readonly SourcedFinding[] }>();

const sameAround = (a: Around, b: Around): boolean =>
  a.unit === b.unit && a.seams === b.seams && a.finishes === b.finishes && a.doubtful === b.doubtful;

function openOf(piece: Piece, around: Around): readonly SourcedFinding[] {
  const before = kept.get(piece);
  if (before !== undefined && sameAround(before.around, around)) return before.findings;
  const open = isJudged(piece) ? openEdges(piece, around).map((edge) => openEdge(piece, edge)) : [];
  const half = isJudged(piece) ? halfOpen(piece, around).map((left) => halfEdge(piece, left, around)) : [];
  const findings = [...open, ...half].map((found) => ({ source: piece.source, finding: found }));
  kept.set(piece, { around, findings });
  return findings;
}

function openEdges(piece: Piece, { seams, finishes, doubtful }: Around): readonly Edge[] {
  const taken = new Set<string>();
  for (const { left, right } of seams) for (const edge of [...left, ...right]) note(taken, piece, edge);
  for (const { edges, faced = [] } of finishes) {
    for (const edge of edges) note(taken, piece, edge);
    for (const { facing } of faced) note(taken, piece, facing);
  }
  const folds = folded(piece);
  const isSaid = ({ name }: Edge): boolean =>
    taken.has(name) || folds.has(name) || doubtful.includes(` ${name} `);
  return everyEdge(piece).filter((edge) => !isSaid(edge) && !otherHalf(edge));
}

function halfOpen(piece: Piece, { seams, finishes, doubtful }: Around): readonly Left[] {
  const sewn = seams.flatMap(({ left, right }) => [...left, ...right]);
  const all = [...sewn, ...finishes.flatMap(({ edges }) => edges)];
  return halfSaid(piece, all).filter(({ edge }) => !doubtful.includes(` ${edge.name} `));
}

function note(taken: Set<string>, { base }: Piece, { piece, edge }: Pick<SewnEdge, 'piece' | 'edge'>): void {
  if (piece === base) taken.add(edge);
}

/** Where the wearer's sides differ, the right one speaks for both. */
const isJudged = ({ cut, statement, unbuilt, side }: Piece): boolean =>
  cut !== undefined && !CUT_ALL_ROUND.has(statement.node.kind) && unbuilt.length === 0 && side !== 'left';

/** A band is closed round what it binds, and a strip is cut to measure. */
const CUT_ALL_ROUND: ReadonlySet<string> = new Set(['band', 'strip']);

/** Of an open piece drafted each side the half as drawn speaks for both. */
const otherHalf = ({ name, source }: Edge): boolean =>
  name === `${source.slice(source.lastIndexOf('/') + 1)}-other`;

/** The fold, and edges that a fold line names, whether or not they can be folded. */
function folded({ statement, fold }: Piece): ReadonlySet<string> {
  const lines = statement.block ?? [];
  const named = lines.flatMap(({ node }) =>
    node.kind === 'fold' ? node.edge.path.map(({ text }) => text) : [],
  );
  return new Set(fold === undefined ? named : [...named, fold.edge]);
}

/** An edge of which a part is sewn or finished, and nothing said of the rest. */
function halfEdge(piece: Piece, { edge, left }: Left, { unit }: Around): SourcedFinding['finding'] {
  const name = `${piece.base}.${edge.name}`;
  const message = `Only a part of ${name} is sewn or finished: nothing is said of ${listed(stretchesInWords(edge, left, unit))}. Add a seam or a finish for it (finish ${edge.name} ${name} from P to Q turned up 2cm; raw, if that is meant).`;
  const { node } = edge.statement;
  const at = node.kind === 'edge' ? node.name.at : node.at;
  return finding('unfinished-edge', { statement: edge.statement, at }, message, { piece: piece.name });
}

function openEdge(piece: Piece, edge: Edge): SourcedFinding['finding'] {
  const name = `${piece.base}.${edge.name}`;
  const message = `Nothing is said of ${name}: it is neither sewn to anything, nor on a fold, nor finished. Add a seam or a finish (finish ${edge.name} ${name} turned up 2cm; raw, if that is meant).`;
  return finding('unfinished-edge', placeOf(piece, edge), message, { piece: piece.name });
}

/** The edge's line in the piece's own outline; of a piece made from another, where that is named. */
function placeOf(piece: Piece, edge: Edge): Pick<Finding, 'statement' | 'at'> {
  const { node } = edge.statement;
  const own = piece.statement.node;
  const drawn = own.kind === 'piece' && own.of !== undefined;
  return drawn
    ? { statement: edge.statement, at: node.kind === 'edge' ? node.name.at : node.at }
    : nameOfPiece(piece);
}

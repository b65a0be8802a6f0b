/** Finds edges that are neither sewn, nor on a fold, nor finished: somebody will ask at the machine what becomes of them. */
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { Edge, Finish, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { finding, type Judged } from './check';
import { nameOfPiece } from './places';

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
  const [open, half] = isJudged(piece) ? [openEdges(piece, around), halfOpen(piece, around)] : [[], []];
  const findings = [
    ...open.map((edge) => ({ source: piece.source, finding: openEdge(piece, edge) })),
    ...half.map(({ edge, left }) => ({ source: piece.source, finding: halfEdge(piece, edge, left, around) })),
  ];
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

function note(taken: Set<string>, { base }: Piece, { piece, edge }: Pick<SewnEdge, 'piece' | 'edge'>): void {
  if (piece === base) taken.add(edge);
}

/** A stretch shorter than this is left by rounding or by a place that was measured, mm. */
const SHORTEST = 3;

interface Left {
  readonly edge: Edge;
  /** Sewn distances from the edge's first corner. */
  readonly left: readonly (readonly [number, number])[];
}

/** Edges that are taken by stretches alone, which do not cover them. */
function halfOpen(piece: Piece, { seams, finishes }: Around): readonly Left[] {
  const taken = [...seams.flatMap(({ left, right }) => [...left, ...right]), ...finishes.flatMap(({ edges }) => edges)];
  const own = taken.filter(({ piece: of, stretch }) => of === piece.base && stretch !== undefined);
  return [...new Set(own.map(({ edge }) => edge))].flatMap((name) => {
    const edge = everyEdge(piece).find((one) => one.name === name);
    const whole = taken.some((one) => one.piece === piece.base && one.edge === name && one.stretch === undefined);
    if (edge === undefined || whole || piece.fold?.edge === name) return [];
    const left = uncovered(
      edge.sewn,
      own.filter((one) => one.edge === name).map(({ stretch }) => stretch!),
    );
    return left.length === 0 ? [] : [{ edge, left }];
  });
}

/** What stretches leave of a length. */
function uncovered(length: number, stretches: readonly Stretch[]): readonly (readonly [number, number])[] {
  const spans = stretches.map(({ from, to }) => [Math.min(from, to), Math.max(from, to)] as const);
  spans.sort((a, b) => a[0] - b[0]);
  const left: [number, number][] = [];
  let at = 0;
  for (const [from, to] of [...spans, [length, length] as const]) {
    if (from - at > SHORTEST) left.push([at, from]);
    at = Math.max(at, to);
  }
  return left;
}

function halfEdge(piece: Piece, edge: Edge, left: Left['left'], { unit }: Around): SourcedFinding['finding'] {
  const name = `${piece.base}.${edge.name}`;
  const [start, end] = [edge.fromName || 'its beginning', edge.toName || 'its end'];
  const stretches = left.map(([from, to]) => {
    const long = printLength(to - from, unit);
    if (from < SHORTEST) return `${long} from ${start}`;
    return to > edge.sewn - SHORTEST
      ? `${long} from ${end}`
      : `${long} in its middle, ${printLength(from, unit)} from ${start}`;
  });
  const message = `Only a part of ${name} is sewn or finished: nothing is said of ${listed(stretches)}. Add a seam or a finish for it (finish ${edge.name} ${name} from P to Q turned up 2cm; raw, if that is meant).`;
  const { node } = edge.statement;
  const at = node.kind === 'edge' ? node.name.at : node.at;
  return finding('unfinished-edge', { statement: edge.statement, at }, message, { piece: piece.name });
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

/** Finds edges that are neither sewn, nor on a fold, nor finished: somebody will ask at the machine what becomes of them. */
import { say } from '../../grammar/say';
import type { Finding, Fix } from '../drafting/finding';
import type { Edge, Pattern, Piece, SewnEdge } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { surroundings, type AroundPiece } from './around';
import { finding, type Judged } from './check';
import { halfSaid, stretchesInWords, type Left } from './half-said';
import { lineBelow, nameOfPiece } from './places';
import { listed } from './words';

export const unfinishedEdge: Judged = {
  code: 'unfinished-edge',
  severity: 'warning',
  title: 'An edge that is neither sewn, folded nor finished',
  by: 'judgement',
  ofSewnPiece: (piece, around) => (isJudged(piece) ? unfinished(piece, around) : []),
};

const unfinished = (piece: Piece, around: AroundPiece): readonly Finding[] => [
  ...toldOf(openEdges(piece, around), around).map((edges) => openIn(piece, edges, around)),
  ...halfOpen(piece, around).map((left) => halfEdge(piece, left, around)),
];

function openEdges(piece: Piece, { seams, finishes, doubtful }: AroundPiece): readonly Edge[] {
  const taken = new Set<string>();
  for (const { left, right } of seams) {
    for (const edge of left) note(taken, piece, edge);
    for (const edge of right) note(taken, piece, edge);
  }
  for (const { edges, faced = [] } of finishes) {
    for (const edge of edges) note(taken, piece, edge);
    for (const { facing } of faced) note(taken, piece, facing);
  }
  const folds = folded(piece);
  const isSaid = ({ name }: Edge): boolean =>
    taken.has(name) || folds.has(name) || doubtful.includes(` ${name} `);
  return everyEdge(piece).filter((edge) => !isSaid(edge) && !otherHalf(edge));
}

/** Asks for the edges of a piece of which nothing is said, whether or not the pattern lets them be. */
export function openEdgesIn(pattern: Pattern): (piece: Piece) => readonly Edge[] {
  const { ofPiece } = surroundings(pattern);
  return (piece) => (isJudged(piece) ? openEdges(piece, ofPiece(piece)) : []);
}

function halfOpen(piece: Piece, { seams, finishes, doubtful }: AroundPiece): readonly Left[] {
  const sides = [...seams.flatMap(({ left, right }) => [left, right]), ...finishes.map(({ edges }) => edges)];
  return halfSaid(piece, sides).filter(({ edge }) => !doubtful.includes(` ${edge.name} `));
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
function halfEdge(piece: Piece, { edge, left }: Left, { unit }: AroundPiece): Finding {
  const name = `${piece.base}.${edge.name}`;
  const message = say`Only a part of ${name} is sewn or finished: nothing is said of ${listed(stretchesInWords(edge, left, unit))}. Add a seam or a finish for it (finish ${edge.name} ${name} from P to Q turned up 2cm; raw, if that is meant).`;
  const { node } = edge.statement;
  const at = node.kind === 'edge' ? node.name.at : node.at;
  return finding('unfinished-edge', { statement: edge.statement, at }, message, { piece: piece.name });
}

/** What is said of at once: an edge that a line accepts stands for itself, all others of the piece are one message. */
function toldOf(edges: readonly Edge[], { leftOpen }: AroundPiece): readonly (readonly Edge[])[] {
  const alone = edges.filter(({ name }) => leftOpen.includes(` ${name} `));
  const others = edges.filter((edge) => !alone.includes(edge));
  return [others, ...alone.map((edge) => [edge])].filter(({ length }) => length > 0);
}

function openIn(piece: Piece, edges: readonly Edge[], around: AroundPiece): Finding {
  const [first, ...more] = edges as [Edge, ...Edge[]];
  const name = (edge: Edge): string => `${piece.base}.${edge.name}`;
  const [are, each] = more.length === 0 ? [say`it is`, ''] : [say`they are`, say` for each`];
  const message = say`Nothing is said of ${listed(edges.map(name))}: ${are} neither sewn to anything, nor on a fold, nor finished. Add a seam or a finish${each} (finish ${first.name} ${name(first)} turned up 2cm; raw, if that is meant).`;
  const place = placeOf(piece, first);
  const apart = more.filter((edge) => placeOf(piece, edge).statement !== place.statement);
  return finding('unfinished-edge', place, message, {
    piece: piece.name,
    related: apart.map((edge) => ({
      source: edge.source,
      message: say`Nor of ${name(edge)}, which runs here.`,
    })),
    fixes: leftRaw(piece, edges, around),
  });
}

/** A line below the piece that finishes all of them as they are cut; not where an `accept` line says so already. */
function leftRaw(
  { base, statement }: Piece,
  edges: readonly Edge[],
  { seams, finishes, leftOpen }: AroundPiece,
): readonly Fix[] {
  const isAccepted = edges.some(({ name }) => leftOpen.includes(` ${name} `));
  if (statement.inside !== 'file' || isAccepted) return [];
  const taken = new Set([...seams, ...finishes].map(({ name }) => name));
  const names = [edges.length === 1 ? edges[0]!.name : '', `${base}-edges`, `${base}-raw`];
  const free = names.find((one) => one !== '' && !taken.has(one));
  if (free === undefined) return [];
  const line = `finish ${free} ${edges.map(({ name }) => `${base}.${name}`).join(', ')} raw`;
  return [
    {
      title: edges.length === 1 ? say`Leave it raw: ${line}` : say`Leave them raw: ${line}`,
      edits: [lineBelow(statement, line)],
    },
  ];
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

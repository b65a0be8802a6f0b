/** Writes a seam for two edges, and finishes for the edges of which nothing is said yet. */
import { say } from '../../grammar/say';
import { openEdgesIn } from '../checks';
import type { Span } from '../../grammar/syntax';
import type { Edge, Pattern, Piece } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { usualTolerance } from '../drafting/sewing/seam';
import type { Names } from './names';
import type { Shaping } from './shaping';

interface Owned {
  readonly piece: Piece;
  readonly edge: Edge;
}

const nameOf = ({ piece, edge }: Owned): string => `${piece.base}.${edge.name}`;

/** A seam for the edges at both ends of a selection, or for the open edge at a place and the one that it plainly goes with. */
export function sewings(
  pattern: Pattern,
  names: Names,
  text: string,
  { from, to }: Span,
): readonly Shaping[] {
  const one = edgeAt(pattern, from);
  if (one === undefined) return [];
  const other = from === to ? partnerOf(pattern, one) : edgeAt(pattern, to);
  if (other === undefined || (other.piece === one.piece && other.edge === one.edge)) return [];
  if (from !== to && ![one, other].every((each) => isOpen(pattern, each))) return [];
  const name = freeSeam(names, [one.edge.name, `${one.piece.base}-${one.edge.name}`]);
  const line = `seam ${name} ${nameOf(one)} = ${nameOf(other)}`;
  return [
    { title: say`Sew ${nameOf(one)} to ${nameOf(other)}`, kind: 'write', edits: [below(names, text, line)] },
  ];
}

function edgeAt(pattern: Pattern, offset: number): Owned | undefined {
  for (const source of pattern.sourcesAt(pattern.uri, offset)) {
    for (const piece of pattern.pieces) {
      const edge = everyEdge(piece).find((one) => one.source === source);
      if (edge !== undefined) return { piece, edge };
    }
  }
  return undefined;
}

const isOpen = (pattern: Pattern, { piece, edge }: Owned): boolean =>
  openEdgesIn(pattern)(piece).some(({ name }) => name === edge.name);

/**
 * The only open edge of another piece that bears the same name, else the only one of the same length; undefined where
 * there is none, or where it could be either of several.
 */
function partnerOf(pattern: Pattern, one: Owned): Owned | undefined {
  if (!isOpen(pattern, one)) return undefined;
  const openOf = openEdgesIn(pattern);
  const open = pattern.pieces
    .filter(({ base }) => base !== one.piece.base)
    .flatMap((piece) => openOf(piece).map((edge) => ({ piece, edge })));
  const alike = open.filter(({ edge }) => edge.name === one.edge.name);
  if (alike.length > 0) return alike.length === 1 ? alike[0] : undefined;
  const within = usualTolerance(one.edge.sewn);
  const aslong = open.filter(({ edge }) => Math.abs(edge.sewn - one.edge.sewn) <= within);
  return aslong.length === 1 ? aslong[0] : undefined;
}

/** Finishes for every open edge of the pattern, offered at any of its pieces that has one. */
export function finishings(pattern: Pattern, names: Names, text: string, { from }: Span): readonly Shaping[] {
  const here = pattern.sourcesAt(pattern.uri, from);
  const openOf = openEdgesIn(pattern);
  if (!pattern.pieces.some((piece) => here.includes(piece.source) && openOf(piece).length > 0)) return [];
  const open = pattern.pieces.map((piece) => ({ piece, edges: openOf(piece) }));
  const left = open.filter(({ edges }) => edges.length > 0);
  const count = left.reduce((sum, { edges }) => sum + edges.length, 0);
  const lines = left.map(({ piece, edges }) => {
    const name = freeFinish(names, `${piece.base}-edges`);
    return `finish ${name} ${edges.map((edge) => nameOf({ piece, edge })).join(', ')}`;
  });
  const ways = { 'turned twice 1cm': say`a narrow hem`, raw: say`no finish, as cut` };
  const title = (words: string): string =>
    count === 1
      ? say`Finish the edge that has none: ${words}`
      : say`Finish the ${count} edges that have none: ${words}`;
  return Object.entries(ways).map(([way, words]) => ({
    title: title(words),
    kind: 'write',
    edits: [below(names, text, lines.map((line) => `${line} ${way}`).join('\n'))],
  }));
}

const freeSeam = (names: Names, wanted: readonly string[]): string => free(names, 'seam:', wanted);
const freeFinish = (names: Names, wanted: string): string => free(names, 'finish:', [wanted]);

/** The first of the names that no seam or finish of the file bears, else the last with a number. */
function free({ root }: Names, mark: string, wanted: readonly string[]): string {
  const last = wanted.at(-1)!;
  for (const name of wanted) if (root.get(mark + name) === undefined) return name;
  for (let i = 2; ; i++) if (root.get(`${mark}${last}${i}`) === undefined) return `${last}${i}`;
}

/** A line below the last seam or finish of the file; where there is none, below its last piece, after a blank line. */
function below(names: Names, text: string, line: string): Shaping['edits'][number] {
  const { uri, root } = names;
  const sewn = root.ofKinds(['seam', 'finish', 'band', 'notch']);
  const last = sewn.at(-1) ?? root.topLevels.at(-1)!;
  const at = last.offset + last.statement.end;
  const end = /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
  const lead = sewn.length > 0 ? end : end + end;
  return { uri, from: at, to: at, text: lead + line.replaceAll('\n', end) };
}

/** A facing: a strip of a piece along some of its edges, its darts closed, to lie behind it. */
import { say } from '../../../../grammar/say';
import type { FacingNode } from '../../../../grammar/syntax';
import { areaOf, orientation, type Path, type Point } from '../../../geometry';
import type { Corner, Edge, Piece } from '../../model';
import { lengthOf } from '../../values/arithmetic';
import { printLength } from '../../values/quantity';
import { report, type Reader } from '../../values/reader';
import { basePiece } from '../base';
import { unfolded } from '../cut-words';
import { ownEdge } from '../cutting';
import type { OwnParts } from '../parts';
import { remember } from '../working/bench';
import { FURTHER } from '../working/part';
import { blankPiece, type MadePiece } from './blank';
import { closedChain, type Chain } from './chain';
import { stripAlong, type Strip, type TooDeep } from './strip-along';

/** How much shorter than the edge it faces a facing is, mm, so that it draws the seam to the inside (common practice: 1 to 2 mm in light cloth). */
export const SMALLER = 1;

/** The name of the edge that lies inside. */
export const INNER = 'inner';

export function readFacing(
  reader: Reader,
  node: FacingNode,
  request: MadePiece & { readonly parts: OwnParts },
): Piece | undefined {
  const piece = basePiece(reader, node.of);
  if (piece === undefined) return undefined;
  const deep = lengthOf(reader, node.deep, 'deep');
  const faced = node.along.map((edge) => ownEdge(reader, piece.edges, edge));
  if (deep === undefined || faced.some((edge) => edge === undefined)) return undefined;
  if (deep <= SMALLER) {
    const found = printLength(deep, reader.unit);
    return report(reader, 'no-such-number', node.deep.at, say`A facing ${found} deep can't be cut.`);
  }
  const run = inOrder(piece.edges, faced as Edge[]);
  if (run === undefined) return apart(reader, node, piece, faced as Edge[]);
  const chain = closedChain(piece, run);
  const inward = orientation(piece.edges.map(({ path }) => path)) < 0 ? -1 : 1;
  const strip = stripAlong(chain, deep, inward, shortening(piece, chain));
  if (!('inner' in strip)) return tooDeep(reader, node, deep, strip);
  const made = facingPiece(request, piece, chain, strip, deep);
  remember(request.parts, made);
  return made;
}

/** Its inner line does not reach the edges where it should end, or folds up on itself. */
function tooDeep(reader: Reader, { deep: { at } }: FacingNode, deep: number, { short }: TooDeep): undefined {
  const depth = printLength(deep, reader.unit);
  if (short === undefined) {
    const why = say`A facing ${depth} deep does not fit behind so tight a curve: its inner line would fold up. Make it less deep.`;
    return report(reader, 'out-of-reach', at, why);
  }
  const { name, path, source } = short;
  const long = printLength(path.length, reader.unit);
  const why = say`The facing is ${depth} deep, but ${name}, at which it ends, is only ${long} long. Make it less deep, or face ${name} as well.`;
  return report(reader, 'out-of-reach', at, why, { related: [{ source, message: say`${name} runs here.` }] });
}

/** The edges as they follow each other round the piece; undefined where they don't, or where they go all round it. */
function inOrder(edges: readonly Edge[], faced: readonly Edge[]): readonly number[] | undefined {
  const count = edges.length;
  const wanted = new Set(faced.map((edge) => edges.indexOf(edge)));
  if (wanted.size >= count) return undefined;
  const first = edges.findIndex((_, i) => wanted.has(i) && !wanted.has((i - 1 + count) % count));
  const run = Array.from({ length: wanted.size }, (_, i) => (first + i) % count);
  return run.every((i) => wanted.has(i)) ? run : undefined;
}

function apart(reader: Reader, node: FacingNode, piece: Piece, faced: readonly Edge[]): undefined {
  const names = faced.map(({ name }) => name).join(say` and `);
  const all = new Set(faced).size >= piece.edges.length;
  const at = { from: node.along[0]!.at.from, to: node.along[node.along.length - 1]!.at.to };
  const why = all
    ? say`${names} go all round ${piece.name}: a facing needs two other edges to end at.`
    : say`${names} do not follow each other round ${piece.name}: make a facing for each.`;
  return report(reader, 'which-way', at, why);
}

/** What is taken off at either end: where the facing is sewn to another, never on a fold. */
function shortening(
  piece: Piece,
  { before, after }: Chain,
): { readonly start: number; readonly end: number } {
  const folds = [before, after].map(({ name }) => name === piece.fold?.edge);
  if (folds[0] === folds[1]) return { start: folds[0] ? 0 : SMALLER / 2, end: folds[1] ? 0 : SMALLER / 2 };
  return folds[0] ? { start: 0, end: SMALLER } : { start: SMALLER, end: 0 };
}

function facingPiece(request: MadePiece, piece: Piece, chain: Chain, strip: Strip, deep: number): Piece {
  const { source } = request;
  const named = (edge: Edge, path: Path, name = edge.name): Edge => ({
    ...edge,
    ...{ name, path, parts: [{ path }], drawn: path.length, sewn: path.length },
    ...{ source: `${source}/${name}`, fromName: '', toName: '' },
  });
  const { before, after } = chain;
  const ends = endNames(chain);
  // a facing of a facing faces what is called inner itself
  const inner = chain.edges.some(({ edge }) => edge.name === INNER) ? `${INNER}${FURTHER}` : INNER;
  const edges = [
    ...chain.edges.map(({ edge }, i) => ({
      ...named(edge, strip.outer[i]!),
      ...{ fromName: edge.fromName, toName: edge.toName },
    })),
    named(after, strip.endSide, ends[1]),
    { ...named(after, strip.inner, inner), statement: request.statement },
    named(before, strip.startSide, ends[0]),
  ];
  const fold = [before, after].find(({ name }) => name === piece.fold?.edge);
  // one for each half, where the fold is no end of it
  const cut = piece.cut && (fold === undefined ? unfolded(piece.cut) : piece.cut);
  const { grain } = piece;
  return {
    ...blankPiece(request),
    draft: piece.draft,
    edges,
    corners: cornersOf(piece, chain, strip),
    area: areaOf(edges.map(({ path }) => path)),
    ...(cut && { cut }),
    ...(fold && { fold: { edge: fold.name, source: `${source}/${fold.name}` } }),
    ...(grain && { grain }),
    allowances: allowancesOf(piece, edges, inner),
    facing: { piece: piece.base, edges: chain.edges.map(({ edge }) => edge.name), depth: deep },
  };
}

/** Names of the edges at which it begins and ends: of one edge at both ends, or called as the inner one, no two alike. */
function endNames({ before, after }: Chain): readonly [string, string] {
  const own = ({ name }: Edge): string => (name === INNER ? `${name}${FURTHER}` : name);
  const [begins, ends] = [own(before), own(after)];
  return [begins === ends ? `${begins}${FURTHER}` : begins, ends];
}

/** What hangs from a facing's inner edge is made neat, and has no seam: it has no allowance of its own. */
function allowancesOf(piece: Piece, edges: readonly Edge[], inner: string): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const { name } of edges) {
    const width = piece.allowances.get(name);
    if (width !== undefined) found.set(name, width);
  }
  if (found.size > 0) found.set(inner, 0);
  return found;
}

/** Points of the piece's outline that the facing has as well. */
function cornersOf(piece: Piece, chain: Chain, strip: Strip): readonly Corner[] {
  const ends = new Map<string, Point>();
  chain.edges.forEach(({ edge }, i) => {
    const path = strip.outer[i]!;
    if (edge.fromName !== '' && !ends.has(edge.fromName)) ends.set(edge.fromName, path.start);
    if (edge.toName !== '') ends.set(edge.toName, path.end);
  });
  const known = new Set(piece.corners.map(({ name }) => name));
  const found = [...ends].filter(([name]) => known.has(name));
  return found.map(([name, point]) => ({ name, point }));
}

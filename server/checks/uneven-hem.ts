/** Finds hems whose ends do not lie on the edge of the piece when they are turned up. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Edge, Piece } from '../drafting/model';
import { apply, distance, mirror, add, scale, Path, type Point } from '../geometry';
import { printLength } from '../drafting/values/quantity';
import { isJudged } from './allowed';
import { finding, type Judged, type Judging } from './check';
import { edgeOfPiece } from './places';
import { isUsual, usualRange, rangeInWords, type Usual } from './usual';

const HEM_END: Usual = {
  name: 'hem-end',
  kind: 'length',
  low: 0,
  high: 3,
  standing: 'common practice: what is hidden in the seam',
};

export const unevenHem: Judged = {
  code: 'uneven-hem',
  severity: 'warning',
  title: 'A hem whose end does not lie on the piece when it is turned up',
  by: 'judgement',
  usual: [HEM_END],
  ofPiece: (piece, pattern) =>
    isJudged(piece) && piece.side !== 'left'
      ? piece.edges.flatMap((_, i) => atCorner(piece, i, pattern))
      : [],
};

/** The corner at the end of an edge, where just one of the two edges is a hem and the corner was mitred. */
function atCorner(piece: Piece, index: number, pattern: Judging): readonly Finding[] {
  const corner = piece.cutShape?.corners[index];
  if (corner?.kind !== 'mitred') return [];
  const [before, after] = [piece.edges[index]!, piece.edges[(index + 1) % piece.edges.length]!];
  const [one, other] = [piece.hems.has(before.name), piece.hems.has(after.name)];
  const [hem, seam] = one ? [before, after] : [after, before];
  if (hem.name.endsWith('-other') || one === other || piece.fold?.edge === seam.name) return [];
  const folded = foldedOver(piece, hem, corner.at, corner.tip, hem === after);
  const off = folded === undefined ? 0 : offEdge(piece, seam, folded);
  const range = usualRange(pattern, HEM_END);
  if (isUsual(range, off)) return [];
  const message = say`Turned up, the end of ${piece.base}.${hem.name} lies ${printLength(off, pattern.unit)} beside the edge of ${seam.name} (${rangeInWords(range, pattern.unit)}), so the hem is too wide or too short there. Let the corner be turned back (leave out what is said of it), or draw ${seam.name} squarer to ${hem.name} at its end.`;
  return [finding('uneven-hem', edgeOfPiece(hem), message, { piece: piece.name })];
}

/** Where the tip of the hem's allowance comes to lie. Folded twice, it lies under the fold again, one depth above. */
function foldedOver(piece: Piece, hem: Edge, at: Point, tip: Point, begins: boolean): Point | undefined {
  const along = hem.path.tangentAt(begins ? 0 : hem.path.length, begins ? 'after' : 'before');
  if (distance(at, tip) === 0) return undefined;
  const over = apply(mirror(at, add(at, along)), tip);
  if (piece.hems.get(hem.name) === 1) return over;
  const across = { x: -along.y, y: along.x };
  const depth = (over.x - at.x) * across.x + (over.y - at.y) * across.y;
  return add(tip, scale(across, depth));
}

/** How far a place lies from the cutting line of an edge, run on straight. */
function offEdge(piece: Piece, edge: Edge, at: Point): number {
  const cut = piece.cutting?.[piece.edges.indexOf(edge)];
  if (cut === undefined) return 0;
  const reach = distance(cut.start, at) + distance(cut.end, at);
  const onward = (from: Point, along: Point): Path => Path.line(from, add(from, scale(along, reach)));
  const long = onward(cut.start, scale(cut.tangentAt(0), -1))
    .reversed()
    .joinedTo(cut)
    .joinedTo(onward(cut.end, cut.tangentAt(cut.length, 'before')));
  return long.locate(at).distance;
}

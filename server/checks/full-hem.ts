/** Finds hems that are turned up along a curve too round for their depth. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Edge, Piece } from '../drafting/model';
import { hemFullness, type HemFullness } from '../drafting/sewing/hem';
import { printLength } from '../drafting/values/quantity';
import { isJudged } from './allowed';
import { finding, type Judged, type Judging } from './check';
import { edgeOfPiece } from './places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const HEM_FULLNESS: Usual = {
  name: 'hem-fullness',
  kind: 'ratio',
  low: -0.04,
  high: 0.03,
  standing: 'common practice: 1% lies flat, 3% is eased in with the iron; 4% is stretched (from memory)',
};

export const fullHem: Judged = {
  code: 'full-hem',
  severity: 'warning',
  title: 'A hem too deep for its curve',
  by: 'judgement',
  usual: [HEM_FULLNESS],
  ofPiece: (piece, pattern) =>
    isJudged(piece) && piece.side !== 'left'
      ? piece.edges.flatMap((edge) => ofEdge(piece, edge, pattern))
      : [],
};

/** So narrow a hem is rolled or eased in along any curve (common practice), mm. */
const NARROW = 15;

function ofEdge(piece: Piece, edge: Edge, pattern: Judging): readonly Finding[] {
  const hem = hemFullness(piece, edge.name);
  const range = usualRange(pattern, HEM_FULLNESS);
  // the other half of an open piece has the same hem
  if (edge.name.endsWith('-other')) return [];
  if (hem === undefined || hem.depth <= NARROW || isUsual(range, hem.share)) return [];
  const words = rangeInWords(range, pattern.unit);
  return [
    finding('full-hem', edgeOfPiece(edge), said(piece, edge, hem, words, pattern), { piece: piece.name }),
  ];
}

function said(
  piece: Piece,
  edge: Edge,
  { depth, share }: HemFullness,
  range: string,
  { unit }: Judging,
): string {
  const by = `${printLength(Math.abs(share) * edge.path.length, unit)} (${Math.round(Math.abs(share) * 1000) / 10}%)`;
  const more = share > 0;
  return say`Turned up ${printLength(depth, unit)}, the edge of ${piece.base}.${edge.name} is ${by} ${more ? say`longer` : say`shorter`} than where it is sewn down, for ${edge.name} is curved: ${range}. It ${more ? say`falls in folds` : say`pulls`}. Turn it up no more than ${printLength(NARROW, unit)}, or face it.`;
}

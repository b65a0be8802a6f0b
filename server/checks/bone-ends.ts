/** Finds bones that end so near a seam that the needle would meet them. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Mark, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { lineIntersections, scale, type Path, type Point } from '../geometry';
import { finding, type Judged, type Judging } from './check';
import { nameOfMark } from './places';
import { rangeInWords, usualRange, type Usual } from './usual';

const SHORT: Usual = {
  name: 'bone-short',
  kind: 'length',
  low: 5,
  high: 8,
  standing: 'common practice: from the end of the bone to the sewing line',
};

export const boneEnds: Judged = {
  code: 'bone-ends',
  severity: 'note',
  title: 'A bone that ends at a seam',
  by: 'judgement',
  usual: [SHORT],
  ofPiece: (piece, pattern) =>
    piece.marks.flatMap((mark) =>
      mark.word === 'bone' ? mark.paths.flatMap((path) => ends(piece, mark, path, pattern)).slice(0, 1) : [],
    ),
};

function ends(piece: Piece, mark: Mark, path: Path, pattern: Judging): readonly Finding[] {
  const range = usualRange(pattern, SHORT);
  const left = [
    leftBefore(piece, path.start, scale(path.tangentAt(0), -1)),
    leftBefore(piece, path.end, path.tangentAt(path.length)),
  ];
  const missing = left.map((room) => Math.max(0, range.low - room));
  if (Math.max(...missing) < 1e-6) return [];
  const { unit } = pattern;
  const cut = path.length - left.reduce((sum, room) => sum + (room < range.low ? range.low - room : 0), 0);
  const message = say`${mark.name} ends ${printLength(Math.min(...left), unit)} before the sewing line (${rangeInWords(range, unit)}): the needle meets the bone. The channel may run through; cut the bone itself no longer than ${printLength(cut, unit)}.`;
  return [finding('bone-ends', nameOfMark(mark), message, { piece: piece.name })];
}

/** From an end straight on to the first edge; 0 where the end lies on one. */
function leftBefore({ edges }: Piece, end: Point, on: Point): number {
  const hits = edges.flatMap(({ path }) => lineIntersections(end, on, path).map(({ u }) => u));
  const ahead = hits.filter((u) => u > -ON_EDGE);
  return Math.max(0, Math.min(...ahead, Infinity));
}

/** An end lies on the edge to within rounding, mm. */
const ON_EDGE = 0.05;

/** Finds holes that do not lie within their piece, or that run into each other. */
import { say } from '../../grammar/say';
import type { Hole, Piece } from '../drafting/model';
import { contains, intersections } from '../geometry';
import { finding, type Judged } from './check';
import { nameOfMark } from './places';

export const holeOutside: Judged = {
  code: 'hole-outside',
  severity: 'error',
  title: 'A hole that does not lie within its piece',
  by: 'judgement',
  ofPiece: (piece) =>
    piece.holes.flatMap((hole, i) => {
      const why = whyNot(piece, hole, piece.holes.slice(0, i));
      if (why === undefined) return [];
      const message = say`${why}, so it can't be cut out of it. Look at the points between which its edges run.`;
      return [finding('hole-outside', nameOfMark(hole), message, { piece: piece.name })];
    }),
};

function whyNot(piece: Piece, hole: Hole, others: readonly Hole[]): string | undefined {
  const name = say`The hole ${hole.name}`;
  const over = piece.edges.find((edge) => meets(hole, edge.path));
  if (over !== undefined) return say`${name} reaches over ${over.name} of ${piece.name}`;
  const outline = piece.edges.map(({ path }) => path);
  const [start] = hole.edges;
  if (start !== undefined && !contains(outline, start.path.start))
    return say`${name} lies outside ${piece.name}`;
  const other = others.find((one) => overlaps(hole, one));
  return other && say`${name} runs into the hole ${other.name}`;
}

const meets = ({ edges }: Hole, path: Hole['edges'][number]['path']): boolean =>
  edges.some((edge) => intersections(edge.path, path).length > 0);

function overlaps(one: Hole, other: Hole): boolean {
  if (other.edges.some(({ path }) => meets(one, path))) return true;
  const within = (inner: Hole, outer: Hole): boolean =>
    contains(
      outer.edges.map(({ path }) => path),
      inner.edges[0]!.path.start,
    );
  return within(one, other) || within(other, one);
}

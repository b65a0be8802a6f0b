/** Finds marks that lie beside their piece: on paper they would be drawn where no cloth is. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Mark, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { contains, type Path, type Point } from '../geometry';
import { finding, type Judged, type Judging } from './check';
import { nameOfMark } from './places';

export const markOutside: Judged = {
  code: 'mark-outside',
  severity: 'warning',
  title: 'A mark that lies outside its piece',
  by: 'judgement',
  ofPiece: (piece, pattern) =>
    piece.marks.length === 0 || piece.gaps.length > 0
      ? []
      : piece.marks.flatMap((mark) => outside(piece, mark, pattern)),
};

/** Beyond the cloth by less than this is drawn on its edge, mm. */
const ON_EDGE = 0.5;

function outside(piece: Piece, mark: Mark, { unit }: Judging): readonly Finding[] {
  // marks may lie in the allowance: where a hem is turned up over them, say
  const cloth = piece.cutting ?? piece.edges.map(({ path }) => path);
  const holes = piece.holes.map(({ cutting, edges }) => cutting ?? edges.map(({ path }) => path));
  const spots = [...mark.points, ...(mark.points.length > 0 ? [] : mark.paths.flatMap(spotsOf))];
  const away = Math.max(0, ...spots.map((spot) => offCloth(spot, cloth, holes)));
  if (away <= ON_EDGE) return [];
  const lies =
    mark.row === undefined ? say`The ${mark.word} ${mark.name} lies` : say`Some of ${mark.name} lie up to`;
  const message = say`${lies} ${printLength(away, unit)} off the cloth of ${piece.name}, where nothing can be marked. Move it onto the piece, or mark it on the piece that lies there.`;
  return [finding('mark-outside', nameOfMark(mark), message, { piece: piece.name })];
}

/** How far a place lies from the cloth, mm; 0 on it. */
function offCloth(spot: Point, cloth: readonly Path[], holes: readonly (readonly Path[])[]): number {
  const hole = holes.find((one) => contains(one, spot));
  if (hole !== undefined) return nearest(spot, hole);
  return contains(cloth, spot) ? 0 : nearest(spot, cloth);
}

const nearest = (spot: Point, paths: readonly Path[]): number =>
  Math.min(...paths.map((path) => path.locate(spot).distance));

const spotsOf = (path: Path): readonly Point[] =>
  [0, 0.25, 0.5, 0.75, 1].map((share) => path.pointAt(share * path.length));

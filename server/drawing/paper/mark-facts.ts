/** What is told of each mark of a printed piece, and along which line its words may stand. */
import type { Mark, Piece } from '../../drafting/model';
import type { Point } from '../../geometry';
import { BONE, markTold } from '../marks';
import type { Around } from '../draw';
import type { Spot } from '../model';
import { rounded } from '../path';
import { BESIDE_MM } from './along';
import { textHigh } from './space';

export interface MarkFacts {
  readonly source: string;
  readonly name: string;
  /** "lacing-holes, 11 eyelets, 2.7cm apart" */
  readonly text: string;
  readonly run: readonly Spot[];
  /** How far from the run the words are tried, beyond what words along a line keep from it, mm. */
  readonly farther: readonly number[];
}

/** Lines that are named on themselves. */
const NAMED: ReadonlySet<Mark['word']> = new Set(['tape', 'topstitch', 'crease']);
/** Words beside a sign that has a place and no way: how long the level line is along which they stand. */
const LEVEL_MM = 240;
/** From the middle of a bone's channel to where words stand in it: on its middle. */
const INSIDE_MM = -(BESIDE_MM + textHigh(2.65) / 2);

export const markFacts = (piece: Piece, around: Pick<Around, 'unit'>): readonly MarkFacts[] =>
  piece.marks
    .filter(({ word }) => !NAMED.has(word))
    .map((mark) => ({
      source: mark.source,
      name: mark.name,
      text: markTold(mark, around),
      run: runOf(mark).map(({ x, y }) => ({ x: rounded(x), y: rounded(y) })),
      farther: fartherOf(mark),
    }));

/** Along the line that it is, or along the row; of a single place level through it. */
function runOf({ points, paths, row }: Mark): readonly Point[] {
  if (paths.length === 1) return paths[0]!.polyline(0.2);
  const places =
    row === undefined ? [] : points.length > 1 ? points : paths.map((path) => path.pointAt(path.length / 2));
  if (places.length > 1) return places;
  const { x, y } = points[0] ?? paths[0]!.start;
  return [
    { x: x - LEVEL_MM / 2, y },
    { x: x + LEVEL_MM / 2, y },
  ];
}

function fartherOf({ word, points, paths, size = 0 }: Mark): readonly number[] {
  const beyond = (half: number): number[] => [0, 1.5, 3.5, 6, 9].map((more) => half + more);
  if (word === 'bone' && paths.length === 1) return [INSIDE_MM, ...beyond(BONE)];
  if (paths.length > 1) return beyond(Math.max(...paths.map(({ length }) => length)) / 2);
  return beyond(points.length === 0 ? 0 : Math.max(4, size / 2));
}

/** One piece drafted for each side of the wearer: a pair, when they are alike; two pieces, when they are not. */
import { say } from '../../../grammar/say';
import { distance, mirror, type Path, type Point } from '../../geometry';
import type { Piece } from '../model';
import { sidedCut } from './cut-words';
import { moved } from './moved';
import { opened } from './opened';

/** Two sides whose points lie no further apart are cut as one pair, from the larger (language reference, sides). */
export const ALIKE_WITHIN = 1.5;

/** Places compared along every line, beside its ends. */
const COMPARED = 8;

/**
 * The greatest distance between corresponding points of two pieces drafted alike, with all that is drawn on them.
 *
 * @param enough where they lie further apart than this, nobody asks by how much
 */
function greatestDifference(one: Piece, other: Piece, enough: number): number {
  let greatest = 0;
  const [lines, twins] = [linesOf(one), linesOf(other)];
  for (let i = 0; i < Math.min(lines.length, twins.length) && greatest <= enough; i++)
    greatest = Math.max(greatest, linesApart(lines[i]!, twins[i]!));
  const [spots, places] = [spotsOf(one), spotsOf(other)];
  for (let i = 0; i < Math.min(spots.length, places.length) && greatest <= enough; i++)
    greatest = Math.max(greatest, distance(spots[i]!, places[i]!));
  return greatest;
}

const linesOf = ({ edges, holes, balance, marks }: Piece): readonly Path[] => [
  ...edges.map(({ path }) => path),
  ...holes.flatMap((hole) => hole.edges.map(({ path }) => path)),
  ...balance.map(({ path }) => path),
  ...marks.flatMap(({ paths }) => paths),
];

const spotsOf = ({ darts, marks, labels, shaping }: Piece): readonly Point[] => [
  ...darts.flatMap(({ tip, pivot }) => [tip, pivot]),
  ...marks.flatMap(({ points }) => points),
  ...labels.flatMap(({ at }) => at ?? []),
  ...(shaping?.fishDarts ?? []).flatMap(({ from, to, left, right }) => [from, to, left, right]),
];

function linesApart(line: Path, twin: Path): number {
  let greatest = 0;
  for (let k = 0; k <= COMPARED; k++) {
    const share = k / COMPARED;
    greatest = Math.max(
      greatest,
      distance(line.pointAt(share * line.length), twin.pointAt(share * twin.length)),
    );
  }
  return greatest;
}

const UPRIGHT = mirror({ x: 0, y: 0 }, { x: 0, y: 1 });

/** A piece as it is when the paper is turned over. */
export const turnedOver = (piece: Piece): Piece => moved(piece, UPRIGHT);

const fromLarger = (side: 'left' | 'right'): string =>
  side === 'left'
    ? say`for both sides, from the left, which is the larger`
    : say`for both sides, from the right, which is the larger`;

/**
 * What is cut of a piece drafted for both sides. The first is as the draft is drawn, the other turned over.
 *
 * @param drawn the piece for the side its draft is drawn for
 */
export function ofBothSides(drawn: Piece, other: Piece, side: 'left' | 'right'): readonly Piece[] {
  const otherSide = side === 'right' ? 'left' : 'right';
  if (drawn.fold !== undefined && other.fold !== undefined) return [opened(drawn, other)];
  const greatest = greatestDifference(drawn, other, ALIKE_WITHIN);
  if (greatest <= ALIKE_WITHIN) {
    const larger = other.area > drawn.area ? otherSide : side;
    const chosen = larger === side ? drawn : other;
    return [greatest > 1e-6 ? { ...chosen, remarks: [fromLarger(larger)] } : chosen];
  }
  return [oneSide(drawn, side), turnedOver(oneSide(other, otherSide))];
}

function oneSide(piece: Piece, side: 'left' | 'right'): Piece {
  const cut = piece.cut && sidedCut(piece.cut, side);
  return { ...piece, name: `${piece.name}-${side}`, side, ...(cut && { cut }) };
}

/** Fold edges that differ by more than this can't be one line down the middle of an open piece. */
export const FOLDS_WITHIN = 0.5;

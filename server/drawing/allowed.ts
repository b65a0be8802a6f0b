/** What an edge's tip says of its allowance and its hem. */
import { say } from '../../grammar/say';
import type { Piece } from '../drafting/model';
import { allowanceAt } from '../drafting/pieces/widths';
import { hemFullness } from '../drafting/sewing/hem';
import { printLength } from '../drafting/values/quantity';
import type { Around } from './draw';

/** Where nothing is stated nothing is said; of a fold neither. */
export function allowedWords(piece: Piece, edge: string, around: Pick<Around, 'unit'>): string {
  const widths = allowedWidths(piece, edge, around);
  if (widths === undefined) return '';
  const [least, most] = widths;
  const hem = fullnessWords(piece, edge);
  return least === most ? say`, allowed ${most}${hem}` : say`, allowed ${least} to ${most}${hem}`;
}

/** From one width to another, `1.5cm`; the same twice where it does not run. */
export type Widths = readonly [from: string, to: string];

/** Its least and its greatest width; undefined where none is stated, and for a fold. */
export function allowedWidths(piece: Piece, edge: string, around: Pick<Around, 'unit'>): Widths | undefined {
  const widths = widthsAlong(piece, edge);
  return widths && range(Math.min(...widths), Math.max(...widths), around);
}

/** The widths as they are met along the edge and against it; one that swells and shrinks again from the least to the most. */
export function allowedBothWays(
  piece: Piece,
  edge: string,
  around: Pick<Around, 'unit'>,
): readonly [along: Widths, against: Widths] | undefined {
  const widths = widthsAlong(piece, edge);
  if (widths === undefined) return undefined;
  const [first, last] = [widths[0]!, widths[widths.length - 1]!];
  const [least, most] = [Math.min(...widths), Math.max(...widths)];
  const swells = Math.min(first, last) - least > SAME || most - Math.max(first, last) > SAME;
  return swells
    ? [range(least, most, around), range(least, most, around)]
    : [range(first, last, around), range(last, first, around)];
}

/** Widths from the start of an edge to its end. */
function widthsAlong(piece: Piece, edge: string): readonly number[] | undefined {
  const running = piece.running.filter((one) => one.edge === edge);
  const stated = piece.allowances.has(edge) || running.length > 0;
  if (!stated || piece.fold?.edge === edge) return undefined;
  const own = [...piece.edges, ...piece.holes.flatMap(({ edges }) => edges)].find(
    ({ name }) => name === edge,
  );
  const length = own?.path.length ?? 0;
  const places = running.flatMap(({ from, to }) => [from, (from + to) / 2, to]);
  const all = running.length === 0 ? [0] : [0, ...places.sort((a, b) => a - b), length];
  return all.map((s) => allowanceAt(piece, edge, s));
}

/** Widths that differ by less are one, mm. */
const SAME = 0.05;

function range(from: number, to: number, { unit }: Pick<Around, 'unit'>): Widths {
  const isOne = Math.abs(to - from) < SAME;
  const most = Math.max(from, to);
  return [printLength(isOne ? most : from, unit), printLength(isOne ? most : to, unit)];
}

/** Below this a turned hem lies flat (common practice). */
const FLAT = 0.01;

/** How a hem lies that is turned up, where it does not lie flat; begins with a comma. */
export function fullnessWords(piece: Piece, edge: string): string {
  const words = hemWords(piece, edge);
  return words === '' ? '' : say`, turned up ${words}`;
}

/** The same by itself: "8% fuller than where it lies: ease it in"; empty where the hem lies flat. */
export function hemWords(piece: Piece, edge: string): string {
  const share = hemFullness(piece, edge)?.share ?? 0;
  if (Math.abs(share) < FLAT) return '';
  const percent = `${Math.round(Math.abs(share) * 1000) / 10}%`;
  return share > 0
    ? say`${percent} fuller than where it lies: ease it in`
    : say`${percent} shorter than where it lies: stretch it`;
}

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

/** Its least and its greatest width, `1.5cm`; undefined where none is stated, and for a fold. */
export function allowedWidths(
  piece: Piece,
  edge: string,
  { unit }: Pick<Around, 'unit'>,
): readonly [least: string, most: string] | undefined {
  const running = piece.running.filter((one) => one.edge === edge);
  const stated = piece.allowances.has(edge) || running.length > 0;
  if (!stated || piece.fold?.edge === edge) return undefined;
  const own = [...piece.edges, ...piece.holes.flatMap(({ edges }) => edges)].find(
    ({ name }) => name === edge,
  );
  const length = own?.path.length ?? 0;
  const places = running.flatMap(({ from, to }) => [from, (from + to) / 2, to]);
  const widths = running.length === 0 ? [0] : [0, ...places, length];
  const found = widths.map((s) => allowanceAt(piece, edge, s));
  const [least, most] = [Math.min(...found), Math.max(...found)];
  return [printLength(most - least < 0.05 ? most : least, unit), printLength(most, unit)];
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

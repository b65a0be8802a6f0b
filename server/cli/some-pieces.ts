/** `--pieces`: some pieces of a drawing, laid anew. */
import { say } from '../../grammar/say';
import { place } from '../drawing/draw';
import type { Drawing } from '../drawing/model';
import { Unable } from './io';

/** A name that is no piece is said. */
export function somePieces(drawing: Drawing, names: readonly string[] | undefined): Drawing {
  if (names === undefined) return drawing;
  const known = drawing.pieces.map(({ name }) => name);
  const lost = names.find((name) => !known.includes(name));
  if (lost !== undefined) throw new Unable(say`No piece is called ${lost}. Pieces are ${known.join(', ')}.`);
  const pieces = drawing.pieces.filter(({ name }) => names.includes(name));
  return { ...drawing, pieces, ...place(pieces) };
}

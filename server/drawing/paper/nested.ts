/** A nest of sizes as it is printed: as it is drawn, made smaller where that is asked for. */
import { scaling } from '../../geometry';
import { place } from '../draw';
import type { Drawing } from '../model';
import { mappedPiece, quarterTurned } from './mapped';
import type { Printed, PrintedOptions } from './printed';

export function nested(drawing: Drawing, { scale = 1, pieces: names }: PrintedOptions): Printed {
  const wanted = drawing.pieces.filter(({ name }) => names === undefined || names.includes(name));
  const smaller = scaling({ x: 0, y: 0 }, 1 / scale);
  const pieces = scale === 1 ? wanted : wanted.map((piece) => mappedPiece(piece, smaller));
  return { drawing: { ...drawing, pieces, ...place(pieces) }, turn: quarterTurned };
}

/** How wide the allowance of an edge is at a place. */
import type { Piece } from '../model';

type Widths = Pick<Piece, 'allowances' | 'running' | 'inlays'>;

/** Millimetres between sewing line and the end of the allowance, `s` millimetres along the edge as drawn. */
export function allowanceAt({ allowances, running }: Widths, edge: string, s: number): number {
  const usual = allowances.get(edge) ?? 0;
  if (running.length === 0) return usual;
  const own = running.filter((one) => one.edge === edge).sort((a, b) => a.from - b.from);
  let width = own[0] === undefined || own[0].stepped === true ? usual : own[0].widthFrom;
  for (const { from, to, widthFrom, widthTo, stepped } of own) {
    if (s < from) break;
    if (s <= to) return widthFrom + ((widthTo - widthFrom) * (s - from)) / (to - from || 1);
    width = stepped === true ? usual : widthTo;
  }
  return width;
}

/** To the cutting line: with what can be let out. */
export const cutWidthAt = (piece: Widths, edge: string, s: number): number =>
  allowanceAt(piece, edge, s) + (piece.inlays?.get(edge) ?? 0);

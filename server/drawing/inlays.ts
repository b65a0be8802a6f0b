/** Inlays: cloth left beyond an allowance to let out. A thin line within the cutting line says where the allowance ends. */
import { say } from '../../grammar/say';
import type { Piece } from '../drafting/model';
import { allowanceAt } from '../drafting/pieces/widths';
import { printLength } from '../drafting/values/quantity';
import { signedArea } from '../geometry';
import type { Around } from './draw';
import type { DrawnLine, DrawnText } from './model';
import { pathLine, rounded } from './path';

export function inlayLines(piece: Piece, { unit }: Pick<Around, 'unit'>): DrawnLine[] {
  return (piece.cutShape?.inlayLines ?? []).map(({ edge, path }) => {
    const wide = printLength(piece.inlays?.get(edge) ?? 0, unit);
    const source = piece.edges.find(({ name }) => name === edge)?.source ?? piece.source;
    const tip = say`${edge}, end of the allowance; beyond it an inlay of ${wide} to let out`;
    return pathLine('inlay', path, { name: edge, source, tip });
  });
}

/** Height of capitals against the width of the inlay in which they stand, and their greatest, mm. */
const SHARE = 0.4;
const LARGEST = 4;

/** How wide the inlay is, written along its middle where there is room. */
export function inlayWords(piece: Piece, { unit }: Pick<Around, 'unit'>): DrawnText[] {
  const outward = signedArea(piece.edges.map(({ path }) => path)) < 0 ? -1 : 1;
  return (piece.cutShape?.inlayLines ?? []).flatMap(({ edge }): DrawnText[] => {
    const own = piece.edges.find(({ name }) => name === edge);
    const wide = piece.inlays?.get(edge) ?? 0;
    if (own === undefined) return [];
    const text = say`inlay ${printLength(wide, unit)}`;
    const size = Math.min(LARGEST, SHARE * wide);
    const { path } = own;
    if (text.length * size > path.length) return [];
    const at = path.pointAt(path.length / 2);
    const along = path.tangentAt(path.length / 2);
    const turn = (Math.atan2(along.y, along.x) * 180) / Math.PI;
    const upright = turn > 90.001 || turn <= -89.999 ? turn + 180 : turn;
    const out = { x: along.y * outward, y: -along.x * outward };
    const radians = (upright * Math.PI) / 180;
    // the base line lies half a capital below the middle of the strip
    const down = { x: -Math.sin(radians), y: Math.cos(radians) };
    const off = allowanceAt(piece, edge, path.length / 2) + wide / 2;
    return [
      {
        role: 'edge',
        source: own.source,
        text,
        at: {
          x: rounded(at.x + out.x * off + (down.x * size) / 2),
          y: rounded(at.y + out.y * off + (down.y * size) / 2),
        },
        size: rounded(size),
        turn: rounded(((upright + 540) % 360) - 180),
      },
    ];
  });
}

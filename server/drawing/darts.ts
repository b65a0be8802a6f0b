/** Darts: both legs to the sewn tip, the fold down the middle to the roof, a dot at the pivot. */
import type { Dart, Piece } from '../drafting/model';
import { roof } from '../drafting/pieces/roof';
import { truedInWords } from '../drafting/pieces/truing';
import { printLength } from '../drafting/values/quantity';
import { distance, midpoint, Path } from '../geometry';
import type { Around } from './draw';
import type { DrawnDot, DrawnLine } from './model';
import { pathLine, spot } from './path';

export const dartLines = (piece: Piece, around: Around): DrawnLine[] =>
  piece.darts.flatMap((dart) => {
    const { name, source, tip, from, to } = dart;
    const words = { name, source, tip: told(dart, piece, around) };
    const middle = roofOf(piece, dart)[0] ?? midpoint(from, to);
    return [
      pathLine('dart', Path.polyline([from, tip, to]), words),
      pathLine('balance', Path.line(tip, middle), { ...words, tip: `${name}, fold` }),
    ];
  });

/** Four legs, and the fold from point to point. */
export const fishDartLines = (piece: Piece, { unit }: Around): DrawnLine[] =>
  (piece.shaping?.fishDarts ?? []).flatMap(({ name, source, from, to, left, right, width }) => {
    const long = printLength(distance(from, to), unit);
    const words = { name, source, tip: `${name}, fish dart, ${printLength(width, unit)} wide, ${long} long` };
    return [
      { ...pathLine('dart', Path.polyline([from, left, to, right, from]), words), closed: true },
      pathLine('balance', Path.line(from, to), { ...words, tip: `${name}, fold` }),
    ];
  });

/** Where the dart swings, when its legs stop short of it. */
export const dartDots = (piece: Piece): DrawnDot[] =>
  piece.darts
    .filter(({ pivot, tip }) => distance(pivot, tip) > 0.5)
    .map(({ name, source, pivot }) => ({ role: 'mark', source, name: `${name} pivot`, at: spot(pivot) }));

function roofOf(piece: Piece, dart: Dart): readonly { x: number; y: number }[] {
  const edge = piece.edges.find(({ name }) => name === dart.edge);
  const index = edge?.parts.findIndex((part) => part.dart === dart.name) ?? -1;
  return roof(dart, edge?.parts[index - 1]?.path, edge?.parts[index + 1]?.path);
}

/** "inner, dart, 27.6mm wide, legs 14.1cm, waist trued: it bent 3.4°, legs moved up to 1.5mm, 18.42cm before" */
function told(dart: Dart, piece: Piece, { unit }: Around): string {
  const legs = printLength(distance(dart.from, dart.pivot), unit);
  const short = distance(dart.pivot, dart.tip);
  const stops = short > 0.05 ? `, sewn to ${printLength(short, unit)} short` : '';
  const wide = `${dart.name}, dart, ${printLength(dart.width, unit)} wide, legs ${legs}${stops}`;
  const trued = piece.trued.find(({ edge }) => edge === dart.edge);
  return trued === undefined ? wide : `${wide}, ${truedInWords(trued, unit)}`;
}

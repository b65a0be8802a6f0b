/** Darts: both legs to the sewn tip, the fold down the middle to the roof, a dot at the pivot. */
import type { Dart, Piece } from '../drafting/model';
import { roof } from '../drafting/pieces/roof';
import { printLength } from '../drafting/values/quantity';
import { distance, midpoint, Path } from '../geometry';
import type { Around } from './draw';
import type { DrawnDot, DrawnLine } from './model';
import { pathLine, spot } from './path';

export const dartLines = (piece: Piece, around: Around): DrawnLine[] =>
  piece.darts.flatMap((dart) => {
    const { name, source, tip, from, to } = dart;
    const words = { name, source, tip: told(dart, around) };
    const middle = roofOf(piece, dart)[0] ?? midpoint(from, to);
    return [
      pathLine('dart', Path.polyline([from, tip, to]), words),
      pathLine('balance', Path.line(tip, middle), { ...words, tip: `${name}, fold` }),
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

/** "inner, dart, 27.6mm wide, legs 14.1cm, edge trued by 1.5mm" */
function told(dart: Dart, { unit }: Around): string {
  const legs = printLength(distance(dart.from, dart.pivot), unit);
  const short = distance(dart.pivot, dart.tip);
  const stops = short > 0.05 ? `, sewn to ${printLength(short, unit)} short` : '';
  return `${dart.name}, dart, ${printLength(dart.width, unit)} wide, legs ${legs}${stops}`;
}

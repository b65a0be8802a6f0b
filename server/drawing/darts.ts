/** Darts: both legs to the sewn tip, the fold down the middle to the roof, a dot at the pivot. */
import { say } from '../../grammar/say';
import type { Dart, Piece } from '../drafting/model';
import { roof } from '../drafting/pieces/roof';
import { dartInWords, dartTruedInWords, fishDartInWords } from '../drafting/pieces/told';
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
      pathLine('balance', Path.line(tip, middle), { ...words, tip: say`${name}, fold` }),
    ];
  });

/** Four legs, and the fold from point to point. */
export const fishDartLines = (piece: Piece, { unit }: Around): DrawnLine[] =>
  (piece.shaping?.fishDarts ?? []).flatMap((dart) => {
    const { name, source, from, to, left, right } = dart;
    const words = { name, source, tip: `${name}, ${fishDartInWords(dart, unit)}` };
    return [
      { ...pathLine('dart', Path.polyline([from, left, to, right, from]), words), closed: true },
      pathLine('balance', Path.line(from, to), { ...words, tip: say`${name}, fold` }),
    ];
  });

/** Where the dart swings, when its legs stop short of it. */
export const dartDots = (piece: Piece): DrawnDot[] =>
  piece.darts
    .filter(({ pivot, tip }) => distance(pivot, tip) > 0.5)
    .map(({ name, source, pivot }) => ({ role: 'mark', source, name: say`${name} pivot`, at: spot(pivot) }));

function roofOf(piece: Piece, dart: Dart): readonly { x: number; y: number }[] {
  const edge = piece.edges.find(({ name }) => name === dart.edge);
  const index = edge?.parts.findIndex((part) => part.dart === dart.name) ?? -1;
  return roof(dart, edge?.parts[index - 1]?.path, edge?.parts[index + 1]?.path);
}

/** "inner, dart, 27.6mm wide, legs 14.1cm, waist trued: it bent 3.4°, moved by up to 1.5mm, 18.42cm before" */
function told(dart: Dart, piece: Piece, { unit }: Around): string {
  const wide = `${dart.name}, ${dartInWords(dart, unit)}`;
  const trued = dartTruedInWords(piece, dart, unit);
  return trued === undefined ? wide : `${wide}, ${trued}`;
}

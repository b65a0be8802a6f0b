/** What shapes a piece, in words for whoever points at it: in the drawing and in the text alike. */
import { say } from '../../../grammar/say';
import { distance } from '../../geometry';
import type { Dart, DisplayUnit, FishDart, Gathers, Piece, Pleats, Trued } from '../model';
import { printLength, printLengthFine } from '../values/quantity';

/** "dart, 27.6mm wide, legs 14.1cm, sewn to 2.5cm short" */
export function dartInWords(dart: Dart, unit: DisplayUnit): string {
  const legs = printLength(distance(dart.from, dart.pivot), unit);
  const short = distance(dart.pivot, dart.tip);
  const stops = short > 0.05 ? say`, sewn to ${printLength(short, unit)} short` : '';
  return say`dart, ${printLength(dart.width, unit)} wide, legs ${legs}${stops}`;
}

/** What truing did to the edge that a dart lies on; undefined where it was not trued. */
export function dartTruedInWords(piece: Piece, dart: Dart, unit: DisplayUnit): string | undefined {
  const trued = piece.trued.find(({ edge }) => edge === dart.edge);
  return trued && truedInWords(trued, dart, unit);
}

/** Less than this, mm, is not said. */
const SEEN = 0.005;

/** "legs made equal by 1.2mm; waist trued: it bent 3.4°, moved by up to 1.5mm, 18.42cm before" */
function truedInWords({ edge, kinks, moved, sewnBefore }: Trued, dart: Dart, unit: DisplayUnit): string {
  const legs = dart.legsApart < SEEN ? '' : say`legs made equal by ${printLength(dart.legsApart, unit)}; `;
  if (moved < SEEN) return say`${legs}${edge} runs on when it is closed`;
  const bend = kinks.reduce((most, kink) => Math.max(most, Math.abs(kink)), 0);
  const bent = say`it bent ${Math.round(bend * 10) / 10}°`;
  return say`${legs}${edge} trued: ${bent}, moved by up to ${printLength(moved, unit)}, ${printLengthFine(sewnBefore, unit)} before`;
}

/** "fish dart, 2cm wide, 20cm long: what crosses it is sewn 2cm shorter at most" */
export const fishDartInWords = ({ from, to, width }: FishDart, unit: DisplayUnit): string =>
  say`fish dart, ${printLength(width, unit)} wide, ${printLength(distance(from, to), unit)} long: a line across it is sewn up to ${printLength(width, unit)} shorter`;

/** "3 knife pleats" */
export function pleatCount(form: Pleats['form'], count: number): string {
  switch (form) {
    case 'knife':
      return count === 1 ? say`1 knife pleat` : say`${count} knife pleats`;
    case 'box':
      return count === 1 ? say`1 box pleat` : say`${count} box pleats`;
    case 'inverted':
      return count === 1 ? say`1 inverted pleat` : say`${count} inverted pleats`;
  }
}

/** "3 knife pleats, each takes 4cm, added, stitched down 8cm" */
export function pleatsInWords({ form, places, taking, added, stitched }: Pleats, unit: DisplayUnit): string {
  const count = pleatCount(form, places.length);
  const down = stitched > 0 ? say`, stitched down ${printLength(stitched, unit)}` : '';
  const each = printLength(taking, unit);
  return added
    ? say`${count}, each takes ${each}, added${down}`
    : say`${count}, each takes ${each}, out of the width drawn${down}`;
}

/** "gathers, 40cm drawn up to 18cm (2.22 to 1)" */
export const gathersInWords = ({ flat, gathered }: Gathers, unit: DisplayUnit): string =>
  say`gathers, ${printLength(flat, unit)} drawn up to ${printLength(gathered, unit)} (${Math.round((flat / gathered) * 100) / 100} to 1)`;

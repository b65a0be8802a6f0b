/** The measuring sheet as JSON: millimetres, null for what was not taken. */
import { rounded } from './json';
import type { MeasuringSheet } from '../../drawing/written/measuring';

const VERSION = 1;

const length = (mm: number | null): number | null => (mm === null ? null : rounded(mm));

export function sheetJson({ title, body, taken, lines }: MeasuringSheet): unknown {
  return {
    version: VERSION,
    title,
    body,
    taken,
    measurements: lines.map(({ name, definition, how, own, left, right, sided }) => ({
      ...{ name, definition, how, own, sided },
      left: length(left),
      right: length(right),
    })),
  };
}

/** A comparison as one SVG in full size: the changed pieces, old beneath new. */
import { plateDocument } from '../../review';
import { allPlates } from './drawn';
import type { Comparison } from './run';

export const compareSvg = (comparison: Comparison): string =>
  plateDocument(`${comparison.before} → ${comparison.after}`, allPlates(comparison));

/** Every code with its severity and title, in the order of the work: text, names, values, shapes, pieces, sewing. */
import type { Severity } from '../drafting/finding';
import type { Check } from './check';
import { crossingOutline } from './crossing-outline';
import { implausibleMeasurement } from './implausible-measurement';
import { mismatchedSeam } from './mismatched-seam';
import { oldMeasurements } from './old-measurements';
import { raised } from './raised';
import { sidedFold } from './sided-fold';
import { sidedFoldLengths } from './sided-fold-lengths';
import { unclosedOutline } from './unclosed-outline';
import { unequalLegs } from './unequal-legs';
import { unevenSides } from './uneven-sides';
import { unfinishedEdge } from './unfinished-edge';
import { unknownRange } from './unknown-range';
import { unlikelyProportion } from './unlikely-proportion';
import { unusualEase } from './unusual-ease';
import type { Usual } from './usual';

export const catalogue: readonly Check[] = [
  ...raised,
  implausibleMeasurement,
  unlikelyProportion,
  unevenSides,
  oldMeasurements,
  sidedFold,
  sidedFoldLengths,
  unclosedOutline,
  crossingOutline,
  unequalLegs,
  mismatchedSeam,
  unfinishedEdge,
  unusualEase,
  unknownRange(() => ranges),
];

/** Every range that some check judges by. */
export const ranges: readonly Usual[] = catalogue.flatMap((entry) =>
  entry.by === 'judgement' ? (entry.usual ?? []) : [],
);

const severities: ReadonlyMap<string, Severity> = new Map(
  catalogue.map(({ code, severity }) => [code, severity]),
);

const firm: ReadonlySet<string> = new Set(catalogue.flatMap((entry) => (entry.firm ? [entry.code] : [])));

/** Whether findings of a code can be neither accepted nor set to another severity. */
export const isFirm = (code: string): boolean => firm.has(code);

/** A code that is not in the catalogue is a fault of ours; it is shown as an error rather than hidden. */
export const severityOf = (code: string): Severity => severities.get(code) ?? 'error';

/** Every code with its severity and title, in the order of the work: text, names, values, shapes, pieces, sewing. */
import type { Severity } from '../drafting/finding';
import type { Check } from './check';
import { crossingOutline } from './crossing-outline';
import { mismatchedSeam } from './mismatched-seam';
import { raised } from './raised';
import { unclosedOutline } from './unclosed-outline';
import { unfinishedEdge } from './unfinished-edge';

export const catalogue: readonly Check[] = [...raised, unclosedOutline, crossingOutline, mismatchedSeam, unfinishedEdge];

const severities: ReadonlyMap<string, Severity> = new Map(catalogue.map(({ code, severity }) => [code, severity]));

/** A code that is not in the catalogue is a fault of ours; it is shown as an error rather than hidden. */
export const severityOf = (code: string): Severity => severities.get(code) ?? 'error';

/** What is kept in tables, in English, and put into the person's words where it is shown. */
import { FORMS } from '../../grammar/forms';
import * as tokens from '../../grammar/tokens';
import { catalogue, isFirm, ranges } from '../../server/checks';
import { measurements } from '../../server/drafting/values/measurements';
import { lineTypes } from '../../server/drawing/lines';
import { HEADS } from '../../server/drawing/written/sheet';
import { SIGNATURES } from '../../server/features/signature';

/** What a definition can be, as the hover and the completion name it. */
const KINDS =
  'value choice point line curve arc circle piece edge mark hole seam finish notch dart pleats gathers draft measurement body sizes';
const SEVERITIES = 'error warning note';

/** Kinds of tokens that have a name of their own, for what could have stood somewhere. */
const labels = Object.values(tokens).flatMap((token) =>
  typeof token === 'object' && 'LABEL' in token && /^[a-z]/.test(token.LABEL ?? '') ? [token.LABEL!] : [],
);

export const keptInTables = (): readonly string[] => [
  ...new Set([
    ...Object.values(FORMS).map(({ what }) => what),
    ...labels,
    ...Object.values(SIGNATURES).map(({ doc }) => doc),
    ...measurements.flatMap(({ definition, howToTake }) => [definition, howToTake]),
    // what is firm is offered nowhere by its title
    ...catalogue.flatMap(({ code, title }) => (isFirm(code) ? [] : [title])),
    ...ranges.map(({ standing }) => standing),
    ...HEADS,
    ...Object.values(lineTypes).map(({ words }) => words),
    ...`${KINDS} ${SEVERITIES}`.split(' '),
  ]),
];

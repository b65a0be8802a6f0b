/** The door of the checks: everything found of a pattern, and the catalogue. Each code's page is `<code>.md` beside this. */
export { check } from './judge';
export { catalogue, isFirm, ranges, severityOf } from './catalogue';
export { explain, pageFile } from './pages';
export { findingsInDialect } from './in-dialect';
export { NO_SEVERITIES, readSettings, SETTINGS, withSeverities, type Severities } from './severity';
export { rangeInWords, type Usual } from './usual';
export { sweep, Sweep, variantsOf, type Variant } from './sweep';
export { openEdgesIn } from './unfinished-edge';

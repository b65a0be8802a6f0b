/** The door of the checks: everything found of a pattern, and the catalogue. Each code's page is `<code>.md` beside this. */
export { check } from './judge';
export { catalogue, severityOf } from './catalogue';
export { explain, pageFile } from './pages';
export { sweep, variantsOf, type Variant } from './sweep';

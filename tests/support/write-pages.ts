/**
 * Writes the generated parts of the catalogue's pages, after a message was changed on purpose:
 * `npx tsx tests/support/write-pages.ts`. Read the difference before it is committed: the marks are the expectation.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { folder, pagedCodes, pageText, rewritten } from './pages';

for (const code of pagedCodes()) writeFileSync(join(folder, `${code}.md`), rewritten(pageText(code)));

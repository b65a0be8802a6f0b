/**
 * Writes the generated parts of the catalogue's pages, after a message was changed on purpose:
 * `npx tsx tests/support/write-pages.ts`. Read the difference before it is committed: the marks are the expectation.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { germanCodes, germanFilled, germanPath, germanText } from './german-pages';
import { messages, messagesPath } from './messages';
import { folder, pagedCodes, pageText, rewritten } from './pages';
import { root } from './sources';
import { writeSetting } from './severity-setting';
import { writeTitles } from './titles';
import { checksTable, withTable } from './table';

for (const code of pagedCodes()) writeFileSync(join(folder, `${code}.md`), rewritten(code, pageText(code)));
for (const code of germanCodes()) writeFileSync(germanPath(code), germanFilled(code, germanText(code)));
await writeTitles();
writeFileSync(messagesPath, messages());
const readme = join(root, 'README.md');
if (existsSync(readme)) writeFileSync(readme, withTable(readFileSync(readme, 'utf8'), checksTable()));
await writeSetting();

/** The messages of the catalogue as one page: each fault's example, then what the command line prints of it. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { catalogue } from '../../server/checks/index';
import { checkText } from '../../server/cli/print/check-text';
import { gather } from '../../server/cli/print/report';
import { withoutAnnotations } from './annotations';
import { folder, pageText, readPage, tried, type Example } from './pages';

export const messagesPath = join(folder, 'MESSAGES.md');

/** The page as it is kept. */
export const messagesFile = (): string =>
  existsSync(messagesPath) ? readFileSync(messagesPath, 'utf8') : '';

const HEAD = `# Every message

Each fault of the catalogue as its page shows it, then what the command line prints of it. This page is written by
\`npx tsx tests/support/write-pages.ts\`: read it aloud before a release, and read its difference after a change.
`;

export const messages = (): string => `${HEAD}${catalogue.map(({ code }) => ofCode(code)).join('')}`;

function ofCode(code: string): string {
  const page = pageText(code);
  const firing = readPage(page).examples.find(({ section }) => section === 'Example');
  const shown =
    firing === undefined || !page.includes('```text')
      ? undefined
      : /^```text\n[\s\S]*?^```$/m.exec(page)?.[0];
  const parts = shown === undefined && firing !== undefined ? printed(firing) : [shown ?? ''];
  return `\n## ${code}\n\n${parts.join('\n\n')}\n`;
}

function printed(example: Example): readonly string[] {
  const text = withoutAnnotations(example.text);
  const { findings, textOf } = tried(example, text);
  const shown = (uri: string): string => uri.slice(uri.lastIndexOf('/') + 1);
  const report = gather(['pattern.draft'], findings, { shown, text: textOf });
  const lines = checkText(report, { width: 100, colour: false }).trimEnd().split('\n').slice(0, -2);
  return [fenced('draft', text), fenced('text', `${lines.join('\n')}\n`)];
}

const fenced = (info: string, text: string): string => `\`\`\`${info}\n${text}\`\`\``;

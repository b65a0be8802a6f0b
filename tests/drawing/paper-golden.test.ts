/** A small pattern on paper, as a summary that a person can read and a checksum that holds every byte. */
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { paperNamed } from '../../server/drawing/paper/papers';
import { toPdf, type PdfOptions } from '../../server/drawing/paper/pdf';
import { printed } from '../../server/drawing/paper/printed';
import { apron } from '../support/apron';
import { drafted } from '../support/drafted';
import { readPdf } from '../support/pdf';
import { root } from '../support/sources';

const cases: Readonly<Record<string, PdfOptions>> = {
  'apron-on-a4': { paper: paperNamed('A4')!, date: '2026-11-28', revision: '2' },
  'apron-on-roll': { paper: { name: 'roll of 914mm', width: 914, roll: true } },
  'apron-one-to-five': { paper: paperNamed('A4')!, scale: 5 },
};

async function summaryOf(options: PdfOptions): Promise<string> {
  const { drawing, turn, off } = printed(drafted(apron), options);
  const { value } = await toPdf(drawing, { ...options, turn, off });
  const pages = (await readPdf(value)).map(({ width, height, lines, curves, words }, i) =>
    [
      `page ${i + 1}: ${width.toFixed(2)} by ${height.toFixed(2)} pt, ${lines.length} lines, ${curves.length} curves`,
      ...words.map((word) => `  ${word}`),
    ].join('\n'),
  );
  return `${pages.join('\n')}\nsha256 ${createHash('sha256').update(value).digest('hex')}\n`;
}

describe('an apron on paper', () => {
  for (const [name, options] of Object.entries(cases)) {
    it(`is printed as the golden ${name} says`, async () => {
      const file = join(root, 'tests', 'drawing', 'goldens', `${name}.txt`);
      const now = await summaryOf(options);
      if (process.env.UPDATE_GOLDEN !== undefined) writeFileSync(file, now);
      assert.equal(now, readFileSync(file, 'utf8'));
    });
  }
});

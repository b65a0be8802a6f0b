/**
 * Writes what is found in the planted faults under the lines concerned: `npx tsx tests/support/annotate.ts`, after a
 * message was changed on purpose. Read the difference before it is committed: the comments are the expectation.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { annotated } from './annotations';
import { drafts, findingsIn, samples, sampleText, textOf } from './faults';

for (const path of drafts('faults')) {
  writeFileSync(join(samples, path), annotated(sampleText(path), findingsIn(path), textOf));
}

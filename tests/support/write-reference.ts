/**
 * Marks the examples of the language reference and of the changelog, and draws those of the reference:
 * `npx tsx tests/support/write-reference.ts`, after an example, a message or the drawing was changed on purpose. Read the
 * difference before it is committed: the marks and the drawings are the expectation.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pictureFolder, pictures, referencePath, rewrittenReference } from './reference';
import { root } from './sources';

const reference = rewrittenReference(readFileSync(referencePath, 'utf8'), true);
writeFileSync(referencePath, reference);
rmSync(pictureFolder, { recursive: true, force: true });
mkdirSync(pictureFolder, { recursive: true });
for (const [name, svg] of pictures(reference)) writeFileSync(join(pictureFolder, name), svg);

const changelog = join(root, 'CHANGELOG.md');
writeFileSync(changelog, rewrittenReference(readFileSync(changelog, 'utf8'), false));

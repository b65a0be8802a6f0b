/** What the README's picture shows: the harbour skirt with its front drawn 6mm too long at the side. */
import { join } from 'node:path';
import { check } from '../../server/checks/index';
import { printLength } from '../../server/drafting/values/quantity';
import { patternOf, sampleText } from './faults';
import { root } from './sources';

const FILE = 'harbour-skirt.draft';
const RIGHT = 'point waist-f = waist-b right 12cm + 2 * side-out\n';
const WRONG = 'point waist-f = waist-b right 12cm + 2 * side-out up 6mm\n';

const folder = join(root, 'client', 'preview', 'picture');

/** Where the picture lies, and beside it the words of what it showed when it was taken. */
export const picturePath = join(folder, 'text-beside-preview.png');
export const wordsPath = join(folder, 'text-beside-preview.txt');

const text = (): string => sampleText(FILE).replace(RIGHT, WRONG);

/** The first line, counted from 1, that begins so. */
const lineOf = (beginning: string): number =>
  text()
    .split('\n')
    .findIndex((line) => line.startsWith(beginning)) + 1;

/** What can be read in the picture, so that a picture that no longer agrees with the project is found out. */
function words(): string {
  const pattern = patternOf(FILE, text());
  const pieces = pattern.pieces.map(({ name, edges }) => {
    return `${name}: ${edges.map((edge) => `${edge.name} ${printLength(edge.sewn, pattern.unit)}`).join(', ')}`;
  });
  const problems = check(pattern).map(({ severity, message }) => `${severity}: ${message}`);
  const from = lineOf('piece front');
  return [
    ...pieces,
    ...problems,
    '',
    ...text()
      .split('\n')
      .slice(from - 1, from + 16),
    '',
  ].join('\n');
}

export const pictured = { file: FILE, text, lineOf, words };

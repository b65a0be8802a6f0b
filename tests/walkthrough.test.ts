/** The first steps in the editor: what they tell a person to do has the effect they promise, and their pictures are so. */
import assert from 'node:assert/strict';
import { tried } from './support/pages';
import { read } from './support/sources';
import { walkthroughPictures } from './support/walkthrough';

interface Step {
  readonly id: string;
  readonly description: string;
  readonly media: { readonly svg: string; readonly altText: string };
  readonly completionEvents: readonly string[];
}

const { contributes } = JSON.parse(read('package.json'));
const words: Record<string, string> = JSON.parse(read('client/l10n/package.nls.json'));
const steps: readonly Step[] = contributes.walkthroughs[0].steps.map((step: Step) => ({
  ...step,
  description: words[step.description.replaceAll('%', '')] ?? '',
}));
const skirt = read('client/templates/skirt.draft');

const codesOf = (text: string): string[] =>
  tried({ section: '', text, beside: new Map() }).findings.map(({ code }) => code);

function changed(was: string, now: string): string {
  assert.ok(skirt.includes(was));
  return skirt.replace(was, now);
}

describe('the first steps in the editor', () => {
  it('have pictures that show the skirt as it is drawn now', () => {
    assert.deepEqual(
      steps.map(({ id }) => id),
      Object.keys(walkthroughPictures),
    );
    for (const { id, media } of steps) assert.equal(read(media.svg), walkthroughPictures[id]!(), id);
    assert.match(read('.vscodeignore'), /^!client\/walkthrough\/\*\.svg$/m);
  });

  it('each offer a command that is there, and are done when it has run', () => {
    const own: string[] = contributes.commands.map(({ command }: { command: string }) => command);
    for (const { id, description, completionEvents } of steps) {
      const command = /\(command:(?:toSide:)?([\w.]+)/.exec(description)?.[1] ?? '';
      assert.ok(own.includes(command) || command.startsWith('workbench.'), id);
      assert.deepEqual(completionEvents, [`onCommand:${command}`]);
    }
  });

  it('change a number without making a problem, and break a seam by the letters they say', () => {
    assert.match(steps[1]!.description, /“skirt-length = 68cm” to “58cm”/);
    assert.deepEqual(codesOf(changed('skirt-length = 68cm', 'skirt-length = 58cm')), []);
    assert.match(steps[2]!.description, /“up 6mm” at the end of the line “point waist-f”/);
    const line = /^.*point waist-f .*$/m.exec(skirt)![0];
    assert.ok(codesOf(changed(line, `${line} up 6mm`)).includes('mismatched-seam'));
  });
});

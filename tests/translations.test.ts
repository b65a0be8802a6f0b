/** Words of the extension in its two languages: everything that is shown has both, and nothing is left over. */
import assert from 'node:assert/strict';
import { exportTitles } from './support/export-titles';
import { everythingSaid, everythingUnasked } from './support/said';
import { keptInTables } from './support/tables';
import { read, sources } from './support/sources';

const words = (path: string): Record<string, string> => JSON.parse(read(path));
const english = words('client/l10n/package.nls.json');
const german = words('client/l10n/package.nls.de.json');
const manifest = read('package.json');

/** What must stand in every language alike: commands, and words of the pattern's own language. */
const kept = (text: string): string[] =>
  [...text.matchAll(/\(command:[^)]+\)|[`“„]([^`“”]+)[`”“]/g)].map(([whole, quoted]) => quoted ?? whole);

describe('the words of the manifest', () => {
  it('are asked for by keys that are there, each of them once', () => {
    const asked = [...manifest.matchAll(/"%([\w.-]+)%"/g)].map(([, key]) => key!);
    assert.deepEqual(asked.sort(), Object.keys(english).sort());
  });

  it('are complete in German, in the order of the English', () => {
    assert.deepEqual(Object.keys(german), Object.keys(english));
    for (const [key, text] of Object.entries(german)) assert.notEqual(text.trim(), '', key);
  });

  it('keep commands and the words of patterns as they are', () => {
    for (const [key, text] of Object.entries(english))
      assert.deepEqual(kept(german[key]!).sort(), kept(text).sort(), key);
  });

  it('leave no title or description of ours in the manifest itself', () => {
    const { commands, walkthroughs, configuration } = JSON.parse(manifest).contributes;
    const told = ({ markdownDescription, description }: Record<string, string>): string =>
      markdownDescription ?? description ?? '';
    const all: Record<string, string>[] = Object.values(configuration.properties);
    const severities: Record<string, string>[] = Object.values(
      configuration.properties['draftwright.severity'].properties,
    );
    const settings = [...all, ...severities].map(told);
    const shown: string[] = [
      ...commands.map(({ title }: { title: string }) => title),
      ...walkthroughs[0].steps.flatMap((step: { title: string; description: string }) => [
        step.title,
        step.description,
      ]),
      ...settings,
    ];
    assert.deepEqual(
      shown.filter((text) => !/^%.+%$/.test(text)),
      [],
    );
  });

  it('stand in a manifest that says nothing twice', () => {
    const menus = manifest.slice(manifest.indexOf('"menus": {'), manifest.indexOf('"keybindings"'));
    const places = [...menus.matchAll(/^ {6}"([\w/]+)": \[/gm)].map(([, place]) => place);
    assert.deepEqual(places, [...new Set(places)]);
  });
});

describe('the words of the extension, its preview and its server', () => {
  const bundle = words('client/l10n/bundle.l10n.de.json');
  const said = everythingSaid();
  const features = [...read('client/features.ts').matchAll(/name: '([^']+)'/g)].map(([, name]) => name!);

  it('are complete in German, and the bundle holds nothing else', () => {
    const asked = [...said.map(({ key }) => key), ...features, ...exportTitles(), ...keptInTables()];
    assert.deepEqual(Object.keys(bundle).sort(), [...new Set(asked)].sort());
    for (const [key, text] of Object.entries(bundle)) assert.notEqual(text.trim(), '', key);
  });

  it('keep their places for what is told', () => {
    const places = (text: string) => (text.match(/\{\d+\}/g) ?? []).sort();
    for (const [key, text] of Object.entries(bundle)) assert.deepEqual(places(text), places(key), key);
  });

  it('join what stands beside them as the English does', () => {
    const ends = (text: string) => [/^[\s,:]*/.exec(text)![0], /[\s.]*$/.exec(text)![0]];
    for (const [key, text] of Object.entries(bundle)) assert.deepEqual(ends(text), ends(key), key);
  });

  it('are asked for when something is said, not before the language is known', () => {
    const early = said.filter((one) => one.early);
    assert.deepEqual(
      early.map(({ path, key }) => `${path}: ${key}`),
      [],
    );
  });

  it('are asked for wherever a finding, a repair, a comparison or a command tells something in a sentence', () => {
    assert.deepEqual(everythingUnasked(), []);
  });

  it('are shown through the table of words, wherever the editor shows them', () => {
    const bare =
      /(?:show(?:Information|Warning|Error)Message|setStatusBarMessage)\(\s*['`]|(?:title|placeHolder|placeholder|prompt|openLabel|'aria-label'): ['`](?!Draftwright')(?!\$\{)/;
    assert.deepEqual(
      sources().filter((path) => path.startsWith('client/') && bare.test(read(path))),
      [],
    );
  });
});

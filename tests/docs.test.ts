/** Holds the documents to the project: what they name is there, and what they show is so. */
import assert from 'node:assert/strict';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { marked, tried } from './support/pages';
import { pictured, picturePath, wordsPath } from './support/pictured';
import { shownIn } from './support/reference';
import { read, root } from './support/sources';

const DOCUMENTS = [
  'README.md',
  'DEVELOPERS.md',
  'CHANGELOG.md',
  'client/page.md',
  'grammar/REFERENCE.md',
  'server/cli/FORMATS.md',
];
const PICTURE_LIMIT = 200 * 1024;

/** What stands between single backticks. */
const codeIn = (text: string): string[] =>
  [...text.replace(/^```[\s\S]*?^```$/gm, '').matchAll(/`([^`\n]+)`/g)].map(([, code]) => code!);

const missing = (paths: readonly string[]): string[] => paths.filter((path) => !existsSync(join(root, path)));

describe('the documents', () => {
  const manifest = JSON.parse(read('package.json')) as { version: string; scripts: Record<string, string> };

  it('the changelog begins with the version of the manifest', () => {
    assert.equal(/^## (\S+)/m.exec(read('CHANGELOG.md'))?.[1], manifest.version);
  });

  it('every command and option of the command line stands in the README', () => {
    const lines = read('server/cli/commands.ts');
    const named = [
      ...lines.matchAll(/\.command\('([a-z]+)'\)|new Option\('(--[a-z]+)|\.option\('(--[a-z]+)/g),
    ];
    const readme = read('README.md');
    assert.ok(named.length >= 8);
    for (const [, command, ...options] of named) {
      const words = command === undefined ? options.find(Boolean)! : `draftwright ${command}`;
      assert.ok(readme.includes(words), words);
    }
  });

  it('every script that README and guide name is one of the manifest', () => {
    for (const path of ['README.md', 'DEVELOPERS.md']) {
      const named = [...read(path).matchAll(/\bnpm (?:run )?([a-z]+)/g)].map(([, script]) => script!);
      const npm = new Set(['link', 'registry', 'ci', 'install']);
      assert.deepEqual(
        named.filter((script) => !npm.has(script) && !(script in manifest.scripts)),
        [],
        path,
      );
    }
  });

  it('every script of the manifest is told to developers', () => {
    const guide = read('DEVELOPERS.md');
    assert.deepEqual(
      Object.keys(manifest.scripts).filter(
        (script) => !guide.includes(`npm run ${script}`) && !guide.includes(`npm ${script}`),
      ),
      [],
    );
  });

  it('every path that the guide for developers names is there', () => {
    const text = read('DEVELOPERS.md');
    const codes = [...codeIn(text), ...[...text.matchAll(/\btests\/[\w./-]+\.ts\b/g)].map(([path]) => path)];
    const words = codes.flatMap((code) => code.split(/\s+/));
    const paths = words.filter((word) => /^(client|server|grammar|tests|samples)\/[\w./-]*$/.test(word));
    assert.ok(paths.length > 50);
    assert.deepEqual(missing(paths), []);
  });

  it('floors and folders that the guide names without their room lie in the drafting', () => {
    for (const floor of ['values', 'shapes', 'pieces', 'sewing', 'names']) {
      assert.ok(read('DEVELOPERS.md').includes(`\`${floor}/\``));
      assert.ok(existsSync(join(root, 'server', 'drafting', floor)), floor);
    }
  });

  it('every invariant names a test that is there', () => {
    const text = read('DEVELOPERS.md');
    const held = [...text.matchAll(/\*\*Invariant:\*\*[\s\S]*?(?=\n\n)/g)].map(([paragraph]) => paragraph);
    assert.ok(held.length >= 15);
    for (const paragraph of held) {
      const [, path, title = ''] = /Held by `([^`]+)`(?::\s+“([^”]+)”)?\./.exec(paragraph) ?? [];
      assert.ok(path !== undefined, paragraph);
      assert.ok(read(path).includes(title), `${path} has no test “${title}”`);
    }
  });

  it('every link within the project leads somewhere', () => {
    for (const path of DOCUMENTS) {
      const text = read(path).replace(/^```[\s\S]*?^```$/gm, '');
      const links = [...text.matchAll(/\]\(([^)]+)\)/g)].map(([, to]) => to!.replace(/#.*$/, ''));
      const inside = links
        .filter((to) => to !== '' && !/^https?:/.test(to))
        .map((to) => join(dirname(path), to));
      assert.deepEqual(missing(inside), [], path);
    }
  });

  it('the README’s patterns are read and find no fault', () => {
    const all = shownIn(read('README.md'));
    assert.ok(all.length >= 3);
    for (const { example } of all) {
      assert.deepEqual(
        tried(example).findings.map(({ message }) => message),
        [],
      );
    }
  });

  it('the changelog’s patterns are marked with what is found in them', () => {
    for (const { example } of shownIn(read('CHANGELOG.md'))) assert.equal(marked(example), example.text);
  });

  it('the README’s picture is small, and what it shows is still so (npm run picture takes it anew)', () => {
    assert.ok(read('README.md').includes('(client/preview/picture/text-beside-preview.png)'));
    assert.ok(statSync(picturePath).size <= PICTURE_LIMIT);
    assert.equal(readFileSync(wordsPath, 'utf8'), pictured.words());
  });
});

/** Templates of a new pattern: each stands by itself, in the canonical layout, with nothing found in it. */
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { format } from '../grammar';
import { tried } from './support/pages';
import { files, read, root } from './support/sources';

const FOLDER = 'client/templates';
const names = readdirSync(join(root, FOLDER)).map((file) => file.replace(/\.draft$/, ''));

describe('the templates of a new pattern', () => {
  for (const name of names) {
    const text = read(`${FOLDER}/${name}.draft`);

    it(`find no fault and use no other file: ${name}`, () => {
      const { findings } = tried({ section: '', text, beside: new Map() });
      assert.deepEqual(
        findings.map(({ code, message }) => `${code}: ${message}`),
        [],
      );
      assert.doesNotMatch(text, /^use /m);
    });

    it(`are written in the canonical layout: ${name}`, () => {
      assert.equal(format(text), text);
    });
  }

  it('draft a skirt without an error, and with its waist as it is sewn, for slight and full, straight and round bodies', () => {
    const skirt = read(`${FOLDER}/skirt.draft`);
    for (const waist of [58, 74, 95, 125])
      for (const rounder of [10, 20, 30, 36]) {
        const text = skirt
          .replace('waist 74cm', `waist ${waist}cm`)
          .replace('hip 99cm', `hip ${waist + rounder}cm`);
        const { findings } = tried({ section: '', text, beside: new Map() });
        const errors = findings.filter(({ severity }) => severity === 'error');
        assert.deepEqual(
          errors.map(({ message }) => message),
          [],
          `waist ${waist}cm, hip ${waist + rounder}cm`,
        );
      }
  });

  it('draft a bodice without an error for a smaller, a larger and a fuller bust', () => {
    const bodice = read(`${FOLDER}/bodice-block.draft`);
    for (const bust of [88, 92, 96, 100]) {
      const text = bodice.replace('  bust 92cm', `  bust ${bust}cm`);
      const { findings } = tried({ section: '', text, beside: new Map() });
      const errors = findings.filter(({ severity }) => severity === 'error');
      assert.deepEqual(
        errors.map(({ message }) => message),
        [],
        `bust ${bust}cm`,
      );
    }
  });

  it('are the ones that the person can choose, and are packed', () => {
    const offered = [...read('client/new-pattern.ts').matchAll(/ name: '([a-z-]+)'/g)].map(
      ([, name]) => name,
    );
    assert.deepEqual(offered.sort(), [...names].sort());
    assert.match(read('.vscodeignore'), /^!client\/templates\/\*\.draft$/m);
    assert.ok(files().includes(`${FOLDER}/blank.draft`));
  });
});

/** Runs the language reference: every example is found to be as it is marked, and is drawn as the picture beside it. */
import assert from 'node:assert/strict';
import { FUNCTIONS, HEADS, GIVEN, RESERVED, UNITS } from '../grammar/words';
import { marked, tried } from './support/pages';
import { keptPictures, pictures, rewrittenReference, shownIn } from './support/reference';
import { read } from './support/sources';

const PICTURE_LIMIT = 20 * 1024;
const LATER = 'Not built yet';

describe('the language reference', () => {
  const text = read('grammar/REFERENCE.md');
  const shown = shownIn(text);
  const [, later = ''] = text.split(`\n## ${LATER}\n`);

  it('has an example in every section', () => {
    const sections = [...text.matchAll(/^### (.+)$/gm)].map(([, heading]) => heading!);
    const withExample = new Set(shown.map(({ heading }) => heading));
    assert.ok(sections.length > 30);
    assert.deepEqual(
      sections.filter((heading) => !withExample.has(heading)),
      [],
    );
  });

  it('heads every section once', () => {
    const prose = text.replace(/^```[\s\S]*?^```$/gm, '');
    const headings = [...prose.matchAll(/^#+ (.+)$/gm)].map(([, heading]) => heading!);
    assert.deepEqual(
      headings.filter((heading, at) => headings.indexOf(heading) !== at),
      [],
    );
  });

  it('marks every example with what is found in it, and with nothing else', () => {
    for (const { example, heading } of shown) assert.equal(marked(example), example.text, heading);
  });

  it('shows what is built by examples that find nothing unbuilt, and what is not by those that do', () => {
    const unbuilt = shown.filter(({ example }) =>
      tried(example).findings.some(({ code }) => code === 'not-built-yet'),
    );
    const below = [...later.matchAll(/^### (.+)$/gm)].map(([, heading]) => heading);
    assert.deepEqual(
      unbuilt.map(({ heading }) => heading),
      below,
    );
  });

  it('draws every example that has something to draw, and keeps no other picture', () => {
    assert.equal(rewrittenReference(text, true), text);
    const [now, kept] = [pictures(text), keptPictures()];
    assert.deepEqual([...kept.keys()], [...now.keys()].sort());
    for (const [name, svg] of now) {
      assert.equal(kept.get(name), svg, name);
      assert.ok(svg.length <= PICTURE_LIMIT, name);
    }
  });

  it('tells of every word that a line may begin with', () => {
    const heads = new Set(Object.values(HEADS).flatMap((of) => Object.keys(of)));
    assert.deepEqual(
      [...heads].filter((head) => !new RegExp(`\`[^\`\\n]*\\b${head}\\b[^\`\\n]*\``).test(text)),
      [],
    );
  });

  it('tells of every function, unit, given name and reserved word', () => {
    const words = [...FUNCTIONS, ...UNITS, ...GIVEN, ...RESERVED];
    assert.deepEqual(
      words.filter(
        (word) => !text.includes(`\`${word}`) && !text.includes(`${word}\``) && !text.includes(` ${word} `),
      ),
      [],
    );
  });
});

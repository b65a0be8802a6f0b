/** What is said of a change to a pattern: each kind of change, both directions, and nothing where nothing changed. */
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { isSame, platesOf, verdict } from '../../server/review';
import { apron } from '../support/apron';
import { inFolder } from '../support/command';
import { compared, taken } from '../support/compared';
import { compare } from '../../server/review';
import { reported, told } from '../support/comparing';
import { files, read, root } from '../support/sources';

/** The apron of the tests with a change; the words must be there. */
function changed(...edits: readonly (readonly [string, string])[]): string {
  return edits.reduce((text, [from, to]) => {
    assert.ok(text.includes(from), `${from} stands in the apron`);
    return text.replaceAll(from, to);
  }, apron);
}

/** Every sample, to be used by the others. */
const WARDROBE = Object.fromEntries(
  files()
    .filter((path) => /^samples\/(bodies\/)?[^/]+\.draft$/.test(path))
    .map((path) => [path.replace('samples/', ''), read(path)]),
);
const sample = (name: string, edit: (text: string) => string = (text) => text) => ({
  'pattern.draft': edit(read(`samples/${name}.draft`)),
  ...WARDROBE,
});

describe('comparing two patterns', () => {
  const samples = readdirSync(join(root, 'samples')).filter((name) => name.endsWith('.draft'));

  it('finds no difference between any sample and itself, drafted twice', () => {
    for (const name of samples) {
      const texts = sample(name.replace('.draft', ''));
      const review = compared(texts, texts);
      assert.ok(isSame(review), `${name}: ${told(review).join('\n')}`);
      assert.equal(verdict(review), 'No difference.');
    }
  }).timeout(60000);

  it('calls comments, layout and order text only', () => {
    const texts = sample('harbour-skirt');
    const lines = texts['pattern.draft']
      .replace('# back\n', '# the back of it\n')
      .replace('choose hip-ease = ', 'choose   hip-ease =  ');
    const [first, ...rest] = lines.split(/^(?=seam )/m);
    const review = compared(texts, { ...texts, 'pattern.draft': first + rest.reverse().join('\n\n') });
    assert.deepEqual(told(review), [
      'Text only: comments, layout or order changed; what is drafted is the same.',
    ]);
  });

  it('says the same from either side, was and now exchanged', () => {
    const edits: readonly [string, (text: string) => string][] = [
      ['harbour-skirt', (text) => text.replace('hip-ease = 4cm', 'hip-ease = 5cm')],
      [
        'bodice-block',
        (text) => text.replace('point pit = scye-cb right', 'point pit = scye-cb down 4mm right'),
      ],
      ['bodice-block', (text) => text.replaceAll('side-waist-b', 'waist-corner')],
      ['crew-shirt', (text) => text.replace(/^piece (\S+) of/m, 'piece new-name of')],
      ['neckerchief', (text) => text.replace(/allow [\d.]+cm/, 'allow 2.2cm')],
      ['sleeve', (text) => text.replace(/^notch .*\n/m, '')],
      ['trousers', (text) => text.replace(/^seam .*\n/m, '')],
    ];
    for (const [name, edit] of edits) {
      const [before, after] = [taken(sample(name)), taken(sample(name, edit))];
      const review = compare(before, after);
      assert.ok(!isSame(review), `the edit of ${name} shows`);
      assert.deepEqual(reported(compare(after, before)), reported(review, true), name);
    }
  }).timeout(60000);

  /** The apron with its skirt changed: what is told of the change. */
  const ofChange = (...edits: readonly (readonly [string, string])[]) =>
    told(compared(apron, changed(...edits)));

  it('measures a piece that was taken in, from the edge that stayed', () => {
    assert.deepEqual(ofChange(['width = 60cm', 'width = 58cm']), [
      '1 of 2 pieces changed.',
      'width: 60cm → 58cm',
      'skirt: reshaped',
      '  by up to 2cm on near-side, at waist-right (held at hem-left)',
      '  waist: 60cm → 58cm, −2cm',
      '  hem: 60cm → 58cm, −2cm',
      '  area 3000.0 → 2900.0 square centimetres: 0.0 gained, 100.0 lost',
      '  points moved: waist-right 2cm, hem-right 2cm',
    ]);
  });

  it('tells a piece that lies elsewhere or turned from one with another shape', () => {
    assert.deepEqual(ofChange(['point top-left = origin', 'point top-left = origin right 7cm']).slice(0, 1), [
      '1 of 2 pieces changed.',
    ]);
    assert.deepEqual(ofChange(['point top-left = origin', 'point top-left = origin right 7cm']).slice(2), [
      'bib: moved on the paper only',
    ]);
    const turned = [
      ['top-left right 30cm', 'top-left down 30cm'],
      ['top-right down bib-height', 'top-right left bib-height'],
      ['top-left down bib-height', 'top-left left bib-height'],
    ] as const;
    assert.deepEqual(ofChange(...turned).slice(-1), ['bib: moved on the paper only']);
  });

  it('holds marks, allowances and words apart from the shape', () => {
    assert.deepEqual(
      ofChange(['grain from top-left to foot-left', 'grain from top-left to top-right']).slice(2, 4),
      ['bib: marks only', '  grain: 90.0deg → 0.0deg'],
    );
    assert.deepEqual(
      ofChange(['bib.far-side turned twice 1cm', 'bib.far-side turned twice 1.5cm']).slice(2, 4),
      ['bib: allowance only', '  allowance of top: 2cm → 3cm'],
    );
    assert.deepEqual(
      ofChange(['  cut 1\n  outline from top-left', '  cut pair\n  outline from top-left']).slice(2, 4),
      ['bib: wording only', '  cutting words: cut 1 → cut pair'],
    );
  });

  it('tells a new name once and leaves out the lines that only follow it', () => {
    assert.deepEqual(ofChange(['bib.foot', 'bib.lower'], ['    foot straight', '    lower straight']), [
      '1 of 2 pieces changed.',
      'renamed: bib.foot → lower',
      'bib: wording only',
      '  edge: foot → lower',
    ]);
    assert.deepEqual(ofChange(['piece bib of', 'piece front of'], ['bib.', 'front.']), [
      '1 of 2 pieces changed.',
      'renamed: bib → front',
      'front: renamed (was bib)',
    ]);
  });

  it('tells what was added and what was taken away', () => {
    const without = apron.slice(0, apron.indexOf('piece bib')) + apron.slice(apron.indexOf('finish skirt'));
    const lost = without.replace(/^finish bib.*\n/m, '');
    assert.deepEqual(told(compared(apron, lost)).slice(0, 3), [
      '1 piece removed.',
      'removed bib: piece bib of bib-sheet',
      'removed bib-edges: finish bib-edges bib.top, bib.near-side, bib.foot, bib.far-side turned twice 1cm',
    ]);
    assert.equal(verdict(compared(lost, apron)), '1 piece added.');
  });

  it('names a piece that could not be drafted, and does not call it removed', () => {
    const review = compared(apron, changed(['down bib-height', 'down bib-hight']));
    assert.equal(
      verdict(review),
      '2 decisions changed, no piece did; 2 new errors; 1 piece could not be compared: bib.',
    );
    assert.deepEqual(review.pieces, []);
    assert.deepEqual(
      review.undrafted.now?.map(({ name }) => name),
      ['bib'],
    );
  });

  it('judges every seam before and after', () => {
    const block = sample('bodice-block');
    const apart = sample('bodice-block', (text) =>
      text
        .replace('side straight to side-waist-b', 'side straight to waist-low')
        .replace(
          '  point side-waist-b',
          '  point waist-low = side-waist down 6mm left side-out\n  point side-waist-b',
        )
        .replace('curve waistline-b = waist-cb to side-waist-b', 'curve waistline-b = waist-cb to waist-low'),
    );
    assert.equal(
      verdict(compared(block, apart)),
      '4 of 4 pieces changed; 2 seams no longer match: side-seam, right, +6mm and side-seam, left, +6mm; 2 new errors.',
    );
    const back = compared(apart, block);
    assert.match(
      verdict(back),
      /2 seams match again: side-seam, right and side-seam, left; 2 errors cleared\.$/,
    );
  });

  it('tells for each size of the table what became of it', async () => {
    const table = (hip: string): string =>
      `sizes chorus {\n  size S M L\n  hip 90cm 96cm ${hip}\n}\ndrafted for chorus M\n`;
    const skirt = apron
      .replace('choose width = 60cm in 40cm .. 80cm\n', 'let width = hip / 2\n')
      .replace('# how wide', `${table('102cm')}\n# how wide`);
    await inFolder({ 'a.draft': skirt, 'b.draft': skirt.replace('102cm', '104cm') }, async (folder) => {
      const { out } = await folder.run('compare', 'a.draft', 'b.draft');
      assert.deepEqual(out.trimEnd().split('\n').slice(1), [
        '1 decision changed, no piece did; pieces of size L did.',
        'decided',
        '  chorus.hip: 90cm 96cm 102cm → 90cm 96cm 104cm (b.draft:5)',
        'sizes',
        '  size L: skirt by up to 1cm on near-side, at waist-right',
      ]);
    });
  });

  it('compares and draws every planted fault with the next, whatever is broken in them', () => {
    const faults = files().filter((path) => /^samples\/faults\/.*\.draft$/.test(path));
    const all = faults.map((path) =>
      taken({ 'pattern.draft': read(path).replaceAll('"../', '"'), ...WARDROBE }),
    );
    for (const [i, before] of all.entries()) {
      const after = all[(i + 1) % all.length]!;
      const there = compare(before, after);
      assert.deepEqual(reported(compare(after, before)), reported(there, true), faults[i]);
      for (const { frame } of platesOf(there, before, after))
        assert.ok(Object.values(frame).every(Number.isFinite), `${faults[i]} is drawn`);
      assert.ok(verdict(there).length > 0);
    }
  }).timeout(120000);
});

/**
 * The history of a bodice in a repository that the test makes: taken in, an edge renamed, a dart swung, a used file moved,
 * a branch merged, an error introduced and mended. What is said of each step reads as a reviewer would write it: goldens,
 * rewritten with UPDATE_GOLDEN=1.
 */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Repository } from '../support/repository';
import { read, root } from '../support/sources';

const GOLDENS = join(root, 'tests', 'review', 'goldens');

/** The block of the wardrobe for a body without sides, its seams closed, and a front with its dart in the shoulder. */
const bodice = read('samples/bodice-block.draft').replace('drafted for ferrywoman', 'drafted for widow');
const cut = `pattern "Widow's bodice, cut"
use "bodice.draft"
drafted for widow

piece cut-front worked from front {
  cut pair
  swing bust-dart to shoulder at halfway
}
`;

/** The file with some words changed; they must be there. */
function change(
  repository: Repository,
  file: string,
  ...edits: readonly (readonly [string, string])[]
): void {
  let text = readFileSync(join(repository.path, file), 'utf8');
  for (const [from, to] of edits) {
    assert.ok(text.includes(from), `${file} says ${from}`);
    text = text.replaceAll(from, to);
  }
  repository.write(file, text);
}

const STEPS: readonly {
  readonly title: string;
  readonly tag: string;
  /** What the comparison is limited to. */
  readonly path: readonly string[];
  readonly step: (repository: Repository) => void;
}[] = [
  {
    title: 'The waist is taken in for the second act',
    tag: 'taken-in',
    path: ['bodice.draft'],
    step: (at) => change(at, 'bodice.draft', ['waist-ease = 4cm', 'waist-ease = 3cm']),
  },
  {
    title: 'The side of the back is called underarm',
    tag: 'renamed-edge',
    path: ['bodice.draft'],
    step: (at) =>
      change(
        at,
        'bodice.draft',
        ['    side straight to side-waist-b', '    underarm straight to side-waist-b'],
        ['allow 2.5cm at centre, side', 'allow 2.5cm at centre, underarm'],
        ['= back.side', '= back.underarm'],
      ),
  },
  {
    title: 'The bust dart goes to the side',
    tag: 'swung-dart',
    path: [],
    step: (at) => change(at, 'cut.draft', ['to shoulder at halfway', 'to side at 1/3 from pit']),
  },
  {
    title: 'The company moves to a folder of its own',
    tag: 'moved-file',
    path: [],
    step: (at) => {
      at.move('bodies/company.draft', 'wardrobe/company.draft');
      change(at, 'bodice.draft', ['bodies/company.draft', 'wardrobe/company.draft']);
    },
  },
  {
    title: 'A wider seam allowance from the fitting',
    tag: 'merged',
    path: ['bodice.draft'],
    step: (at) => {
      at.git('checkout', '--quiet', '-b', 'fitting', 'main');
      change(at, 'bodice.draft', ['  allow 2.5cm at side', '  allow 3cm at side']);
      at.commit('The fitting wants more at the side');
      at.git('checkout', '--quiet', 'main');
      at.git('merge', '--quiet', '--no-ff', '-m', 'Merge the fitting', 'fitting');
    },
  },
  {
    title: 'The side of the back is drawn lower',
    tag: 'broken',
    path: ['bodice.draft'],
    step: (at) =>
      change(at, 'bodice.draft', [
        'point side-waist-b = side-waist left side-out',
        'point side-waist-b = side-waist left side-out down 6mm',
      ]),
  },
  {
    title: 'Mended',
    tag: 'mended',
    path: ['bodice.draft'],
    step: (at) =>
      change(at, 'bodice.draft', [
        'point side-waist-b = side-waist left side-out down 6mm',
        'point side-waist-b = side-waist left side-out',
      ]),
  },
];

describe('the history of a bodice', () => {
  let repository: Repository;
  before(function () {
    this.timeout(60000);
    repository = new Repository({
      'bodice.draft': bodice,
      'cut.draft': cut,
      'bodies/company.draft': read('samples/bodies/company.draft'),
    });
    repository.commit('The bodice as it was fitted');
    repository.git('tag', 'begun');
    for (const { title, tag, step } of STEPS) {
      step(repository);
      repository.commit(title);
      repository.git('tag', tag);
    }
  });
  after(() => repository.remove());

  const golden = async (name: string, ...args: string[]): Promise<void> => {
    const { out, err } = await repository.run('compare', ...args);
    assert.equal(err, '');
    const file = join(GOLDENS, name);
    if (process.env.UPDATE_GOLDEN) writeFileSync(file, out);
    assert.equal(out, readFileSync(file, 'utf8'));
  };

  it('reads at every step as a reviewer would write it', async () => {
    const tags = ['begun', ...STEPS.map(({ tag }) => tag)];
    for (const [i, { tag, path }] of STEPS.entries())
      await golden(`${tag}.txt`, `${tags[i]}..${tag}`, ...path);
  }).timeout(120000);

  it('reads as well in Markdown, for a comment of a forge', async () => {
    await golden('broken.md', 'merged..broken', 'bodice.draft', '--format', 'markdown');
  }).timeout(60000);

  it('reads in German where that is asked, in both of these', async () => {
    const german = ['merged..broken', 'bodice.draft', '--language', 'de'];
    await golden('broken.de.txt', ...german);
    await golden('broken.de.md', ...german, '--format', 'markdown');
  }).timeout(60000);

  it('is judged commit by commit', async () => {
    const { out, err, exit } = await repository.run('compare', 'begun..mended', 'bodice.draft', '--each');
    assert.equal(err, '');
    assert.equal(exit, 1);
    // names of commits are git's own
    const lines = out.split('\n').map((line) => line.replace(/^[0-9a-f]{7,} /, ''));
    assert.deepEqual(lines, [
      'The waist is taken in for the second act',
      '  bodice.draft: 2 of 2 pieces changed.',
      'The side of the back is called underarm',
      '  bodice.draft: 1 of 2 pieces changed.',
      'The company moves to a folder of its own',
      '  bodice.draft: 1 decision changed, no piece did.',
      'Merge the fitting',
      '  bodice.draft: 1 of 2 pieces changed; 1 new warning.',
      'The side of the back is drawn lower',
      '  bodice.draft: 2 of 2 pieces changed; 1 seam no longer matches: side-seam,',
      '    +6mm; 1 new error.',
      'Mended',
      '  bodice.draft: 2 of 2 pieces changed; 1 seam matches again: side-seam; 1 error',
      '    cleared.',
      '',
    ]);
  }).timeout(60000);

  it('fails commit by commit on new errors alone, where that is asked', async () => {
    const asked = ['bodice.draft', '--each', '--fail-on', 'errors'];
    assert.equal((await repository.run('compare', 'begun..merged', ...asked)).exit, 0);
    assert.equal((await repository.run('compare', 'begun..mended', ...asked)).exit, 1);
  }).timeout(60000);

  it('is judged commit by commit as text alone, and says so', async () => {
    for (const more of [
      ['--format', 'json'],
      ['--out', 'story.txt'],
    ]) {
      const said = await repository.run('compare', 'begun..mended', 'bodice.draft', '--each', ...more);
      assert.deepEqual([said.exit, said.out], [2, '']);
      assert.match(said.err, /^--each prints lines of text: leave --format and --out away/);
    }
  }).timeout(60000);

  it('keeps no golden that nothing reads', () => {
    const known = [...STEPS.map(({ tag }) => `${tag}.txt`), 'broken.md', 'broken.de.txt', 'broken.de.md'];
    assert.deepEqual(readdirSync(GOLDENS).sort(), known.sort());
  });
});

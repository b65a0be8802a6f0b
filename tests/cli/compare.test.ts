/** `draftwright compare`: what may be named, what it ends with, and what it says when it can't compare. */
import assert from 'node:assert/strict';
import { readdirSync, statSync, unlinkSync } from 'node:fs';
import { join } from 'node:path';
import { apron, apronWith } from '../support/apron';
import { CommandFolder, inFolder } from '../support/command';
import { Repository } from '../support/repository';

const narrow = apronWith('width = 60cm', 'width = 58cm');
const remarked = apronWith('# how wide', '# so wide');
const broken = apronWith('skirt.waist, skirt.near-side', 'skirt.waist, skirt.nearside');

const firstLines = (text: string, count: number): string[] => text.split('\n').slice(0, count);

describe('comparing on the command line', () => {
  it('ends with 0 for the same, 1 for a difference, and 2 where it could not compare', async () => {
    await inFolder({ 'a.draft': apron, 'b.draft': narrow, 'c.draft': remarked }, async (folder) => {
      const same = await folder.run('compare', 'a.draft', 'a.draft');
      assert.deepEqual([same.exit, same.out], [0, 'a.draft → a.draft\nNo difference.\n']);
      const text = await folder.run('compare', 'a.draft', 'c.draft');
      assert.equal(text.exit, 0);
      assert.match(text.out, /^Text only: comments, layout or order changed/m);
      const other = await folder.run('compare', 'a.draft', 'b.draft');
      assert.deepEqual(
        [other.exit, ...firstLines(other.out, 2)],
        [1, 'a.draft → b.draft', '1 of 2 pieces changed.'],
      );
      const gone = await folder.run('compare', 'a.draft', 'gone.draft');
      assert.deepEqual([gone.exit, gone.out], [2, '']);
      assert.equal(gone.err, 'There is no file or folder gone.draft here to compare a.draft with.\n');
    });
  });

  it('with --fail-on errors lets every change pass that brings no new error', async () => {
    await inFolder({ 'a.draft': apron, 'b.draft': narrow, 'broken.draft': broken }, async (folder) => {
      const run = (a: string, b: string) => folder.run('compare', a, b, '--fail-on', 'errors');
      assert.equal((await run('a.draft', 'b.draft')).exit, 0);
      assert.equal((await run('a.draft', 'broken.draft')).exit, 1);
      assert.equal(
        (await run('broken.draft', 'broken.draft')).exit,
        0,
        'an old error is none of this change',
      );
      assert.equal((await run('broken.draft', 'a.draft')).exit, 0);
    });
  });

  it('reads used files from the same side, of folders and of revisions', async () => {
    const body = (waist: string) => `body sitter {\n  waist ${waist}\n}\n`;
    const using = apron
      .replace('\n\n', '\nuse "bodies/sitter.draft"\ndrafted for sitter\n\n')
      .replace('choose width = 60cm in 40cm .. 80cm', 'let width = waist');
    const files = (waist: string, at = '') => ({
      [`${at}apron.draft`]: using,
      [`${at}bodies/sitter.draft`]: body(waist),
    });
    await inFolder({ ...files('60cm', 'old/'), ...files('64cm', 'new/') }, async (folder) => {
      const { out } = await folder.run('compare', 'old', 'new');
      assert.deepEqual(firstLines(out, 4), [
        'apron.draft: old → new',
        '1 of 2 pieces changed.',
        'decided',
        '  sitter.waist: 60cm → 64cm (bodies/sitter.draft:2)',
      ]);
    });
    const repository = new Repository(files('60cm'));
    try {
      repository.commit('as measured');
      repository.write('bodies/sitter.draft', body('64cm'));
      const { out } = await repository.run('compare', 'HEAD', 'apron.draft');
      assert.match(out, /^ {2}sitter\.waist: 60cm → 64cm/m);
      assert.match(out, /^apron\.draft: HEAD → the working tree$/m);
    } finally {
      repository.remove();
    }
  });

  it('takes a body and choices for both sides', async () => {
    await inFolder({ 'a.draft': apron, 'b.draft': narrow }, async (folder) => {
      const { exit } = await folder.run(
        'compare',
        'a.draft',
        'b.draft',
        '--set',
        'width=61cm',
        '--format',
        'json',
      );
      assert.equal(exit, 1, 'the text says otherwise, if only the text');
      const { out } = await folder.run('compare', 'a.draft', 'b.draft', '--set', 'width=61cm');
      assert.deepEqual(firstLines(out, 2)[1], '1 decision changed, no piece did.');
    });
  });

  it('writes JSON whose numbers agree with its verdict', async () => {
    await inFolder({ 'a.draft': apron, 'b.draft': narrow }, async (folder) => {
      const { out } = await folder.run('compare', 'a.draft', 'b.draft', '--format', 'json');
      const { version, before, after, patterns } = JSON.parse(out);
      assert.deepEqual([version, before, after, patterns.length], [1, 'a.draft', 'b.draft', 1]);
      const [{ same, verdict, causes, pieces }] = patterns;
      assert.deepEqual([same, verdict], [false, '1 of 2 pieces changed.']);
      assert.deepEqual(causes[0].place.now, {
        file: 'b.draft',
        range: { start: { line: 3, character: 0 }, end: { line: 3, character: 35 } },
      });
      assert.deepEqual([pieces[0].changes, pieces[0].lost, pieces[0].gained], [['reshaped'], 10000, 0]);
    });
  });

  it('escapes in Markdown what would be more than words there', async () => {
    const named = apronWith('pattern "Stage hand', 'pattern "<b>@all</b> | Stage hand');
    await inFolder({ 'a.draft': apron, 'b.draft': named }, async (folder) => {
      const { out } = await folder.run('compare', 'a.draft', 'b.draft', '--format', 'markdown');
      assert.ok(out.includes('\\<b\\>&#64;all\\</b\\> \\| Stage hand'), out);
    });
  });
});

describe('comparing revisions', () => {
  let repository: Repository;
  beforeEach(() => {
    repository = new Repository({ 'wardrobe/apron.draft': apron });
    repository.commit('An apron');
  });
  afterEach(() => repository.remove());
  const refusal = async (...args: string[]): Promise<string> => {
    const before = listing(repository.path);
    const { exit, out, err } = await repository.run('compare', ...args);
    assert.deepEqual([exit, out], [2, ''], err);
    assert.deepEqual(listing(repository.path), before, 'nothing was written');
    return err;
  };

  it('follows a file under another name', async () => {
    repository.move('wardrobe/apron.draft', 'kitchen/pinafore.draft');
    repository.write('kitchen/pinafore.draft', narrow);
    repository.commit('Moved');
    const { out } = await repository.run('compare', 'HEAD~1..HEAD', 'kitchen/pinafore.draft');
    assert.deepEqual(firstLines(out, 2), [
      'kitchen/pinafore.draft (was wardrobe/apron.draft): HEAD~1 → HEAD',
      '1 of 2 pieces changed.',
    ]);
  });

  it('tells patterns that came and went, and nothing where nothing differs', async () => {
    repository.write(
      'extra.draft',
      narrow
        .replaceAll('width', 'breadth')
        .replaceAll('point', 'point')
        .replace(/^.*\n.*\n/, ''),
    );
    const added = await repository.run('compare', 'HEAD', '.');
    assert.equal(added.exit, 1);
    assert.match(
      added.out,
      /^extra\.draft: HEAD → the working tree\nPattern added, 2 pieces: skirt, bib\.$/m,
    );
    const none = await repository.run('compare', 'HEAD..HEAD');
    assert.deepEqual([none.exit, none.out], [0, 'No pattern differs between HEAD and HEAD.\n']);
  });

  it('compares a branch with where it began', async () => {
    repository.git('checkout', '--quiet', '-b', 'narrower');
    repository.write('wardrobe/apron.draft', narrow);
    repository.commit('Narrower');
    repository.git('checkout', '--quiet', 'main');
    repository.write('wardrobe/apron.draft', apronWith('bib-height = 25cm', 'bib-height = 26cm'));
    repository.commit('Higher');
    const { out } = await repository.run('compare', 'main...narrower');
    assert.match(out, /^1 of 2 pieces changed\.$/m);
    assert.match(out, /width: 60cm → 58cm/);
    assert.doesNotMatch(out, /bib-height/);
  });

  it('says so where there is no repository', async () => {
    const folder = new CommandFolder({ 'a.draft': apron });
    try {
      const { exit, err } = await folder.run('compare', 'main..HEAD');
      assert.equal(exit, 2);
      assert.match(err, /^main\.\.HEAD is no file or folder here, and this folder lies in no git repository/);
    } finally {
      folder.remove();
    }
  });

  it('says so where a revision is missing, and how to fetch it into a shallow clone', async () => {
    assert.match(await refusal('gone..HEAD'), /^This repository has no revision called gone\. See git log/);
    assert.match(await refusal('--', '--upload-pack=touch x..HEAD'), /has no revision called --upload-pack/);
    repository.write('wardrobe/apron.draft', narrow);
    repository.commit('Narrower');
    const shallow = new CommandFolder();
    try {
      repository.git('clone', '--quiet', '--depth', '1', `file://${repository.path}`, shallow.path);
      const { exit, err } = await shallow.run('compare', 'HEAD~1..HEAD');
      assert.equal(exit, 2);
      assert.match(err, /no revision called HEAD~1\. The clone is shallow: .*git fetch --unshallow/);
    } finally {
      shallow.remove();
    }
  });

  it('names a file that one side lacks', async () => {
    repository.write('other.draft', 'pattern "Another"\n');
    assert.equal(
      await refusal('HEAD', 'other.draft'),
      'other.draft is in the working tree, but not in HEAD, nor anything like it under another name: there is nothing to compare it with.\n',
    );
    assert.equal(
      await refusal('HEAD..', 'nowhere.draft'),
      'nowhere.draft is neither in HEAD nor in the working tree.\n',
    );
    unlinkSync(join(repository.path, 'wardrobe/apron.draft'));
    assert.match(await refusal('HEAD..', 'wardrobe/apron.draft'), /is in HEAD, but not in the working tree/);
  });

  it('names a file that is no text, and one whose merge is not settled', async () => {
    repository.write('wardrobe/apron.draft', new Uint8Array([80, 0, 1, 2]));
    assert.match(
      await refusal('HEAD', 'wardrobe'),
      /^wardrobe\/apron\.draft in the working tree isn't text in UTF-8/,
    );
    const both = apron.replace(
      'choose width = 60cm in 40cm .. 80cm\n',
      (line) => `<<<<<<< HEAD\n${line}=======\n${line}>>>>>>> fitting\n`,
    );
    repository.write('wardrobe/apron.draft', both);
    assert.match(
      await refusal('HEAD', 'wardrobe'),
      /apron\.draft in the working tree holds the marks of an unfinished merge \(line 4\), so it isn't compared\./,
    );
    repository.write('wardrobe/apron.draft', apron);
    repository.write('marked.draft', both);
    repository.write('wardrobe/apron.draft', apron.replace('\n\n', '\nuse "../marked.draft"\n\n'));
    assert.match(
      await refusal('HEAD', 'wardrobe/apron.draft'),
      /^marked\.draft in the working tree holds the marks/,
    );
  });

  it('writes nothing into the repository and keeps its hands off its settings', async () => {
    repository.write('wardrobe/apron.draft', narrow);
    repository.git('config', 'core.fsmonitor', 'touch watched');
    repository.git('config', 'diff.external', 'touch compared');
    const before = listing(repository.path);
    const { exit } = await repository.run('compare', 'HEAD');
    assert.equal(exit, 1);
    assert.deepEqual(listing(repository.path), before);
  });
});

/** Every file below a folder with its size and its time. */
function listing(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => {
      const path = join(entry.parentPath, entry.name);
      const { size, mtimeMs } = statSync(path);
      return `${path} ${size} ${mtimeMs}`;
    })
    .sort();
}

/** What git says of patterns once it is told how to read them, in a repository that the test makes. */
import assert from 'node:assert/strict';
import { chmodSync, existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { CommandFolder } from '../support/command';
import { Repository } from '../support/repository';
import { read, root } from '../support/sources';

const skirt = read('samples/harbour-skirt.draft');
const COMMAND = `node --import ${join(root, 'node_modules/tsx/dist/esm/index.mjs')} ${join(root, 'server/cli/main.ts')}`;

const TEXTCONV = 'shown() { draftwright git-text "$1" 2>/dev/null || cat "$1"; }; shown';

describe('setting up git', () => {
  let repository: Repository;
  beforeEach(() => {
    repository = new Repository({
      'skirts/harbour-skirt.draft': skirt.replace('bodies/', '../bodies/'),
      'bodies/company.draft': read('samples/bodies/company.draft'),
      '.gitattributes': '*.png binary',
    });
    repository.commit('A skirt');
  });
  afterEach(() => repository.remove());

  const change = (from: string, to: string): void => {
    const file = 'skirts/harbour-skirt.draft';
    const text = readFileSync(join(repository.path, file), 'utf8');
    assert.ok(text.includes(from));
    repository.write(file, text.replace(from, to));
  };

  it('shows each line before it writes it, and what is there stays', async () => {
    const { exit, out } = await repository.run('git-setup', '--textconv');
    assert.equal(exit, 0);
    assert.match(
      out,
      /^\.gitattributes, to be committed with the patterns:\n {2}\*\.draft diff=draftwright\n/,
    );
    assert.match(out, /^ {2}diff\.draftwright\.xfuncname = /m);
    assert.ok(out.includes(`  diff.draftwright.textconv = ${TEXTCONV}\n`));
    assert.match(
      out,
      /^ {2}difftool\.draftwright\.cmd = draftwright compare --as "\$MERGED" "\$LOCAL" "\$REMOTE"$/m,
    );
    assert.match(out, /Written\.\n$/);
    assert.equal(
      readFileSync(join(repository.path, '.gitattributes'), 'utf8'),
      '*.png binary\n*.draft diff=draftwright\n',
    );
    assert.equal(repository.git('config', '--local', 'diff.draftwright.textconv'), `${TEXTCONV}\n`);
  });

  it('writes nothing when it is only to show, and nothing twice', async () => {
    const config = () => readFileSync(join(repository.path, '.git/config'), 'utf8');
    const before = config();
    const shown = await repository.run('git-setup', '--show');
    assert.match(shown.out, /Nothing was written\.\n$/);
    assert.equal(config(), before);
    await repository.run('git-setup');
    const once = config();
    const again = await repository.run('git-setup');
    assert.equal(again.out, 'Everything is set up already; nothing to write.\n');
    assert.equal(config(), once);
  });

  it('says so outside of a repository', async () => {
    const folder = new CommandFolder();
    const { exit, err } = await folder.run('git-setup');
    assert.deepEqual([exit, existsSync(join(folder.path, '.gitattributes'))], [2, false]);
    assert.match(err, /^This folder lies in no git repository/);
    folder.remove();
  });

  it('heads each stretch of a difference with its piece, draft or seam', async () => {
    await repository.run('git-setup');
    change('front-hip = half-hip / 2 + 0.5cm', 'front-hip = half-hip / 2 + 0.6cm');
    change('balance line hip-line from hip-cb to hip-b', 'balance line hips from hip-cb to hip-b');
    const heads = repository
      .git('diff', '-U0', '--', '*.draft')
      .match(/^@@ .*$/gm)!
      .map((line) => line.replace(/^@@ .* @@ /, ''));
    assert.deepEqual(heads, ['draft skirt {', 'piece back of skirt {']);
  });

  it('shows lengths beside the lines where that is wanted', async () => {
    await repository.run('git-setup', '--textconv', '--command', COMMAND);
    change('hip-ease = 4cm', 'hip-ease = 5cm');
    const lines = repository.git('diff', '-U0').split('\n');
    const found = (start: string): string[] => lines.filter((line) => line.slice(1).trim().startsWith(start));
    assert.deepEqual(found('let half-hip'), [
      '-  let half-hip = (hip + hip-ease) / 2  # 52.5cm',
      '+  let half-hip = (hip + hip-ease) / 2  # 53cm',
    ]);
    assert.deepEqual(found('hem straight to hem-cb'), [
      '-    hem straight to hem-cb  # 25.75cm',
      '+    hem straight to hem-cb  # 26cm',
    ]);
  }).timeout(60000);

  it('shows the text as it stands where git does not find the program', async () => {
    await repository.run('git-setup', '--textconv', '--command', 'no-program-of-this-name');
    change('hip-ease = 4cm', 'hip-ease = 5cm');
    const lines = repository.git('diff', '-U0', '--', '*.draft').split('\n');
    const changed = lines.filter((line) => /^[-+](?![-+])/.test(line));
    assert.deepEqual(
      changed.map((line) => line.replace(/ in .*/, '')),
      ['-choose hip-ease = 4cm', '+choose hip-ease = 5cm'],
    );
  });

  it('compares in git difftool what is used from the working tree', async () => {
    await repository.run('git-setup', '--command', COMMAND);
    change('hip-ease = 4cm', 'hip-ease = 5cm');
    const out = repository.git('difftool', '--no-prompt', '--tool', 'draftwright');
    assert.match(out, /^3 of 3 pieces changed\.$/m);
    assert.match(out, /^ {2}hip-ease: 4cm → 5cm/m);
  }).timeout(60000);
});

/** The shell steps of the recipe, by their names. */
function steps(): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const blocks = read('samples/ci/patterns.yml').matchAll(
    /^ {6}- name: (.*)\n {8}run: \|\n((?: {10}.*\n|\n)*)/gm,
  );
  for (const [, name, script] of blocks) found.set(name!, script!.replace(/^ {10}/gm, ''));
  return found;
}

/** A stand-in for the forge's command: notes what it is asked, and knows one comment once one was written. */
const FORGE = `#!/bin/sh
echo "$@" >> "$FORGE_LOG"
case "$*" in
  *POST*) echo 7 > "$FORGE_LOG.comment" ;;
  *paginate*) cat "$FORGE_LOG.comment" 2>/dev/null || true ;;
esac
`;

describe('the recipe for a pipeline', () => {
  let repository: Repository;
  let base = '';
  before(() => {
    repository = new Repository({
      'skirt.draft': skirt,
      'bodies/company.draft': read('samples/bodies/company.draft'),
      'bin/gh': FORGE,
      '.gitignore': 'bin\nreview\nlog*\n',
    });
    chmodSync(join(repository.path, 'bin/gh'), 0o755);
    repository.commit('A skirt');
    base = repository.git('rev-parse', 'HEAD').trim();
    repository.git('checkout', '--quiet', '-b', 'change');
  });
  after(() => repository.remove());

  const runAll = (): { readonly passed: boolean; readonly forge: string[] } => {
    const log = join(repository.path, 'log');
    let passed = true;
    for (const script of steps().values()) passed = shell(repository, script, { base, log }) && passed;
    const forge = existsSync(log) ? readFileSync(log, 'utf8').trim().split('\n') : [];
    return { passed, forge };
  };

  it('has the steps that it promises', () => {
    assert.deepEqual(
      [...steps().keys()],
      [
        'Check every pattern',
        'Compare with where the branch began',
        'Write the comment, or write it anew',
        'Pass, or say why not',
      ],
    );
  });

  it('lets a sound change pass, and fails one that breaks a seam, in one comment that is written anew', () => {
    repository.write('skirt.draft', skirt.replace('hip-ease = 4cm', 'hip-ease = 5cm'));
    repository.commit('Wider');
    const first = runAll();
    assert.equal(first.passed, true);
    assert.match(
      readFileSync(join(repository.path, 'review/comparison.md'), 'utf8'),
      /^<!-- draftwright compare -->\n### skirt\.draft/,
    );
    assert.match(readFileSync(join(repository.path, 'review/comparison.html'), 'utf8'), /<\/html>\n$/);
    assert.match(readFileSync(join(repository.path, 'review/check.txt'), 'utf8'), /problems|note|warning/);
    assert.match(
      first.forge.at(-1)!,
      /^api repos\/wardrobe\/patterns\/issues\/12\/comments --method POST --field body=@review\/comparison\.md$/,
    );
    repository.write(
      'skirt.draft',
      skirt.replace('then straight to hem-b\n', 'then straight to (hem-b down 6mm)\n'),
    );
    repository.commit('Broken');
    const second = runAll();
    assert.equal(second.passed, false);
    assert.match(
      readFileSync(join(repository.path, 'review/comparison.md'), 'utf8'),
      /no longer matches|new error/,
    );
    assert.match(second.forge.at(-1)!, /^api repos\/wardrobe\/patterns\/issues\/comments\/7 --method PATCH/);
  }).timeout(120000);
});

/** Runs one step as the forge does: bash that stops at the first failure. */
function shell(
  repository: Repository,
  script: string,
  { base, log }: { base: string; log: string },
): boolean {
  return repository.shell(script, {
    DRAFTWRIGHT: COMMAND,
    BASE: base,
    REQUEST: '12',
    REPOSITORY: 'wardrobe/patterns',
    FORGE_LOG: log,
    PATH: `${join(repository.path, 'bin')}:${process.env.PATH}`,
  });
}

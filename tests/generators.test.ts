/** Whatever is made from something else: making all of it anew in a copy of the repository changes nothing there. */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './support/sources';

const GENERATORS = [
  'grammar/generate.ts',
  'tests/support/annotate.ts',
  'tests/support/write-pages.ts',
  'tests/support/write-reference.ts',
  'tests/support/write-walkthrough.ts',
];

/** What no generator reads or writes. */
const LEFT_OUT = new Set(['node_modules', 'dist', 'out', '.git', '.cache']);

/** Every file of the repository by its path from `top`, with what it holds. */
function held(top: string): Map<string, string> {
  const names = readdirSync(top).filter((name) => !LEFT_OUT.has(name));
  const below = (path: string): string[] =>
    statSync(join(top, path)).isDirectory()
      ? readdirSync(join(top, path)).flatMap((name) => below(join(path, name)))
      : [path];
  return new Map(names.flatMap(below).map((path) => [path, readFileSync(join(top, path), 'latin1')]));
}

describe('making anew whatever is made', function () {
  this.timeout(180_000);
  let copy = '';

  before(() => {
    copy = mkdtempSync(join(tmpdir(), 'draftwright-made-'));
    for (const name of readdirSync(root))
      if (!LEFT_OUT.has(name)) cpSync(join(root, name), join(copy, name), { recursive: true });
    symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
  });

  after(() => rmSync(copy, { recursive: true, force: true }));

  it('leaves every file of the repository as it is', () => {
    const before = held(copy);
    for (const generator of GENERATORS) {
      const args = ['--import', 'tsx', generator];
      const { status, stderr } = spawnSync(process.execPath, args, { cwd: copy, encoding: 'utf8' });
      assert.equal(status, 0, `${generator}: ${stderr}`);
    }
    const now = held(copy);
    const paths = [...new Set([...before.keys(), ...now.keys()])];
    const changed = paths.filter((path) => before.get(path) !== now.get(path));
    assert.deepEqual(changed, [], 'run the generators, read the difference, and commit it');
  });
});

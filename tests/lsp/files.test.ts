/** The door to files: one spelling of an address, buffers before the disk, and no way out of the workspace. */
import assert from 'node:assert/strict';
import { Files, nothingBehind, type Behind } from '../../server/lsp/files';
import { canonical, joined } from '../../server/lsp/uris';

const behind = (texts: Record<string, string>, home?: string): Behind => ({
  ...nothingBehind,
  read: (uri) => texts[uri],
  home: () => home,
});

function door(folders: string[], texts: Record<string, string> = {}, home?: string): Files {
  const files = new Files(behind(texts, home));
  files.setFolders(folders);
  return files;
}

describe('an address of a file', () => {
  it('has one spelling, whoever wrote it', () => {
    const expected = 'file:///c%3A/wardrobe/act%20one/sea%40quay.draft';
    assert.equal(canonical('file:///C:/wardrobe/act one/sea@quay.draft'), expected);
    assert.equal(canonical('file:///c%3a/wardrobe/act%20one/sea%40quay.draft'), expected);
    assert.equal(canonical(expected), expected);
  });

  it('keeps a percent sign that encodes nothing', () => {
    assert.equal(canonical('file:///50%.draft'), 'file:///50%25.draft');
  });

  it('of another scheme is left as it is', () => {
    assert.equal(canonical('untitled:Untitled-1'), 'untitled:Untitled-1');
    assert.equal(canonical('vscode-vfs://host/a b'), 'vscode-vfs://host/a b');
  });

  it('is joined with a path, and never climbs above the root', () => {
    assert.equal(joined('file:///a/b/', '../c/d e.draft'), 'file:///a/c/d%20e.draft');
    assert.equal(joined('file:///a/', '../../x'), undefined);
  });
});

describe('the door to files', () => {
  it('reads an open buffer before the disk, and the disk again once it is closed', () => {
    const files = door([], { 'file:///w/a.draft': 'on disk' });
    files.setBuffer('file:///w/a.draft', 'typed');
    assert.equal(files.read('file:///w/a.draft'), 'typed');
    files.dropBuffer('file:///w/a.draft');
    assert.equal(files.read('file:///w/a.draft'), 'on disk');
  });

  it('finds a used file beside the one that uses it', () => {
    const uri = 'file:///w/bodies/company.draft';
    assert.deepEqual(door(['file:///w']).resolve('file:///w/skirt.draft', 'bodies/company.draft'), { uri });
    assert.deepEqual(door(['file:///w']).resolve('file:///w/acts/skirt.draft', '../bodies/company.draft'), {
      uri,
    });
  });

  it('lets no use leave the workspace', () => {
    const files = door(['file:///w']);
    for (const path of [
      '../other.draft',
      '/etc/passwd',
      'file:///etc/passwd',
      'C:\\x.draft',
      '../w2/a.draft',
    ]) {
      assert.deepEqual(files.resolve('file:///w/skirt.draft', path), { outside: true }, path);
    }
  });

  it('keeps a file outside every workspace folder in its home', () => {
    const files = door(['file:///w'], {}, 'file:///repo');
    assert.deepEqual(files.resolve('file:///repo/acts/a.draft', '../b.draft'), {
      uri: 'file:///repo/b.draft',
    });
    assert.deepEqual(files.resolve('file:///repo/a.draft', '../b.draft'), { outside: true });
  });

  it('counts from the first workspace folder for a text that was never saved', () => {
    const uri = 'file:///w/bodies.draft';
    assert.deepEqual(door(['file:///w']).resolve('untitled:Untitled-1', 'bodies.draft'), { uri });
    assert.deepEqual(door([]).resolve('untitled:Untitled-1', 'bodies.draft'), { outside: true });
  });

  it('works in a virtual workspace', () => {
    const files = door(['vscode-vfs://host/w']);
    assert.deepEqual(files.resolve('vscode-vfs://host/w/a.draft', 'b.draft'), {
      uri: 'vscode-vfs://host/w/b.draft',
    });
  });

  it('works in a virtual workspace whose addresses name no host', () => {
    const files = door(['attic:/w']);
    assert.deepEqual(files.resolve('attic:/w/acts/a.draft', '../bodies/b.draft'), {
      uri: 'attic:/w/bodies/b.draft',
    });
    assert.deepEqual(files.resolve('attic:/w/a.draft', '../b.draft'), { outside: true });
    assert.deepEqual(files.resolve('untitled:/w/a.draft', 'b.draft'), { uri: 'attic:/w/b.draft' });
  });

  it('counts an older version of a file from the place that its path names, in the folder that holds it', () => {
    const files = door(['file:///props', 'file:///w']);
    const older = 'git:/w/acts/last%20act/a.draft?%7B%22path%22%3A%22/x/y%22%7D';
    assert.deepEqual(files.resolve(older, 'b.draft'), { uri: 'file:///w/acts/last%20act/b.draft' });
    assert.deepEqual(files.resolve(older, '../../bodies/b.draft'), { uri: 'file:///w/bodies/b.draft' });
    assert.deepEqual(files.resolve(older, '../../../props/b.draft'), { outside: true });
    files.setBuffer('file:///w/bodies/b.draft', '');
    assert.deepEqual(files.pathsFrom(older), ['../../bodies/b.draft']);
    assert.deepEqual(files.resolve('git:/elsewhere/acts/a.draft', 'b.draft'), {
      uri: 'file:///props/b.draft',
    });
    const drive = door(['file:///c%3A/w']).resolve('git:/C:/w/acts/a.draft?x', 'b.draft');
    assert.deepEqual(drive, { uri: 'file:///c%3A/w/acts/b.draft' });
  });

  it('counts a new text that will be saved in a folder from there', () => {
    const uri = 'file:///w/acts/b.draft';
    assert.deepEqual(door(['file:///w']).resolve('untitled:/w/acts/a.draft', 'b.draft'), { uri });
  });

  it('lets no older version of a file use what lies outside the workspace', () => {
    const files = door(['file:///w'], { 'file:///w/b.draft': '' });
    files.setBuffer('file:///w/b.draft', '');
    const older = 'git:/w/a.draft?%7B%22ref%22%3A%22~%22%7D';
    assert.deepEqual(files.resolve(older, 'b.draft'), { uri: 'file:///w/b.draft' });
    assert.deepEqual(files.resolve(older, '../b.draft'), { outside: true });
    assert.deepEqual(files.pathsFrom(older), ['b.draft']);
    assert.deepEqual(door([]).resolve(older, 'b.draft'), { outside: true });
  });
});

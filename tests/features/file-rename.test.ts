/** Use lines that still lead where they led after files or folders got other names. */
import assert from 'node:assert/strict';
import { parse } from '../../grammar/index';
import { mendedUses, pathBetween } from '../../server/features/file-rename';
import { joined, folderOf } from '../../server/lsp/uris';

const folder = 'file:///w/';

/** The files with a changed path, each as `file: path`. */
function checkMended(texts: Record<string, string>, from: string, to: string, expected: string[]): void {
  const files = Object.entries(texts).map(([name, text]) => ({ uri: folder + name, file: parse(text) }));
  const resolve = (file: string, path: string) => joined(folderOf(file), path);
  const edits = mendedUses(files, [{ from: folder + from, to: folder + to }], resolve);
  assert.deepEqual(
    edits.map(({ uri, text }) => `${uri.slice(folder.length)}: ${text}`),
    expected,
  );
  for (const { uri, from: start, to: end } of edits)
    assert.match(texts[uri.slice(folder.length)]!.slice(start - 1, end + 1), /^"[^"]*"$/);
}

describe('mending use lines when files move', () => {
  const texts = {
    'skirt.draft': 'use "bodies/company.draft"\nuse "block.draft" as block\n',
    'acts/coat.draft': 'use "../bodies/company.draft"\n',
    'bodies/company.draft': 'body ferrywoman {\n}\n',
    'block.draft': 'draft block {\n}\n',
  };

  it('follows a file that is used', () =>
    checkMended(texts, 'bodies/company.draft', 'bodies/troupe.draft', [
      'skirt.draft: bodies/troupe.draft',
      'acts/coat.draft: ../bodies/troupe.draft',
    ]));

  it('follows a folder', () =>
    checkMended(texts, 'bodies', 'wardrobe/bodies', [
      'skirt.draft: wardrobe/bodies/company.draft',
      'acts/coat.draft: ../wardrobe/bodies/company.draft',
    ]));

  it('counts anew from a file that moves itself', () =>
    checkMended(texts, 'skirt.draft', 'acts/one/skirt.draft', [
      'skirt.draft: ../../bodies/company.draft',
      'skirt.draft: ../../block.draft',
    ]));

  it('leaves alone what moves together', () =>
    checkMended({ 'a/x.draft': 'use "y.draft"\n', 'a/y.draft': '' }, 'a', 'b', []));

  it('writes blanks as they are, and nothing between two roots', () => {
    assert.equal(pathBetween('file:///w/a.draft', 'file:///w/act%20one/b.draft'), 'act one/b.draft');
    assert.equal(pathBetween('file:///w/a.draft', 'vscode-vfs://host/w/b.draft'), undefined);
  });
});

/** Following a name over the protocol: on unsaved text, and in files that were never opened. */
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { DocumentHighlight, LinkedEditingRanges, Location, WorkspaceEdit } from 'vscode-languageserver';
import { diskBehind, uriOfPath } from '../../server/lsp/disk';
import { TestClient } from '../support/client';

const bodies = 'measure fist "round the closed hand"\nbody ferrywoman {\n  fist 24cm\n}\n';
const bag = 'use "bodies.draft"\ndrafted for ferrywoman\nlet pocket = fist + 4cm\n';

/** A folder with a bag and the bodies that it uses, where the bag alone is open. */
async function withBag(story: (client: TestClient, bagUri: string, bodiesUri: string) => Promise<void>) {
  const folder = mkdtempSync(join(tmpdir(), 'draftwright-names-'));
  writeFileSync(join(folder, 'bodies.draft'), bodies);
  writeFileSync(join(folder, 'bag.draft'), 'let saved = 1cm\n');
  const client = await TestClient.start({ behind: diskBehind(folder), folders: [uriOfPath(folder)] });
  try {
    const uri = uriOfPath(join(folder, 'bag.draft'));
    await client.open(uri, bag);
    await story(client, uri, uriOfPath(join(folder, 'bodies.draft')));
  } finally {
    await client.leave();
    rmSync(folder, { recursive: true });
  }
}

describe('following a name in an editor', () => {
  it('finds its places in a file that is not open, with and without the one that defines it', () =>
    withBag(async (client, uri, bodiesUri) => {
      const at = client.at(uri, 'fist');
      const ask = (includeDeclaration: boolean) =>
        client.ask<Location[]>('textDocument/references', { ...at, context: { includeDeclaration } });
      assert.deepEqual(
        (await ask(true)).map((found) => [found.uri, found.range.start.line]),
        [
          [uri, 2],
          [bodiesUri, 0],
          [bodiesUri, 2],
        ],
      );
      assert.equal((await ask(false)).length, 1);
    }));

  it('gives another name to everything that bears it, as one edit over files', () =>
    withBag(async (client, uri, bodiesUri) => {
      const params = { ...client.at(uri, 'fist'), newName: 'grip' };
      const { changes } = await client.ask<WorkspaceEdit>('textDocument/rename', params);
      assert.deepEqual(Object.keys(changes!).sort(), [uri, bodiesUri].sort());
      assert.equal(changes![bodiesUri]!.length, 2);
    }));

  it('finds who uses a file however the line is written that says so', () =>
    withBag(async (client, uri, bodiesUri) => {
      await client.type(uri, 'use "bodies.draft"', 'use„bodies.draft“');
      await client.open(bodiesUri, bodies);
      const params = { ...client.at(bodiesUri, 'fist'), newName: 'grip' };
      const { changes } = await client.ask<WorkspaceEdit>('textDocument/rename', params);
      assert.deepEqual(Object.keys(changes!).sort(), [uri, bodiesUri].sort());
    }));

  it('says why a name can’t be given', () =>
    withBag(async (client, uri) => {
      const at = client.at(uri, 'pocket');
      await assert.rejects(client.ask('textDocument/rename', { ...at, newName: 'waist' }), {
        message: 'waist is a measurement.',
      });
      await assert.rejects(client.ask('textDocument/prepareRename', client.at(uri, 'let')), {
        message: 'let is not a name that this pattern gives.',
      });
      const ready = await client.ask('textDocument/prepareRename', at);
      assert.deepEqual((ready as { placeholder: string }).placeholder, 'pocket');
    }));

  it('lights up the places in the text as it is typed', () =>
    withBag(async (client, uri) => {
      await client.type(uri, '+ 4cm', '+ fist');
      const found = await client.ask<DocumentHighlight[]>(
        'textDocument/documentHighlight',
        client.at(uri, 'fist'),
      );
      assert.equal(found.length, 2);
    }));

  it('links the places of a name that stands in this text alone, and no others', () =>
    withBag(async (client, uri) => {
      const ask = (words: string) =>
        client.ask<LinkedEditingRanges | null>('textDocument/linkedEditingRange', client.at(uri, words));
      await client.type(uri, '+ 4cm', '+ 4cm\nlet flap = pocket / 2');
      const { ranges, wordPattern } = (await ask('pocket'))!;
      assert.deepEqual(
        ranges.map(({ start, end }) => [start.line, start.character, end.character]),
        [
          [2, 4, 10],
          [3, 11, 17],
        ],
      );
      assert.equal(new RegExp(wordPattern!).exec('hip-line = 4cm')![0], 'hip-line');
      assert.equal(await ask('fist'), null);
    }));
});

describe('files that get other names in an editor', () => {
  it('take the use lines with them that lead to them', () =>
    withBag(async (client, uri, bodiesUri) => {
      const files = [{ oldUri: bodiesUri, newUri: bodiesUri.replace('bodies.draft', 'troupe.draft') }];
      const { changes } = await client.ask<WorkspaceEdit>('workspace/willRenameFiles', { files });
      assert.deepEqual(
        changes![uri]!.map(({ newText }) => newText),
        ['troupe.draft'],
      );
    }));
});

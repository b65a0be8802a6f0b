/** What a thing is built from and what it moves, as an editor asks for it: a call hierarchy over the protocol. */
import assert from 'node:assert/strict';
import type {
  CallHierarchyIncomingCall,
  CallHierarchyItem,
  CallHierarchyOutgoingCall,
} from 'vscode-languageserver';
import { apron } from '../support/apron';
import { TestClient } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';

describe('a hierarchy of definitions in an editor', () => {
  it('leads from a point to what it is built from and to what it moves, and on from there', async () => {
    const client = await TestClient.start({ folders: ['file:///wardrobe'] });
    try {
      await client.open(uri, apron);
      const [item] = await client.ask<CallHierarchyItem[]>(
        'textDocument/prepareCallHierarchy',
        client.at(uri, 'waist-right = '),
      );
      assert.equal(item!.detail, 'point waist-right = waist-left right width');
      const from = await client.ask<CallHierarchyOutgoingCall[]>('callHierarchy/outgoingCalls', { item });
      assert.deepEqual(
        from.map(({ to }) => to.name),
        ['waist-left', 'width'],
      );
      const moves = await client.ask<CallHierarchyIncomingCall[]>('callHierarchy/incomingCalls', { item });
      assert.deepEqual(
        moves.map((step) => step.from.name),
        ['hem-right', 'waist'],
      );
      const next = { item: moves[1]!.from };
      const further = await client.ask<CallHierarchyIncomingCall[]>('callHierarchy/incomingCalls', next);
      assert.deepEqual(
        further.map((step) => step.from.name),
        ['skirt-edges'],
      );
    } finally {
      await client.leave();
    }
  });

  it('has no steps for an entry whose line was changed to another since', async () => {
    const client = await TestClient.start({ folders: ['file:///wardrobe'] });
    try {
      await client.open(uri, apron);
      const at = client.at(uri, 'waist-right = ');
      const [item] = await client.ask<CallHierarchyItem[]>('textDocument/prepareCallHierarchy', at);
      await client.type(uri, 'point waist-right', 'point corner');
      assert.equal(await client.ask('callHierarchy/outgoingCalls', { item }), null);
    } finally {
      await client.leave();
    }
  });
});

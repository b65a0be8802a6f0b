/** Sizes on one another in a preview, over the protocol: only where they are wanted, and only what changed. */
import assert from 'node:assert/strict';
import { methods, type Sheet, type Want } from '../../client/preview/protocol';
import { TestClient } from '../support/client';
import { graded } from '../support/sheets-of-sizes';

const uri = 'file:///wardrobe/bucket.draft';

async function withPreview(want: Want, story: (client: TestClient, first: Sheet) => Promise<void>) {
  const client = await TestClient.start({ folders: ['file:///wardrobe'] });
  try {
    await client.open(uri, graded);
    await story(client, await client.ask<Sheet>(methods.openPreview, { uri, want }));
  } finally {
    await client.leave();
  }
}

const names = ({ pieces }: Sheet) => pieces.map(({ name }) => name);
const sizesOf = ({ pieces }: Sheet) => [
  ...new Set(pieces.flatMap(({ lines }) => lines.flatMap(({ ofSize = [] }) => ofSize))),
];

describe('sizes on one another in a preview', () => {
  it('are drawn when they are wanted, and gone when they are not', () =>
    withPreview({}, async (client, first) => {
      assert.deepEqual([first.sizes, first.nested, sizesOf(first)], [['S', 'M', 'L'], [], []]);
      await client.connection.sendNotification(methods.want, { uri, want: { sizes: true } });
      const nested = await client.sheetAfter(0);
      assert.deepEqual(
        [nested.nested, sizesOf(nested)],
        [
          ['S', 'M', 'L'],
          ['S', 'M', 'L'],
        ],
      );
      await client.connection.sendNotification(methods.want, { uri, want: {} });
      const again = await client.sheetAfter(1);
      assert.deepEqual([again.nested, sizesOf(again)], [[], []]);
    }));

  it('follow an edit, and only the piece that it changed is sent', () =>
    withPreview({ sizes: true }, async (client, first) => {
      assert.deepEqual(names(first), ['front', 'patch']);
      await client.type(uri, 'patch-a right 10cm', 'patch-a right 11cm');
      assert.deepEqual(names(await client.sheetAfter(0)), ['patch']);
    }));
});

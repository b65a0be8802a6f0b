/** What a preview shows on demand, over the protocol: only where it is wanted, and only what changed. */
import assert from 'node:assert/strict';
import { methods, type Laid, type Layable, type Sheet, type Want } from '../../client/preview/protocol';
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

  it('bear no signs of problems, whose places are those of one size alone', () =>
    withPreview({}, async (client) => {
      const signs = ({ problems }: Sheet) => problems.filter(({ spots = [] }) => spots.length > 0).length;
      await client.type(uri, 'front.side, front.foot', 'front.side');
      const alone = await client.sheetAfter(0);
      assert.deepEqual([alone.problems.length, signs(alone)], [1, 1]);
      await client.connection.sendNotification(methods.want, { uri, want: { sizes: true } });
      const nested = await client.sheetAfter(1);
      assert.deepEqual([nested.problems.length, signs(nested)], [1, 0]);
    }));

  it('follow an edit, and only the piece that it changed is sent', () =>
    withPreview({ sizes: true }, async (client, first) => {
      assert.deepEqual(names(first), ['front', 'patch']);
      await client.type(uri, 'patch-a right 10cm', 'patch-a right 11cm');
      assert.deepEqual(names(await client.sheetAfter(0)), ['patch']);
    }));
});

describe('the draft beneath the pieces of a preview', () => {
  const points = ({ pieces }: Sheet) =>
    pieces.flatMap(({ name: piece, dots }) =>
      dots.filter(({ role }) => role === 'point').map(({ name, at }) => `${piece} ${name} ${at.x} ${at.y}`),
    );

  it('is drawn when it is wanted, and an edit of a guide point moves it', () =>
    withPreview({}, async (client, first) => {
      assert.deepEqual(points(first), []);
      await client.connection.sendNotification(methods.want, { uri, want: { construction: true } });
      assert.deepEqual(points(await client.sheetAfter(0)), [
        ...['front patch-a 0 0', 'front patch-b 100 0', 'front patch-c 100 120', 'front patch-d 0 120'],
        ...['patch top-cf 0 0', 'patch top-side 120 0'], // its foot is too far off
      ]);
      await client.type(uri, 'patch-a right 10cm', 'patch-a right 11cm');
      const moved = points(await client.sheetAfter(1));
      assert.ok(moved.includes('front patch-b 110 0'), moved.join());
    }));

  it('is sent again for the pieces alone that look different', () =>
    withPreview({ construction: true }, async (client) => {
      await client.type(uri, 'patch-a down 12cm', 'patch-a down 60cm');
      assert.deepEqual(names(await client.sheetAfter(0)), ['front', 'patch']);
    }));
});

describe('what is laid out in a preview', () => {
  const seamed = `${graded}
seam patch-sides patch.left-side = patch.right-side
`.replace(', patch.right-side, patch.foot, patch.left-side turned', ', patch.foot turned');

  it('is sent when it is wanted and when an edit changes it, a drawing once', async () => {
    const client = await TestClient.start({ folders: ['file:///wardrobe'] });
    const laid: Laid[] = [];
    client.connection.onNotification(methods.laid, (one: Laid) => void laid.push(one));
    const until = async (holds: () => boolean) => {
      for (let tries = 0; tries < 100 && !holds(); tries++) await new Promise((done) => setTimeout(done, 20));
      assert.ok(holds(), JSON.stringify(laid.at(-1)?.words));
    };
    try {
      await client.open(uri, seamed);
      await client.ask<Sheet>(methods.openPreview, { uri });
      const layable = await client.ask<readonly Layable[]>(methods.layable, { uri });
      const walk = layable.find(({ kind }) => kind === 'walk')!;
      const want = (at: number) => ({ uri, want: { laying: { kind: 'walk', of: walk.of, at } } });
      await client.connection.sendNotification(methods.want, want(0));
      await client.connection.sendNotification(methods.want, want(60));
      await until(() => laid.length === 2);
      const drawn = (one: Laid) => one.pieces.map(({ drawing }) => drawing?.name ?? '');
      assert.deepEqual(
        [drawn(laid[0]!), drawn(laid[1]!)],
        [
          ['patch', 'patch'],
          ['', ''],
        ],
      );
      assert.equal(laid[1]!.walk?.at, 60);
      await client.type(uri, 'patch-a down 12cm', 'patch-a down 13cm');
      await client.type(uri, 'patch-b down 12cm', 'patch-b down 13cm');
      await until(() => laid.at(-1)!.words[0]!.includes('13cm'));
    } finally {
      await client.leave();
    }
  });
});

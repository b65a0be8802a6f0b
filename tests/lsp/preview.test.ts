/** Previews over the protocol: whole once, then only changed pieces; what breaks stays as it was drawn last. */
import assert from 'node:assert/strict';
import type { Location, WorkspaceEdit } from 'vscode-languageserver';
import { methods, type Measured, type Sheet } from '../../client/preview/protocol';
import { apron } from '../support/apron';
import { TestClient } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';

async function withPreview(story: (client: TestClient, first: Sheet) => Promise<void>): Promise<void> {
  const client = await TestClient.start({ folders: ['file:///wardrobe'] });
  try {
    await client.open(uri, apron);
    await story(client, await client.ask<Sheet>(methods.openPreview, { uri }));
  } finally {
    await client.leave();
  }
}

const names = (sheet: Sheet) => sheet.pieces.map(({ name }) => name);

describe('a preview that is kept in step', () => {
  it('begins with the whole drawing', () =>
    withPreview(async (_client, first) => {
      assert.deepEqual(
        [first.full, names(first), first.title],
        [true, ['skirt', 'bib'], "Stage hand's apron"],
      );
    }));

  it('is sent the piece that changed and no other', () =>
    withPreview(async (client, first) => {
      await client.type(uri, 'bib-height = 25cm', 'bib-height = 26cm');
      const sheet = await client.sheetAfter(0);
      assert.deepEqual([sheet.full, names(sheet), sheet.since], [false, ['bib'], first.version]);
    }));

  it('draws other values that are tried, and from one trial to the next only what changed', () =>
    withPreview(async (client) => {
      const tryOut = (height: string) =>
        client.connection.sendNotification(methods.tryOut, { uri, trial: { set: { 'bib-height': height } } });
      await tryOut('27cm');
      const first = await client.sheetAfter(0);
      await tryOut('28cm');
      const next = await client.sheetAfter(1);
      assert.deepEqual([names(next), next.since], [['bib'], first.version]);
      assert.equal(next.choices.find(({ path }) => path === 'bib-height')?.value, '28cm');
    }));

  it('keeps what is tried while the text is edited', () =>
    withPreview(async (client) => {
      await client.connection.sendNotification(methods.tryOut, { uri, trial: { set: { width: '70cm' } } });
      await client.sheetAfter(0);
      await client.type(uri, 'bib-height = 25cm', 'bib-height = 26cm');
      const sheet = await client.sheetAfter(1);
      assert.deepEqual([names(sheet), sheet.choices.map(({ value }) => value)], [['bib'], ['70cm', '26cm']]);
    }));

  it('has two seats at one file, each with what it tries', () =>
    withPreview(async (client) => {
      const trial = { set: { 'bib-height': '27cm' } };
      const second = await client.ask<Sheet>(methods.openPreview, { uri, seat: 'second', trial });
      await client.type(uri, 'width = 60cm', 'width = 62cm');
      await client.sheetAfter(1);
      const heights = client.sheets.map(({ seat, choices }) => [
        seat,
        choices.find(({ path }) => path === 'bib-height')?.value,
      ]);
      assert.deepEqual([second.seat, ...heights], ['second', ['preview', '25cm'], ['second', '27cm']]);
    }));

  it('lays a ruler on what a seat shows, with what it tries', () =>
    withPreview(async (client) => {
      const pin = (x: number, y: number) => ({ at: { x, y }, piece: 'bib', own: { x, y } });
      const seat = { uri, seat: 'second', trial: { set: { 'bib-height': '27cm' } } };
      await client.ask<Sheet>(methods.openPreview, seat);
      const [from, to] = [pin(0, 0), pin(0, 270)];
      const measured = await client.ask<Measured>(methods.measure, { uri, seat: 'second', from, to });
      assert.deepEqual([measured.straight, measured.along], ['27cm', 'along far-side 27cm']);
    }));

  it('answers with the edits that write what is tried', () =>
    withPreview(async (client) => {
      const trial = { set: { width: '65cm' } };
      const edit = await client.ask<WorkspaceEdit>(methods.writeTrial, { uri, trial });
      assert.deepEqual(
        edit.changes![uri]!.map(({ newText }) => newText),
        ['65cm'],
      );
    }));

  it('is sent nothing when a comment was typed', () =>
    withPreview(async (client) => {
      await client.type(uri, '# how wide', '# how very wide');
      await client.diagnostics(uri);
      assert.deepEqual(client.sheets, []);
    }));

  it('keeps a broken piece as it was drawn last, while the other stays live', () =>
    withPreview(async (client) => {
      await client.type(uri, 'line diagonal = top-left to foot-right', 'line diagonal = top-left to nowhere');
      await client.type(
        uri,
        'point foot-right = top-right down bib-height',
        'point foot-right = top-right down bib-hight',
      );
      const broken = await client.sheetAfter(0);
      assert.deepEqual(
        broken.stale.map(({ piece }) => piece),
        ['bib'],
      );
      assert.match(broken.stale[0]!.reason, /bib-hight/);
      assert.deepEqual(
        broken.placements.map(({ piece }) => piece),
        ['skirt', 'bib'],
      );
      const count = client.sheets.length;
      await client.type(uri, 'width = 60cm', 'width = 62cm');
      const live = await client.sheetAfter(count);
      assert.deepEqual([names(live), live.stale.length], [['skirt'], 1]);
    }));

  it('takes a piece away that a choice leaves out, and brings it back', () =>
    withPreview(async (client) => {
      await client.type(uri, 'piece bib of bib-sheet {', 'piece bib of bib-sheet when width < 70cm {');
      const tryOut = async (width: string): Promise<unknown> => {
        await client.connection.sendNotification(methods.tryOut, { uri, trial: { set: { width } } });
        const of = ({ trial }: Sheet) => trial.set?.width === width;
        const { placements, stale } = await client.until(`${width} tried`, () => client.sheets.find(of));
        return [placements.map(({ piece }) => piece), stale.length];
      };
      assert.deepEqual(await tryOut('75cm'), [['skirt'], 0]);
      assert.deepEqual(await tryOut('65cm'), [['skirt', 'bib'], 0]);
    }));

  it('stops being sent sheets once it is closed', () =>
    withPreview(async (client) => {
      await client.connection.sendNotification(methods.closePreview, { uri });
      await client.type(uri, 'bib-height = 25cm', 'bib-height = 26cm');
      await client.diagnostics(uri);
      assert.deepEqual(client.sheets, []);
    }));

  it('begins again with a higher version, whole', () =>
    withPreview(async (client, first) => {
      const again = await client.ask<Sheet>(methods.openPreview, { uri });
      assert.deepEqual([again.full, again.version, names(again)], [true, first.version + 1, names(first)]);
    }));

  it('shows a broken piece from what the view held last, when it begins again after it was closed', () =>
    withPreview(async (client, first) => {
      await client.connection.sendNotification(methods.closePreview, { uri });
      await client.type(uri, 'top-right down bib-height', 'top-right down bib-hight');
      const again = await client.ask<Sheet>(methods.openPreview, { uri, last: first.pieces });
      assert.deepEqual([names(again), again.stale.map(({ piece }) => piece)], [names(first), ['bib']]);
    }));

  it('leads from a drawn thing to the text and back', () =>
    withPreview(async (client, first) => {
      const line = first.pieces[0]!.lines.find(({ name }) => name === 'hem')!;
      const found = await client.ask<Location>(methods.locate, { uri, source: line.source });
      assert.deepEqual(found.range.start, client.at(uri, 'hem straight').position);
      const at = { uri, position: client.at(uri, 'hem straight', 1).position };
      assert.ok((await client.ask<string[]>(methods.sourcesAt, at)).includes(line.source));
    }));

  it('leads from a problem to the very words that are underlined, as they stand after further typing', () =>
    withPreview(async (client) => {
      await client.type(uri, 'top-right down bib-height', 'top-right down bib-hight');
      const { source, code, message } = (await client.sheetAfter(0)).problems[0]!;
      await client.type(uri, 'draft ', '# one more line\ndraft ');
      const sought = { uri, source, problem: { code, message } };
      const found = await client.ask<Location>(methods.locate, sought);
      assert.deepEqual(found.range.start, client.at(uri, 'bib-hight').position);
      const mended = { ...sought, problem: { code, message: 'said of nothing' } };
      const thing = await client.ask<Location>(methods.locate, mended);
      assert.notDeepEqual(thing.range.start, found.range.start);
    }));
});

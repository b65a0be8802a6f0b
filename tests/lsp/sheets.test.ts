/** What a preview is sent: whole, then only what changed, with the last good drawing of what broke. */
import assert from 'node:assert/strict';
import type { PlacedFinding } from '../../server/drafting/model';
import type { PieceDrawing } from '../../server/drawing/model';
import { fullSheet, nextSheet, type Drawn } from '../../server/lsp/sheets';
import { drawing, smallPiece } from '../support/drawings';

const [front, back, sleeve] = ['front', 'back', 'sleeve'].map((name) => smallPiece(name)) as [
  PieceDrawing,
  PieceDrawing,
  PieceDrawing,
];
const names = ['front', 'back', 'sleeve'];

const drawn = (pieces: readonly PieceDrawing[], more: Partial<Drawn> = {}): Drawn => ({
  uri: 'file:///w/a.draft',
  seat: 'preview',
  drawing: drawing(pieces),
  wanted: names,
  findings: [],
  everybody: [],
  choices: [],
  trial: { set: {} },
  sizes: [],
  spotsOf: () => [],
  place: (all) => drawing(all),
  ...more,
});

const error = (message: string, piece?: string): PlacedFinding => ({
  code: 'unknown-name',
  severity: 'error',
  message,
  place: { uri: 'file:///w/a.draft', from: 0, to: 1 },
  source: 'front',
  ...(piece === undefined ? {} : { piece }),
  related: [],
  fixes: [],
});

const sent = (held: { sheet: { pieces: readonly PieceDrawing[] } } | undefined) =>
  held?.sheet.pieces.map(({ name }) => name);

describe('a sheet for a preview', () => {
  it('is whole at first and counts its versions from one', () => {
    const { sheet } = fullSheet(drawn([front, back, sleeve]), undefined);
    assert.deepEqual([sheet.full, sheet.version, sheet.pieces.length], [true, 1, 3]);
  });

  it('carries the changed piece alone, and names the version it builds on', () => {
    const first = fullSheet(drawn([front, back, sleeve]), undefined);
    const next = nextSheet(drawn([front, smallPiece('back'), sleeve]), first)!;
    assert.deepEqual(sent(next), ['back']);
    assert.deepEqual([next.sheet.full, next.sheet.since, next.sheet.version], [false, 1, 2]);
    assert.equal(next.sheet.placements.length, 3);
  });

  it('is not sent when the view would look the same', () => {
    const first = fullSheet(drawn([front, back]), undefined);
    assert.equal(nextSheet(drawn([front, back]), first), undefined);
  });

  it('is sent without a piece when only what is said of them changed', () => {
    const first = fullSheet(drawn([front, back]), undefined);
    const next = nextSheet(drawn([front, back], { findings: [error('waist is not known')] }), first)!;
    assert.deepEqual(sent(next), []);
    assert.equal(next.sheet.problems[0]!.message, 'waist is not known');
  });

  it('keeps the last good drawing of a piece that broke, in its place and with the reason', () => {
    const first = fullSheet(drawn([front, back, sleeve]), undefined);
    const findings = [error('hip is not known'), error('the back does not close', 'back')];
    const next = nextSheet(drawn([front, sleeve], { findings }), first)!;
    assert.deepEqual(next.sheet.stale, [{ piece: 'back', reason: 'the back does not close' }]);
    assert.deepEqual(
      next.sheet.placements.map(({ piece }) => piece),
      names,
    );
    assert.deepEqual(sent(next), []);
  });

  it('sends a broken piece again once it can be drawn, and marks it no longer', () => {
    const first = fullSheet(drawn([front, back]), undefined);
    const broken = nextSheet(drawn([front], { findings: [error('no')] }), first)!;
    const mended = nextSheet(drawn([front, smallPiece('back')]), broken)!;
    assert.deepEqual(sent(mended), ['back']);
    assert.deepEqual(mended.sheet.stale, []);
  });

  it('drops a piece that the text no longer names', () => {
    const first = fullSheet(drawn([front, back]), undefined);
    const next = nextSheet(drawn([front], { wanted: ['front'] }), first)!;
    assert.deepEqual(next.sheet.stale, []);
    assert.deepEqual(
      next.sheet.placements.map(({ piece }) => piece),
      ['front'],
    );
  });

  it('drops the one drawing of a piece that now comes out as left and right', () => {
    const first = fullSheet(drawn([front]), undefined);
    const sides = ['front-left', 'front-right'].map((name) => ({ ...smallPiece(name), source: 'front' }));
    const next = nextSheet(drawn(sides, { wanted: ['front'] }), first)!;
    assert.deepEqual([sent(next), next.sheet.stale], [['front-left', 'front-right'], []]);
  });

  it('is whole again when the view asks, and keeps what was kept', () => {
    const first = fullSheet(drawn([front, back]), undefined);
    const broken = nextSheet(drawn([front], { findings: [error('no')] }), first)!;
    const again = fullSheet(drawn([front], { findings: [error('no')] }), broken);
    assert.deepEqual([again.sheet.full, again.sheet.version, sent(again)], [true, 3, ['front', 'back']]);
    assert.equal(again.sheet.stale.length, 1);
  });
});

/** The preview's own reckoning, without a browser: sheets, camera, rulers, and the words of its badge. */
import assert from 'node:assert/strict';
import fc from 'fast-check';
import * as camera from '../../client/preview/view/camera';
import { countInWords } from '../../client/preview/view/problems';
import { ticks } from '../../client/preview/view/scale';
import { applySheet, type Held } from '../../client/preview/view/sheet';
import { newestWins } from '../../client/preview/host/newest';
import { previewPage } from '../../client/preview/host/page';
import type { PreviewProblem, Sheet } from '../../client/preview/protocol';
import { skirt } from '../support/drawings';
import { fullSheet } from '../support/preview-page';

function applied(before: Held | undefined, sheet: Sheet) {
  const outcome = applySheet(before, sheet);
  assert.equal(outcome.kind, 'applied');
  return outcome as Extract<typeof outcome, { kind: 'applied' }>;
}

const first = fullSheet(skirt());
const stage = { width: 900, height: 600 };
const frame = { left: 0, top: 0, right: 1500, bottom: 700 };

describe('sheets of the preview', () => {
  it('a full sheet replaces everything, whatever was held', () => {
    const { held } = applied(undefined, first);
    const { redraw } = applied(held, { ...first, version: 1, since: 99 });
    assert.deepEqual(applied(undefined, first).redraw, ['back', 'front', 'waistband']);
    assert.deepEqual(redraw, [], 'the very same pieces are not drawn again');
  });

  it('a sheet with one changed piece redraws that piece alone', () => {
    const { held } = applied(undefined, first);
    const changed = { ...skirt().pieces[1]! };
    const { redraw, held: after } = applied(held, {
      ...first,
      version: 2,
      since: 1,
      full: false,
      pieces: [changed],
    });
    assert.deepEqual(redraw, ['front']);
    assert.equal(after.pieces.get('front'), changed);
    assert.equal(after.pieces.get('back'), held.pieces.get('back'));
  });

  it('a sheet that builds on another version is answered by asking for a full one', () => {
    const { held } = applied(undefined, first);
    assert.equal(applySheet(held, { ...first, version: 4, since: 3, full: false }).kind, 'ask');
    assert.equal(applySheet(undefined, { ...first, version: 2, since: 1, full: false }).kind, 'ask');
  });

  it('a sheet that places a piece nobody sent is answered by asking for a full one', () => {
    const { held } = applied(undefined, first);
    const placements = [...first.placements, { piece: 'pocket', by: { x: 0, y: 0 } }];
    assert.equal(
      applySheet(held, { ...first, version: 2, since: 1, full: false, pieces: [], placements }).kind,
      'ask',
    );
  });

  it('a piece that turns stale, or fresh again, is redrawn', () => {
    const { held } = applied(undefined, first);
    const stale = [{ piece: 'back', reason: 'its outline is open' }];
    const turned = applied(held, { ...first, version: 2, since: 1, full: false, pieces: [], stale });
    assert.deepEqual(turned.redraw, ['back']);
    const fresh = applied(turned.held, {
      ...first,
      version: 3,
      since: 2,
      full: false,
      pieces: [],
      stale: [],
    });
    assert.deepEqual(fresh.redraw, ['back']);
  });

  it('a sheet of another protocol is a stranger', () => {
    assert.equal(applySheet(undefined, { ...first, protocol: 2 as 1 }).kind, 'stranger');
  });

  it('pieces that are gone are forgotten', () => {
    const { held } = applied(undefined, first);
    const placements = first.placements.slice(0, 1);
    const after = applied(held, { ...first, version: 2, since: 1, full: false, pieces: [], placements });
    assert.deepEqual([...after.held.pieces.keys()], ['back']);
  });
});

describe('camera of the preview', () => {
  it('fitting shows the whole drawing, its middle in the middle', () => {
    const fitted = camera.fitTo(frame, stage);
    assert.ok(Math.abs((750 - fitted.left) * fitted.zoom - 450) < 1e-9);
    assert.ok((0 - fitted.left) * fitted.zoom > 0 && (1500 - fitted.left) * fitted.zoom < 900);
  });

  it('zooming keeps what is under the pointer where it is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 900, noNaN: true }),
        (factor, x) => {
          const before = camera.fitTo(frame, stage);
          const after = camera.zoomAbout(before, factor, x, 300);
          const under = (c: camera.Camera) => c.left + x / c.zoom;
          return Math.abs(under(after) - under(before)) < 1e-6;
        },
      ),
    );
  });

  it('full size draws an inch over 96 CSS pixels', () => {
    const { zoom } = camera.fullSize(camera.fitTo(frame, stage), stage);
    assert.ok(Math.abs(zoom * 25.4 - 96) < 1e-9); // CSS Values and Units, section 6.2: 1in = 96px
  });

  it('some of the drawing stays in sight however far it is pushed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (dx, dy) => {
          const pushed = camera.heldInSight(camera.panBy(camera.fitTo(frame, stage), dx, dy), frame, stage);
          const left = (frame.left - pushed.left) * pushed.zoom;
          const right = (frame.right - pushed.left) * pushed.zoom;
          const top = (frame.top - pushed.top) * pushed.zoom;
          const bottom = (frame.bottom - pushed.top) * pushed.zoom;
          return right > 40 && left < 860 && bottom > 40 && top < 560;
        },
      ),
    );
  });

  it('a fitted view stays put while the drawing grows a little inside of it', () => {
    const fitted = camera.fitTo(frame, stage);
    assert.equal(camera.needsFitting(fitted, { ...frame, right: 1510 }, stage), false);
    assert.equal(camera.needsFitting(fitted, { ...frame, right: 1900 }, stage), true);
    assert.equal(camera.needsFitting(fitted, { ...frame, right: 400, bottom: 200 }, stage), true);
    assert.equal(camera.needsFitting({ ...fitted, fit: false }, { ...frame, right: 1900 }, stage), false);
  });

  it('revealing moves no further than it must', () => {
    const close = { zoom: 2, left: 0, top: 0, fit: false };
    const seen = { left: 10, top: 10, right: 40, bottom: 40 };
    assert.equal(camera.revealing(close, seen, stage), close);
    const moved = camera.revealing(close, { left: 500, top: 10, right: 540, bottom: 40 }, stage);
    assert.deepEqual([moved.left, moved.top], [540 + 14 - 450, 0]);
  });

  it('an empty drawing can be looked at', () => {
    const fitted = camera.fitTo({ left: 0, top: 0, right: 0, bottom: 0 }, { width: 0, height: 0 });
    assert.ok([fitted.zoom, fitted.left, fitted.top].every(Number.isFinite));
  });
});

describe('rulers of the preview', () => {
  const numbers = (unit: 'cm' | 'mm' | 'in', zoom: number, from = 0) =>
    ticks(unit, zoom, from, 900).filter(({ size }) => size === 'long');

  it('numbers count in the unit of the pattern', () => {
    const at = (unit: 'cm' | 'mm' | 'in') =>
      numbers(unit, 1)
        .slice(0, 3)
        .map(({ words, at }) => [words, at]);
    assert.deepEqual(at('cm'), [
      ['0', 0],
      ['10', 100],
      ['20', 200],
    ]);
    assert.deepEqual(at('mm'), [
      ['0', 0],
      ['100', 100],
      ['200', 200],
    ]);
    assert.deepEqual(at('in'), [
      ['0', 0],
      ['4', 101.6],
      ['8', 203.2],
    ]);
  });

  it('numbers stand apart and ticks never run together, at every zoom', () => {
    for (const unit of ['cm', 'mm', 'in'] as const) {
      for (let zoom = camera.LEAST_ZOOM; zoom <= camera.MOST_ZOOM; zoom *= 1.3) {
        const all = ticks(unit, zoom, -137, 900);
        assert.ok(all.length <= 300, `${unit} at ${zoom}: ${all.length} ticks`);
        for (let i = 1; i < all.length; i++)
          assert.ok((all[i]!.at - all[i - 1]!.at) * zoom >= 3.9, `${unit} at ${zoom}`);
        const long = numbers(unit, zoom, -137);
        for (let i = 1; i < long.length; i++)
          assert.ok((long[i]!.at - long[i - 1]!.at) * zoom >= 63, `${unit} at ${zoom}`);
      }
    }
  });

  it('an inch is halved, quartered and so on, never cut into tenths', () => {
    const close = ticks('in', 10, 0, 900).map(({ at }) => at / 25.4);
    assert.ok(close.every((inch) => Math.abs(inch * 16 - Math.round(inch * 16)) < 1e-9));
    assert.ok(close.some((inch) => inch % 1 !== 0));
  });

  it('places left of the sheet count below zero with a true minus sign', () => {
    assert.equal(numbers('cm', 1, -120)[0]!.words, '\u221210');
  });
});

describe('badge of the preview', () => {
  const problem = (severity: PreviewProblem['severity']): PreviewProblem => ({
    severity,
    code: 'c',
    message: 'm',
    source: 's',
  });

  it('errors and warnings are counted in words', () => {
    assert.equal(
      countInWords([problem('error'), problem('error'), problem('warning')]),
      '2 errors, 1 warning',
    );
    assert.equal(countInWords([problem('warning'), problem('note')]), '1 warning');
    assert.equal(countInWords([problem('note')]), '1 note');
    assert.equal(countInWords([]), 'No problems');
  });
});

describe('host of the preview', () => {
  it('a newer question waits for the answer to the running one, and only the newest is asked', async () => {
    const asked: number[] = [];
    const answers: (() => void)[] = [];
    const ask = newestWins((n: number) => {
      asked.push(n);
      return new Promise<void>((done) => answers.push(done));
    });
    [1, 2, 3].forEach(ask);
    assert.deepEqual(asked, [1]);
    answers[0]!();
    await new Promise((done) => setImmediate(done));
    assert.deepEqual(asked, [1, 3]);
  });

  it('a question that fails does not stop the next', async () => {
    const asked: number[] = [];
    const ask = newestWins(async (n: number) => {
      asked.push(n);
      throw new Error('the server was stopped');
    });
    ask(1);
    ask(2);
    await new Promise((done) => setImmediate(done));
    assert.deepEqual(asked, [1, 2]);
  });

  it('the page allows its own script and style, and nothing else', () => {
    const parts = {
      source: 'https://files.invalid',
      script: 's.js',
      style: 's.css',
      nonce: 'abc',
      seat: 'preview',
      language: 'en',
    };
    const page = previewPage({ ...parts, uri: 'file:///a%20"><script>alert(1)</script>.draft' });
    assert.match(page, /default-src 'none'; style-src https:\/\/files\.invalid; script-src 'nonce-abc'"/);
    assert.equal(page.match(/<script/g)!.length, 1);
    assert.doesNotMatch(page, /unsafe|connect-src|img-src/);
  });
});

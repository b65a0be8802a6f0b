/** Where problems are on the pieces: places by closed forms. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks';
import { problemSpots } from '../../server/features/problem-spots';
import { patternIn } from '../support/drafts';
import { sampleText } from '../support/faults';
import { drawnIn, panelText } from '../support/panel';

/** The places of the problems of a code, as `piece x y`. */
function places(text: string, code: string): string[] {
  const pattern = patternIn(text);
  const found = check(pattern).filter((finding) => finding.code === code);
  const spotsOf = problemSpots(pattern);
  assert.ok(found.length > 0, `${code} is found`);
  return found.flatMap((finding) => spotsOf(finding).map(({ piece, at }) => `${piece} ${at.x} ${at.y}`));
}

/** A second panel beside the first, sewn to it along a side of another length. */
const SEAMED = panelText(
  '',
  `draft other {
  point p = origin
  point q = p right 20cm
  point r = q down 31cm
  point s = p down 31cm
}
piece back of other {
  cut pair
  outline from p {
    top straight to q
    side straight to r
    hem straight to s
    centre straight to p
  }
  grain along centre
}
seam side front.side = back.side`,
);

describe('where problems are on the pieces', () => {
  it('a gap is in the middle between its two ends', () => {
    const open = panelText('').replace('centre straight to a', 'centre straight to middle');
    assert.deepEqual(places(open, 'unclosed-outline'), ['front 50 75']);
  });

  it('a mismatched seam is in the middle of both its edges', () => {
    assert.deepEqual(places(SEAMED, 'mismatched-seam'), ['front 200 150', 'back 200 155']);
  });

  it('an edge that is not finished is in its middle', () => {
    assert.ok(places(panelText(''), 'unfinished-edge').includes('front 100 0'));
  });

  it('what is said of the grain is in the middle of its line', () => {
    const aslant = sampleText('faults/crooked-grain.draft');
    const { start, stretches } = drawnIn(patternIn(aslant)).lines.find(({ role }) => role === 'grain')!;
    const [x, y] = stretches.at(-1)! as [number, number];
    const [spot, ...others] = places(aslant, 'crooked-grain');
    const [, ...at] = spot!.split(' ').map(Number);
    assert.ok(Math.hypot(at[0]! - (start.x + x) / 2, at[1]! - (start.y + y) / 2) < 0.01, spot);
    assert.deepEqual(others, []);
  });

  it('what is said of an edge of a part that a division made is in the middle of that edge', () => {
    const cutLine =
      'point cut-a = a down 10cm\n  point cut-b = b down 10cm\n  line cut-line = cut-a to cut-b';
    const divided = panelText('', 'divide front at cut-line into upper holding a, lower holding d');
    const found = places(divided.replace('point middle', `${cutLine}\n  point middle`), 'unfinished-edge');
    assert.deepEqual(found, ['upper 0 50', 'lower 200 200']);
  });

  it('what is said of a whole piece is above its name', () => {
    const text = panelText('').replace(/ *grain along .*\n/, '');
    const [spot, ...others] = places(text, 'no-grain');
    assert.deepEqual(others, []);
    const [, x, y] = spot!.split(' ');
    assert.ok(Number(x) > 20 && Number(x) < 180 && Number(y) > 20 && Number(y) < 280, spot);
  });

  it('a bend is at the end of the seam where the edges beside it meet', () => {
    const bent = SEAMED.replace('point r = q down 31cm', 'point r = q down 30cm').replace(
      'point s = p down 31cm',
      'point s = p down 32cm',
    );
    assert.deepEqual(places(bent, 'kinked-edge'), ['front 200 300', 'back 200 300']);
  });
});

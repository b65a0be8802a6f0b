/** A ruler between two places of a drawing: what it tells straight across and along the outline. */
import assert from 'node:assert/strict';
import type { Pin } from '../../client/preview/protocol';
import { measured } from '../../server/features/measure';
import { panelText } from '../support/panel';
import { patternIn } from '../support/drafts';

/** A panel of 20 by 30 cm with a dart of 2 cm in the middle of its top. */
const DARTED = panelText('dart tuck on top at 10cm from a, 2cm wide, 9cm long').replace(
  'top straight to b',
  'top straight to b untrued',
);

const pin = (x: number, y: number, piece: string | null = 'front'): Pin => ({
  at: { x: x + 500, y },
  ...(piece !== null && { piece, own: { x, y } }),
});

function checkMeasured(
  from: Pin,
  to: Pin,
  expected: readonly [straight: string, apart: string, along?: string],
  text = panelText(''),
): void {
  const { straight, apart, along } = measured(patternIn(text), from, to);
  assert.deepEqual([straight, apart, along], [...expected, ...Array(3 - expected.length).fill(undefined)]);
}

describe('a ruler between two places', () => {
  it('tells the length, and how far across and down a slanted one goes', () => {
    checkMeasured(pin(30, 40), pin(60, 80), ['5cm', '3cm across, 4cm down']);
    checkMeasured(pin(60, 80), pin(30, 40), ['5cm', '3cm across, 4cm up']);
    checkMeasured(pin(30, 40), pin(60, 40), ['3cm', '']);
  });

  it('goes along the outline where both ends lie on it, the shorter way', () => {
    checkMeasured(pin(0, 0), pin(50, 0), ['5cm', '', 'along top 5cm']);
    checkMeasured(pin(190, 0), pin(200, 100), [
      '10.05cm',
      '1cm across, 10cm down',
      'along top and side 11cm',
    ]);
    checkMeasured(pin(10, 0), pin(0, 20), ['2.24cm', '1cm across, 2cm down', 'along centre and top 3cm']);
  });

  it('tells a stretch with a dart as drawn and as sewn', () => {
    const whole = ['20cm', '', 'along top 20cm, 18cm when sewn'] as const;
    checkMeasured(pin(0, 0), pin(200, 0), whole, DARTED);
    checkMeasured(pin(0, 0), pin(80, 0), ['8cm', '', 'along top 8cm'], DARTED);
  });

  it('draws the stretch that it tells of', () => {
    const { line } = measured(patternIn(panelText('')), pin(190, 0), pin(200, 100));
    assert.deepEqual(
      [line?.start, line?.stretches],
      [
        { x: 190, y: 0 },
        [
          [200, 0],
          [200, 100],
        ],
      ],
    );
  });

  it('has no way along from one piece to another, nor to a place on no line', () => {
    checkMeasured(pin(0, 0), pin(50, 0, null), ['5cm', '']);
    checkMeasured(pin(0, 0), pin(50, 60), ['7.81cm', '5cm across, 6cm down']);
  });
});

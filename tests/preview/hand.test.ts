/** How far a hand must move for a length to change, and by how much. */
import assert from 'node:assert/strict';
import { amountsAfter } from '../../client/preview/view/hand';

const right = { x: 1, y: 0, amount: 30, unit: 'cm', mm: 10 };
const down = { x: 0, y: 1, amount: 8, unit: 'in', mm: 25.4 };

describe('lengths in the hand', () => {
  it('follow the pointer in whole millimetres and eighths of an inch', () =>
    assert.deepEqual(amountsAfter([right, down], { x: 12.4, y: 26 }), [31.2, 9]));

  it('stay as written where the hand moved across them', () =>
    assert.deepEqual(amountsAfter([{ ...right, amount: 30.25 }], { x: 0.2, y: 90 }), [30.25]));

  it('end at nothing', () => assert.deepEqual(amountsAfter([right], { x: -500, y: 0 }), [0]));
});

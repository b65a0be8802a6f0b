/** Amounts as the list of choices moves them. */
import assert from 'node:assert/strict';
import { amountOf, stepped, written } from '../../client/preview/view/amounts';

const step = (value: string, way: 1 | -1, low = '', high = ''): string =>
  written(stepped(amountOf(value)!, way, amountOf(low), amountOf(high)));

describe('amounts in the list of choices', () => {
  it('a written amount is a number and its unit, fractions included', () => {
    assert.deepEqual(amountOf('68.5cm'), { number: 68.5, unit: 'cm' });
    assert.deepEqual(amountOf('2 1/2in'), { number: 2.5, unit: 'in' });
    assert.deepEqual(amountOf('-2/4'), { number: -0.5, unit: '' });
  });

  it('a word and an expression are no amounts', () => {
    assert.deepEqual([amountOf('zip'), amountOf('hip / 4'), amountOf('')], [undefined, undefined, undefined]);
  });

  it('a step goes to the next whole step of its unit, both ways', () => {
    assert.deepEqual([step('68cm', 1), step('68.2cm', 1), step('68.2cm', -1)], ['68.5cm', '68.5cm', '68cm']);
    assert.deepEqual([step('6mm', -1), step('20deg', 1), step('0.5', 1)], ['5mm', '21deg', '0.55']);
  });

  it('a step ends at the ends of the range', () => {
    assert.deepEqual([step('94.8cm', 1, '40cm', '95cm'), step('95cm', 1, '40cm', '95cm')], ['95cm', '95cm']);
    assert.equal(step('40cm', -1, '40cm', '95cm'), '40cm');
  });

  it('an end in another unit does not hold a step back', () =>
    assert.equal(step('10cm', 1, '1in', '2in'), '10.5cm'));
});

/** Every garment of the wardrobe is read without a problem. */
import assert from 'node:assert/strict';
import { parse } from '../../grammar';
import { everyProblem, samples } from './support';

describe('the language as text, on the wardrobe', () => {
  for (const { name, text } of samples()) {
    it(`reads ${name} without a problem`, () => {
      assert.deepEqual(everyProblem(parse(text)), []);
    });
  }
});

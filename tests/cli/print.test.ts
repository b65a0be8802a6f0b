/** The small tools of the printers: wrapping, tables, numbers. */
import assert from 'node:assert/strict';
import { table, wrapped } from '../../server/cli/print/ink';
import { rounded } from '../../server/cli/print/json';
import { lengthText } from '../../server/drawing/written/lengths';

describe('words for a terminal', () => {
  it('are wrapped at blanks, and a word that is too long has a line of its own', () => {
    assert.equal(wrapped('one two three', 9, '  '), '  one two\n  three');
    assert.equal(wrapped('a incomprehensible b', 8), 'a\nincomprehensible\nb');
    assert.equal(wrapped('', 8, '  '), '  ');
  });

  it('stand in columns, names to the left and figures to the right', () => {
    assert.deepEqual(
      table(
        [
          ['waist', '37.75'],
          ['hip', '5.2'],
        ],
        ' ',
      ),
      [' waist  37.75', ' hip      5.2'],
    );
  });
});

describe('numbers that are printed', () => {
  it('have a tenth of a millimetre in every unit', () => {
    assert.equal(lengthText(683.14, 'cm'), '68.31');
    assert.equal(lengthText(683.14, 'mm'), '683.1');
    assert.equal(lengthText(25.4, 'in'), '1.000');
    assert.equal(lengthText(NaN, 'cm'), '-');
  });

  it('never have a sign before nothing', () => {
    assert.equal(lengthText(-0.001, 'cm'), '0.00');
    assert.ok(Object.is(rounded(-1e-9), 0));
  });

  it('are null in JSON where there is no number', () => assert.equal(rounded(Infinity), null));
});

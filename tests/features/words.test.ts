/** The name under a cursor; the cursor stands where the text has a bar. */
import assert from 'node:assert/strict';
import { wordAt } from '../../server/features/words';

function checkWord(marked: string, expected: string | undefined): void {
  const offset = marked.indexOf('|');
  const text = marked.replace('|', '');
  const word = wordAt(text, offset);
  assert.equal(word?.text, expected);
  if (word !== undefined) assert.equal(text.slice(word.from, word.to), expected);
}

describe('the name under a cursor', () => {
  it('is found at its start, inside and at its end', () => {
    checkWord('let |hip-ease = 4cm', 'hip-ease');
    checkWord('let hip-|ease = 4cm', 'hip-ease');
    checkWord('let hip-ease| = 4cm', 'hip-ease');
  });

  it('ends at a dot, so that each name of a path stands by itself', () => {
    checkWord('seam side fr|ont.side', 'front');
    checkWord('seam side front.si|de', 'side');
  });

  it('does not take a subtraction for a hyphen', () => checkWord('let a = wa|ist-2cm', 'waist'));
  it('may be of any script', () => checkWord('point tàille-dév|ant = origin', 'tàille-dévant'));
  it('is not found between signs', () => checkWord('let a =| 4cm', undefined));
  it('does not reach over a line end', () => checkWord('ab\r\n|cd', 'cd'));
});

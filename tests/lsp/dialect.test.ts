/** The trade's words in both dialects of English, with the author's own words left alone. */
import assert from 'node:assert/strict';
import { inDialect, readDialect } from '../../server/lsp/dialect';
import { Desk } from '../../server/lsp/desk';

const american = (words: string, ...own: string[]): string => inDialect('American', words, () => own);

describe('the dialect of what is said', () => {
  it('is British unless American is asked for', () => {
    assert.deepEqual([undefined, 'British', 'Welsh', 'American'].map(readDialect), [
      'British',
      'British',
      'British',
      'American',
    ]);
    assert.equal(
      inDialect('British', 'Try a toile.', () => []),
      'Try a toile.',
    );
  });

  it('puts the other word for a word of the trade, with its capital', () => {
    assert.equal(american('The sleeve head is flat.'), 'The sleeve cap is flat.');
    assert.equal(american('Toiles tell; trousers less.'), 'Muslins tell; pants less.');
  });

  it('leaves names, paths of names and what is quoted', () => {
    assert.equal(american('toile-length, toile.side, my-toile'), 'toile-length, toile.side, my-toile');
    assert.equal(american('write `toile`'), 'write `toile`');
  });

  it('leaves a word that the author uses', () => {
    const own = 'piece trousers of draft {';
    assert.equal(american('trousers are no toile', own), 'trousers are no muslin');
  });
});

describe('the desk in American', () => {
  it('says it in problems and hovers alike, and of the author’s words nothing else', () => {
    const behind = { read: () => undefined, list: () => [] };
    const desk = new Desk(behind as never);
    const uri = 'file:///wardrobe/pattern.draft';
    const pattern = desk.pattern(uri);
    assert.equal(desk.said(pattern, 'a toile'), 'a toile');
    desk.dialect = 'American';
    assert.equal(desk.said(pattern, 'a toile'), 'a muslin');
  });
});

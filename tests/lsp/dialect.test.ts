/** The trade's words in both dialects of English, with the author's own words left alone. */
import assert from 'node:assert/strict';
import { inDialect, pageInDialect, readDialect } from '../../grammar/dialect';
import { findingsInDialect } from '../../server/checks';
import type { PlacedFinding } from '../../server/drafting/model';
import { speak } from '../../grammar/say';
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

describe('findings and pages in American', () => {
  const finding: PlacedFinding = {
    ...{ code: 'unusual-fork', severity: 'note', source: 'leg', message: 'The fork is short.' },
    place: { uri: 'file:///wardrobe/legs.draft', from: 0, to: 1 },
    related: [{ place: { uri: '', from: 0, to: 1 }, message: 'The fork runs here.' }],
    fixes: [{ title: 'Try a toile', edits: [] }],
  };

  it('are said so in their message, in what belongs to them and in their repairs', () => {
    const [said] = findingsInDialect('American', [finding], () => []);
    assert.equal(said!.message, 'The crotch is short.');
    assert.equal(said!.related[0]!.message, 'The crotch runs here.');
    assert.equal(said!.fixes[0]!.title, 'Try a muslin');
  });

  it('leave repairs to be worked out when they are asked for', () => {
    const asked: PlacedFinding = Object.defineProperty({ ...finding }, 'fixes', {
      get: () => assert.fail('nobody has asked'),
    });
    assert.equal(findingsInDialect('American', [asked], () => []).length, 1);
  });

  it('leave the examples of a page as they are written', () => {
    const page = 'A toile tells.\n\n```draft\nfitting "first" # a toile\n```\n\nSo does a second toile.\n';
    assert.equal(
      pageInDialect('American', page),
      'A muslin tells.\n\n```draft\nfitting "first" # a toile\n```\n\nSo does a second muslin.\n',
    );
  });

  it('are left to German, where German is spoken', () => {
    const desk = new Desk({ read: () => undefined, list: () => [] } as never);
    desk.dialect = 'American';
    speak({});
    assert.equal(desk.said(desk.pattern('file:///wardrobe/pattern.draft'), 'eine Toile'), 'eine Toile');
    speak(undefined);
  });
});

/** Which rule cuts a corner of the allowance: what the text says, else what seams and finishes of the two edges ask for. */
import assert from 'node:assert/strict';
import type { Pattern } from '../../server/drafting/model';
import { Workshop } from '../../server/drafting/workshop';
import { codesOf, drafted, pieceOf } from '../support/drafted';

const SHEET = `
draft sheet {
  point neck = origin
  point tip = neck right 12cm down 3cm
  point pit = tip down 20cm right 4cm
  point low = pit down 20cm right 2cm
  point low-cf = low left 22cm
  point neck-cf = low-cf up 38cm
  curve neckline = neck-cf to neck leaving right arriving up
  curve scye = tip to pit leaving down arriving right
}
`;

/** A pattern that is edited: a stretch of its text replaced by another. */
class Edited {
  private readonly workshop = new Workshop({ read: () => undefined, resolve: (_, path) => ({ uri: path }) });

  constructor(private text: string) {
    this.workshop.setText('test.draft', text);
  }

  get pattern(): Pattern {
    return this.workshop.pattern('test.draft');
  }

  replace(words: string, others: string, after = ''): void {
    const from = this.text.indexOf(words, this.text.indexOf(after));
    assert.ok(from >= 0, words);
    this.workshop.edit('test.draft', [{ from, to: from + words.length, text: others }]);
    this.text = this.text.slice(0, from) + others + this.text.slice(from + words.length);
  }
}

/** Half a bodice. */
const bodice = (name: string, lines = ''): string => `
piece ${name} of sheet {
  cut 1 on fold
  outline from neck-cf {
    neck along neckline to neck
    shoulder straight to tip
    armhole along scye to pit
    side straight to low
    waist straight to low-cf
    centre straight to neck-cf
  }
  fold centre
  grain along centre
  allow 1.5cm
${lines}}
`;

const SEAMS = `
seam shoulder front.shoulder = back.shoulder
seam side front.side = back.side
`;

/** Rules of a piece's corners: `neck/shoulder: folded shoulder (pressed-open)`. */
function rules(pattern: Pattern, name: string): string[] {
  return (pieceOf(pattern, name).ruledCorners ?? []).map(({ before, after, rule, why }) => {
    const edge = 'edge' in rule ? ` ${rule.edge === 'before' ? before : after}` : '';
    const twice = 'folds' in rule && rule.folds === 2 ? ' twice' : '';
    return `${before}/${after}: ${rule.how}${edge}${twice} (${why})`;
  });
}

const made = (rest: string, lines = ''): Pattern =>
  drafted(`${SHEET}${bodice('front', lines)}${bodice('back')}${SEAMS}${rest}`);

describe('the corners of an allowance', () => {
  it('are folded where a seam ends at edges that are finished as one', () => {
    const pattern = made(`
finish neck front.neck, back.neck bound 6mm
finish armholes front.armhole, back.armhole turned twice 5mm
finish waist front.waist, back.waist turned up 3cm
`);
    assert.deepEqual(rules(pattern, 'front'), [
      'neck/shoulder: folded shoulder (pressed-open)',
      'shoulder/armhole: turned-back armhole twice (hem)',
      'armhole/side: turned-back armhole twice (hem)',
      'side/waist: turned-back waist (hem)',
    ]);
  });

  it('are folded where the other edges are sewn as one side of a seam', () => {
    const pattern = made(`
band waistband for front.waist + back.waist, 4cm wide
seam waist front.waist + back.waist = waistband.lower
`);
    assert.deepEqual(rules(pattern, 'front'), ['side/waist: folded side (pressed-open)']);
    assert.deepEqual(rules(pattern, 'back'), ['side/waist: folded side (pressed-open)']);
  });

  it('are not decided where nothing tells which seam is crossed', () => {
    // shoulder and side end at armholes that nothing joins
    assert.deepEqual(rules(made(''), 'front'), []);
  });

  it('end square at a faced edge', () => {
    const pattern = made('finish edges front.waist faced by back\n');
    assert.deepEqual(rules(pattern, 'front'), ['side/waist: squared waist (faced)']);
  });

  it('are cut as the text says, and only there', () => {
    const lines = '  corner at neck squared\n  corner at tip mitred\n  corner at low stepped\n';
    const pattern = made('finish waist front.waist, back.waist turned up 3cm\n', lines);
    assert.deepEqual(rules(pattern, 'front'), [
      'neck/shoulder: squared shoulder (said)',
      'shoulder/armhole: mitred (said)',
      'side/waist: stepped (said)',
    ]);
    assert.deepEqual(rules(pattern, 'back'), ['side/waist: turned-back waist (hem)']);
  });

  it('turned back by a word, take the wider allowance for the hem', () => {
    const pattern = made('', '  allow 4cm at waist\n  corner at low turned back\n');
    assert.deepEqual(rules(pattern, 'front'), ['side/waist: turned-back waist (said)']);
    const corner = pieceOf(pattern, 'front').cutShape!.corners[3]!;
    assert.equal(corner.kind, 'turned-back');
  });

  it('are squared off at both ends of a cut that divides a piece', () => {
    const pattern =
      drafted(`${SHEET.replace('\n}', '\n  line style = (midpoint of neck and tip) to (midpoint of low and low-cf)\n}')}
${bodice('block').replace('cut 1 on fold\n', 'cut 1 on fold\n')}
divide block at style into centre-part holding neck, side-part
finish hems centre-part.waist, side-part.waist faced by centre-part
`);
    assert.deepEqual(codesOf(pattern), []);
    const squared = rules(pattern, 'side-part').filter((rule) => rule.includes('panel'));
    assert.equal(squared.length, 2);
    assert.ok(squared.every((rule) => rule.includes('squared')));
  });

  it('are squared off at the head of a sleeve in two pieces, and folded at that of one piece', () => {
    const part = (name: string): string => `
piece ${name} of sleeve {
  cut pair
  outline from a {
    head straight to b
    hind straight to c
    wrist straight to d
    fore straight to a
  }
  grain along fore
  allow 1.5cm
}
`;
    const draft = `
draft sleeve {
  point a = origin
  point b = a right 15cm down 2cm
  point c = a down 50cm right 12cm
  point d = a down 50cm right 1cm
}
`;
    const two = drafted(`${draft}${part('upper')}${part('under')}
seam fore upper.fore = under.fore
seam hind upper.hind = under.hind
finish heads upper.head, under.head bound 6mm
`);
    assert.deepEqual(
      rules(two, 'upper').filter((rule) => rule.includes('head')),
      ['head/hind: squared hind (panel)', 'fore/head: squared fore (panel)'],
    );
    const one = drafted(`${draft}${part('sleeve-piece')}
seam underarm sleeve-piece.fore = sleeve-piece.hind
finish head sleeve-piece.head bound 6mm
`);
    assert.deepEqual(
      rules(one, 'sleeve-piece').filter((rule) => rule.includes('head')),
      ['head/hind: folded hind (pressed-open)', 'fore/head: folded fore (pressed-open)'],
    );
  });

  it('that are named must be corners', () => {
    const pattern = made('', '  corner at (neck right 2cm) mitred\n');
    assert.deepEqual(codesOf(pattern), ['not-on-line']);
  });

  it('follow a seam that is written anew, and leave other pieces as they are', () => {
    const edited = new Edited(
      `${SHEET}${bodice('front')}${bodice('back')}${bodice('lining')}${SEAMS}finish waist front.waist, back.waist bound 6mm\n`,
    );
    const folded = ['side/waist: folded side (pressed-open)'];
    assert.deepEqual(rules(edited.pattern, 'front'), folded);
    const lining = pieceOf(edited.pattern, 'lining');
    edited.replace('seam side front.side = back.side\n', '');
    assert.deepEqual(rules(edited.pattern, 'front'), []);
    assert.ok(pieceOf(edited.pattern, 'lining') === lining, 'the lining was made anew');
    edited.replace('finish waist', 'seam side front.side = back.side\nfinish waist');
    assert.deepEqual(rules(edited.pattern, 'front'), folded);
  });

  it('leave a piece the same object while its partner changes its shape', () => {
    const edited = new Edited(
      `${SHEET}${SHEET.replace('draft sheet', 'draft other')}${bodice('front')}${bodice('back').replace('of sheet', 'of other')}${SEAMS}finish waist front.waist, back.waist bound 6mm\n`,
    );
    const front = pieceOf(edited.pattern, 'front');
    edited.replace('pit down 20cm', 'pit down 21cm', 'draft other');
    assert.ok(pieceOf(edited.pattern, 'front') === front, 'the front was made anew');
  });
});

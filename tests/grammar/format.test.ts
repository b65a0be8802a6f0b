/** The canonical layout: changes the space between words and nothing else. */
import assert from 'node:assert/strict';
import { edit, format, formatEdits, parse, sameMeaning, tokensOf } from '../../grammar';
import { random } from '../support/random';
import { samples } from './support';

const UGLY = `pattern   "Harbour skirt"   # the title
  use "bodies/company.draft"


# drawn on one sheet
draft   skirt{   # front and back
  point p=origin   down 3cm*2  left -2cm
line   l = p to(q down 2cm)
  curve c = p to q through a ,
     b , # the second
     # and the third
     c leaving   down

  let z = max( a,b ) /3-min(a , -b)
 # to the end
}
piece front of skirt each side{ cut 1 on fold
outline from p { side straight to q then along c to r
  hem  straight to p }
  fold side }
divide front at d  when e=yes  and not f<2cm into x holding n{ cut pair
}, y{
cut pair # in pairs
}
notch   n on x.n at p ,single  when  ( e = yes )
sizes s { size S M
 bust -2cm 3cm }
piont a = b   c
`;

const NEAT = `pattern "Harbour skirt" # the title
use "bodies/company.draft"

# drawn on one sheet
draft skirt { # front and back
  point p = origin down 3cm * 2 left -2cm
  line l = p to (q down 2cm)
  curve c = p to q through a,
    b, # the second
    # and the third
    c leaving down

  let z = max(a, b) / 3 - min(a, -b)
  # to the end
}
piece front of skirt each side {
  cut 1 on fold
  outline from p {
    side straight to q
      then along c to r
    hem straight to p
  }
  fold side
}
divide front at d when e = yes and not f < 2cm into x holding n {
  cut pair
}, y {
  cut pair # in pairs
}
notch n on x.n at p, single when (e = yes)
sizes s {
  size S M
  bust -2cm 3cm
}
piont a = b   c
`;

function applied(text: string, edits: readonly { from: number; to: number; text: string }[]): string {
  return [...edits]
    .reverse()
    .reduce((now, edit) => now.slice(0, edit.from) + edit.text + now.slice(edit.to), text);
}

function comments(text: string): string[] {
  return tokensOf(text)
    .filter(({ kind }) => kind === 'comment')
    .map(({ from, to }) => text.slice(from, to).trimEnd());
}

/** The text with other space between some of its words, on the same lines. */
function spacedOtherwise(text: string, below: (limit: number) => number): string {
  const tokens = tokensOf(text);
  let out = text;
  for (let i = tokens.length - 1; i > 0; i--) {
    const [from, to] = [tokens[i - 1]!.to, tokens[i]!.from];
    const between = text.slice(from, to);
    if (below(3) > 0 || !/^[ \t]+$|^\n[ \t]*$/.test(between)) continue;
    out =
      out.slice(0, from) + between.replace(/[ \t]*$/, ['  ', '\t', ' ', '     '][below(4)]!) + out.slice(to);
  }
  return out;
}

describe('the canonical layout', () => {
  it('gives every statement its line, its level and one space between its words', () => {
    assert.equal(format(UGLY), NEAT);
    assert.equal(format(NEAT), NEAT);
  });

  it('is the layout of the wardrobe', () => {
    for (const { name, text } of samples()) assert.equal(format(text), text, name);
  });

  it('comes out the same whatever the space between the words was', () => {
    const below = random(12);
    for (const { name, text } of samples()) {
      for (let i = 0; i < 2; i++) assert.equal(format(spacedOtherwise(text, below)), text, name);
    }
  });

  it('keeps meaning and comments and is settled after one pass, whatever the text', () => {
    const below = random(77);
    const all = samples();
    const pieces = [
      '{',
      '}',
      '\n',
      '(',
      ')',
      ',',
      '# said of it\n',
      ';',
      '   ',
      'then ',
      '-',
      '"',
      ' = ',
      '\r\n',
    ];
    for (let i = 0; i < 60; i++) {
      let { text } = all[below(all.length)]!;
      for (let k = below(4); k >= 0; k--) {
        const at = below(text.length);
        text = text.slice(0, at) + pieces[below(pieces.length)]! + text.slice(at + below(3));
      }
      const neat = format(text);
      assert.ok(sameMeaning(parse(text), parse(neat)), text);
      assert.equal(format(neat), neat);
      assert.deepEqual(comments(neat), comments(text));
    }
  });

  it('is the same for a text that was edited as for one read from scratch', () => {
    const below = random(77);
    for (const { text } of samples()) {
      let file = parse(text);
      for (let k = 0; k < 3; k++) {
        format(file.text, file);
        const from = below(file.text.length);
        const typed = ['  ', ' # seen', 'x', '\n\n', '{', '}', '9', ''][below(8)]!;
        ({ file } = edit(file, { from, to: from + (typed === '' ? 1 : 0), text: typed }));
        const laid = format(file.text, file);
        assert.equal(laid, format(file.text), file.text);
        assert.equal(applied(file.text, formatEdits(file.text, undefined, file)), laid);
      }
    }
  });

  it('edits change only the space between words, and together they give the layout', () => {
    const edits = formatEdits(UGLY);
    assert.ok(edits.every(({ from, to, text }) => UGLY.slice(from, to).trim() === '' && text.trim() === ''));
    assert.equal(applied(UGLY, edits), NEAT);
  });

  it('edits of a range leave what lies outside it', () => {
    const from = UGLY.indexOf('point p');
    const edits = formatEdits(UGLY, { from, to: UGLY.indexOf('line   l') - 1 });
    const line = '  point p = origin down 3cm * 2 left -2cm';
    assert.equal(applied(UGLY, edits), UGLY.replace('  point p=origin   down 3cm*2  left -2cm', line));
  });

  it('edits of a range trim the end of its own lines and not of the line above', () => {
    const text = 'let a = 1cm  \n   let  b = 2cm  \n\n\n let c = 3cm\n';
    const from = text.indexOf('   let');
    const edits = formatEdits(text, { from, to: text.indexOf('  \n\n') });
    assert.equal(applied(text, edits), 'let a = 1cm  \nlet b = 2cm\n\n\n let c = 3cm\n');
  });

  it('leaves a text alone whose braces do not agree', () => {
    const text = 'draft a {\n    point p =   origin\nlet b = 3cm\n';
    assert.equal(format(text), text);
  });

  it('keeps the line ends and the byte order mark of the file', () => {
    assert.equal(format('\ufefflet  a = 3cm\r\n\r\n\r\nlet b=a'), '\ufefflet a = 3cm\r\n\r\nlet b = a\r\n');
  });
});

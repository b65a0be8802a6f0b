/** Pieces that wait for another: one note names them all, wherever the fault lies. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks';
import { patternIn } from '../support/drafts';

const panel = (foot: string, more: string): string => `
draft panel {
  point a = origin
  point b = a right 7cm
  point c = b down 6cm
  point d = a down 6cm
  line style-line = (a down 2cm) to (b down 2cm)
}
piece front of panel {
  outline from a {
    top straight to b
    side straight to c
    foot straight to ${foot}
    back straight to a
  }
}
${more}`;

const DIVIDED = `divide front at style-line along cut into yoke holding top, lower
piece last worked from lower {
  cut pair
}
band ring for yoke.top, 2cm wide
`;

const notes = (text: string): readonly string[] =>
  check(patternIn(text)).flatMap(({ code, message }) => (code === 'not-drawn' ? [message] : []));

describe('pieces that rest on a faulty one', () => {
  it('are told in one note, down the whole chain', () => {
    assert.deepEqual(notes(panel('nowhere', DIVIDED)), [
      'yoke, lower, last and ring are not drawn, because they rest on front, which is not whole. Mend ' +
        'front, or what it rests on, first.',
    ]);
  });

  it('are told as well where the fault lies in the draft', () => {
    const text = panel('d', DIVIDED).replace('point d = a down 6cm', 'point d = a down depth');
    assert.match(notes(text).join('\n'), /^yoke, lower, last and ring are not drawn, .* rest on front/);
  });

  it('are told where the piece is drawn, but without its dart', () => {
    const text = panel('d', 'piece last worked from front {\n  cut pair\n}\n').replace(
      '    back straight to a\n  }',
      '    back straight to a\n  }\n  dart nip on top at halfway, 1cm wide, pressed open',
    );
    assert.match(notes(text).join('\n'), /^last is not drawn, because it rests on front/);
  });

  it('are not told where they are drawn, left out, or faulty themselves', () => {
    assert.deepEqual(notes(panel('d', DIVIDED)), []);
    const left = `choose made = yes among yes, no\n${panel('nowhere', 'facing lip of front along top, 2cm deep when made = no\n')}`;
    assert.deepEqual(notes(left), []);
    assert.deepEqual(notes(panel('d', DIVIDED.replace('style-line along', 'style-lane along'))), [
      'last is not drawn, because it rests on lower, which is not whole. Mend lower, or what it rests on, first.',
      'ring is not drawn, because it rests on yoke, which is not whole. Mend yoke, or what it rests on, first.',
    ]);
  });
});

/** Edits that are taken back, and edits beside a piece that stays the same: what is said is what a fresh reading says. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks/index';
import { Workshop } from '../../server/drafting/workshop';
import { doorTo, MAIN, patternIn } from '../support/drafts';

const skirt = (lines: string): string => `draft skirt {
  point top = origin
  point top-side = top left 22cm
  point side-foot = top-side down 20cm
  point foot = top down 20cm
  point knob = top down 5cm left 3cm
  line yoke-line = (top down 8cm) to (top down 8cm left 22cm)
}
piece front of skirt {
  outline from top {
    waist straight to top-side
    side straight to side-foot
    hem straight to foot
    centre straight to top
  }
}
${lines}`;

const said = (pattern: Parameters<typeof check>[0]): unknown =>
  check(pattern).map(({ code, message, related, fixes }) => ({ code, message, related, fixes }));

/** What is said after an edit, beside what is said of the text read whole. */
function edited(workshop: Workshop, text: string, was: string, put: string): string {
  const from = text.indexOf(was);
  workshop.edit(MAIN, [{ from, to: from + was.length, text: put }]);
  const now = text.slice(0, from) + put + text.slice(from + was.length);
  assert.deepEqual(said(workshop.pattern(MAIN)), said(patternIn(now)));
  return now;
}

function opened(text: string): Workshop {
  const workshop = new Workshop(doorTo(text));
  workshop.setText(MAIN, text);
  check(workshop.pattern(MAIN));
  return workshop;
}

const RESTING = {
  'a division': 'divide front at yoke-line into yoke holding waist, lower\n',
  'a worked piece': 'piece back worked from front {\n  button knop = knob\n}\n',
  'a lining': 'lining inner of front {\n  button knop = knob\n}\n',
};

describe('what is said after an edit that is taken back', () => {
  for (const [what, lines] of Object.entries(RESTING)) {
    it(`${what} finds its names again when the draft has its name back`, () => {
      const text = skirt(lines);
      const workshop = opened(text);
      const away = edited(workshop, text, 'draft skirt', 'draft kkirt');
      assert.equal(edited(workshop, away, 'draft kkirt', 'draft skirt'), text);
    });
  }

  it('a gap names the point that lies there now, though its piece stays the same', () => {
    const text = `draft d {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point z = a right 5cm
}
piece one of d {
  outline from (a right 5cm) {
    top straight to b
    side straight to c
    hem straight to (c left 20cm)
  }
  cut 1
}
`;
    edited(opened(text), text, 'point z', 'point y');
  });
});

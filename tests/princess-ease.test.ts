/** Ease over the bust: how much, of which part, and where; and a cut that is sewn up with ease. */
import assert from 'node:assert/strict';
import { check } from '../server/checks/index';
import { patternIn, saidOf } from './support/drafts';

/** Two parts of a front; the side part bulges by 3 cm, so that its edge is 5.7 mm longer. */
const front = (seam: string, names = ['centre-front', 'side-front']): string => `draft centre {
  point top-cf = origin
  point top-cut = top-cf right 8cm
  point bust-point = top-cut down 20cm
  point foot-cut = top-cut down 38cm
  point foot-cf = top-cf down 38cm
}
draft flank {
  point top-cut = origin
  point foot-cut = top-cut down 38cm
  point foot-side = foot-cut right 14cm
  point top-side = top-cut right 14cm
  curve over-bust = top-cut to foot-cut through (top-cut left 3cm down 20cm) going down leaving down arriving down
}
piece ${names[0]} of centre {
  outline from top-cf {
    top straight to top-cut
    princess straight to bust-point
      then straight to foot-cut
    foot straight to foot-cf
    middle straight to top-cf
  }
}
piece ${names[1]} of flank {
  outline from top-cut {
    princess along over-bust to foot-cut
    foot straight to foot-side
    side straight to top-side
    top straight to top-cut
  }
}
${seam}
`;

const codes = (text: string): readonly string[] =>
  saidOf(text).flatMap((line) =>
    /^(princess-ease|mismatched-seam): /.exec(line) ? [line.split(':')[0]!] : [],
  );

const SEAM = 'seam princess centre-front.princess = side-front.princess';
const NEAR = 'between (bust-point up 5cm) and (bust-point down 5cm)';

describe('a seam over the bust', () => {
  it('may ease the side part near the bust, and must say so', () => {
    assert.deepEqual(codes(front(`${SEAM} easing 6mm of side-front ${NEAR}`)), []);
    assert.deepEqual(codes(front(SEAM)), ['mismatched-seam']);
  });

  it('is told where its ease runs from end to end, counted from the bust whichever side is written first', () => {
    const far = /^princess-ease: .* begins or ends 20\.27cm from the bust/;
    for (const seam of [SEAM, 'seam princess side-front.princess = centre-front.princess']) {
      const said = saidOf(front(`${seam} easing 6mm of side-front`)).filter((line) =>
        line.startsWith('princess'),
      );
      assert.equal(said.length, 1);
      assert.match(said[0]!, far);
    }
    assert.deepEqual(
      codes(front(`${SEAM} easing 6mm of side-front\nusual princess-ease-reach in 0cm .. 21cm`)),
      [],
    );
  });

  it('eases the side part to the middle, not the other way', () => {
    const turned = front(
      'seam princess centre-front.princess = side-front.princess easing 6mm of centre-front',
      ['side-front', 'centre-front'],
    );
    const said = saidOf(turned.replace('of centre-front\n', `of centre-front ${NEAR}\n`));
    assert.match(
      said.find((line) => line.startsWith('princess-ease'))!,
      /5\.7mm shorter than .* never the other way/,
    );
  });

  it('is let be at the back, and between parts of other names', () => {
    const eased = (a: string, b: string): string =>
      front(`seam princess ${a}.princess = ${b}.princess easing 6mm of ${b}`, [a, b]);
    assert.deepEqual(codes(eased('centre-back', 'side-back')), []);
    assert.deepEqual(codes(eased('inner', 'outer')), []);
  });
});

describe('a cut that is sewn up by itself', () => {
  const cut = (more: string): string => `draft panel {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point d = a down 30cm
  line middle = (a down 15cm) to (b down 15cm)
  line style = (a right 10cm) to (d right 10cm)
}
piece front of panel {
  outline from a {
    top straight to b
    side straight to c
    foot straight to d
    centre straight to a
  }
}
divide front at style along princess into middle-part holding centre, outer-part
piece centre-front worked from middle-part {
  cut pair
}
piece side-front worked from outer-part {
  cut pair
  lengthen 5mm at middle
}
${more}`;

  it('is sewn as a line of its own says, where there is one', () => {
    const seams = (text: string): readonly string[] =>
      patternIn(text).seams.map(({ name, difference }) => `${name} ${Math.round(difference * 10) / 10}`);
    assert.deepEqual(seams(cut('')), ['princess 5']);
    assert.deepEqual(
      seams(cut('seam own side-front.princess = centre-front.princess easing 5mm of side-front\n')),
      ['own 0'],
    );
    assert.deepEqual(seams(cut('seam other centre-front.top = side-front.top\n')), ['other 0', 'princess 5']);
  });

  it('is offered that line, which mends it', () => {
    const text = cut('');
    const found = check(patternIn(text)).find(({ code }) => code === 'mismatched-seam')!;
    const fix = found.fixes.find(({ title }) => title.startsWith('Sew the cut'))!;
    const [edit] = fix.edits;
    const mended = text.slice(0, edit!.place.from) + edit!.text + text.slice(edit!.place.to);
    assert.ok(
      mended.includes(
        '}\nseam princess centre-front.princess = side-front.princess easing 5mm of side-front\n',
      ),
    );
    assert.deepEqual(
      codes(mended).filter((code) => code === 'mismatched-seam'),
      [],
    );
  });
});

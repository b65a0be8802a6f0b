/** `when` on every statement that makes or sews something: what is left out of a garment, and what rests on it. */
import assert from 'node:assert/strict';
import { checkSaid, patternIn, saidOf, set } from '../support/drafts';
import { pieceOf } from '../support/drafted';

const SKIRT = `choose top = band among band, faced
draft skirt {
  point a = origin
  point b = a right 20cm
  point c = b down 60cm
  point d = a down 60cm
}
piece front of skirt {
  cut 1 on fold
  outline from a {
    waist straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  fold centre
  grain along centre
  allow 1.5cm
}
piece back of skirt {
  cut 1 on fold
  outline from a {
    waist straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  fold centre
  grain along centre
  allow 1.5cm
}
seam side front.side = back.side, zip 18cm from b at left
band waistband for front.waist + back.waist, 3cm wide, underlap 3cm at left when top = band
seam waist front.waist + back.waist = waistband.lower when top = band
facing front-facing of front along waist, 6cm deep when top = faced
facing back-facing of back along waist, 6cm deep when top = faced
seam facing-side front-facing.side = back-facing.side when top = faced
finish front-top front.waist faced by front-facing when top = faced
finish back-top back.waist faced by back-facing when top = faced
finish neat front-facing.inner, back-facing.inner, front.hem, back.hem turned up 3cm
strip loop 20cm by 3cm in silk when top = faced
`;

const faced = set({ top: 'faced' });

const names = (text: string, choice = {}): readonly string[] =>
  patternIn(text, {}, choice).pieces.map(({ name }) => name);

describe('what when leaves out', () => {
  it('are bands, facings, strips and finishes, with the seams that sew them', () => {
    assert.deepEqual(names(SKIRT), ['front', 'back', 'waistband']);
    assert.deepEqual(names(SKIRT, faced), ['front', 'back', 'front-facing', 'back-facing', 'loop']);
    const lines = (choice = {}) => {
      const { seams, finishes } = patternIn(SKIRT, {}, choice);
      return [...seams, ...finishes].map(({ name }) => name);
    };
    assert.deepEqual(lines(), ['side', 'waist', 'neat']);
    assert.deepEqual(lines(faced), ['side', 'facing-side', 'front-top', 'back-top', 'neat']);
  });

  it('is no piece of the garment that could be missing', () => {
    const { pieceNames, leftOut } = patternIn(SKIRT);
    assert.deepEqual(pieceNames, ['front', 'back', 'waistband']);
    assert.deepEqual(leftOut, ['front-facing', 'back-facing', 'loop']);
  });

  it('is missed by nobody: either garment is whole', () => {
    checkSaid(SKIRT, []);
    checkSaid(SKIRT, [], {}, faced);
  });

  it('leaves the other edges of its finish as they are', () => {
    const [plain, other] = [patternIn(SKIRT), patternIn(SKIRT, {}, faced)];
    for (const pattern of [plain, other]) assert.equal(pieceOf(pattern, 'front').hems.get('hem'), 1);
    assert.equal(plain.finishes[0]!.edges.length, 2);
    assert.equal(other.finishes.at(-1)!.edges.length, 4);
  });

  it('is left out of a sum of edges as well', () => {
    const text = `${SKIRT}
piece godet of skirt when top = faced {
  cut pair
  outline from a {
    waist straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
}
strip tape (length(front.waist)) by 2cm
seam taped front.waist + godet.waist = tape.lower
`;
    const taped = (choice = {}) =>
      patternIn(text, {}, choice).seams.find(({ name }) => name === 'taped')!.leftLength;
    assert.deepEqual([taped(), taped(faced)], [200, 400]);
  });

  it('hands nothing on: what would have been joined is cut itself', () => {
    const text = `choose joined = yes among yes, no
draft d {
  point a = origin
  point b = a right 20cm
  point c = b down 10cm
  point e = a down 10cm
}
piece one of d {
  cut pair
  outline from a {
    top straight to b
    side straight to c
    foot straight to e
    inner straight to a
  }
}
piece two worked from one {
  cut pair
}
join one.side to two.inner into both when joined = yes
`;
    const cut = (choice = {}) =>
      patternIn(text, {}, choice).pieces.flatMap(({ name, cut: words }) => (words ? [name] : []));
    assert.deepEqual(cut(), ['both']);
    assert.deepEqual(cut(set({ joined: 'no' })), ['one', 'two']);
  });

  it('is a division: the piece is cut itself, and what is worked from a part or faces one is left out with it', () => {
    const text = `choose yoke = yes among yes, no
draft d {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point e = a down 30cm
  line style-line = (a down 10cm) to (b down 10cm)
}
piece front of d {
  cut 1 open
  outline from a {
    top straight to b
    side straight to c
    foot straight to e
    middle straight to a
  }
  grain along middle
  fold middle
  allow 1cm
}
divide front at style-line along yoke-line into upper-part holding top, lower when yoke = yes
piece upper worked from upper-part {
  cut 1 open
}
facing upper-facing of upper along top, 4cm deep
finish whole front.top, front.side, front.foot raw when yoke = no
finish in-two upper.side, lower.side, lower.foot, upper-facing.inner, upper-facing.side raw
finish top upper.top faced by upper-facing
`;
    const before = text
      .replace(' when yoke = yes\n', '\n')
      .replace(' into upper', ' when yoke = yes into upper');
    for (const one of [text, before]) {
      const cut = (choice = {}) =>
        patternIn(one, {}, choice).pieces.flatMap(({ name, cut: words }) => (words ? [name] : []));
      assert.deepEqual(cut(), ['lower', 'upper', 'upper-facing']);
      assert.deepEqual(cut(set({ yoke: 'no' })), ['front']);
      const { leftOut, seams } = patternIn(one, {}, set({ yoke: 'no' }));
      assert.deepEqual([leftOut, seams], [['upper-part', 'lower', 'upper', 'upper-facing'], []]);
      checkSaid(one, []);
      checkSaid(one, [], {}, set({ yoke: 'no' }));
    }
  });

  it('is a notch, in the block of its piece and outside, and a seam may name its place all the same', () => {
    const text = SKIRT.replace(
      '  allow 1.5cm\n',
      '  allow 1.5cm\n  notch high on side at 10cm from b, single when top = faced\n',
    )
      .concat('notch low on front.side at 10cm from c, single when top = band\n')
      .concat('notch hip on side at 20cm from b when not top = band\n')
      .replace('back.side, zip', 'back.side easing 0mm .. 2mm of back, none below low, zip');
    const notches = (choice = {}) => {
      const pattern = patternIn(text, {}, choice);
      return ['front', 'back'].map((piece) =>
        pieceOf(pattern, piece).notches.flatMap(({ name }) => (name === '' ? [] : [name])),
      );
    };
    assert.deepEqual(notches(), [['low'], []]);
    assert.deepEqual(notches(faced), [
      ['high', 'hip'],
      ['high', 'hip'],
    ]);
    assert.deepEqual(saidOf(text), []);
    assert.deepEqual(saidOf(text, {}, faced), []);
  });

  it('tells of a mistyped choice once, not of its word as well', () => {
    const [only, ...others] = saidOf(SKIRT.replace('in silk when top = faced', 'in silk when topp = faced'));
    assert.match(only!, /topp/);
    assert.deepEqual(others, []);
  });

  it('is told of a word that is not offered', () => {
    const wrong = SKIRT.replace('in silk when top = faced', 'in silk when top = face');
    assert.match(saidOf(wrong).join('\n'), /face/);
  });
});

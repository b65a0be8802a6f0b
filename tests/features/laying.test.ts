/** What a person lays out: a seam walked, pieces laid together, darts closed; places by closed forms. */
import assert from 'node:assert/strict';
import type { Laying } from '../../client/preview/protocol';
import { layables, layOut, type LaidOut } from '../../server/features/laying';
import { patternIn } from '../support/drafts';

/** Two panels, the second drawn elsewhere on the paper and turned by a quarter; they are sewn along `side`. */
const text = (more: string, longer = '') => `
draft panels {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point d = a down 30cm
  point p = a right 50cm down 10cm
  point q = p right 30cm${longer}
  point r = q down 20cm
  point s = p down 20cm
}
piece front of panels {
  cut pair
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  grain along centre
}
piece back of panels {
  cut pair
  outline from p {
    side straight to q
    foot straight to r
    middle straight to s
    head straight to p
  }
  grain along middle
}
seam side front.side = back.side reversed${more}
seam middle back.middle = its pair
`;

const NOTCHED = `
notch knee on side at 10cm from panels.b, single
`;

function laid(drawn: string, laying: Laying): LaidOut {
  const pattern = patternIn(drawn);
  const found = layOut(pattern, laying);
  assert.ok(found, JSON.stringify(pattern.findings.map(({ finding }) => finding.message)));
  return found;
}

/** Where a point of a piece comes to lie, mm. */
function lies({ pieces }: LaidOut, index: number, x: number, y: number): string {
  const [a, b, c, d, e, f] = pieces[index]!.by;
  return [a * x + c * y + e, b * x + d * y + f].map((n) => String(Math.round(n * 100) / 100 + 0)).join(' ');
}

describe('walking a seam', () => {
  it('lays both beginnings on each other, the cloth of either on its own side', () => {
    const found = laid(text(''), { kind: 'walk', of: 'seam:side', at: 0 });
    // back.side runs from q to p beside front.side from b to c: q comes to b, and its cloth to the right
    assert.deepEqual(
      [lies(found, 0, 0, 0), lies(found, 1, 800, 100), lies(found, 1, 500, 100), lies(found, 1, 500, 300)],
      ['0 0', '200 0', '200 300', '400 300'],
    );
  });

  it('lays the same distance of both on each other on the way', () => {
    const found = laid(text(''), { kind: 'walk', of: 'seam:side', at: 120 });
    assert.deepEqual([lies(found, 1, 680, 100), found.walk?.touch], ['200 120', { x: 200, y: 120 }]);
    assert.equal(found.words[0], 'front side is 30cm, back side 30cm: they match.');
    assert.equal(found.words[1], '12cm along front side lies on 12cm along back side.');
  });

  it('leaves over what the longer side has too much', () => {
    const found = laid(text('', ' right 8mm'), { kind: 'walk', of: 'seam:side', at: 300 });
    assert.equal(found.words[0], 'front side is 30cm, back side 30.8cm: 8mm of back side is left over.');
    const over = found.lines.find(({ kind }) => kind === 'over')!.line;
    assert.deepEqual([over.start, over.stretches], [{ x: 200, y: 308 }, [[200, 300]]]);
  });

  it('eases what is asked for along the way, and counts it', () => {
    const found = laid(text(' easing 8mm of back', ' right 8mm'), { kind: 'walk', of: 'seam:side', at: 150 });
    assert.deepEqual(found.words.slice(0, 2), [
      'front side is 30cm, back side 30.8cm, 8mm eased in as asked.',
      '15cm along front side lies on 15.4cm along back side, 4mm eased in so far.',
    ]);
  });

  it('stops at both ends and at every notch, and says whether its fellow is met', () => {
    const found = laid(text('') + NOTCHED, { kind: 'walk', of: 'seam:side', at: 100 });
    assert.deepEqual(
      found.walk?.stops.map(({ at }) => at),
      [0, 100, 300],
    );
    assert.equal(found.words.at(-1), 'Notch knee meets its fellow.');
  });

  it('turns the pair of a piece over to meet it', () => {
    const found = laid(text(''), { kind: 'walk', of: 'seam:middle', at: 100 });
    assert.deepEqual([lies(found, 0, 500, 300), lies(found, 1, 500, 300)], ['500 300', '500 300']);
    assert.equal(lies(found, 1, 500, 100), '500 500');
    assert.equal(found.texts.length, 1);
  });

  it('stays within the seam', () => {
    assert.equal(laid(text(''), { kind: 'walk', of: 'seam:side', at: 9e9 }).walk?.at, 300);
    assert.equal(laid(text(''), { kind: 'walk', of: 'seam:side', at: NaN }).walk?.at, 0);
    assert.equal(layOut(patternIn(text('')), { kind: 'walk', of: 'nowhere', at: 0 }), undefined);
  });
});

describe('pieces laid together at a seam', () => {
  it('lie edge to edge, and what runs on across the seam is told', () => {
    const found = laid(text(''), { kind: 'together', of: 'seam:side', at: 'start' });
    assert.deepEqual([lies(found, 1, 800, 100), lies(found, 1, 500, 100)], ['200 0', '200 300']);
    assert.deepEqual(found.words.slice(1), ['Where it begins, front top and back foot run on in one line.']);
    const other = laid(text(''), { kind: 'together', of: 'seam:side', at: 'end' });
    assert.deepEqual(other.words.slice(1), ['Where it ends, front hem and back head run on in one line.']);
  });

  it('tell by how much the edges beside them bend at the seam', () => {
    const bent = text('').replace('point d = a down 30cm', 'point d = a down 10cm');
    const found = laid(bent, { kind: 'together', of: 'seam:side', at: 'end' });
    // the hem of the front rises by 20 cm on 20 cm: 45 degrees at c instead of 90
    assert.match(
      found.words.at(-1)!,
      /^Where it ends, front hem and back head meet at 135°, 45° less than one line\.$/,
    );
  });

  it('lie along a long edge, one after the other', () => {
    const parts =
      text('').replace(
        'seam side front.side = back.side reversed',
        'seam side front.side reversed + back.side reversed = long.edge',
      ) +
      `draft strip {
  point m = origin
  point n = m right 60cm
  point o = n down 5cm
}
piece long of strip {
  cut 1
  outline from m {
    edge straight to n
    far straight to o
    rest straight to m
  }
  grain along edge
}
`;
    const found = laid(parts, { kind: 'together', of: 'seam:side', at: 'start' });
    assert.deepEqual(
      found.pieces.map(({ piece }) => piece),
      ['front', 'long', 'back'],
    );
    const long = [lies(found, 1, 0, 0), lies(found, 1, 300, 0), lies(found, 1, 600, 0)];
    assert.deepEqual(long, ['200 300', '200 0', '200 -300']);
    assert.deepEqual([lies(found, 2, 800, 100), lies(found, 2, 500, 100)], ['200 0', '200 -300']);
  });
});

describe('darts that are closed', () => {
  const darted = text('')
    .replace('    top straight to b\n', '    top straight to b untrued\n')
    .replace(
      '  grain along centre\n',
      '  grain along centre\n  dart tuck on top at 10cm from a, 2cm wide, 10cm long\n',
    );

  it('bend a straight edge by their own angle, and the edge is as long as it is sewn', () => {
    const found = laid(darted, { kind: 'darts', of: 'front' });
    const degrees = Number((2 * Math.atan(10 / 100) * (180 / Math.PI)).toFixed(1));
    assert.deepEqual(found.words, [
      `top is 20cm on paper and 18cm when sewn; it bends by ${degrees}° at tuck.`,
    ]);
  });

  it('bring their two legs together', () => {
    const found = laid(darted, { kind: 'darts', of: 'front' });
    const runs = found.lines.filter(({ line }) => line.name === 'top').map(({ line }) => line);
    const end = runs[0]!.stretches.at(-1)!.slice(-2);
    assert.deepEqual([runs.length, [runs[1]!.start.x, runs[1]!.start.y]], [2, end]);
  });
});

describe('what can be laid out', () => {
  it('is every seam whose edges are there, every piece with darts, every piece for one side', () => {
    const found = layables(patternIn(text('')));
    assert.deepEqual(
      found.map(({ kind, of }) => `${kind} ${of}`),
      ['walk seam:side', 'walk seam:middle', 'together seam:side', 'together seam:middle'],
    );
  });
});

describe('the left laid over the right', () => {
  /** A yoke of 12 cm down whose shoulder is 12 cm long on the right. */
  const yoke = (left: string) => `drafted for gatekeeper
body gatekeeper {
  shoulder left ${left} right 12cm
}
draft yoke {
  point neck = origin
  point tip = neck right shoulder
  point foot = neck down 12cm
}
piece front of yoke each side {
  cut pair
  outline from neck {
    shoulder straight to tip
    armhole straight to foot
    centre straight to neck
  }
  grain along centre
}
`;

  it('tells which edges differ and where the corners lie furthest apart', () => {
    const found = laid(yoke('13cm'), { kind: 'sides', of: 'front' });
    assert.deepEqual(
      found.pieces.map(({ piece }) => piece),
      ['front-right', 'front-left'],
    );
    assert.match(found.words[0]!, /shoulder is 12cm on the right and 13cm on the left/);
    assert.equal(found.words[1], 'The corners lie furthest apart at tip: by 1cm.');
    assert.deepEqual([lies(found, 1, 0, 0), lies(found, 0, 0, 0)], ['0 0', '0 0']);
  });

  it('is turned over, so that shoulder lies on shoulder', () => {
    const [, left] = laid(yoke('13cm'), { kind: 'sides', of: 'front' }).pieces;
    const [a, b, c, d] = left!.by;
    assert.ok(a * d - b * c < 0);
  });

  it('is not offered where both sides are cut alike', () => {
    const found = layables(patternIn(yoke('12cm')));
    assert.equal(found.filter(({ kind }) => kind === 'sides').length, 0);
  });
});

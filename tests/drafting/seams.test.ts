/** Seams: which ends meet, where the ease lies, where notches and openings fall. Closed forms, and the sleeve of the samples. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Workshop } from '../../server/drafting/workshop';
import type { Pattern, Seam } from '../../server/drafting/model';
import { across, sideLength } from '../../server/drafting/sewing/course';
import { patternIn, saidOf } from '../support/drafts';
import { root } from '../support/sources';

/** Two panels of 40 cm, the second as long as told, drawn on sheets of their own. */
const panels = (long: string, more: string): string => `
draft one {
  point top = origin
  point foot = top down 40cm
  point foot-in = foot right 10cm
  point top-in = top right 10cm
}
draft other {
  point high = origin
  point low = high down ${long}
  point low-in = low left 10cm
  point high-in = high left 10cm
}
piece front of one {
  outline from top {
    side straight to foot
    hem straight to foot-in
    inner straight to top-in
    waist straight to top
  }
}
piece back of other {
  outline from high {
    side straight to low
    hem straight to low-in
    inner straight to high-in
    waist straight to high
  }
}
${more}
`;

const seamNamed = (pattern: Pattern, name: string): Seam => {
  const seam = pattern.seams.find((one) => one.name === name);
  assert.ok(seam, pattern.findings.map(({ finding }) => finding.message).join('\n'));
  return seam;
};

/** `piece.edge at distance` of every notch, a tenth of a millimetre fine. */
const notches = ({ pieces }: Pattern): readonly string[] =>
  pieces.flatMap(({ base, notches: cut }) =>
    cut.map(({ edge, distance, name }) => `${name}: ${base}.${edge} ${distance.toFixed(1)}`),
  );

const runs = (seam: Seam, side: 'left' | 'right'): string =>
  seam.course?.[side].map(({ piece, edge, from, to }) => `${piece}.${edge} ${from}..${to}`).join(' + ') ?? '';

const near = (actual: number, expected: number, within = 1e-6): void =>
  assert.ok(Math.abs(actual - expected) <= within, `${actual} instead of ${expected}`);

describe('the ends of a seam', () => {
  it('are paired by neighbours of one name, whichever way the outlines run', () => {
    const seam = seamNamed(patternIn(panels('40cm', 'seam side front.side = back.side')), 'side');
    assert.equal(runs(seam, 'left'), 'front.side 0..400');
    assert.equal(runs(seam, 'right'), 'back.side 0..400');
  });

  it('are paired by the ends that are stated, against all else', () => {
    const text = 'seam side front.side from top to foot = back.side from low to high';
    const seam = seamNamed(patternIn(panels('40cm', text)), 'side');
    assert.equal(runs(seam, 'right'), 'back.side 400..0');
  });

  it('of two rings that meet at every join are the same wherever the rings are opened', () => {
    const text = `
draft body {
  point a = origin
  point b = a right 10cm
  point c = b down 20cm
  point d = a down 20cm
}
piece front of body {
  outline from a {
    top straight to b
    armhole straight to c
    foot straight to d
    inner straight to a
  }
}
draft rear {
  point e = origin
  point f = e left 10cm
  point g = f down 20cm
  point h = e down 20cm
}
piece back of rear {
  outline from e {
    top straight to f
    armhole straight to g
    foot straight to h
    inner straight to e
  }
}
lining front-in of front {
}
lining back-in of back {
}
seam side front.foot = back.foot
seam ring front.armhole + back.armhole = front-in.armhole + back-in.armhole
notch level on ring at 5cm from b, single
`;
    assert.deepEqual(notches(patternIn(text)), ['level: front.armhole 50.0', 'level: front-in.armhole 50.0']);
  });

  it('are turned about by reversed', () => {
    const seam = seamNamed(patternIn(panels('40cm', 'seam side front.side = back.side reversed')), 'side');
    assert.equal(runs(seam, 'right'), 'back.side 400..0');
  });

  it('count a stretch as long as it is', () => {
    const text =
      'seam side front.side from top to (on front.side 30cm from top) = back.side from high to (on back.side 30cm from high)';
    const seam = seamNamed(patternIn(panels('50cm', text)), 'side');
    near(seam.leftLength, 300);
    near(seam.rightLength, 300);
  });

  it('of two edges of one piece are paired as the cloth is folded together', () => {
    const seam = seamNamed(patternIn(panels('40cm', 'seam tube front.side = front.inner')), 'tube');
    assert.equal(runs(seam, 'left'), 'front.side 0..400');
    assert.equal(runs(seam, 'right'), 'front.inner 400..0');
  });
});

describe('a range of ease from nothing up', () => {
  it('lets either side be the fuller one, and no more than it says', () => {
    const apart = (sides: string) =>
      Math.abs(seamNamed(patternIn(panels('42cm', `seam side ${sides}`)), 'side').difference);
    near(apart('front.side = back.side easing 0cm .. 3cm'), 0);
    near(apart('back.side = front.side easing 0cm .. 3cm'), 0);
    near(apart('back.side = front.side easing 0cm .. 15mm'), 5);
  });
});

describe('ease along a seam', () => {
  const eased = (more: string): Seam =>
    seamNamed(patternIn(panels('42cm', `seam side front.side = back.side ${more}`)), 'side');

  it('is shared evenly where nothing else is said', () => {
    const { course } = eased('easing 2cm of back');
    for (const s of [0, 100, 250, 400]) near(across(course!, 'left', s), s * 1.05);
  });

  it('lies between two places', () => {
    const { course } = eased(
      'easing 2cm of back between (on front.side 10cm from top) and (on front.side 20cm from top)',
    );
    // a flat stretch of 100, then 120 of the one on 100 of the other, then flat again
    for (const [left, right] of [
      [50, 50],
      [100, 100],
      [150, 160],
      [200, 220],
      [300, 320],
      [400, 420],
    ]) {
      near(across(course!, 'left', left!), right!);
      near(across(course!, 'right', right!), left!);
    }
  });

  it('stays above the places below which there is none', () => {
    const { course } = eased('easing 2cm of back, none below (on front.side 10cm from top)');
    near(across(course!, 'left', 50), 60);
    near(across(course!, 'left', 100), 120);
    near(across(course!, 'left', 300), 320);
  });

  it('is known by the name of a notch', () => {
    const text = `seam side front.side = back.side easing 2cm of back, none below balance
notch balance on front.side at 10cm from top, single`;
    const seam = seamNamed(patternIn(panels('42cm', text)), 'side');
    near(across(seam.course!, 'left', 300), 320);
  });

  it('of gathers is in proportion, whichever side is gathered', () => {
    for (const [text, name] of [
      ['seam side back.side = front.side gathered 2 to 1', 'side'],
      ['seam side front.side = back.side gathered 2 to 1', 'side'],
    ] as const) {
      const seam = seamNamed(patternIn(panels('80cm', text)), name);
      near(seam.difference, 0);
      const [from, factor] = text.includes('= front') ? (['left', 0.5] as const) : (['left', 2] as const);
      near(across(seam.course!, from, 200), 200 * factor);
    }
  });
});

describe('notches on a seam', () => {
  it('land on both sides, as far from the shared corner', () => {
    const text = 'seam side front.side = back.side\nnotch knee on side at 12cm from top, single';
    assert.deepEqual(notches(patternIn(panels('40cm', text))), [
      'knee: front.side 120.0',
      'knee: back.side 120.0',
    ]);
  });

  it('land where the ease puts them', () => {
    const text = 'seam side front.side = back.side easing 2cm of back\nnotch knee on side at halfway, single';
    assert.deepEqual(notches(patternIn(panels('42cm', text))), [
      'knee: front.side 200.0',
      'knee: back.side 210.0',
    ]);
  });

  it('of several edges fall on the right piece, past the end of the first', () => {
    const more = `draft long {
  point a = origin
  point b = a down 80cm
  point c = b right 10cm
  point d = a right 10cm
}
piece flap of long {
  outline from a {
    rim straight to b
    tail straight to c
    back-rim straight to d
    nose straight to a
  }
}
seam row flap.rim from a to b = front.side from top to foot + back.side from low to high
notch near on row at 30cm from a, single
notch far on row at 50cm from a, double
notch over on row at 45cm from top toward foot, single`;
    assert.deepEqual(
      notches(patternIn(panels('40cm', more))),
      [
        'near: front.side 300.0',
        'over: back.side 350.0',
        'far: back.side 300.0',
        'near: flap.rim 300.0',
        'far: flap.rim 500.0',
        'over: flap.rim 450.0',
      ].sort((a, b) => order(a) - order(b)),
    );
  });

  it('at a corner of one piece are cut into the other alone', () => {
    const more = `draft long {
  point a = origin
  point b = a down 80cm
  point c = b right 10cm
  point d = a right 10cm
}
piece flap of long {
  outline from a {
    rim straight to b
    tail straight to c
    back-rim straight to d
    nose straight to a
  }
}
seam row flap.rim from a to b = front.side from top to foot + back.side from low to high
notch join on row at foot, single`;
    assert.deepEqual(notches(patternIn(panels('40cm', more))), ['join: flap.rim 400.0']);
  });

  it('are not cut into a fold', () => {
    const text = panels('40cm', 'notch middle on front.inner at halfway, single').replace(
      '  }\n}\npiece back',
      '  }\n  fold inner\n}\npiece back',
    );
    assert.match(saidOf(text).join('\n'), /front lies on the fold along inner, so nothing is cut there/);
  });
});

/** Pieces in file order, notches in file order within each. */
const order = (line: string): number =>
  ['front', 'back', 'flap'].findIndex((piece) => line.includes(` ${piece}.`)) * 10 +
  ['near', 'far', 'over'].findIndex((name) => line.startsWith(name));

describe('openings of a seam', () => {
  const opened = (text: string): Seam['openings'] =>
    seamNamed(patternIn(panels('40cm', `seam side front.side = back.side, ${text}`)), 'side').openings;

  it('are counted from an end into the seam', () => {
    const [zip] = opened('zip 15cm from foot at left')!;
    assert.deepEqual([zip!.from, zip!.to, zip!.whole, zip!.side], [250, 400, false, 'left']);
  });

  it('lie between two places, or over the whole', () => {
    const [slit] = opened('left open from (on front.side 5cm from top) to (on front.side 12cm from top)')!;
    near(slit!.from, 50);
    near(slit!.to, 120);
    const [laces] = opened('laced')!;
    assert.deepEqual([laces!.from, laces!.to, laces!.whole], [0, 400, true]);
  });

  it('named on the eased side end where the ease puts them on the other', () => {
    // all the ease of 2cm lies in the first 10cm of the front: from there on both are counted alike from the foot
    const eased = (of: string, at: string) =>
      seamNamed(
        patternIn(
          panels(
            '42cm',
            `seam side front.side = back.side easing 2cm between top and (on front.side 10cm from top), zip from (on ${of} from ${at}) to foot`,
          ),
        ),
        'side',
      ).openings![0]!;
    near(eased('front.side 15cm', 'foot').from, 250);
    near(eased('back.side 15cm', 'low').from, 250);
    near(eased('back.side 6cm', 'high').from, 50);
  });

  it('longer than their seam are reported with both lengths', () => {
    const said = saidOf(panels('40cm', 'seam side front.side = back.side, zip 50cm from top'));
    assert.match(said.join('\n'), /The zip is 50cm long, but the seam it lies in is only 40cm/);
  });

  it('from a place in the middle want to know which way', () => {
    const said = saidOf(
      panels('40cm', 'seam side front.side = back.side, zip 5cm from (on front.side halfway)'),
    );
    assert.match(said.join('\n'), /which-way/);
  });
});

describe('the set-in sleeve of the samples', () => {
  const files = new Workshop({
    read: (uri) => readFileSync(uri, 'utf8'),
    resolve: (from, path) => ({ uri: join(from, '..', path) }),
  });

  it('has no ease below its pitches, and above them 45 parts in the front and 55 in the back', () => {
    const pattern = files.pattern(join(root, 'samples', 'sleeve.draft'));
    const seam = pattern.seams.find(({ name, side }) => name === 'armhole' && side === 'right')!;
    const { course } = seam;
    const back = course!.right[0]!;
    assert.equal(`${back.piece}.${back.edge}`, 'back.armhole');
    const shoulder = sideLength([back]);
    const ease = sideLength(course!.left) - sideLength(course!.right);
    // figures of the sample's notes: head 454.7, armhole 426.7, ease 28.0 mm
    near(ease, 28, 0.05);
    near(across(course!, 'right', shoulder), shoulder + 0.55 * ease, 1e-6);
    near(across(course!, 'right', 50), 50, 1e-6);
    near(across(course!, 'right', sideLength(course!.right) - 50), sideLength(course!.left) - 50, 1e-6);
  });

  it('has its crown notch where the shoulder seam comes to lie', () => {
    const pattern = files.pattern(join(root, 'samples', 'sleeve.draft'));
    const { edges, notches: cut } = pattern.pieces[0]!;
    // one pair is cut for both sides of the body, from the larger
    const seam = pattern.seams.find(({ leftLength }) => Math.abs(leftLength - edges[0]!.sewn) < 1e-6)!;
    const crown = cut.find(({ name }) => name === 'crown')!;
    near(across(seam.course!, 'left', crown.distance), sideLength([seam.course!.right[0]!]), 0.05);
  });
});

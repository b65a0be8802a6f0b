/** Work on a piece is work on paper: what is not cut keeps its length, what opens is a wedge or a strip, and back again. */
import assert from 'node:assert/strict';
import { distance } from '../../server/geometry';
import type { Dart, Edge, Pattern, Piece } from '../../server/drafting/model';
import { patternIn, saidOf } from '../support/drafts';

/** A bodice front with a dart drafted 3 in wide at 12 in from its point, and places at 20 in and at 8 in. */
const BODICE = `
draft front {
  point apex = origin
  point leg-in = apex down 12in
  point leg-out = leg-in turned -(2 * asin(3in / 24in)) clockwise about apex
  point waist-cf = leg-in left 4in
  point neck-cf = waist-cf up 20in
  point far = apex at 20deg right of up for 20in
  point near-side = apex right 8in
  point tip = near-side up 3in right 1in
  point waist-side = leg-out right 3in up 1in
  curve armhole = far to tip leaving at 10deg left of down arriving right
}
piece block of front {
  outline from neck-cf {
    centre straight to waist-cf
    waist straight to leg-in
      then dart shaping by apex to leg-out
      then straight to waist-side
    side straight to near-side
      then straight to tip
    armhole along armhole to far
    top straight to neck-cf
  }
}
`;

const pieceOf = (pattern: Pattern, name: string): Piece => {
  const found = pattern.pieces.find((piece) => piece.name === name);
  assert.ok(found, `${name} is made: ${pattern.findings.map(({ finding }) => finding.message).join('\n')}`);
  return found;
};

const worked = (steps: string, base = BODICE): readonly [Piece, Piece] => {
  const pattern = patternIn(`${base}\npiece made worked from block {\n${steps}\n}\n`);
  return [pieceOf(pattern, 'block'), pieceOf(pattern, 'made')];
};

const near = (found: number, wanted: number, within = 1e-6, what = ''): void =>
  assert.ok(Math.abs(found - wanted) <= within, `${what} ${found} should be ${wanted}`);

const edge = ({ edges }: Piece, name: string): Edge => edges.find((one) => one.name === name)!;

function keeps(before: Piece, after: Piece, but: readonly string[] = []): void {
  for (const { name, sewn } of before.edges)
    if (!but.includes(name)) near(edge(after, name).sewn, sewn, 1e-6, name);
}

const wedge = ({ from, to, pivot }: Dart): number =>
  Math.abs((from.x - pivot.x) * (to.y - pivot.y) - (from.y - pivot.y) * (to.x - pivot.x)) / 2;

const INCH = 25.4;

describe('a dart is an angle', () => {
  // computed: an intake w at distance r opens 2·asin(w/2r); 3 in at 12 in is 14.3615°, 5 in at 20 in, 2 in at 8 in.
  // That edges either side do not change: Erwin, Practical Dress Design, p. 31
  it('of 14.3615° where it takes 3 in at 12 in', () => {
    const [dart] = pieceOf(patternIn(BODICE), 'block').darts;
    near(dart!.width, 3 * INCH);
    near(dart!.angle, 14.3615, 5e-5);
  });

  it('that takes 5 in at 20 in', () => {
    const [before, after] = worked('  swing shaping to top at far');
    near(after.darts[0]!.width, 5 * INCH);
    keeps(before, after);
  });

  it('that takes 2 in at 8 in', () => {
    const [before, after] = worked('  swing shaping to side at near-side');
    near(after.darts[0]!.width, 2 * INCH);
    keeps(before, after);
  });

  it('that is shared out in any parts', () => {
    const [before, after] = worked('  swing shaping by 1/3 to side at near-side');
    const [a, b] = after.darts;
    near(a!.angle + b!.angle, before.darts[0]!.angle, 1e-9);
    near(Math.min(a!.angle, b!.angle), before.darts[0]!.angle / 3, 1e-9);
    keeps(before, after);
  });
});

describe('the area of a piece changes by exactly what opens and closes', () => {
  it('where a dart is swung: by the wedge that opens less the wedge that closes', () => {
    const [before, after] = worked('  swing shaping to top at far');
    near(after.area - before.area, wedge(after.darts[0]!) - wedge(before.darts[0]!), 1e-4);
  });

  it('where a dart is closed into an edge: the same, and the edge grows by the width of the wedge', () => {
    const [before, after] = worked('  close shaping into top');
    const [a, b] = [edge(before, 'top').sewn, edge(after, 'top').sewn];
    const { angle, pivot } = before.darts[0]!;
    const reach = pivot.y - before.corners.find(({ name }) => name === 'neck-cf')!.point.y;
    assert.ok(reach > 0 && b > a);
    const radius = (b - a) / (2 * Math.sin((angle * Math.PI) / 360));
    near(
      after.area - before.area,
      (radius ** 2 * Math.sin((angle * Math.PI) / 180)) / 2 - wedge(before.darts[0]!),
      1e-4,
    );
    keeps(before, after, ['top']);
  });

  it('where it is slashed and opened: by a triangle', () => {
    const cut =
      'slash from (on waist 2in from waist-cf) to (on top halfway), hinge at (on top halfway), open 2in';
    const [before, after] = worked(`  ${cut}`);
    keeps(before, after, ['waist']);
    near(edge(after, 'waist').sewn - edge(before, 'waist').sewn, 2 * INCH);
    const { path } = edge(before, 'top');
    const waist = before.corners.find(({ name }) => name === 'waist-cf')!.point;
    const long = distance(path.pointAt(path.length / 2), { x: waist.x + 2 * INCH, y: waist.y });
    const height = Math.sqrt(long ** 2 - INCH ** 2);
    near(after.area - before.area, INCH * height, 1e-4);
  });

  it('where it is spread: by a strip', () => {
    const [before, after] = worked('  spread 2in along (on waist 2in from waist-cf) to (on top halfway)');
    const { path } = edge(before, 'top');
    const waist = before.corners.find(({ name }) => name === 'waist-cf')!.point;
    const long = distance(path.pointAt(path.length / 2), { x: waist.x + 2 * INCH, y: waist.y });
    near(after.area - before.area, 2 * INCH * long, 1e-4);
    keeps(before, after, ['waist', 'top']);
  });
});

describe('paper goes back to where it was', () => {
  const same = (before: Piece, after: Piece): void => {
    keeps(before, after);
    near(after.area, before.area, 1e-3);
    for (const { name, point } of before.corners)
      // two points that come to lie on each other when a dart is closed are one from then on
      if (name !== 'leg-out')
        near(distance(point, after.corners.find((one) => one.name === name)!.point), 0, 1e-6, name);
    before.edges.forEach(({ name, path }) => {
      const back = edge(after, name).path;
      for (const share of [0, 0.2, 0.4, 0.6, 0.8, 1])
        near(distance(path.pointAt(share * path.length), back.pointAt(share * back.length)), 0, 1e-6, name);
    });
  };

  it('when a dart is swung there and back', () => {
    same(...worked('  swing shaping to top at far\n  swing shaping to waist at 4in from waist-cf'));
  });

  it('when it is lengthened and shortened by the same', () => {
    const at = '((apex down 5in) to (apex down 5in right 2in))';
    same(...worked(`  lengthen 2in at ${at}\n  shorten 2in at ${at}`));
  });

  it('when it is turned over twice', () => {
    const pattern = patternIn(
      `${BODICE}\npiece over worked from block mirrored {\n}\npiece made worked from over mirrored {\n}\n`,
    );
    same(pieceOf(pattern, 'block'), pieceOf(pattern, 'made'));
  });
});

const PANEL = `
draft panel {
  point a = origin
  point b = a right 30cm
  point c = b right 4cm down 40cm
  point d = a down 40cm
}
piece block of panel {
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    back straight to a
  }
}
`;

describe('a piece that is shortened', () => {
  it('loses a strip beside the line, and its slanting edge is drawn on to meet', () => {
    const at = '((a down 10cm) to (a down 10cm right 5cm))';
    const [before, after] = worked(`  shorten 8cm at ${at}`, PANEL);
    near(edge(after, 'back').sewn, 320);
    near(edge(after, 'hem').sewn, edge(before, 'hem').sewn);
    const { path, parts } = edge(after, 'side');
    near(path.start.x, 300);
    near(path.end.x, 340);
    assert.equal(parts.length, 1);
    // to the line it is as it was
    near(path.pointAt(50).x, edge(before, 'side').path.pointAt(50).x);
  });

  it('by more than lies below the line says so', () => {
    const text = `${PANEL}piece made worked from block {
  shorten 35cm at ((a down 10cm) to (a down 10cm right 5cm))
}
`;
    assert.deepEqual(saidOf(text), [
      "out-of-reach: 35cm can't be taken out below ((a down 10cm) to (a down 10cm right 5cm)): the piece ends before that, or turns.",
    ]);
  });
});

describe('an edge that is widened', () => {
  it('lies parallel, and straight neighbours reach it under the ruler', () => {
    const [before, after] = worked('  widen 2cm at side', PANEL);
    const [own, wide] = [edge(before, 'side').path, edge(after, 'side').path];
    for (const s of [50, 100, 300]) near(wide.locate(own.pointAt(s)).distance, 20, 1e-6);
    near(wide.start.y, 0);
    near(wide.end.y, 400);
    // square to the side, 2cm; along the level top that by the slant of the side
    near(edge(after, 'top').sewn, 300 + (20 * Math.hypot(40, 400)) / 400);
    near(after.area - before.area, 20 * own.length, 1e-3);
  });

  it('and made narrower by the same is as it was', () => {
    const [before, after] = worked('  widen 2cm at side\n  widen 0cm - 2cm at side', PANEL);
    keeps(before, after);
    near(after.area, before.area, 1e-3);
  });

  it('takes its named corners and the legs of its darts along', () => {
    const lines = PANEL.replace(
      '    back straight to a\n  }\n',
      '    back straight to a\n  }\n  dart one on top at 12cm from a, 2cm wide, 9cm long\n',
    );
    const [before, after] = worked('  widen 1cm at top', lines);
    const [own, wide] = [before.darts[0]!, after.darts[0]!];
    near(wide.angle, own.angle, 1e-9);
    assert.ok(wide.width > own.width);
    near(after.corners.find(({ name }) => name === 'a')!.point.y, -10, 0.02);
  });
});

/** Facings: closed forms of strips along straight and round edges, darts closed, ends where the neighbours run. */
import assert from 'node:assert/strict';
import { near } from '../support/curves';
import { codesOf, drafted, edgeOf, pieceOf } from '../support/drafted';

const SHEET = `
draft sheet {
  point a = origin
  point b = a right 30cm
  point c = b down 40cm
  point d = a down 40cm
}
piece panel of sheet {
  cut pair
  outline from a {
    top straight to b
    side straight to c
    foot straight to d
    back straight to a
  }
  grain along back
  allow 1.5cm
  allow 1cm at top
}
`;

/** A quarter of a round neck of radius 8cm, the middle on the fold. */
const NECK = `
draft sheet {
  point o = origin
  point cf = o down 8cm
  point nb = o right 8cm
  point tip = nb right 14cm
  point low = tip down 40cm
  point hem = o down 40cm
  arc neckline = cf to nb centre o
}
piece front of sheet {
  cut 1 on fold
  outline from cf {
    neck along neckline to nb
    shoulder straight to tip
    side straight to low
    hem straight to hem
    centre straight to cf
  }
  fold centre
  grain along centre
  allow 1cm
}
`;

/** What a facing is shorter than its edge, mm: the seam is drawn to the inside (common practice). */
const SMALLER = 1;

describe('a facing', () => {
  it('of a straight edge is a rectangle, as long as the edge less a millimetre and as deep as it says', () => {
    const pattern = drafted(`${SHEET}facing top-facing of panel along top, 6cm deep\n`);
    const facing = pieceOf(pattern, 'top-facing');
    near(edgeOf(facing, 'top').sewn, 300 - SMALLER, 1e-9);
    near(facing.area, (300 - SMALLER) * 60, 1e-6);
    assert.deepEqual(
      facing.edges.map(({ name }) => name),
      ['top', 'side', 'inner', 'back'],
    );
    assert.deepEqual(
      [...facing.allowances],
      [
        ['top', 10],
        ['side', 15],
        ['back', 15],
        ['inner', 0],
      ],
    );
  });

  it('of a round neck is a sector of a ring: half the difference of the squares times the angle', () => {
    const pattern = drafted(`${NECK}facing neck-facing of front along neck, 6cm deep\n`);
    const facing = pieceOf(pattern, 'neck-facing');
    const [inner, outer] = [80, 140];
    const quarter = ((outer * outer - inner * inner) * Math.PI) / 4;
    // the end at the shoulder is moved in by a millimetre, its direction kept: a strip as wide goes
    near(edgeOf(facing, 'neck').sewn, (inner * Math.PI) / 2 - SMALLER, 0.01);
    near(facing.area, quarter - SMALLER * 60, 1);
    assert.equal(facing.fold?.edge, 'centre');
    near(edgeOf(facing, 'centre').sewn, 60, 0.01);
    assert.equal(facing.cut?.text, 'cut 1 on fold');
    assert.equal(facing.grain?.bias, false);
  });

  it('that ends at no fold is cut for each half', () => {
    const facing = pieceOf(drafted(`${NECK}facing arm-facing of front along side, 5cm deep\n`), 'arm-facing');
    assert.equal(facing.cut?.text, 'cut pair');
    assert.equal(facing.fold, undefined);
  });

  it('goes round a corner between two edges, whatever the order they are named in', () => {
    for (const edges of ['top and side', 'side and top']) {
      const pattern = drafted(`${SHEET}facing corner of panel along ${edges}, 6cm deep\n`);
      const facing = pieceOf(pattern, 'corner');
      // an L of two arms: each as long as its edge, less the square counted twice, less half a millimetre at both ends
      near(facing.area, (300 + 400 - 60 - SMALLER) * 60, 1e-6);
      assert.deepEqual(
        facing.edges.map(({ name }) => name),
        ['top', 'side', 'foot', 'inner', 'back'],
      );
    }
  });

  it('follows neighbours that lean, in or out', () => {
    const leaning = SHEET.replace('point d = a down 40cm', 'point d = a down 40cm left 10cm').replace(
      'point c = b down 40cm',
      'point c = b down 40cm left 10cm',
    );
    const facing = pieceOf(
      drafted(`${leaning}facing top-facing of panel along top, 8cm deep\n`),
      'top-facing',
    );
    // a parallelogram: both ends lean by a quarter of their depth
    near(facing.area, (300 - SMALLER) * 80, 1e-6);
    near(edgeOf(facing, 'side').sewn, Math.hypot(80, 20), 1e-6);
    near(edgeOf(facing, 'back').sewn, Math.hypot(80, 20), 1e-6);
    near(edgeOf(facing, 'inner').sewn, 300 - SMALLER, 1e-6);
  });

  it('has the darts of its edge closed', () => {
    const darts = `  dart one on top at 1/3 from a, 2cm wide, 14cm long, pressed toward back
  dart two on top at 2/3 from a, 3cm wide, 14cm long, pressed toward back
`;
    const text = SHEET.replace('  grain along back\n', `${darts}  grain along back\n`);
    const pattern = drafted(`${text}facing waist-facing of panel along top, 6cm deep\n`);
    assert.deepEqual(codesOf(pattern), []);
    const [panel, facing] = [pieceOf(pattern, 'panel'), pieceOf(pattern, 'waist-facing')];
    assert.equal(facing.darts.length, 0);
    near(edgeOf(facing, 'top').sewn, edgeOf(panel, 'top').sewn - SMALLER, 1e-6);
    assert.equal(edgeOf(facing, 'top').parts.length, 1);
    // closing two darts turns the far end by both their angles
    const turned = panel.darts.reduce((sum, { angle }) => sum + angle, 0);
    const side = edgeOf(facing, 'side').path.tangentAt(0);
    near((Math.abs(Math.atan2(side.x, side.y)) * 180) / Math.PI, turned, 1e-6);
  });

  it('is refused where it is deeper than the edge at which it ends', () => {
    const [found] = drafted(`${NECK}facing deep of front along neck, 15cm deep\n`).findings;
    assert.equal(found?.finding.code, 'out-of-reach');
    assert.match(found.finding.message, /15cm deep, but shoulder, at which it ends, is only 14cm long/);
  });

  it('is refused along edges that do not follow each other, or that go all round', () => {
    const apart = drafted(`${SHEET}facing both of panel along top and foot, 6cm deep\n`);
    assert.match(apart.findings[0]!.finding.message, /top and foot do not follow each other/);
    const round = drafted(`${SHEET}facing all of panel along top and side and foot and back, 6cm deep\n`);
    assert.match(round.findings[0]!.finding.message, /go all round panel/);
    assert.deepEqual([...codesOf(apart), ...codesOf(round)], ['which-way', 'which-way']);
  });

  it('names the nearest where the piece has no such edge', () => {
    const [found] = drafted(`${SHEET}facing top-facing of panel along tp, 6cm deep\n`).findings;
    assert.match(found!.finding.message, /no edge called tp\. Did you mean top/);
  });

  it('has a mirror image where the piece is drawn the other way round', () => {
    const mirrored = NECK.replaceAll(' right ', ' left ');
    const [one, other] = [NECK, mirrored].map((text) =>
      pieceOf(drafted(`${text}facing neck-facing of front along neck, 6cm deep\n`), 'neck-facing'),
    );
    near(one!.area, other!.area, 1e-6);
    one!.edges.forEach((edge) => near(edge.sewn, edgeOf(other!, edge.name).sewn, 1e-6, edge.name));
  });
});

describe('an edge that is faced', () => {
  const FACED = `${NECK}facing neck-facing of front along neck, 6cm deep
finish neckline front.neck faced by neck-facing
`;

  it('knows the edge of the facing that is sewn to it', () => {
    const pattern = drafted(FACED);
    assert.deepEqual(codesOf(pattern), []);
    const [faced] = pattern.finishes[0]!.faced!;
    assert.equal(faced!.facing.piece, 'neck-facing');
    near(faced!.length - faced!.facing.length, SMALLER, 1e-6);
    assert.equal(pattern.finishesOf('neck-facing')[0], pattern.finishesOf('front')[0]);
  });

  it('is told where the facing has no edge of its name', () => {
    const [found] = drafted(`${FACED}finish hem front.hem faced by neck-facing\n`).findings;
    assert.equal(found?.finding.code, 'unknown-name');
    assert.match(found.finding.message, /neck-facing has no edge called hem to be sewn to front\.hem/);
  });

  it('may be faced by a strip, which is laid on as it comes', () => {
    const pattern = drafted(`${NECK}strip binding 60cm by 4cm on bias
finish neckline front.neck faced by binding
`);
    assert.deepEqual(codesOf(pattern), []);
    assert.equal(pattern.finishes[0]!.facedBy, 'binding');
  });

  it('has no two edges of one name, whatever the piece calls its own', () => {
    const names = (text: string, name: string) => pieceOf(drafted(text), name).edges.map((edge) => edge.name);
    const inner = SHEET.replace('side straight to c', 'inner straight to c');
    assert.deepEqual(names(`${inner}facing lip of panel along top, 5cm deep\n`, 'lip'), [
      'top',
      'inner-further',
      'inner',
      'back',
    ]);
    const twice = `${SHEET}facing lip of panel along top, 5cm deep\nfacing stay of lip along inner, 2cm deep\n`;
    assert.deepEqual(names(twice, 'stay'), ['inner', 'back', 'inner-further', 'side']);
    const half = `
draft disc {
  point o = origin
  point top = o up 10cm
  point foot = o down 10cm
  arc rim-line = top to foot centre o
}
piece base of disc {
  cut 1 on fold
  outline from top {
    rim along rim-line to foot
    middle straight to top
  }
  fold middle
}
facing lip of base along rim, 3cm deep
`;
    assert.deepEqual(names(half, 'lip'), ['rim', 'middle', 'inner', 'middle-further']);
  });
});

/** Pieces joined edge to edge. */
import assert from 'node:assert/strict';
import { distance } from '../../server/geometry';
import type { Piece } from '../../server/drafting/model';
import { near } from '../support/curves';
import { codesOf, drafted, edgeOf, pieceOf } from '../support/drafted';

const PANEL = `
draft body {
  point a = origin
  point b = a right 22cm up 1cm
  point c = b down 30cm right 2cm
  point d = a down 31cm
  curve side-line = b to c leaving at 10deg right of down arriving at 4deg left of down
  curve foot-line = c to d hollow 1cm toward a
  curve style = (on side-line 11cm from b) to (a down 14cm) through (a right 11cm down 10cm)
}
piece panel of body {
  cut 1 on fold
  outline from a {
    top straight to b
    side along side-line to c
    foot along foot-line to d
    centre straight to a
  }
  fold centre
  grain along centre
  allow 1cm
  allow 3cm at foot
  label "right side"
}
`;

/** Every edge of one piece lies on the edge of that name of the other. */
function sameOutline(a: Piece, b: Piece): void {
  assert.deepEqual(a.edges.map(({ name }) => name).sort(), b.edges.map(({ name }) => name).sort());
  for (const edge of a.edges) {
    const twin = edgeOf(b, edge.name);
    near(edge.sewn, twin.sewn, 1e-6, `length of ${edge.name}`);
    for (let k = 0; k <= 16; k++) {
      const [p, q] = [edge, twin].map(({ path }) => path.pointAt((k / 16) * path.length));
      near(distance(p!, q!), 0, 1e-6, `${edge.name} at ${k}/16`);
    }
  }
}

describe('joining', () => {
  it('what was divided along a line gives the first piece back', () => {
    const pattern = drafted(`${PANEL}
divide panel at style along cut into upper holding top, lower holding foot
join upper.cut to lower.cut into whole
join lower.cut to upper.cut into other-way
`);
    assert.deepEqual(codesOf(pattern), []);
    const panel = pieceOf(pattern, 'panel');
    for (const name of ['whole', 'other-way']) {
      const again = pieceOf(pattern, name);
      sameOutline(panel, again);
      near(again.area, panel.area, 1e-3, `area of ${name}`);
      assert.deepEqual(again.fold?.edge, 'centre');
      assert.equal(again.allowances.get('foot'), 30);
      assert.equal(again.cut?.text, 'cut 1 on fold');
      assert.deepEqual(new Set(again.corners.map((corner) => corner.name)), new Set(['a', 'b', 'c', 'd']));
    }
  });

  it('leaves the pieces it took as steps on the way, which nobody cuts', () => {
    const pattern = drafted(`${PANEL}
divide panel at style along cut into upper holding top, lower holding foot
join upper.cut to lower.cut into whole
piece last worked from whole { cut pair in silk }
`);
    const cut = pattern.pieces.filter((piece) => piece.cut !== undefined).map(({ name }) => name);
    assert.deepEqual(cut, ['last']);
  });

  const TWO = `
draft back {
  point neck = origin
  point tip = neck right 14cm down 4cm
  point low = tip down 10cm
  point middle = neck down 14cm
}
draft front {
  point neck = origin
  point tip = neck left 14cm down 4cm
  point low = tip down 5cm
  point middle = neck down 5cm right 1cm
}
piece back-yoke of back {
  cut 1 on fold
  outline from neck {
    shoulder straight to tip
    armhole straight to low
    line straight to middle
    centre straight to neck
  }
  fold centre
  grain along centre
  allow 1cm
}
piece front-yoke of front {
  cut pair
  outline from neck {
    opening straight to middle
    line straight to low
    armhole straight to tip
    shoulder straight to neck
  }
  allow 1.5cm
}
join back-yoke.shoulder to front-yoke.shoulder into yoke
`;

  it('lays the second on the first: areas add up, and the edge between them is gone', () => {
    const pattern = drafted(TWO);
    const [back, front, yoke] = ['back-yoke', 'front-yoke', 'yoke'].map((name) => pieceOf(pattern, name));
    near(yoke!.area, back!.area + front!.area, 1e-6);
    assert.equal(
      yoke!.edges.some(({ name }) => name === 'shoulder'),
      false,
    );
    assert.equal(yoke!.fold?.edge, 'centre');
  });

  it('makes one edge of what runs on under one name, and puts the piece before a name that clashes', () => {
    const yoke = pieceOf(drafted(TWO), 'yoke');
    assert.deepEqual(
      yoke.edges.map(({ name }) => name),
      ['line', 'centre', 'opening', 'front-yoke-line', 'armhole'],
    );
    near(edgeOf(yoke, 'armhole').sewn, 150, 1e-6);
    assert.equal(yoke.allowances.get('armhole'), 10, 'the first piece speaks for what is one edge');
    assert.equal(yoke.allowances.get('front-yoke-line'), 15);
  });

  it('turns the second over where only so the necks meet', () => {
    const turned = TWO.replace('point tip = neck left 14cm down 4cm', 'point tip = neck right 14cm down 4cm');
    const yoke = pieceOf(drafted(turned.replace('down 5cm right 1cm', 'down 5cm left 1cm')), 'yoke');
    assert.deepEqual(
      yoke.edges.map(({ name }) => name),
      ['line', 'centre', 'opening', 'front-yoke-line', 'armhole'],
    );
  });

  it('refuses edges of unlike length, with both lengths', () => {
    const pattern = drafted(TWO.replace('left 14cm down 4cm', 'left 13.5cm down 4cm'));
    const [found] = pattern.findings.map(({ finding }) => finding);
    assert.equal(found?.code, 'broken-join');
    assert.match(found.message, /back-yoke\.shoulder is 14\.56cm long, front-yoke\.shoulder 14\.08cm/);
  });

  it('refuses edges that gape, with the greatest gap', () => {
    // a circle's sagitta of 4 mm over one chord, the same bulge on the other side: 8 mm between them
    const bent = TWO.replaceAll('shoulder straight to tip', 'shoulder curve to tip hollow 4mm toward middle');
    const both = bent.replace('shoulder straight to neck', 'shoulder curve to neck hollow 4mm toward middle');
    const [found] = drafted(both).findings.map(({ finding }) => finding);
    assert.equal(found?.code, 'broken-join');
    assert.match(found.message, /part by up to 8mm/);
  });

  it('refuses an edge on which a dart opens', () => {
    const dart =
      '  dart nip on shoulder at halfway, 1cm wide, 6cm long, pressed toward centre\n  fold centre';
    const [found] = drafted(TWO.replace('  fold centre', dart)).findings.map(({ finding }) => finding);
    assert.equal(found?.code, 'broken-join');
    assert.match(found.message, /has a dart, nip/);
  });

  it('says what is no edge, and finds an edge that is nearly named so', () => {
    const wrong = drafted(TWO.replace('front-yoke.shoulder into', 'front-yoke.sholder into'));
    const [found] = wrong.findings.map(({ finding }) => finding);
    assert.equal(found?.code, 'unknown-name');
    assert.match(found.message, /Did you mean shoulder/);
    assert.deepEqual(codesOf(drafted(TWO.replace('front-yoke.shoulder into', 'front-yoke into'))), [
      'wrong-kind',
    ]);
  });

  it('keeps the holes out of the area, and a corner’s word at its own corner', () => {
    const pattern = drafted(`
draft d {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point e = a down 30cm
  point p = a right 5cm down 5cm
  point q = p right 4cm
  point r = q down 2cm
  point s = p down 2cm
}
piece one of d {
  outline from a {
    top straight to b
    side straight to c
    foot straight to e
    inner straight to a
  }
  hole slit from p {
    upper straight to q
    near straight to r
    lower straight to s
    far straight to p
  }
  allow 1cm
  inlay 3cm at side
}
draft f {
  point b = origin
  point g = b right 20cm
  point c = g down 30cm
  point e = b down 30cm
}
piece two of f {
  outline from b {
    crown straight to g
    side straight to c
    bottom straight to e
    seam straight to b
  }
  allow 1cm
  allow 3cm at bottom
  corner at c stepped
}
join one.side to two.seam into both
`);
    const both = pieceOf(pattern, 'both');
    near(both.area, 400 * 300 - 40 * 20, 1e-6, 'area');
    near(both.cornerCuts[0]!.point.x, 400, 1e-6, 'where the corner’s word stands');
    assert.deepEqual([...(both.inlays ?? [])], []);
  });

  const MARKED = `
draft d {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point e = a down 30cm
  point p = a right 5cm down 5cm
  point q = p right 4cm
  point r = q down 2cm
  point bust = a right 10cm down 20cm
  line level = (a down 10cm) to (b down 10cm)
}
piece one of d {
  outline from a {
    top straight to b
    side straight to c
    foot straight to e
    inner straight to a
  }
  hole slit from p {
    upper straight to q
    slant straight to r
    lower straight to p
  }
  allow 1cm
  allow 5mm at upper
  fish dart shaping from bust to (bust down 8cm), 1cm wide at halfway, pressed open
  balance line hip from (a down 10cm) to (b down 10cm)
  button knop = bust
}
piece two worked from one {
  allow 2cm
}
join one.side to two.inner into both
`;

  it('tells holes, marks and fish darts of one name apart as it does edges', () => {
    const pattern = drafted(MARKED);
    assert.deepEqual(codesOf(pattern), []);
    const both = pieceOf(pattern, 'both');
    assert.deepEqual(
      both.holes.map(({ name, edges }) => [name, ...edges.map((edge) => edge.name)]),
      [
        ['slit', 'upper', 'slant', 'lower'],
        ['two-slit', 'two-upper', 'two-slant', 'two-lower'],
      ],
    );
    assert.deepEqual(
      ['upper', 'slant', 'two-upper', 'two-slant'].map((edge) => both.allowances.get(edge)),
      [5, 10, 20, 20],
    );
    const places = both.marks.map(({ name, points }) => [name, Math.round(points[0]!.x)]);
    assert.deepEqual(places, [
      ['knop', 100],
      ['two-knop', 300],
    ]);
    assert.deepEqual(
      both.shaping?.fishDarts.map(({ name }) => name),
      ['shaping', 'two-shaping'],
    );
  });

  it('makes one balance line of two that meet where the pieces do', () => {
    const [line, ...others] = pieceOf(drafted(MARKED), 'both').balance;
    assert.deepEqual([line?.name, others], ['hip', []]);
    near(line!.path.length, 400, 1e-6);
    near(line!.path.start.x, 0, 1e-6, 'as the first runs');
  });

  it('finds a name for what is joined to the same piece once more', () => {
    const again = drafted(`${MARKED}join both.side to two.inner into all\n`);
    assert.deepEqual(
      pieceOf(again, 'all').holes.map(({ name }) => name),
      ['slit', 'two-slit', 'two-two-slit'],
    );
  });
});

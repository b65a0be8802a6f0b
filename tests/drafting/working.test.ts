/** Darts and worked pieces: lengths kept, angles kept, there and back again. */
import assert from 'node:assert/strict';
import { areaOf, distance } from '../../server/geometry';
import type { Pattern, Piece } from '../../server/drafting/model';
import { Workshop } from '../../server/drafting/workshop';

const DRAFT = `
pattern "Dart test"
draft front {
  point neck = origin
  point shoulder = neck right 14cm down 4cm
  point pit = neck right 22cm down 22cm
  point side = pit down 20cm left 1cm
  point waist = neck down 44cm
  point apex = neck right 9cm down 25cm
  curve armhole = shoulder to pit leaving at 10deg left of down arriving right
}
piece block of front {
  cut pair
  outline from neck {
    shoulder straight to shoulder
    armhole along armhole to pit
    side straight to side
    waist straight to waist
    centre straight to neck
  }
  dart waist-dart on waist at 9cm from waist, 4cm wide, swings about apex, pressed toward centre
}
`;

function drafted(text: string): Pattern {
  const workshop = new Workshop({ read: () => undefined, resolve: (_, path) => ({ uri: path }) });
  workshop.setText('test.draft', text);
  return workshop.pattern('test.draft');
}

function piece(pattern: Pattern, name: string): Piece {
  const found = pattern.pieces.find((one) => one.name === name);
  assert.ok(
    found,
    `${name} is made; found: ${pattern.findings.map(({ finding }) => finding.message).join('\n')}`,
  );
  return found;
}

const sewn = ({ edges }: Piece): Record<string, number> =>
  Object.fromEntries(edges.map((edge) => [edge.name, edge.sewn]));

function sameLengths(a: Piece, b: Piece, names = Object.keys(sewn(a))): void {
  for (const name of names) {
    const difference = Math.abs(sewn(a)[name]! - sewn(b)[name]!);
    assert.ok(difference < 1e-6, `${name} keeps its length, but differs by ${difference} mm`);
  }
}

describe('darts laid on an edge', () => {
  it('have legs of one length after truing', () => {
    const [dart] = piece(drafted(DRAFT), 'block').darts;
    const legs = [distance(dart!.from, dart!.pivot), distance(dart!.to, dart!.pivot)];
    assert.ok(Math.abs(legs[0]! - legs[1]!) < 0.01, `${legs}`);
  });

  it('take as much at another radius as the angle says', () => {
    // trade rule: intake w at distance r is an angle of 2·asin(w/2r) (computed); at half the radius half the width
    const [dart] = piece(drafted(DRAFT), 'block').darts;
    const r = distance(dart!.from, dart!.pivot);
    assert.ok(Math.abs(dart!.angle - (2 * Math.asin(dart!.width / (2 * r)) * 180) / Math.PI) < 1e-9);
  });

  it('are refused when they come to less than nothing', () => {
    const pattern = drafted(DRAFT.replace('4cm wide', '2cm - 5cm wide'));
    assert.deepEqual(
      pattern.findings.map(({ finding }) => finding.code),
      ['negative-dart'],
    );
  });

  it('that come to nothing leave the edge as it was', () => {
    const none = piece(drafted(DRAFT.replace('4cm wide', '0cm wide')), 'block');
    assert.equal(none.darts.length, 0);
    assert.equal(none.edges.find(({ name }) => name === 'waist')!.parts.length, 1);
  });
});

describe('a dart that is swung', () => {
  const SWUNG = `${DRAFT}
piece to-side worked from block { swing waist-dart to side at 6cm from pit }
piece home worked from to-side { swing waist-dart to waist at 0.5 from waist }
piece half worked from block { swing waist-dart by 1/2 to shoulder at halfway }
piece flared worked from to-side { close waist-dart into waist }
`;

  it('keeps every edge and its angle', () => {
    const pattern = drafted(SWUNG);
    const [block, side] = [piece(pattern, 'block'), piece(pattern, 'to-side')];
    sameLengths(block, side);
    assert.ok(Math.abs(block.darts[0]!.angle - side.darts[0]!.angle) < 1e-9);
    assert.equal(side.darts[0]!.edge, 'side');
  });

  it('by a half leaves two darts that share the angle', () => {
    const pattern = drafted(SWUNG);
    const [block, half] = [piece(pattern, 'block'), piece(pattern, 'half')];
    sameLengths(block, half);
    assert.deepEqual(half.darts.map(({ edge }) => edge).sort(), ['shoulder', 'waist']);
    const whole = half.darts.reduce((sum, { angle }) => sum + angle, 0);
    assert.ok(Math.abs(whole - block.darts[0]!.angle) < 1e-9);
  });

  it('there and back gives the first outline again', () => {
    const block = piece(drafted(DRAFT), 'block');
    const waist = block.edges.find(({ name }) => name === 'waist')!;
    const back = waist.parts[0]!.path.length;
    const pattern = drafted(`${DRAFT}
piece to-side worked from block { swing waist-dart to side at 6cm from pit }
piece home worked from to-side { swing waist-dart to waist at ${(waist.sewn - back) / 10}cm from waist }
`);
    const home = piece(pattern, 'home');
    sameLengths(block, home);
    assert.ok(Math.abs(areaOf(block.edges.map(({ path }) => path)) - home.area) < 1e-3);
    block.corners.forEach(({ name, point }) => {
      const there = home.corners.find((corner) => corner.name === name)!;
      assert.ok(distance(point, there.point) < 1e-6, `${name} comes home`);
    });
  });

  it('closed into an edge leaves no dart, and only that edge grows', () => {
    const pattern = drafted(SWUNG);
    const [side, flared] = [piece(pattern, 'to-side'), piece(pattern, 'flared')];
    assert.equal(flared.darts.length, 0);
    sameLengths(side, flared, ['shoulder', 'armhole', 'side', 'centre']);
    assert.ok(sewn(flared)['waist']! > sewn(side)['waist']! + 10);
  });
});

describe('a piece cut and opened', () => {
  const OPENED = `${DRAFT}
piece plain worked from block { swing waist-dart to side at 6cm from pit }
piece slashed worked from plain { slash from (on waist 0.5 from waist) to (on shoulder halfway), hinge at (on shoulder halfway), open 5cm }
piece spread worked from plain { spread 6cm along (on waist 0.5 from waist) to (on shoulder halfway) }
piece longer worked from plain { lengthen 3cm at ((neck down 35cm) to (neck down 35cm right 10cm)) }
`;

  it('grows at the open end by what it is opened, and keeps the others', () => {
    const pattern = drafted(OPENED);
    const [plain, slashed] = [piece(pattern, 'plain'), piece(pattern, 'slashed')];
    sameLengths(plain, slashed, ['shoulder', 'armhole', 'side', 'centre']);
    assert.ok(Math.abs(sewn(slashed)['waist']! - sewn(plain)['waist']! - 50) < 1e-6);
    assert.ok(slashed.area > plain.area);
  });

  it('spread evenly grows on both edges', () => {
    const pattern = drafted(OPENED);
    const [plain, spread] = [piece(pattern, 'plain'), piece(pattern, 'spread')];
    sameLengths(plain, spread, ['armhole', 'side', 'centre']);
    for (const edge of ['waist', 'shoulder'])
      assert.ok(Math.abs(sewn(spread)[edge]! - sewn(plain)[edge]! - 60) < 1e-6);
  });

  it('takes along the point where two runs of one edge meet', () => {
    const pattern = drafted(`
draft d {
  point a = origin
  point b = a right 20cm
  point hip = b down 15cm right 2cm
  point c = b down 40cm right 4cm
  point e = a down 40cm
}
piece half of d {
  outline from a {
    top straight to b
    side straight to hip
      then straight to c
    foot straight to e
    centre straight to a
  }
}
piece wider worked from half { spread 6cm along (on top halfway) to (on foot halfway) }
`);
    const at = (name: string) => piece(pattern, name).corners.find((corner) => corner.name === 'hip')!.point;
    assert.ok(Math.abs(distance(at('half'), at('wider')) - 60) < 1e-6);
  });

  it('lengthened grows by the same at centre and side', () => {
    const pattern = drafted(OPENED);
    const [plain, longer] = [piece(pattern, 'plain'), piece(pattern, 'longer')];
    sameLengths(plain, longer, ['shoulder', 'armhole']);
    assert.ok(Math.abs(sewn(longer)['centre']! - sewn(plain)['centre']! - 30) < 1e-6);
  });
});

describe('a divided piece', () => {
  const DIVIDED = `${DRAFT}
piece shouldered worked from block {
  swing waist-dart by 1/2 to shoulder at halfway
}
piece lined worked from shouldered {
  curve yoke-line = (on centre 12cm from neck) to (on armhole halfway) leaving right arriving right
}
divide shouldered at waist-dart2, waist-dart along princess into middle holding centre { cut pair }, flank { cut pair }
divide lined at yoke-line along yoke-seam into yoke holding neck { cut pair }, body-part { cut pair }
`;

  it('has areas that add up to the whole, less the darts cut away', () => {
    const pattern = drafted(DIVIDED);
    const whole = piece(pattern, 'shouldered');
    const [middle, flank] = [piece(pattern, 'middle'), piece(pattern, 'flank')];
    const wedges = whole.darts.reduce((sum, dart) => {
      const [a, b] = [dart.from, dart.to];
      return (
        sum +
        Math.abs((a.x - dart.pivot.x) * (b.y - dart.pivot.y) - (a.y - dart.pivot.y) * (b.x - dart.pivot.x)) /
          2
      );
    }, 0);
    assert.ok(Math.abs(middle.area + flank.area + wedges - whole.area) < 1e-3);
  });

  it('is sewn together again by a seam of itself that matches', () => {
    const seam = drafted(DIVIDED).seams.find(({ name }) => name === 'princess');
    assert.ok(seam && Math.abs(seam.difference) < 1e-6);
  });

  it('along a line from edge to edge keeps every edge between its two parts', () => {
    const pattern = drafted(DIVIDED);
    const whole = sewn(piece(pattern, 'shouldered'));
    const [yoke, body] = [sewn(piece(pattern, 'yoke')), sewn(piece(pattern, 'body-part'))];
    for (const edge of Object.keys(whole)) {
      assert.ok(Math.abs((yoke[edge] ?? 0) + (body[edge] ?? 0) - whole[edge]!) < 1e-6, edge);
    }
  });
});

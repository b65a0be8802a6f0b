/** Widths of allowances: of edges, of stretches, inlays; what finishes bring; where curves are too tight. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks';
import { allowanceAt, cutWidthAt } from '../../server/drafting/pieces/widths';
import type { Pattern } from '../../server/drafting/model';
import { draw } from '../../server/drawing/draw';
import { areaOf } from '../../server/geometry';
import { near } from '../support/curves';
import { codesOf, drafted, pieceOf } from '../support/drafted';

const SHEET = `
draft sheet {
  point a = origin
  point b = a right 20cm
  point slit = b down 12cm
  point c = b down 20cm
  point d = a down 20cm
}
`;

/** A square piece of twenty centimetres with lines of its own. */
const panel = (lines: readonly string[], name = 'panel'): string => `
piece ${name} of sheet {
  cut pair
  outline from a {
    top straight to b
    side straight to c
    foot straight to d
    back straight to a
  }
  grain along back
${lines.map((line) => `  ${line}\n`).join('')}}
`;

const found = (pattern: Pattern, code: string): string[] =>
  check(pattern).flatMap((one) => (one.code === code ? [one.message] : []));

describe('an allowance', () => {
  it('is cut beside each edge as wide as the edge says', () => {
    const { cutting } = pieceOf(
      drafted(`${SHEET}${panel(['allow 1cm', 'allow 2cm at side, foot'])}`),
      'panel',
    );
    near(areaOf(cutting!), (200 + 10 + 20) * (200 + 10 + 20), 1e-6);
  });

  it('of a finish over several pieces is kept by those that are whole while another is mended', () => {
    const broken = panel(['allow 1cm'], 'other').replace('straight to c', 'straight to nowhere');
    const text = `${SHEET}${panel(['allow 1cm'])}${broken}finish foot other.foot, panel.foot turned up 4cm\n`;
    near(allowanceAt(pieceOf(drafted(text), 'panel'), 'foot', 100), 40, 1e-9);
    near(
      allowanceAt(
        pieceOf(drafted(text.replace('other.foot, panel.foot', 'panel.feet')), 'panel'),
        'foot',
        100,
      ),
      10,
      1e-9,
    );
  });

  it('of a stretch steps at both its ends, and is the usual one beyond them', () => {
    const piece = pieceOf(
      drafted(`${SHEET}${panel(['allow 1cm', 'allow 3cm at side from slit to c'])}`),
      'panel',
    );
    near(allowanceAt(piece, 'side', 60), 10, 1e-9);
    near(allowanceAt(piece, 'side', 160), 30, 1e-9);
    // eight centimetres of two more, and as much more of the corner below
    near(areaOf(piece.cutting!), 220 * 220 + 20 * 80 + 20 * 10, 1e-6);
  });

  it('of a stretch is counted like any place', () => {
    const piece = pieceOf(
      drafted(`${SHEET}${panel(['allow 1cm', 'allow 3cm at side from 2cm from b to 5cm from b'])}`),
      'panel',
    );
    near(areaOf(piece.cutting!), 220 * 220 + 20 * 30, 1e-6);
  });

  it('of a stretch that leaves its edge is told', () => {
    const pattern = drafted(`${SHEET}${panel(['allow 1cm', 'allow 3cm at side from slit to 25cm from b'])}`);
    assert.deepEqual(codesOf(pattern), ['out-of-reach']);
  });

  it('of a stretch follows a point that moves', () => {
    const text = `${SHEET}${panel(['allow 1cm', 'allow 3cm at side from slit to c'])}`;
    const moved = pieceOf(drafted(text.replace('down 12cm', 'down 15cm')), 'panel');
    near(areaOf(moved.cutting!), 220 * 220 + 20 * 50 + 20 * 10, 1e-6);
  });

  it('of two stretches that overlap is the later one’s, and told', () => {
    const [upper, lower] = ['allow 2cm at side from b to 15cm from b', 'allow 3cm at side from slit to c'];
    const widths = (lines: readonly string[]): readonly number[] => {
      const pattern = drafted(`${SHEET}${panel(['allow 1cm', ...lines])}`);
      assert.deepEqual(codesOf(pattern), ['overlapping-allowances']);
      const piece = pieceOf(pattern, 'panel');
      return [60, 135, 180].map((s) => allowanceAt(piece, 'side', s));
    };
    assert.deepEqual(widths([upper, lower]), [20, 30, 30]);
    assert.deepEqual(widths([lower, upper]), [20, 20, 30]);
  });

  it('of a stretch is an exception from a width that runs, which goes on beyond it', () => {
    const lines = [
      'allow 1cm',
      'allow 1cm at b running to 3cm at c',
      'allow 5cm at side from 5cm from b to slit',
    ];
    const pattern = drafted(`${SHEET}${panel(lines)}`);
    assert.deepEqual(codesOf(pattern), []);
    const piece = pieceOf(pattern, 'panel');
    for (const [s, width] of [
      [0, 10],
      [40, 14],
      [80, 50],
      [150, 25],
      [200, 30],
    ] as const)
      near(allowanceAt(piece, 'side', s), width, 1e-9, `${s}mm from b`);
  });

  it('of a stretch keeps with the corners of a piece that is worked', () => {
    const text = `${SHEET}${panel(['allow 1cm', 'allow 3cm at side from slit to c'])}
piece longer worked from panel {
  lengthen 4cm at ((a down 5cm) to (b down 5cm))
}
`;
    const pattern = drafted(
      text.replace('side straight to c', 'side straight to slit\n      then straight to c'),
    );
    assert.deepEqual(codesOf(pattern), []);
    const [run] = pieceOf(pattern, 'longer').running;
    near(run!.from, 160, 1e-6, 'the slit has moved down');
    near(run!.to, 240, 1e-6, 'the end of the side');
  });

  it('of a stretch gives way to a width for the whole of what is worked from the piece', () => {
    const worked = (line: string) => {
      const lines = [
        'allow 1cm',
        'allow 1cm at b running to 3cm at c',
        'allow 2cm at back from 2cm from d to 5cm from d',
      ];
      const pattern = drafted(`${SHEET}${panel(lines)}\npiece other worked from panel {\n  ${line}\n}\n`);
      assert.deepEqual(codesOf(pattern), []);
      return pieceOf(pattern, 'other').running.map(({ edge }) => edge);
    };
    assert.deepEqual(worked('allow 1.5cm'), []);
    assert.deepEqual(worked('allow 1.5cm at side'), ['back']);
    assert.deepEqual(worked('cut pair'), ['side', 'back']);
  });

  it('is on a worked piece what it was, until it is said anew', () => {
    const text = `${SHEET}${panel(['allow 1cm', 'allow 2cm at side', 'inlay 3cm at back'])}
piece longer worked from panel {
  cut pair
  allow 4cm at foot
}
`;
    const piece = pieceOf(drafted(text), 'longer');
    assert.deepEqual(
      ['top', 'side', 'foot', 'back'].map((edge) => cutWidthAt(piece, edge, 0)),
      [10, 20, 40, 40],
    );
  });
});

describe('an inlay', () => {
  const pattern = drafted(`${SHEET}${panel(['allow 1cm', 'inlay 2.5cm at side'])}`);

  it('lies beyond the allowance, and the cutting line beyond both', () => {
    const piece = pieceOf(pattern, 'panel');
    assert.deepEqual(codesOf(pattern), []);
    near(areaOf(piece.cutting!), (220 + 25) * 220, 1e-6);
    near(cutWidthAt(piece, 'side', 50), 35, 1e-9);
  });

  it('leaves the end of the allowance drawn within, from cut to cut', () => {
    const [line] = pieceOf(pattern, 'panel').cutShape!.inlayLines;
    assert.equal(line!.edge, 'side');
    const { minX, maxX, minY, maxY } = line!.path.box;
    for (const [actual, wanted] of [
      [minX, 210],
      [maxX, 210],
      [minY, -10],
      [maxY, 210],
    ] as const)
      near(actual, wanted, 1e-6);
  });

  it('is named in its strip and in its tip', () => {
    const [drawing] = draw(pattern).pieces;
    assert.ok(drawing!.texts.some(({ text }) => text === 'inlay 2.5cm'));
    const line = drawing!.lines.find(({ role }) => role === 'inlay');
    assert.equal(line!.tip, 'side, end of the allowance; beyond it an inlay of 2.5cm to let out');
  });

  it('is kept by what is worked from the piece', () => {
    const text = `${SHEET}${panel(['allow 1cm', 'inlay 2cm at side'])}
piece other worked from panel {
  cut pair
}
`;
    assert.equal(pieceOf(drafted(text), 'other').inlays?.get('side'), 20);
  });
});

const ENDS = `
finish tops panel.top, back-panel.top bound 6mm
finish backs panel.back, back-panel.back bound 6mm
`;

const pair = (one: readonly string[], other: readonly string[], rest: string): Pattern =>
  drafted(
    `${SHEET}${panel(one)}${panel(other, 'back-panel')}seam side panel.side = back-panel.side\n${ENDS}${rest}`,
  );

const FEET = 'finish feet panel.foot, back-panel.foot turned up 3cm\n';

describe('checks of allowances', () => {
  it('name both widths of a seam whose edges are allowed differently, and how far it is sewn off', () => {
    const [message, ...more] = found(pair(['allow 1cm'], ['allow 1.5cm'], FEET), 'unequal-allowances');
    assert.match(
      message!,
      /^panel\.side is allowed 1cm and back-panel\.side is allowed 1\.5cm\. .* 5mm beside/,
    );
    assert.deepEqual(more, []);
    assert.deepEqual(found(pair(['allow 1cm'], ['allow 1cm'], FEET), 'unequal-allowances'), []);
  });

  it('do not take an inlay for an allowance', () => {
    const pattern = pair(['allow 1cm', 'inlay 2cm at side'], ['allow 1cm'], FEET);
    assert.deepEqual(found(pattern, 'unequal-allowances'), []);
  });

  it('take an allowance of nothing as meant, and one of 3mm as too narrow', () => {
    const at = (width: string): string[] =>
      found(
        pair(['allow 1cm', `allow ${width} at side`], ['allow 1cm', `allow ${width} at side`], FEET),
        'narrow-allowance',
      );
    assert.equal(at('3mm').length, 2);
    assert.deepEqual(at('0cm'), []);
    assert.deepEqual(at('5mm'), []);
  });

  it('miss an allowance only in a pattern that has some', () => {
    assert.equal(found(pair(['allow 1cm'], ['allow 1cm at top'], FEET), 'missing-allowance').length, 1);
    assert.deepEqual(found(pair([], [], FEET), 'missing-allowance'), []);
  });

  it('find a hem that two lines give two widths', () => {
    const pattern = pair(['allow 1cm', 'allow 4cm at foot'], ['allow 1cm'], FEET);
    assert.match(found(pattern, 'contradicted-allowance')[0]!, /allowed 4cm here, .* takes 3cm/);
    assert.deepEqual(
      found(pair(['allow 1cm', 'allow 3cm at foot'], ['allow 1cm'], FEET), 'contradicted-allowance'),
      [],
    );
  });

  it('follow an edit of the other piece', async () => {
    const { Workshop } = await import('../../server/drafting/workshop');
    const workshop = new Workshop({ read: () => undefined, resolve: (_, path) => ({ uri: path }) });
    const text = `${SHEET}${panel(['allow 1cm'])}${panel(['allow 1cm'], 'back-panel')}seam side panel.side = back-panel.side\n${ENDS}${FEET}`;
    workshop.setText('test.draft', text);
    assert.deepEqual(found(workshop.pattern('test.draft'), 'unequal-allowances'), []);
    workshop.setText('test.draft', text.replace('allow 1cm', 'allow 2cm'));
    assert.equal(found(workshop.pattern('test.draft'), 'unequal-allowances').length, 1);
    workshop.setText('test.draft', text);
    assert.deepEqual(found(workshop.pattern('test.draft'), 'unequal-allowances'), []);
  });
});

/** A quarter of a round skirt: waist of radius `waist`, hem of radius `hem`, centimetres. */
const round = (waist: number, hem: number, depth: string): Pattern =>
  drafted(`
draft ring {
  point middle = origin
  point top-cf = middle down ${waist}cm
  point top-side = middle right ${waist}cm
  point hem-cf = middle down ${hem}cm
  point hem-side = middle right ${hem}cm
  arc waistline = top-side to top-cf centre middle
  arc hemline = hem-cf to hem-side centre middle
}
piece front of ring {
  cut 2 alike
  outline from top-cf {
    centre straight to hem-cf
    hem along hemline to hem-side
    side straight to top-side
    waist along waistline to top-cf
  }
  grain along centre
  allow 1cm
}
finish hem front.hem ${depth}
`);

describe('a hem along a curve', () => {
  it('is as full as its depth by its radius', () => {
    // Steiner: a line beside a curve is longer by distance times turning.
    const [message] = found(round(15, 60, 'turned up 3cm'), 'full-hem');
    assert.match(message!, /is 4\.71cm \(5%\) longer/);
  });

  it('is told from three in a hundred up, and never when it is narrow', () => {
    // 3 cm on a full circle of 1.24 m: 2.4% is eased in (common practice).
    assert.deepEqual(found(round(20, 124, 'turned up 3cm'), 'full-hem'), []);
    assert.deepEqual(found(round(15, 40, 'turned up 1.5cm'), 'full-hem'), []);
    assert.equal(found(round(15, 99, 'turned up 3cm'), 'full-hem').length, 1);
    assert.deepEqual(found(round(15, 101, 'turned up 3cm'), 'full-hem'), []);
  });

  it('turned twice, is judged by one of its folds', () => {
    assert.match(found(round(15, 60, 'turned twice 2cm'), 'full-hem')[0]!, /Turned up 2cm, .* \(3\.3%\)/);
  });

  it('tells in its tip how full it is where that can be eased in', () => {
    const [drawing] = draw(round(20, 124, 'turned up 3cm')).pieces;
    const hem = drawing!.lines.find(({ name, role }) => name === 'hem' && role === 'sewing');
    assert.match(hem!.tip, /allowed 3cm, turned up 2\.4% fuller than where it lies: ease it in$/);
  });
});

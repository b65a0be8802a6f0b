/** Cutting words: how many are cut of each cloth, and what is printed on the piece. */
import assert from 'node:assert/strict';
import type { CutLayer } from '../../server/drafting/model';
import { patternIn as panelOf, saidOf } from '../support/drafts';
import { drawnIn, panel, panelText, pieceIn } from '../support/panel';

const folded = 'fold centre\nallow 1cm';
const layersOf = (cut: string, lines = folded): readonly CutLayer[] =>
  pieceIn(panel(lines, '', cut)).cut!.layers;

describe('cutting words', () => {
  const cases: readonly (readonly [string, number, CutLayer['as'], string])[] = [
    ['cut pair', 2, 'pairs', 'cut pair'],
    ['cut 2 pairs', 4, 'pairs', 'cut 2 pairs'],
    ['cut 1 on fold', 1, 'fold', 'cut 1 on fold'],
    ['cut 1 open', 1, 'open', 'cut 1 open'],
    ['cut 2 alike', 2, 'alike', 'cut 2 alike'],
    ['cut 1', 1, 'single', 'cut 1'],
    ['cut (2 + 3) alike', 5, 'alike', 'cut 5 alike'],
    ['cut (1 + 1) pairs', 4, 'pairs', 'cut 2 pairs'],
    ['cut 1 right, right side up', 1, 'right', 'cut 1 right, right side up'],
    ['cut   pair   in  silk', 2, 'pairs', 'cut pair in silk'],
  ];
  for (const [written, count, as, text] of cases) {
    it(`"${written}" are ${count} pieces and printed as "${text}"`, () => {
      const { cut } = pieceIn(panel(folded, '', written));
      assert.deepEqual([cut!.layers[0]!.count, cut!.layers[0]!.as, cut!.text], [count, as, text]);
    });
  }

  it('have a layer for each cloth, and a line of the label', () => {
    const pattern = panel('', '', 'cut pair in silk, 2 pairs in coutil, right side up');
    const { cut } = pieceIn(pattern);
    assert.deepEqual(cut, {
      layers: [
        { count: 2, as: 'pairs', cloth: 'silk' },
        { count: 4, as: 'pairs', cloth: 'coutil' },
      ],
      rightSideUp: true,
      text: 'cut pair in silk, 2 pairs in coutil, right side up',
    });
    const details = drawnIn(pattern).texts.filter(({ role }) => role === 'detail');
    assert.deepEqual(
      details.map(({ text }) => text),
      ['cut pair in silk', 'cut 2 pairs in coutil', 'right side up'],
    );
  });

  it('count in whole numbers from one up', () => {
    for (const count of ['0', '(1 / 2)', '(0 - 2)', '1000'])
      assert.match(
        saidOf(panelText('', '', `cut ${count} alike`)).join('\n'),
        /no-such-number: Pieces are cut/,
      );
    assert.match(saidOf(panelText('', '', 'cut (5 / 3) alike')).join('\n'), /this comes to 1\.667/);
  });

  it('of a half say where it is folded, and of one side which way up', () => {
    const codes = (cut: string): readonly string[] =>
      saidOf(panelText('', '', cut)).map((said) => said.split(':')[0]!);
    assert.ok(codes('cut 1 on fold').includes('no-fold'));
    assert.ok(codes('cut 1 open').includes('no-fold'));
    assert.ok(codes('cut 1 left').includes('no-right-side-up'));
    for (const cut of ['cut pair', 'cut 1 left, right side up', 'cut 3 alike'])
      assert.deepEqual(
        codes(cut).filter((code) => code !== 'unfinished-edge' && code !== 'missing-allowance'),
        [],
      );
    assert.deepEqual(layersOf('cut 1 on fold')[0]!.as, 'fold');
  });
});

const UNEVEN = `
body sculptor {
  shoulder left 14cm right 12cm
}
drafted for sculptor
draft panel {
  point a = origin
  point b = a right shoulder
  point c = b down 30cm
  point d = a down 30cm
}
piece front of panel each side {
  CUT
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  grain along centre
  button knob = b left 2cm down 3cm
  hole slot from (a right 3cm down 5cm) {
    mouth straight to (a right 6cm down 5cm)
    inner straight to (a right 6cm down 9cm)
    back straight to (a right 3cm down 5cm)
  }
}
`;

describe('a piece that differs from side to side', () => {
  const both = (cut: string) => {
    const { pieces } = panelOf(UNEVEN.replace('CUT', cut));
    return pieces.map(({ name, cut: words }) => `${name}: ${words?.text}`);
  };

  it('is one of each in every cloth, right side up', () => {
    assert.deepEqual(both('cut pair in silk, pair in coutil'), [
      'front-right: cut 1 right in silk, 1 right in coutil, right side up',
      'front-left: cut 1 left in silk, 1 left in coutil, right side up',
    ]);
    assert.deepEqual(both('cut 2 pairs'), [
      'front-right: cut 2 right, right side up',
      'front-left: cut 2 left, right side up',
    ]);
  });

  it('on the fold is cut open, in every cloth', () => {
    const fold = UNEVEN.replace('grain along centre', 'fold centre\n  grain along centre');
    const [front, ...others] = panelOf(
      fold.replace('CUT', 'cut 1 on fold in silk, 1 on fold in linen'),
    ).pieces;
    assert.deepEqual([front!.cut!.text, others.length], ['cut 1 open in silk, 1 open in linen', 0]);
    assert.deepEqual(
      front!.marks.map(({ points }) => Math.round(points[0]!.x)),
      [100, -120],
    );
    assert.deepEqual(
      front!.holes.map(({ edges }) => edges[0]!.name),
      ['mouth', 'mouth-other'],
    );
  });

  it('has its marks and holes where each side has them, the other turned over', () => {
    const [right, left] = panelOf(UNEVEN.replace('CUT', 'cut pair')).pieces;
    const spot = (piece: typeof right): number => Math.round(piece!.marks[0]!.points[0]!.x);
    assert.deepEqual([spot(right), spot(left)], [100, -120]);
    assert.equal(left!.holes[0]!.area, right!.holes[0]!.area);
    assert.ok(left!.holes[0]!.edges[0]!.path.start.x < 0);
  });
});

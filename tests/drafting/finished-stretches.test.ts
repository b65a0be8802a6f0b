/** A finish of a stretch of an edge takes its allowance there, and turns up only what it names. */
import assert from 'node:assert/strict';
import { allowanceAt } from '../../server/drafting/pieces/widths';
import { areaOf } from '../../server/geometry';
import { near } from '../support/curves';
import { checkSaid, patternIn } from '../support/drafts';
import { pieceOf } from '../support/drafted';

/** A square of twenty centimetres, allowed one, slit for its lower eight at one side. */
const square = (lines: string, finishes: string): string => `
draft sheet {
  point a = origin
  point b = a right 20cm
  point slit = b down 12cm
  point c = b down 20cm
  point d = a down 20cm
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
  ${lines}
}
seam sides panel.side from b to slit = its pair
seam back panel.back = its pair
finish edges panel.top bound 6mm
${finishes}
`;

const HEM = 'finish hem panel.foot turned up 2cm';
const SLIT = 'finish slit panel.side from slit to c turned up 3cm';

describe('a finish of a stretch', () => {
  it('gives its width to that stretch alone', () => {
    const piece = pieceOf(patternIn(square('allow 1cm', SLIT)), 'panel');
    assert.deepEqual(
      [0, 100, 130, 200].map((s) => allowanceAt(piece, 'side', s)),
      [10, 10, 30, 30],
    );
    // 6mm of binding at the top take none; one at the left and below, one and three at the right
    const [wide, high] = [10 + 200 + 10, 200 + 10];
    near(areaOf(piece.cutting!), wide * high + 20 * (80 + 10), 1e-6);
  });

  it('is the same whichever way about its ends are named', () => {
    const turned = SLIT.replace('from slit to c', 'from c to slit');
    const [one, other] = [SLIT, turned].map((line) =>
      areaOf(pieceOf(patternIn(square('allow 1cm', line)), 'panel').cutting!),
    );
    near(one!, other!, 1e-9);
  });

  it('that is the whole edge is one of the edge', () => {
    const piece = pieceOf(
      patternIn(square('allow 1cm', 'finish foot panel.foot from c to d turned up 3cm')),
      'panel',
    );
    assert.deepEqual([piece.running.length, piece.hems.get('foot')], [0, 1]);
  });

  it('does not contradict what is allowed for the rest of the edge', () => {
    checkSaid(square('allow 1cm\n  allow 1.5cm at side', `${SLIT}\n${HEM}`), []);
  });

  it('turns back the corner that it reaches, and no other', () => {
    const rules = (line: string) =>
      pieceOf(patternIn(square('allow 1cm', line)), 'panel').ruledCorners?.flatMap(
        ({ before, after, why }) => (why === 'hem' ? `${before}/${after}` : []),
      );
    assert.deepEqual(rules(SLIT), ['side/foot']);
    assert.deepEqual(rules('finish slit panel.side from 2cm from b to slit turned up 3cm'), []);
  });

  it('beside another on one edge has each its own width', () => {
    const lines =
      'finish one panel.foot from c to 8cm from c turned up 4cm\nfinish two panel.foot from 8cm from c to d bound 5mm';
    const piece = pieceOf(patternIn(square('allow 1cm', lines)), 'panel');
    assert.deepEqual(
      [40, 120].map((s) => allowanceAt(piece, 'foot', s)),
      [40, 0],
    );
  });
});

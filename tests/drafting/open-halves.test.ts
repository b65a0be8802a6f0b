/** A piece on the fold whose halves differ is cut open: each half keeps what is counted along its own edges. */
import { allowanceAt } from '../../server/drafting/pieces/widths';
import { near } from '../support/curves';
import { checkSaid, patternIn, saidOf } from '../support/drafts';
import { edgeOf, pieceOf } from '../support/drafted';

/** The side is 30cm long for the right half of the wearer, 33cm for the left. */
const shirt = (lines: string, more = ''): string => `drafted for gatekeeper
body gatekeeper {
  waist-to-hip left 33cm right 30cm
}
draft panel {
  point a = origin
  point b = a right 20cm
  point c = b down waist-to-hip
  point d = a down 30cm
}
piece front of panel each side {
  cut 1 on fold
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  fold centre
  grain along centre
  ${lines.trim().replaceAll('\n', '\n  ')}
}
${more}`;

/** What is said of the sides and the top in any case. */
const UNSEWN = saidOf(shirt('allow 1cm', 'finish hem front.hem turned up 3cm'));

describe('both halves of an open piece', () => {
  it('have the allowance that runs along an edge, each from its own corner', () => {
    const front = pieceOf(patternIn(shirt('allow 1cm\nallow 1cm at b running to 4cm at c')), 'front');
    for (const name of ['side', 'side-other']) {
      const { drawn, fromName } = edgeOf(front, name);
      const fromB = (s: number): number => allowanceAt(front, name, fromName === 'b' ? s : drawn - s);
      for (const [s, width] of [
        [0, 10],
        [drawn / 2, 25],
        [drawn, 40],
      ] as const)
        near(fromB(s), width, 1e-6, `${name} ${s}mm from b`);
    }
  });

  it('have a stretch of another width where each half counts it', () => {
    const front = pieceOf(patternIn(shirt('allow 1cm\nallow 3cm at side from c to 5cm from c')), 'front');
    for (const name of ['side', 'side-other']) {
      const { drawn, fromName } = edgeOf(front, name);
      const fromC = (s: number): number => allowanceAt(front, name, fromName === 'c' ? s : drawn - s);
      near(fromC(40), 30, 1e-6, `${name} within the stretch`);
      near(fromC(60), 10, 1e-6, `${name} beyond it`);
    }
    // two steps of 2cm by 5cm more than the plain allowance
    const plain = pieceOf(patternIn(shirt('allow 1cm')), 'front');
    const box = (piece: typeof front): number =>
      Math.max(
        ...piece.cutting!.map(({ start }) => Math.abs(start.x)),
        ...piece.cutting!.map(({ end }) => Math.abs(end.x)),
      );
    near(box(front) - box(plain), 20, 1e-6);
  });

  it('are told of a hem that either half allows otherwise than its finish', () => {
    const hem = 'finish hem front.hem turned up 3cm';
    checkSaid(shirt('allow 1cm\nallow waist-to-hip / 10 at hem', hem), [
      ...UNSEWN,
      'contradicted-allowance: front.hem is allowed 3.3cm here, but finish hem turns it up, which takes 3cm; it is cut ' +
        'with that. Make the two say the same.',
    ]);
  });
});

/** Words of the language as names: whatever is not reserved may name anything, wherever a name is due. */
import assert from 'node:assert/strict';
import { parse, RESERVED, FUNCTIONS, GIVEN } from '../../grammar';
import { Parser } from '../../grammar/parser';
import { allWords } from '../../grammar/words';
import { everyProblem } from './support';

/** Every place where a name may stand; `N` is the word that is tried. */
const FILE = `use "other.draft" as N with N = N
tolerance N
drafted for N N
measure N "as it is taken" in N .. N
usual N in N .. N
accept N at N.N because "it is meant so"
accept N because "it is meant so"
let N = N + N * N / N - N
let a = length(N, N.N, (N to N))
choose N = N in N .. N
choose b = N among N, N
solve N in N .. N so that N = N
expect N = N and not N < N or N >= N within N
divide N at N, N along N into N holding N, N
divide c at N along N as N into N
join N.N to N.N into N
facing N of N along N and N.N, N deep
band N for N.N + N from N to N, N wide, underlap N at left
strip N N by N on bias in N
seam N N.N = N.N easing N .. N of N between N and N, none below N and N
seam d N.N from N to N reversed + N.N = its pair stretching N of N within N, zip N from N at left when N = N
seam e N.N = N.N gathered N to N, 45% of N, buttoned from N to N when N
notch N on N at N from N, double
finish N N.N, N.N from N to N turned up N
finish f N faced by N
trace N from "drape.svg" scale 1:1
notion N = N, 0.40 N each
cut 2026-10-24 N, N.N
body N from N N {
  N 12cm
  N left 12cm right 13cm
}
sizes N {
  size N N N
  N 12cm 13cm 14cm
}
grade N for N {
  N up N left N each size
}
lining N of N when N = N {
  cut pair in N
}
`;

const DRAFT = `draft N {
  point N = origin
  point a = N down N left N
  point b = N down to N nearest N
  point c = N across to N upper
  point d = on N N from N
  point e = on N N beyond N toward N
  point f = N at N below right for N
  point g = N reach N to N left-hand
  point h = where N meets N nearest N
  point i = N squared onto N
  point j = N squared from N N toward N
  point k = N mirrored across N turned N clockwise about N moved left N
  point l = midpoint of N and N
  point m = N laid N on N and N toward N
  line N = N to N
  line n = part of N from N to N
  line o = run N then N
  line p = N parallel N toward N
  line q = N reversed
  curve N = N to N through N going toward N, N leaving square to N arriving along N fuller N
  curve r = N to N hollow N toward N at N from N
  arc N = N to N centre N the long way
  circle N = centre N radius N
  circle s = centre N round N
}
`;

const PIECE = `piece N of N each side when N = N {
  cut 2 pairs in N, (N) alike in N
  outline from N {
    N along N to N
    N straight to N then along N to N untrued
    N curve to N leaving toward N
    N dart N by N to N
  }
  hole N from N {
    N straight to N
  }
  fold N
  grain along N
  allow N
  allow N at N, N
  allow N at N running to N at N along N
  inlay N at N
  corner at N as the seam folds
  dart N on N at N, N wide, N long, pressed toward N
  dart a on N at N from N, swings about N, sewn to N short
  dart b N wide, pressed open
  fish dart N from N to N, N wide at N, pressed up
  mark N = N
  topstitch c = N parallel N toward N
  balance line N from N to N
  buttons N = N along N from N below N to N
  label "here" at N
  pleats N = N knife on N at N, N from N, taking N each, folds toward N, stitched down N
  pleats d = N box on N from N to N, out of the width drawn
  gathers N on N from N to N, to N
}
piece e worked from N mirrored when N {
  swing N by N to N at N
  close N into N
  slash from N to N, hinge at N, open N
  spread N along N to N
  lengthen N at N
  widen N at N
  true N
  smooth N by N each side
}
`;

const LATER = `trace N {
  photo "drape.jpg" corners (N, N) (N, N) (N, N) (N, N) of N by N
  point N at (N, N)
  curve N through N, (N, N), N (N, N) within N
  line N = N to N
}
fitting "first" 2026-10-14 {
  take in left N by N each edge at N to N at N as N
  let out N by N
  shift N.N down N
  fold out N by N at N to N at N, N above N as N
  pad N by N
  undo "first" N
  follow N, N
}
cloth N {
  width N
  price 24.50 N per N
  shrinks N along, N across
  bias-hang N over N, narrows N
  repeat N by N
  in stock N
  stretch N across, N along
  turn N
}
`;

const names = [
  ...new Set([...allWords().filter((word) => !RESERVED.includes(word as never)), ...FUNCTIONS, ...GIVEN]),
];

describe('words of the language as names', () => {
  for (const [where, template] of Object.entries({
    'the file': FILE,
    'a draft': DRAFT,
    'a piece': PIECE,
    'later parts': LATER,
  })) {
    it(`every word that is not reserved may be every name in ${where}`, () => {
      const refused = names.flatMap((name) => {
        const problems = everyProblem(parse(template.replace(/\bN\b/g, name)));
        return problems.map((problem) => `${name}: ${problem.message}`);
      });
      assert.deepEqual(refused, []);
    });
  }

  it('the grammar has no ambiguity at a lookahead of two', () => {
    assert.doesNotThrow(() => new Parser(true));
  });

  it('every reserved word is refused as the name of a point and told so', () => {
    const codes = RESERVED.map((word) =>
      everyProblem(parse(`draft a {\n  point ${word} = origin\n}\n`)).map(({ code }) => code),
    );
    assert.deepEqual(
      codes,
      RESERVED.map(() => ['reserved-name']),
    );
  });
});

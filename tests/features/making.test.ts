/** Seams, finishes and divisions that are written for a person: the text before, the text after, and that it holds. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks';
import { dividings } from '../../server/features/dividing';
import { Names } from '../../server/features/names';
import { otherHalves } from '../../server/features/other-half';
import { finishings, sewings } from '../../server/features/sewing';
import type { Shaping } from '../../server/features/shaping';
import { draftOf, uri } from '../support/features';
import { applied } from '../support/naming';

const bag = (more: string): string => `draft bag {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point d = a down 30cm
  line yoke-line = (a down 8cm) to (b down 8cm)
  line upright = (a right 5cm) to (d right 5cm)
  line short = (a down 8cm) to (a right 5cm down 8cm)
}
piece front of bag {
  cut 1
  outline from a {
    mouth straight to b
    one-side straight to c
    foot straight to d
    other-side straight to a
  }
  grain along one-side
  allow 1cm
}
piece back of bag {
  cut 1
  outline from a {
    mouth straight to b
    one-side straight to c
    foot straight to d
    rear straight to a
  }
  grain along one-side
  allow 1cm
}
${more}`;

/** What is offered for the words between two places of a text, by its title, and the text after. */
function offered(text: string, from: number, to = from): Map<string, string> {
  const { pattern, workshop, files } = draftOf(text);
  const names = new Names(uri, files, (one) => workshop.source(one)).upToDate();
  const span = { from, to };
  const found: readonly Shaping[] = [
    ...sewings(pattern, names, text, span),
    ...finishings(pattern, names, text, span),
    ...dividings(pattern, names, text, from),
    ...otherHalves(pattern, names, text, from),
  ];
  return new Map(found.map(({ title, edits }) => [title, applied(text, edits)]));
}

const codes = (text: string): string[] => check(draftOf(text).pattern).map(({ code }) => code);
const at = (text: string, words: string): number => text.indexOf(words) + 1;
const titles = (found: ReadonlyMap<string, string>): string[] => [...found.keys()];

describe('writing a seam', () => {
  it('is offered at an open edge for the only other that bears its name', () => {
    const text = bag('');
    const after = offered(text, at(text, 'foot straight')).get('Sew front.foot to back.foot');
    assert.equal(after, `${text.trimEnd()}\n\nseam foot front.foot = back.foot\n`);
  });

  it('is offered for the only other of the same length, below the last seam, under a name that is free', () => {
    const text = bag(`seam one-side front.one-side = back.one-side
seam other-side front.foot = back.foot
finish rim front.mouth, back.mouth raw
`);
    const after = offered(text, at(text, 'other-side straight')).get('Sew front.other-side to back.rear');
    assert.equal(after, `${text}seam front-other-side front.other-side = back.rear\n`);
    assert.deepEqual(codes(text).includes('unfinished-edge'), true);
    assert.deepEqual(codes(after!).includes('unfinished-edge'), false);
  });

  it('is offered for the edges at both ends of a selection', () => {
    const text = bag('');
    const found = offered(text, at(text, 'mouth straight'), at(text, 'rear straight'));
    assert.equal(
      found.get('Sew front.mouth to back.rear')?.endsWith('\nseam mouth front.mouth = back.rear\n'),
      true,
    );
  });

  it('is not offered at an edge that is sewn, nor where it could be either of several', () => {
    const sewn = bag('seam foot front.foot = back.foot\n');
    assert.deepEqual(
      titles(offered(sewn, at(sewn, 'foot straight'))).filter((title) => /^Sew/.test(title)),
      [],
    );
    const text = bag('');
    const several = titles(offered(text, at(text, 'other-side straight')));
    assert.deepEqual(
      several.filter((title) => /^Sew/.test(title)),
      [],
    );
  });
});

describe('writing finishes', () => {
  it('is offered at a piece for every edge of the pattern of which nothing is said', () => {
    const text = bag('seam one-side front.one-side = back.one-side\nseam foot front.foot = back.foot\n');
    const found = offered(text, at(text, 'piece front') + 7);
    assert.deepEqual(titles(found), [
      'Finish the 4 edges that have none: a narrow hem',
      'Finish the 4 edges that have none: no finish, as cut',
    ]);
    const after = found.get(titles(found)[0]!)!;
    assert.equal(
      after,
      `${text}finish front-edges front.mouth, front.other-side turned twice 1cm
finish back-edges back.mouth, back.rear turned twice 1cm
`,
    );
    assert.deepEqual(codes(after).includes('unfinished-edge'), false);
  });

  it('is not offered where nothing is open', () => {
    const text = bag('finish a front.mouth, front.one-side, front.foot, front.other-side raw\n');
    assert.deepEqual(titles(offered(text, at(text, 'piece front') + 7)), []);
  });
});

describe('dividing a piece', () => {
  const sewn = bag(`seam one-side front.one-side = back.one-side
seam other-side front.other-side = back.rear
seam foot front.foot = back.foot
finish rim front.mouth, back.mouth raw
finish never back.foot raw
`).replace('finish never back.foot raw\n', '');
  const only = sewn
    .replace('piece back of bag', 'piece back of bag-back')
    .replace(
      /draft bag \{[^}]*\}\n/,
      (draft) => draft + draft.replace('draft bag', 'draft bag-back').replace(/ {2}line [^\n]*\n/g, ''),
    );

  it('writes the division below the piece, and seams and finishes over both parts', () => {
    const after = offered(only, at(only, 'yoke-line =')).get('Divide front at yoke-line');
    assert.equal(
      after?.slice(after.indexOf('divide'), after.indexOf('\n', after.indexOf('divide'))),
      'divide front at yoke-line into front-lower holding foot, front-upper',
    );
    assert.match(after!, /seam one-side front-lower\.one-side \+ front-upper\.one-side = back\.one-side\n/);
    assert.match(after!, /finish rim front-upper\.mouth, back\.mouth raw\n/);
    assert.deepEqual(
      check(draftOf(after!).pattern)
        .filter(({ severity }) => severity === 'error')
        .map(({ code, message }) => `${code}: ${message}`),
      [],
    );
  });

  it('is offered for a line down the piece as well', () => {
    const after = offered(only, at(only, 'upright =')).get('Divide front at upright');
    assert.match(after!, /divide front at upright into front-\w+ holding [\w-]+, front-\w+\n/);
    assert.match(after!, /seam foot front-\w+\.foot \+ front-\w+\.foot = back\.foot\n/);
  });

  it('is not offered for a line that does not go through, nor where other lines speak of the piece itself', () => {
    assert.deepEqual(titles(offered(only, at(only, 'short ='))), []);
    const worked = `${only}piece longer worked from front {\n  cut 1\n}\n`;
    assert.deepEqual(titles(offered(worked, at(worked, 'yoke-line ='))), []);
  });
});

describe('drafting the other half', () => {
  const half = `draft panel {
  point top-cf = origin
  point foot-cf = top-cf down 30cm
  point top-side = top-cf left 12cm
  point hip-side = top-side down 15cm left 2cm
  point foot-side = foot-cf left 14cm
  curve hip = top-side to hip-side hollow 5mm toward foot-cf
}
piece front of panel {
  cut 1 on fold in linen
  outline from top-cf {
    centre straight to foot-cf
    foot straight to foot-side
    side straight to hip-side
      then along hip to top-side
    top straight to top-cf
  }
  fold centre
  grain along centre
  allow 1cm
  allow 3cm at foot
}
finish rim front.top, front.side raw
`;
  const [open, drafted] = ['the same, cut open', 'point by point'].map(
    (how) => `Draft the other half of front: ${how}`,
  );
  const here = at(half, 'piece front') + 7;

  it('is done by cutting it open alone where a piece has its outline from another', () => {
    const worked = `${half}piece back worked from front {\n  cut 1 on fold\n}\n`;
    const after = offered(worked, at(worked, 'piece back') + 7);
    assert.deepEqual(
      titles(after).filter((title) => title.startsWith('Draft the other half')),
      ['Draft the other half of back: the same, cut open'],
    );
  });

  it('is done by cutting it open, which changes no other line', () => {
    const after = offered(half, here).get(open!);
    assert.equal(after, half.replace('cut 1 on fold in linen', 'cut 1 open in linen'));
    assert.equal(offered(half, at(half, 'fold centre')).has(open!), false);
  });

  it('is done point by point, so that it holds twice as much and the halves can be changed apart', () => {
    const after = offered(half, here).get(drafted!)!;
    assert.match(after, /point other-foot-side = foot-side mirrored across \(top-cf to foot-cf\)\n/);
    assert.match(after, /curve other-hip = hip mirrored across \(top-cf to foot-cf\)\n/);
    assert.match(after, /\n {2}cut 1 in linen\n {2}outline from foot-cf \{\n/);
    assert.match(
      after,
      /other-side along other-hip to other-hip-side\n {6}then straight to other-foot-side\n/,
    );
    assert.equal(after.includes('fold'), false);
    const [before, now] = [half, after].map((text) => draftOf(text).pattern.pieces[0]!);
    assert.ok(Math.abs(now!.area - 2 * before!.area) < 0.01);
    assert.deepEqual(
      check(draftOf(after).pattern).filter(({ severity }) => severity === 'error'),
      [],
    );
  });

  it('is left to a person point by point where darts or marks would have to be thought about', () => {
    const marked = half.replace('  allow 1cm\n', '  allow 1cm\n  mark sign = hip-side\n');
    assert.deepEqual(
      titles(offered(marked, here)).filter((title) => /half/.test(title)),
      [open],
    );
  });

  it('is not offered point by point where another piece is made from it, or a line speaks of its fold', () => {
    for (const more of [
      'piece back worked from front {\n  cut 1 on fold\n}\n',
      'lining inside of front {\n  cut 1 on fold\n}\n',
      'expect length(front.centre) = 30cm\n',
    ])
      assert.deepEqual(
        titles(offered(half + more, here)).filter((title) => /half/.test(title)),
        [open],
      );
    const other = 'expect length(front.top) = 12cm\n';
    assert.ok(offered(half + other, here).has(drafted!));
  });

  it('is not offered for a piece without a fold', () => {
    const text = bag('');
    assert.deepEqual(
      titles(offered(text, at(text, 'piece front') + 7)).filter((title) => /half/.test(title)),
      [],
    );
  });
});

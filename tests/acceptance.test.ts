/** Findings that a pattern accepts, and the lines that accept nothing. */
import assert from 'node:assert/strict';
import { check, sweep, variantsOf, withSeverities } from '../server/checks/index';
import type { PlacedFinding } from '../server/drafting/model';
import { Workshop } from '../server/drafting/workshop';
import { doorTo, MAIN, patternIn } from './support/drafts';

const sack = (lines: string): string => `draft bag {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point d = a down 30cm
  point e = d down 5mm
}
piece sack of bag {
  cut 1
  outline from a {
    top straight to b
    side straight to c
    foot straight to d
    centre straight to a
  }
  grain along centre
  allow 1cm
}
piece flap worked from sack {
  cut 1
}
seam edge sack.side = flap.top within 20cm
${lines}`;

/** What these tests plant; other checks may have their say as well. */
const PLANTED = new Set(['unfinished-edge', 'mismatched-seam', 'stale-acceptance', 'acceptance-refused']);
const listed = (all: readonly PlacedFinding[]): readonly PlacedFinding[] =>
  all.filter(({ code }) => PLANTED.has(code));

/** Code, severity and what it is of (up to the advice), of what is found. */
const found = (lines: string): readonly string[] =>
  listed(check(patternIn(sack(lines)))).map(({ code, severity, message }) => {
    const [, edges = ''] = /(?:of|at) ([^:]+?)(?: is found|:)/.exec(message) ?? [];
    return [severity, code, edges].join(' ').trim();
  });

const open = 'warning unfinished-edge sack.top, sack.foot and sack.centre';
const openFlap = 'warning unfinished-edge flap.side, flap.foot and flap.centre';
const noted = (line: string): string => line.replace('warning', 'note');

/** Compared without regard to order: pieces share the lines of their outline. */
const same = (actual: readonly string[], expected: readonly string[]): void =>
  assert.deepEqual([...actual].sort(), [...expected].sort());

describe('a finding that is accepted', () => {
  it('is a note that ends with the reason, and leads to the line that accepts it', () => {
    const text = sack('accept unfinished-edge at sack.top because "the loom has closed it."');
    const top = check(patternIn(text)).find(({ accepted }) => accepted !== undefined)!;
    assert.deepEqual([top.severity, top.accepted], ['note', 'the loom has closed it']);
    assert.match(top.message, /^Nothing is said of sack\.top: .* Accepted because the loom has closed it\.$/);
    const [last] = top.related.slice(-1);
    assert.equal(last!.message, 'It is accepted here.');
    assert.ok(text.slice(last!.place.from).startsWith('accept'));
  });

  it('is that of an edge, of one piece that shares the line with another, or all of a code', () => {
    const because = 'because "so it is meant"';
    same(found(''), [open, openFlap]);
    same(found(`accept unfinished-edge at sack.foot ${because}`), [
      'note unfinished-edge sack.foot',
      'warning unfinished-edge sack.top and sack.centre',
      openFlap,
    ]);
    same(found(`accept unfinished-edge at flap ${because}`), [open, noted(openFlap)]);
    same(found(`accept unfinished-edge at flap.foot ${because}`), [
      open,
      'note unfinished-edge flap.foot',
      'warning unfinished-edge flap.side and flap.centre',
    ]);
    same(found(`accept unfinished-edge ${because}`), [noted(open), noted(openFlap)]);
  });

  it('is that of a seam by the seam’s name and by either of its edges', () => {
    for (const of of ['belt', 'sack.foot', 'flap.side']) {
      const lines = `seam belt sack.foot = flap.side\naccept mismatched-seam at ${of} because "it gapes"`;
      assert.ok(found(lines).includes('note mismatched-seam'), of);
    }
    const other = 'seam belt sack.foot = flap.side\naccept mismatched-seam at sack.top because "it gapes"';
    assert.ok(found(other).includes('error mismatched-seam'));
  });

  it('stays a note whatever the settings make of its code, unless they put it off', () => {
    const all = listed(check(patternIn(sack('accept unfinished-edge at sack.top because "it is felt"'))));
    const errors = withSeverities(all, new Map([['unfinished-edge', 'error']]));
    assert.deepEqual(errors.map(({ severity }) => severity).sort(), ['error', 'error', 'note']);
    assert.deepEqual(withSeverities(all, new Map([['unfinished-edge', 'off']])), []);
  });
});

describe('an acceptance that is none', () => {
  const refused = (line: string): readonly string[] =>
    check(patternIn(`draft d {\n  point a = origin\n}\n${line}`)).map(
      ({ code, message }) => `${code}: ${message}`,
    );

  it('names no code that anything is found under', () => {
    assert.deepEqual(refused('accept xyzzy-plugh because "so"'), [
      'acceptance-refused: No finding is called xyzzy-plugh. The code stands beside a message, and draftwright ' +
        'explain CODE shows its page.',
    ]);
  });

  it('would let stand what keeps the piece from being drawn, or gives no reason', () => {
    for (const code of ['unclosed-outline', 'unknown-name', 'not-understood', 'stale-acceptance']) {
      assert.match(
        refused(`accept ${code} because "so"`)[0]!,
        new RegExp(`^acceptance-refused: ${code} can't`),
      );
    }
    assert.match(refused('accept unfinished-edge because " "')[0]!, /^acceptance-refused: Give the reason/);
  });

  it('names a piece or an edge that is not there', () => {
    assert.deepEqual(refused('accept unfinished-edge at e because "so"'), [
      'unknown-name: Nothing here is called e. Define it, or correct the name.',
    ]);
    const said = check(patternIn(sack('accept unfinished-edge at sack.tap because "so"')));
    assert.ok(said.some(({ message }) => message === 'sack has nothing called tap. Did you mean sack.top?'));
    assert.ok(said.every(({ code }) => code !== 'stale-acceptance'));
  });

  it('accepts nothing, and is told only where everything could be judged', () => {
    const stale = 'accept unfinished-edge at sack.side because "it is felt"\n';
    same(found(stale), [open, openFlap, 'warning stale-acceptance sack.side']);
    const broken = found(`${stale}let a = 1cm + 1\n`);
    assert.ok(!broken.some((line) => line.includes('stale')), broken.join());
  });

  it('is a note where another size or choice may need it, and a warning once all were tried', () => {
    const [once, all] = onceAndSwept(`choose depth = 10cm in 5cm .. 15cm
accept choice-out-of-range because "the goods are narrow"
`);
    assert.deepEqual(once, [
      [
        'note',
        'No choice-out-of-range is found as this is drafted now. If no other size or choice needs the line, take it ' +
          'out: draftwright check tries them all.',
      ],
    ]);
    assert.deepEqual(all, [
      [
        'warning',
        'No choice-out-of-range is found. Take the line out, so that a later finding is not accepted unseen.',
      ],
    ]);
  });

  it('is not told in a sweep where one of the choices needs it', () => {
    const text = (width: string) =>
      `choose width = 20cm in 10cm .. 25cm
${sack('seam belt sack.top = flap.foot within 1mm\naccept mismatched-seam at belt because "the toile said so"')}`
        .replace('a right 20cm', `a right ${width}`)
        .replace('d = a down 30cm', 'd = c left 20cm');
    const stale = (width: string): number =>
      onceAndSwept(text(width))[1]!.filter(([, message]) => message!.includes('is found')).length;
    assert.equal(stale('20cm'), 1);
    assert.equal(stale('width'), 0);
  });
});

/** Severity and message of what is found as it is drafted, and for every choice. */
function onceAndSwept(text: string): readonly (readonly string[][])[] {
  const workshop = new Workshop(doorTo(text));
  const pattern = workshop.pattern(MAIN);
  const variants = variantsOf(pattern, {});
  const swept = sweep(check(pattern), variants, (visit) => workshop.forEach(MAIN, variants, visit));
  return [check(pattern), swept].map((all) => all.map(({ severity, message }) => [severity, message]));
}

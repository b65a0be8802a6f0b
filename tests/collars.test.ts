/** Collars beside their stand, and under collars beside their collar. */
import assert from 'node:assert/strict';
import { saidOf } from './support/drafts';

/** A collar or a stand, 20 cm long to the centre back. */
const part = (name: string, deep: string, more = ''): string => `draft ${name}-draft {
  point a = origin
  point b = a right 20cm
  point c = b up ${deep}
  point d = a up ${deep}
}
piece ${name} of ${name}-draft {
  cut 1 on fold
  outline from a {
    foot straight to b
    tip straight to c
    edge straight to d
    centre straight to a
  }
  fold centre
}
${more}`;

const told = (text: string, code: string): readonly string[] =>
  saidOf(text).flatMap((line) => (line.startsWith(`${code}: `) ? [line.slice(code.length + 2)] : []));

describe('a collar on its stand', () => {
  const seam = (collar: string, stand: string): string =>
    `${part('shirt-collar', collar)}${part('collar-stand', stand)}seam neck shirt-collar.foot = collar-stand.edge reversed\n`;
  const low = (collar: string, stand: string, more = ''): readonly string[] =>
    told(seam(collar, stand) + more, 'low-collar');

  it('is at least 8mm deeper than that', () => {
    assert.deepEqual(low('4.3cm', '3.5cm'), []);
    assert.match(low('4.2cm', '3.5cm')[0]!, /4\.2cm deep at the centre back, .* 3\.5cm: 7mm more/);
    assert.match(low('3cm', '3.5cm')[0]!, /5mm less \(usual is at least 8mm more\)/);
    assert.deepEqual(low('4cm', '3.5cm', 'usual collar-over-stand in 5mm .. 9mm\n'), []);
    assert.match(low('7cm', '3.5cm', 'usual collar-over-stand in 5mm .. 9mm\n')[0]!, /less deep/);
  });

  it('is measured where both are, and not between two collars', () => {
    assert.deepEqual(low('3cm', '3.5cm').length, 1);
    assert.deepEqual(told(seam('3cm', '3.5cm').replaceAll('collar-stand', 'neck-part'), 'low-collar'), []);
  });
});

describe('an under collar', () => {
  const both = (collar: string, under: string, name = 'under-collar'): string =>
    `${part('top-collar', collar)}${part(name, under)}`;
  const unlike = (text: string): readonly string[] => told(text, 'unlike-under-collar');

  it('is 2 to 4mm smaller than its collar at the centre back', () => {
    for (const under of ['7.8cm', '7.6cm']) assert.deepEqual(unlike(both('8cm', under)), []);
    assert.match(unlike(both('8cm', '7.9cm'))[0]!, /is 1mm smaller than top-collar/);
    assert.match(
      unlike(both('8cm', '8.1cm', 'undercollar'))[0]!,
      /undercollar is 1mm larger than top-collar/,
    );
    assert.match(unlike(both('8cm', '7.4cm'))[0]!, /bags over/);
    assert.deepEqual(unlike(`${both('8cm', '7.4cm')}usual under-collar-smaller in 5mm .. 6mm\n`), []);
  });

  it('is let be where it could be that of either of two collars', () => {
    assert.deepEqual(unlike(both('8cm', '8cm') + part('cape-collar', '8cm')), []);
  });

  it('may be the shorter along the edge that it faces, and never the longer', () => {
    const faced = (shorter: string): string =>
      both('8cm', '7.7cm').replace(
        'point b = a right 20cm\n  point c = b up 7.7cm',
        `point b = a right 20cm - ${shorter}\n  point c = b up 7.7cm`,
      ) + 'finish edges top-collar.edge faced by under-collar\n';
    assert.deepEqual(told(faced('4mm'), 'unlike-facing'), []);
    assert.match(told(faced('-2mm'), 'unlike-facing')[0]!, /2mm too long .* 2 to 4mm smaller on every side/);
  });
});

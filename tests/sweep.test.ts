/** Every size and both ends of every choice are drafted and checked; each fault is said once, and for whom. */
import assert from 'node:assert/strict';
import { check, sweep, variantsOf } from '../server/checks/index';
import type { PlacedFinding } from '../server/drafting/model';
import { Workshop, type Choice } from '../server/drafting/workshop';
import { inFolder } from './support/command';
import { doorTo, MAIN } from './support/drafts';

/** A pouch whose back follows the waist and whose front is drawn for a waist of 72cm: only M closes. */
const pouch = (drafted: string, given = '18cm') => `pattern "Pouch"
drafted for ${drafted}
choose lift = nothing in 0cm .. 6mm
sizes chorus {
  size S M L
  waist 68cm 72cm 80cm
}
draft sheet {
  point a = origin
  point b = a right waist / 4
  point b2 = a right ${given}
  point c = a down 20cm + lift
  point c2 = a down 20cm
}
piece back of sheet {
  cut 1
  outline from a {
    top straight to b
    slant straight to c2
    side straight to a
  }
  grain from a to c2
  allow 1cm
}
piece front of sheet {
  cut 1
  outline from a {
    top straight to b2
    slant straight to c
    side straight to a
  }
  grain from a to c
  allow 1cm
}
seam upper back.top = front.top within 1mm
seam side back.side = front.side
finish slants back.slant, front.slant raw
`;

function swept(text: string, base: Choice = {}): readonly PlacedFinding[] {
  const workshop = new Workshop(doorTo(text));
  const pattern = workshop.pattern(MAIN, base);
  const variants = variantsOf(pattern, base);
  return sweep(check(pattern), variants, (visit) => workshop.forEach(MAIN, variants, visit));
}

const messages = (found: readonly PlacedFinding[]) => found.map(({ message }) => message);

describe('the sweep over sizes and choices', () => {
  it('says a fault of one size with the size before it and the others behind', () => {
    assert.deepEqual(
      messages(swept(pouch('chorus M', '20cm')).filter(({ source }) => source === 'seam:upper')),
      [
        'size S and M: back.top is 18cm long, front.top 20cm: front.top is 2cm too long (1mm is allowed). (L agrees.)',
      ],
    );
  });

  it('says a fault of other sizes than the drafted one behind those of the file as it stands', () => {
    assert.deepEqual(messages(swept(pouch('chorus M')).filter(({ source }) => source === 'seam:upper')), [
      'size S and L: back.top is 17cm long, front.top 18cm: front.top is 1cm too long (1mm is allowed). (M agrees.)',
    ]);
  });

  it('says a fault of one end of a choice with what was chosen', () => {
    assert.deepEqual(messages(swept(pouch('chorus M')).filter(({ source }) => source === 'seam:side')), [
      'with lift 6mm: back.side is 20cm long, front.side 20.6cm: front.side is 6mm too long (1mm is allowed).',
    ]);
  });

  it('adds nothing to a fault that every size has', () => {
    assert.deepEqual(
      messages(swept(pouch('chorus M', '25cm')).filter(({ source }) => source === 'seam:upper')),
      ['back.top is 18cm long, front.top 25cm: front.top is 7cm too long (1mm is allowed).'],
    );
  });

  it('keeps the repairs of a fault of the file as it stands', () => {
    const [plain] = check(new Workshop(doorTo(pouch('chorus M', '20cm'))).pattern(MAIN)).filter(
      ({ source }) => source === 'seam:upper',
    );
    const [found] = swept(pouch('chorus M', '20cm')).filter(({ source }) => source === 'seam:upper');
    assert.notEqual(plain!.fixes.length, 0);
    assert.deepEqual(found!.fixes, plain!.fixes);
  });

  it('says of a length that grows and then shrinks over the sizes where it turns most, and accepts it', () => {
    const turning = pouch('chorus M').replace('68cm 72cm 80cm', '68cm 82cm 80cm');
    const found = (text: string) => swept(text).filter(({ code }) => code === 'rise-and-fall');
    const message =
      'back.top grows and then shrinks from size to size: 17cm for S, 20.5cm for M, 20cm for L. Look at the rows of the table that it is made from. 1 other edge does so too, though less.';
    assert.deepEqual(messages(found(turning)), [message]);
    assert.equal(turning.slice(found(turning)[0]!.place.from).startsWith('top straight to b'), true);
    assert.deepEqual(found(pouch('chorus M')), []);
    assert.deepEqual(
      found(turning.replace('drafted for chorus M', 'body b {\n  waist 70cm\n}\ndrafted for b')),
      [],
    );
    // three millimetres are play, and a row that only falls is not judged
    assert.deepEqual(found(turning.replace('82cm', '81.2cm')), []);
    assert.deepEqual(found(turning.replace('68cm 82cm 80cm', '84cm 82cm 80cm')), []);
    assert.deepEqual(found(turning.replace('68cm 82cm 80cm', '84cm 80cm 82cm')), []);
    const accepting = `${turning}accept rise-and-fall at back because "the copied table is so"\n`;
    const [accepted] = found(accepting);
    assert.deepEqual([accepted!.severity, accepted!.accepted], ['note', 'the copied table is so']);
    assert.deepEqual(
      swept(accepting).filter(({ code }) => code === 'stale-acceptance'),
      [],
    );
  });

  it('speaks of a line that accepts nothing as at once, where nothing can vary', () => {
    const fixed = pouch('hand').replace('choose lift = nothing in 0cm .. 6mm', 'let lift = nothing');
    const text = `${fixed}body hand {\n  waist 72cm\n}\naccept short-edge at front because "it was short"\n`;
    const stale = swept(text).filter(({ code }) => code === 'stale-acceptance');
    assert.deepEqual(messages(stale), [
      'No short-edge at front is found. Take the line out, so that a later finding is not accepted unseen.',
    ]);
  });

  it('tries a size that was asked for alone, and no choice that was set', () => {
    const base: Choice = { for: { name: 'chorus', size: 'L' }, set: new Map([['lift', '6mm']]) };
    const pattern = new Workshop(doorTo(pouch('chorus M'))).pattern(MAIN, base);
    assert.deepEqual(
      variantsOf(pattern, base).map(({ size, change }) => [size, change]),
      [
        ['S', ''],
        ['M', ''],
        ['L', ''],
      ],
    );
  });

  it('drafts each variant as if it were drafted alone', () => {
    const text = pouch('chorus M');
    const workshop = new Workshop(doorTo(text));
    const variants = variantsOf(workshop.pattern(MAIN), {});
    workshop.forEach(MAIN, variants, (pattern, variant) => {
      const alone = new Workshop(doorTo(text)).pattern(MAIN, variant);
      assert.deepEqual(messages(check(pattern)), messages(check(alone)), `${variant.size} ${variant.change}`);
      assert.deepEqual([...pattern.values], [...alone.values]);
    });
    assert.equal(variants.length, 9);
  });

  it('is what the command line prints', () =>
    inFolder({ 'pouch.draft': pouch('chorus M') }, async (folder) => {
      const { exit, out } = await folder.run('check', 'pouch.draft');
      assert.equal(exit, 1);
      assert.match(out.replaceAll(/\s+/g, ' '), /size S and L: back\.top .* \(M agrees\.\)/);
      const alone = await folder.run('check', 'pouch.draft', '--for', 'chorus M', '--set', 'lift=0cm');
      assert.equal(alone.exit, 0, alone.out);
    }));
});

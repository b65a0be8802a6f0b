/** Darts beside what is usual for their garment, which the names of pieces and edges tell. */
import assert from 'node:assert/strict';
import { saidOf } from './support/drafts';

/** A piece with an edge of each name, 50 cm wide and 60 cm long, with a dart on one of them. */
const piece = (name: string, edges: readonly string[], dart: string, more = ''): string => `draft block {
  point a = origin
  point b = a right 50cm
  point c = b down 60cm
  point d = a down 60cm
  point bust-point = a right 20cm down 25cm
  point inside = a right 20cm down 25cm
}
piece ${name} of block {
  cut pair
  outline from a {
    ${edges[0]} straight to b
    ${edges[1]} straight to c
    ${edges[2]} straight to d
    ${edges[3]} straight to a
  }
  ${dart}
}
${more}`;

const SKIRT = ['waist', 'side', 'hem', 'centre'];
const BODICE = ['shoulder', 'armhole', 'waist', 'centre'];
const LEGS = ['waist', 'side', 'hem', 'rise'];

/** What is said of the dart: "a dart of a skirt’s front, is 3cm wide, 12cm long". */
const told = (...of: Parameters<typeof piece>): readonly string[] =>
  saidOf(piece(...of)).flatMap((line) =>
    (/^unusual-dart: \w+, (.*?)\. [A-Z]/.exec(line)?.slice(1) ?? []).map((one) =>
      one.replace(/ \([^)]*\)/g, ''),
    ),
  );

describe('a dart for its garment', () => {
  it('is judged on a skirt’s front and back by their own widths and lengths', () => {
    const dart = (wide: string, long: string): string =>
      `dart tuck on waist at halfway, ${wide} wide, ${long} long`;
    assert.deepEqual(told('front', SKIRT, dart('2.2cm', '8cm')), []);
    assert.deepEqual(told('front', SKIRT, dart('2.2cm', '11cm')), []);
    assert.deepEqual(told('back-panel', SKIRT, dart('3.2cm', '12cm')), []);
    assert.deepEqual(told('front', SKIRT, dart('3cm', '14cm')), [
      'a dart of a skirt’s front, is 3cm wide and 14cm long',
    ]);
    assert.deepEqual(told('back', SKIRT, dart('1.2cm', '9cm')), [
      'a dart of a skirt’s back, is 1.2cm wide and 9cm long',
    ]);
  });

  it('is judged by the angle where it opens at the bust, and by how far from that it ends', () => {
    const dart = (wide: string, rest: string): string =>
      `dart tuck on armhole at halfway, ${wide} wide, ${rest}`;
    assert.deepEqual(told('front', BODICE, dart('8cm', 'swings about bust-point, sewn to 2.5cm short')), []);
    assert.deepEqual(told('front', BODICE, dart('2cm', 'swings about bust-point, sewn to 5cm short')), [
      'a bust dart, is 3.7° open at its point and 5cm short of the bust point',
    ]);
    assert.deepEqual(told('front', BODICE, dart('8cm', 'swings about bust-point')), [
      'a bust dart, is 0mm short of the bust point',
    ]);
    // a point of any other name is where the dart ends
    assert.deepEqual(told('front', BODICE, dart('8cm', 'swings about inside')), []);
    // beyond what can be pressed the angle is told by itself
    assert.deepEqual(told('front', BODICE, dart('16cm', 'swings about inside')), []);
  });

  it('is judged at the waist of a bodice and in a back shoulder', () => {
    const waist = (wide: string): string => `dart tuck on waist at halfway, ${wide} wide, 20cm long`;
    assert.deepEqual(told('front', BODICE, waist('5cm')), []);
    assert.deepEqual(told('back', BODICE, waist('5cm')), ['a waist dart of a bodice’s back, is 5cm wide']);
    const shoulder = (wide: string): string => `dart tuck on shoulder at halfway, ${wide} wide, 8cm long`;
    assert.deepEqual(told('back', BODICE, shoulder('1cm')), []);
    assert.deepEqual(told('back', BODICE, shoulder('2cm')), ['a dart of a back shoulder, is 2cm wide']);
  });

  it('ends above the hip line of a skirt', () => {
    const line = (down: string): string =>
      `dart tuck on waist at halfway, 2cm wide, 10cm long\n  balance line hip-line from (a down ${down}) to (b down ${down})`;
    assert.deepEqual(told('front', SKIRT, line('12cm')), []);
    assert.deepEqual(told('front', SKIRT, line('11cm')), [
      'a dart of a skirt’s front, is 1cm above the hip line',
    ]);
    assert.deepEqual(told('front', SKIRT, line('7cm')), [
      'a dart of a skirt’s front, is 3cm below the hip line',
    ]);
  });

  it('is let be in trousers, in pieces of other names, and within a range of the pattern’s own', () => {
    const dart = 'dart tuck on waist at halfway, 4cm wide, 10cm long';
    assert.deepEqual(told('front', LEGS, dart), []);
    assert.deepEqual(told('gore', SKIRT, dart), []);
    assert.deepEqual(told('front', SKIRT, dart, 'usual skirt-front-dart-width in 1cm .. 5cm\n'), []);
  });
});

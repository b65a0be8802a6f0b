/** Darts that run over what lies in their way, and darts that only come near it. */
import assert from 'node:assert/strict';
import { saidOf } from './support/drafts';
import { panelText } from './support/panel';

const crossed = (text: string): readonly string[] =>
  saidOf(text).flatMap((line) => /^crossed-dart: (.*?):/.exec(line)?.slice(1) ?? []);

const HOLE = `hole slot from (a right 8cm down 10cm) {
  mouth straight to (a right 12cm down 10cm)
  inner straight to (a right 12cm down 16cm)
  foot straight to (a right 8cm down 16cm)
  outer straight to (a right 8cm down 10cm)
}
`;

describe('a dart that runs over something', () => {
  it('is told of a hole that its legs cross, that lies within it, or within which it lies', () => {
    for (const dart of [
      'fish dart waist from (a right 10cm down 5cm) to (a right 10cm down 25cm), 2cm wide at halfway',
      'fish dart waist from (a right 10cm down 2cm) to (a right 10cm down 28cm), 12cm wide at halfway',
      'fish dart waist from (a right 10cm down 11cm) to (a right 10cm down 15cm), 1cm wide at halfway',
      'dart waist on top at 10cm from a, 2cm wide, 12cm long',
    ])
      assert.deepEqual(crossed(panelText(`${HOLE}${dart}, pressed open`)), [
        'waist runs over the hole slot in front',
      ]);
  });

  it('is let be beside a hole, and beside or end to end with another dart', () => {
    assert.deepEqual(
      crossed(
        panelText(`${HOLE}fish dart one from (a right 5cm down 5cm) to (a right 5cm down 25cm), 2cm wide at halfway
fish dart two from (a right 15cm down 5cm) to (a right 15cm down 18cm), 2cm wide at halfway
fish dart three from (a right 15cm down 18cm) to (a right 15cm down 28cm), 2cm wide at halfway`),
      ),
      [],
    );
    const pointed =
      'dart one on top at 6cm from a, 2cm wide, swings about middle\ndart two on hem at 6cm from d, 2cm wide, swings about middle';
    assert.deepEqual(crossed(panelText(pointed)), []);
  });

  it('is told once of two darts that cross', () => {
    const one = 'dart one on top at 10cm from a, 2cm wide, 12cm long';
    const two = 'dart two on centre at 10cm from a, 2cm wide, 12cm long';
    assert.deepEqual(crossed(panelText(`${one}\n${two}`)), ['two runs over one in front']);
  });

  it('is told of an edge that bends into its way, and not where it is only a step to another piece', () => {
    const bent = (cut: string): string =>
      panelText(
        'fish dart waist from (a right 10cm down 2cm) to (a right 10cm down 28cm), 2cm wide at halfway',
        '',
        cut,
      ).replace(
        'centre straight to a',
        'centre straight to (a down 9cm)\n      then straight to (a right 10cm down 8cm)\n      then straight to (a down 7cm)\n      then straight to a',
      );
    assert.deepEqual(crossed(bent('cut pair')), ['waist runs over centre in front']);
    assert.deepEqual(crossed(bent('')), []);
  });
});

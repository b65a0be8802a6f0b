/** Points that are taken hold of in the drawing, and the lengths that follow the hand. */
import assert from 'node:assert/strict';
import { gripOf, pulled } from '../../server/features/grip';
import { Workshop } from '../../server/drafting/workshop';
import { doorTo, MAIN } from '../support/drafts';

const TEXT = `draft sheet {
  let half = 20cm / 2
  point a = origin
  point b = a right 30cm
  point c = b down 20cm left 4cm
  point d = a down 20cm
  line slope = b to c
  point e = on slope 5cm from b
  point f = on slope 5cm from c
  point g = a right half
  point h = midpoint of a and b
  point i = h
  point j = (on slope 1/2 from b) squared from slope 2cm toward d
  point k = c at 30deg below right for 8cm
  point l = d right 2cm
  curve belly = d to c hollow 1.2cm toward a
  curve share = d to c hollow 1/2 * 3cm toward a
  point far = a down 60cm
}
piece flag of sheet {
  cut 1
  outline from a {
    top straight to g
      then straight to i
      then straight to b
    fly straight to e
      then straight to f
      then straight to c
    foot straight to d
    hoist straight to a
  }
}
piece turned worked from flag mirrored {
  cut 1
}
`;

/** Places that are written without a name of their own, off the end of a line, by the compass, and in a piece. */
const MORE = `draft sheet {
  point a = origin
  point b = a right 30cm
  point c = b down 20cm
  point d = a down 20cm
  line top = a to b
  line foot = d to c
  point beyond = on top 2cm beyond b
  point before = on top 4cm before b
  point home = on top 0cm after a
  point nameless = on (a to d) 7cm from origin
  point carried = c moved left 3cm up 2cm
  point compass = a reach 25cm to foot
  point ended = on foot 6cm from foot.end
  point square = (a right 5cm) squared from top 1.5cm toward (a down 5cm)
  curve belly = (d right 1cm) to (c left 1cm) hollow 2cm toward (a right 4cm)
}
piece flag of sheet {
  cut 1
  outline from a {
    top straight to b
    fly straight to c
    foot curve to d hollow 1.5cm toward b
    staff straight to a
  }
  drill eye = a right 6cm down 5cm
  dart tuck on top at 10cm from a, 2cm wide, swings about (a right 10cm down 12cm), sewn to 2cm short, pressed toward staff
}
`;

const grip = (name: string, piece = 'flag', text = TEXT) => {
  const workshop = new Workshop(doorTo(text));
  const source = name.includes('/') ? name : `sheet/${name}`;
  return gripOf(workshop.pattern(MAIN), source, piece, (uri) => workshop.source(uri));
};

function checkAxes(
  name: string,
  expected: readonly (readonly [x: number, y: number, length: string])[],
  text = TEXT,
): void {
  const found = grip(name, 'flag', text);
  assert.ok('axes' in found, JSON.stringify(found));
  const round = (value: number) => Number(value.toFixed(4)) + 0;
  assert.deepEqual(
    found.axes.map(({ x, y, amount, unit }) => [round(x), round(y), `${amount}${unit}`]),
    expected,
  );
}

function checkReason(name: string, reason: RegExp, piece?: string): void {
  const found = grip(name, piece);
  assert.match('reason' in found ? found.reason : 'it can be moved', reason);
}

function checkPulled(name: string, amounts: readonly number[], expected: string, form = 'point'): void {
  const workshop = new Workshop(doorTo(TEXT));
  const fix = pulled(workshop.pattern(MAIN), `sheet/${name}`, amounts, (uri) => workshop.source(uri))!;
  const last = [...fix.edits].sort((a, b) => b.place.from - a.place.from);
  const text = last.reduce(
    (now, { place, text: words }) => now.slice(0, place.from) + words + now.slice(place.to),
    TEXT,
  );
  assert.ok(text.includes(expected), text);
  assert.equal(
    text.length - TEXT.length,
    expected.length -
      TEXT.split('\n')
        .find((line) => line.includes(`${form} ${name} `))!
        .trim().length,
  );
}

describe('a point taken hold of', () => {
  it('squared from another by a length moves along that way', () => checkAxes('b', [[1, 0, '30cm']]));

  it('squared twice moves both ways, the last step first', () =>
    checkAxes('c', [
      [-1, 0, '4cm'],
      [0, 1, '20cm'],
    ]));

  it('counted along a line moves along it, away from where it is counted', () => {
    const [x, y] = [-4 / Math.hypot(4, 20), 20 / Math.hypot(4, 20)].map((value) =>
      Number(value.toFixed(4)),
    ) as [number, number];
    checkAxes('e', [[x, y, '5cm']]);
    checkAxes('f', [[-x, -y, '5cm']]);
  });

  it('squared out from a line moves off it, to the side that is named', () => {
    const [x, y] = [-20 / Math.hypot(4, 20), -4 / Math.hypot(4, 20)].map((value) =>
      Number(value.toFixed(4)),
    ) as [number, number];
    checkAxes('j', [[x, y, '2cm']]);
  });

  it('laid off at an angle moves along it', () =>
    checkAxes('k', [[Number(Math.cos(Math.PI / 6).toFixed(4)), 0.5, '8cm']]));

  it('beside the outline is moved as well, as long as the piece lies on its draft', () => {
    checkAxes('l', [[1, 0, '2cm']]);
    checkReason('l', /turned over after l was drawn/, 'turned');
  });

  it('in the belly of a hollow curve moves square to the straight way', () => {
    checkAxes('belly', [[0, -1, '1.2cm']]);
    checkPulled('belly', [1.5], 'curve belly = d to c hollow 1.5cm toward a', 'curve');
    checkReason('share', /^share is worked out from d, c, a/);
  });

  it('counted beyond, before or after a point of a line moves along it that way', () => {
    checkAxes('beyond', [[1, 0, '2cm']], MORE);
    checkAxes('before', [[-1, 0, '4cm']], MORE);
    checkAxes('home', [[1, 0, '0cm']], MORE);
    checkAxes('ended', [[-1, 0, '6cm']], MORE);
  });

  it('on a line without a name moves as on one that has one', () => {
    checkAxes('nameless', [[0, 1, '7cm']], MORE);
    checkAxes('square', [[0, 1, '1.5cm']], MORE);
    checkAxes('belly', [[0, -1, '2cm']], MORE);
  });

  it('moved from another by lengths moves by each of them', () =>
    checkAxes(
      'carried',
      [
        [0, -1, '2cm'],
        [-1, 0, '3cm'],
      ],
      MORE,
    ));

  // 25 from a corner that lies 20 above the line: 15 along it, and a millimetre of radius is 25/15 of one along it
  it('found by the compass moves along its line by as much as the radius grows', () =>
    checkAxes('compass', [[0.6, 0, '25cm']], MORE));

  it('in the belly of a stretch of the outline moves square to the straight way', () => {
    checkAxes('flag/foot#1', [[0, -1, '1.5cm']], MORE);
    const workshop = new Workshop(doorTo(MORE));
    const fix = pulled(workshop.pattern(MAIN), 'flag/foot#1', [1.8], (uri) => workshop.source(uri))!;
    const [{ place, text }] = fix.edits as [(typeof fix.edits)[number]];
    assert.deepEqual([MORE.slice(place.from, place.to), text], ['1.5cm', '1.8cm']);
  });

  it('of a drill hole moves by the lengths of its line in the piece', () =>
    checkAxes(
      'flag/eye',
      [
        [0, 1, '5cm'],
        [1, 0, '6cm'],
      ],
      MORE,
    ));

  it('about which a dart swings is the point of the dart', () => {
    const found = grip('flag/tuck', 'flag', MORE);
    assert.match('reason' in found ? found.reason : 'it can be moved', /^It is the pivot of the dart tuck:/);
  });

  it('that is worked out says from what', () => {
    checkReason('g', /^g is worked out from a, half: change that in the text\.$/);
    checkReason('i', /^i is where h is\.$/);
    const chosen = TEXT.replace('  let half = 20cm / 2\n', '').replace(
      'draft sheet',
      'choose half = 10cm\ndraft sheet',
    );
    const found = grip('g', 'flag', chosen);
    assert.equal(
      'reason' in found && found.reason,
      'g is worked out from a, half: change that in the text, or half under Choices.',
    );
  });

  it('of a piece that was turned over is moved in the draft', () =>
    checkReason('b', /turned over after b was drawn: move it in the draft/, 'turned'));

  it('that no draft has is no point of a draft', () => checkReason('nowhere', /not from a point of a draft/));

  it('writes its new lengths and nothing else', () => {
    checkPulled('b', [31.5], 'point b = a right 31.5cm');
    checkPulled('c', [3, 22.4], 'point c = b down 22.4cm left 3cm');
    checkPulled('e', [0], 'point e = on slope 0cm from b');
  });

  it('can’t be pulled to less than nothing', () => checkPulled('b', [-3], 'point b = a right 0cm'));
});

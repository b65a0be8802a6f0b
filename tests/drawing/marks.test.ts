/** How marks, holes and pieces that are cut open are drawn. */
import assert from 'node:assert/strict';
import type { DrawnLine, LineRole } from '../../server/drawing/model';
import { toSvg } from '../../server/drawing/svg';
import { draw } from '../../server/drawing/draw';
import { lineTypes } from '../../server/drawing/lines';
import { drawnIn, linesOf, panel } from '../support/panel';

const signs = (line: string): readonly DrawnLine[] => linesOf(drawnIn(panel(line)), 'one');

function boxOf({ start, stretches }: DrawnLine): readonly number[] {
  const ends = [start, ...stretches.map((s) => ({ x: s[s.length - 2]!, y: s[s.length - 1]! }))];
  const [xs, ys] = [ends.map(({ x }) => x), ends.map(({ y }) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(
    (n) => Math.round(n * 10) / 10,
  );
}

describe('marks are drawn', () => {
  it('buttons as circles of their width with a cross in them', () => {
    const [ring, across, down] = signs('button one = middle, 2cm wide');
    assert.deepEqual([ring!.closed, boxOf(ring!)], [true, [90, 140, 110, 160]]);
    assert.deepEqual(
      [across, down].map((line) => boxOf(line!)),
      [
        [90, 150, 110, 150],
        [100, 140, 100, 160],
      ],
    );
  });

  it('buttonholes as bars with a stroke at either end', () => {
    const lines = signs('buttonhole one = (a right 2cm down 5cm) to (a right 4cm down 5cm)');
    assert.deepEqual(
      lines.map((line) => boxOf(line)),
      [
        [20, 50, 40, 50],
        [20, 47.5, 20, 52.5],
        [40, 47.5, 40, 52.5],
      ],
    );
  });

  it('drills as a circle with a dot, eyelets as a ring, marks as a cross', () => {
    assert.deepEqual(
      ['drill', 'eyelet', 'mark'].map((word) => signs(`${word} one = middle`).map(({ closed }) => closed)),
      [[true], [true, true], [false, false]],
    );
    const dots = drawnIn(panel('drill one = middle')).dots.filter(({ role }) => role === 'mark');
    assert.deepEqual(dots, [{ role: 'mark', source: 'front/one', name: 'one', at: { x: 100, y: 150 } }]);
  });

  it('bones as a narrow closed box about their line, a bent one too', () => {
    const [straight] = signs('bone one = (middle up 5cm) to (middle down 5cm)');
    assert.deepEqual([straight!.closed, boxOf(straight!)], [true, [95.5, 100, 104.5, 200]]);
    const bent = signs(
      'curve way = (a right 3cm down 3cm) to (a right 8cm down 20cm) leaving down\nbone one = way',
    );
    assert.equal(bent[0]!.closed, true);
    assert.ok(bent[0]!.stretches.length >= 4);
  });

  it('tapes, topstitching and creases in line types of their own, told apart by dashes alone', () => {
    const roles = ['tape', 'topstitch', 'crease'].map(
      (word) => signs(`${word} one = (a right 3cm) to (d right 3cm)`)[0]!.role,
    );
    assert.deepEqual(roles, ['tape', 'topstitch', 'crease']);
    const dashes = [...roles, 'sewing', 'balance', 'fold'].map((role) => {
      const { weight, dash } = lineTypes[role as LineRole];
      return dash.map((mm) => Math.round(mm / weight)).join(' ');
    });
    assert.equal(new Set(dashes).size, 6);
  });

  it('with what they are, how many and how far apart in their tips', () => {
    const tips = (line: string): readonly string[] => [...new Set(signs(line).map(({ tip }) => tip))];
    assert.deepEqual(tips('buttons one = 8 along side from 2cm below b to 4cm above c, 15mm wide'), [
      'one, 8 buttons, 3.43cm apart, 1.5cm wide',
    ]);
    assert.deepEqual(tips('button one = middle'), ['one, button']);
    assert.deepEqual(tips('bone one = centre parallel 2cm toward middle'), ['one, bone, 30cm long']);
    assert.deepEqual(tips('drills one = 1 along top from a to b'), ['one, 1 drill hole']);
    assert.deepEqual(tips('buttonholes one = 3 along side, 22mm long'), [
      'one, 3 buttonholes, 15cm apart, 2.2cm long',
    ]);
  });

  it('in SVG, each group by its role and with its tip', () => {
    const svg = toSvg(draw(panel('crease one = (a right 3cm) to (d right 3cm)\nbutton two = middle')));
    assert.match(svg, /class="crease"[^>]*stroke-dasharray/);
    assert.match(svg, /<title>two, button<\/title>/);
  });

  it('clear of the grain line, where there is room', () => {
    const grain = drawnIn(panel('bone one = (a right 10cm down 3cm) to (d right 10cm up 3cm)')).lines.find(
      ({ role }) => role === 'grain',
    );
    assert.ok(Math.abs(grain!.start.x - 100) > 7, `grain at ${grain!.start.x}`);
  });
});

describe('drill holes of darts', () => {
  it('lie on the fold, 12 mm short of the end', () => {
    const drawing = drawnIn(
      panel(
        'dart one = tuck'.replace(
          'one = tuck',
          'tuck on top at 10cm from a, 2cm wide, 10cm long, pressed toward centre',
        ),
      ),
    );
    const hole = drawing.lines.find(({ tip }) => tip === 'tuck, drill hole, 1.2cm inside');
    const [left, top, right, bottom] = boxOf(hole!);
    assert.ok(Math.abs((left! + right!) / 2 - 100) < 0.2);
    assert.ok(Math.abs((top! + bottom!) / 2 - 88) < 0.5, `${top} ${bottom}`);
  });
});

describe('a piece that is cut open', () => {
  const open = () =>
    drawnIn(
      panel(
        'fold centre\nallow 1cm\nbutton knob = a right 5cm down 5cm\nbalance line level from (a down 9cm) to (b down 9cm)',
        '',
        'cut 1 open',
      ),
    );

  it('is drawn whole, its cutting line closed round both halves', () => {
    const cutting = open().lines.filter(({ role }) => role === 'cutting');
    assert.deepEqual([cutting.length, cutting[0]!.closed], [1, true]);
    assert.deepEqual(boxOf(cutting[0]!), [-210, -10, 210, 310]);
    assert.deepEqual(open().frame, { left: -210, top: -10, right: 210, bottom: 310 });
  });

  it('has the fold of the half as its centre line, without arrows', () => {
    const { lines } = open();
    const [centre] = lines.filter(({ role }) => role === 'centre');
    assert.deepEqual([centre!.arrows, centre!.tip], ['none', 'centre, 30cm, centre of the whole']);
    assert.equal(lines.filter(({ role }) => role === 'fold').length, 0);
  });

  it('has the edges and marks of the other half under the same names', () => {
    const { lines } = open();
    const spots = (name: string) =>
      lines.filter((line) => line.name === name).map((line) => boxOf(line).slice(0, 2));
    assert.deepEqual(spots('side'), [
      [200, 0],
      [-200, 0],
    ]);
    assert.equal(spots('knob').length, 6);
    assert.equal(spots('level').length, 2);
    assert.equal(spots('grain').length, 1);
  });

  it('has its label clear of the centre line', () => {
    const title = open().texts.find(({ role }) => role === 'title');
    assert.ok(Math.abs(title!.at.x) > 10);
  });
});

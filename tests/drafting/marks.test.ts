/** Marks and rows of marks: where they lie, and where the work of a piece takes them. */
import assert from 'node:assert/strict';
import { distance } from '../../server/geometry';
import { saidOf } from '../support/drafts';
import { markIn, panel, panelText, pieceIn, spotWords } from '../support/panel';

const spots = (lines: string, name: string): readonly string[] =>
  markIn(panel(lines), name).points.map(spotWords);

describe('marks', () => {
  it('lie at the point that they are given, of every kind that is a place', () => {
    for (const word of ['mark', 'button', 'drill', 'eyelet', 'buttonhole'])
      assert.deepEqual(spots(`${word} one = middle up 2cm`, 'one'), ['100 130'], word);
  });

  it('run along the line that they are given, of every kind that is a line', () => {
    for (const word of ['mark', 'bone', 'tape', 'topstitch', 'crease', 'buttonhole']) {
      const { points, paths } = markIn(panel(`${word} one = centre parallel 2cm toward middle`), 'one');
      assert.deepEqual([points.length, paths.length, paths[0]!.length], [0, 1, 300], word);
    }
  });

  it('may name each other in any order', () => {
    const lines = 'button low = high down 5cm\nbutton high = first right 1cm\nmark first = middle';
    assert.deepEqual(spots(lines, 'low'), ['110 200']);
  });

  it('placed from each other in a circle are told so', () => {
    const said = saidOf(panelText('mark one = other up 1cm\nmark other = one down 1cm'));
    assert.match(
      said.find((one) => one.startsWith('circle'))!,
      /one and other are placed from each other/,
    );
  });

  it('may be named in other lines of the piece, and by other drafts and values', () => {
    const pattern = panel(
      'bone busk = centre parallel 2cm toward middle\nmark low = busk.start',
      'let busk-length = length(front.busk)',
    );
    assert.deepEqual(pattern.values.get('busk-length'), { kind: 'length', amount: 300 });
  });

  it('of a kind that is a place refuse a line, and the other way about', () => {
    const said = saidOf(panelText('button one = hem\nbone other = middle'));
    assert.deepEqual(
      said.filter((one) => one.startsWith('wrong-kind')),
      [
        'wrong-kind: hem is a line, but a button is a point. Take a place on it: on … halfway.',
        'wrong-kind: middle is a point, but a bone is a line. Two points in a bracket make a line: (A to B).',
      ],
    );
  });

  it('that bear a name twice are told so, and the first holds', () => {
    const text = panelText('button one = middle\ndrill one = middle up 1cm\nmark hem = middle');
    const twice = saidOf(text).filter((said) => said.startsWith('defined-twice'));
    assert.match(twice[0]!, /has a mark called one already/);
    assert.match(twice[1]!, /has an edge called hem already/);
  });
});

describe('a buttonhole at the place of its button', () => {
  const ends = (lines: string): readonly string[] => {
    const [path] = markIn(panel(lines), 'one').paths;
    return [spotWords(path!.start), spotWords(path!.end)];
  };

  it('lies across the nearest edge, from 3 mm beyond the button inward', () => {
    assert.deepEqual(ends('buttonhole one = a right 2cm down 10cm, 2.2cm long'), ['17 100', '39 100']);
  });

  it('lies along the edge with its middle at the button where that is said', () => {
    const along = ends('buttonhole one = a right 2cm down 10cm, 2cm long, along the edge');
    assert.deepEqual([...along].sort(), ['20 110', '20 90']);
  });

  it('is 2 cm long where nothing is said', () => {
    const [path] = markIn(panel('buttonhole one = b left 2cm down 9cm'), 'one').paths;
    assert.equal(path!.length, 20);
    assert.deepEqual(ends('buttonhole one = b left 2cm down 9cm'), ['183 90', '163 90']);
  });

  it('given by a line is that line', () => {
    assert.deepEqual(ends('buttonhole one = (a right 1cm down 1cm) to (a right 1cm down 4cm)'), [
      '10 10',
      '10 40',
    ]);
  });
});

describe('a row of marks', () => {
  it('stands evenly from one place to another, both included', () => {
    // closed form: (length − 20 − 40) / 7 apart
    const row = markIn(panel('buttons fronts = 8 along side from 2cm below b to 4cm above c'), 'fronts');
    assert.ok(Math.abs(row.row!.apart - 240 / 7) < 1e-9);
    assert.deepEqual(
      row.points.map(({ y }) => Math.round(y * 1e6) / 1e6),
      Array.from({ length: 8 }, (_, i) => Math.round((20 + (i * 240) / 7) * 1e6) / 1e6),
    );
  });

  it('takes the whole line where nothing is said, and one of it stands at the first place', () => {
    assert.deepEqual(spots('eyelets lacing = 3 along top', 'lacing'), ['0 0', '100 0', '200 0']);
    assert.deepEqual(spots('drills one = 1 along top from 3cm from a to b', 'one'), ['30 0']);
  });

  it('is counted in the direction in which it is told', () => {
    assert.deepEqual(spots('marks row = 2 along top from b to 5cm from a', 'row'), ['200 0', '50 0']);
  });

  it('closes round a circle without standing twice at its start', () => {
    const row = markIn(panel('circle eye = centre middle radius 4cm\neyelets ring = 4 along eye'), 'ring');
    const [a, b, c] = row.points;
    assert.ok(Math.abs(distance(a!, b!) - 40 * Math.SQRT2) < 1e-6);
    assert.ok(Math.abs(distance(a!, c!) - 80) < 1e-6);
  });

  it('may be counted by an expression, in whole numbers alone', () => {
    assert.equal(spots('buttons fronts = 2 * 3 along side', 'fronts').length, 6);
    const said = saidOf(panelText('buttons fronts = 7 / 2 along side'));
    assert.match(said.join('\n'), /no-such-number: .*7 \/ 2 comes to 3\.5/);
  });

  it('beyond the end of its line is refused at the place', () => {
    const said = saidOf(panelText('buttons fronts = 3 along side from 2cm beyond b to c'));
    assert.match(said.join('\n'), /out-of-reach: 2cm beyond b lies 2cm beyond the end of side/);
  });

  it('told from a point of another line says on which edge that lies, or how to bring it here', () => {
    const said = (line: string) => saidOf(panelText(line)).join('\n');
    assert.match(
      said('buttons fronts = 3 along top from a to c'),
      /not-on-line: c does not lie on top: it is 30cm away\. It lies on side and hem: count the row along that/,
    );
    assert.match(
      said('buttons fronts = 3 along top from a to middle'),
      /not-on-line: middle .* such as the nearest: \(middle squared onto top\)\./,
    );
  });

  it('that begins and ends at one place, or is counted from nowhere, says what is missing', () => {
    const said = (line: string) => saidOf(panelText(line)).join('\n');
    assert.match(
      said('buttons fronts = 3 along top from a to a'),
      /no-length: .* all 3 would stand on each other/,
    );
    assert.match(
      said('buttons fronts = 3 along side from 2cm to c'),
      /place-without-start: .* such as 2cm from b\./,
    );
    assert.match(
      said('buttons fronts = 0 along side'),
      /no-such-number: .* from 1 to 999; 0 is none of them/,
    );
    assert.doesNotMatch(said('buttons fronts = 1 along top from a to a'), /no-length/);
  });

  it('is counted over the sewn edge, its darts closed', () => {
    const dart = 'dart tuck on top at 10cm from a, 2cm wide, 8cm long, pressed toward centre\n';
    const row = markIn(panel(`${dart}marks row = 3 along top`), 'row');
    const sewn = pieceIn(panel(dart)).edges.find(({ name }) => name === 'top')!.sewn;
    assert.ok(Math.abs(row.row!.apart - sewn / 2) < 1e-9);
  });

  it('of bones stands square to its line, 6 mm short of the edges', () => {
    const { paths, points } = markIn(panel('bones ribs = 2 along hem from 5cm from d to 5cm from c'), 'ribs');
    assert.equal(points.length, 0);
    assert.deepEqual(
      paths.map((path) => [spotWords(path.start), spotWords(path.end)].sort()),
      [
        ['50 294', '50 6'],
        ['150 294', '150 6'],
      ].map((ends) => ends.sort()),
    );
  });

  it('of buttonholes lies across the line that it is counted along', () => {
    const { paths } = markIn(
      panel('buttonholes holes = 2 along (centre parallel 2cm toward middle), 2cm long'),
      'holes',
    );
    assert.deepEqual(
      paths.map((path) => [spotWords(path.start), spotWords(path.end)]),
      [
        ['17 300', '37 300'],
        ['17 0', '37 0'],
      ],
    );
  });
});

describe('marks on a piece that is worked further', () => {
  const worked = (marks: string, work: string) =>
    panel(marks, `piece long worked from front {\n  ${work}\n}`);
  const spot = (marks: string, work: string, name = 'one'): readonly string[] =>
    markIn(worked(marks, work), name, 'long').points.map(spotWords);

  it('move with the part of the paper that moves', () => {
    const work = 'lengthen 3cm at ((a down 10cm) to (b down 10cm))';
    assert.deepEqual(spot('button one = a right 5cm down 20cm', work), ['50 230']);
    assert.deepEqual(spot('button one = a right 5cm down 5cm', work), ['50 50']);
  });

  it('are drawn on straight over what opens', () => {
    const pattern = worked(
      'bone one = (middle up 10cm) to (middle down 10cm)',
      'lengthen 3cm at ((a down 10cm) to (b down 10cm))',
    );
    const [path] = markIn(pattern, 'one', 'long').paths;
    assert.deepEqual(
      [spotWords(path!.start), spotWords(path!.end), path!.length],
      ['100 50', '100 280', 230],
    );
  });

  it('swing with a dart about its pivot, and balance lines with them', () => {
    const dart = 'dart tuck on top at 10cm from a, 4cm wide, swings about middle, pressed toward centre\n';
    const pattern = worked(
      `${dart}button one = b left 2cm down 10cm\nbalance line level from (middle right 2cm up 5cm) to (b down 10cm left 1cm)`,
      'swing tuck to side at halfway',
    );
    const before = pieceIn(pattern);
    const after = pieceIn(pattern, 'long');
    const [p, q] = [before.marks[0]!.points[0]!, after.marks[0]!.points[0]!];
    const pivot = { x: 100, y: 150 };
    assert.ok(distance(p, q) > 5, 'it moved');
    assert.ok(Math.abs(distance(p, pivot) - distance(q, pivot)) < 1e-9, 'about the pivot');
    assert.ok(Math.abs(after.balance[0]!.path.length - before.balance[0]!.path.length) < 1e-9);
    assert.ok(distance(after.balance[0]!.path.end, before.balance[0]!.path.end) > 5);
  });

  it('keep to the part that holds them when the piece is divided', () => {
    const pattern = panel(
      'button one = middle up 5cm\nbutton other = middle down 5cm\nbone long = (middle up 8cm) to (middle down 12cm)',
      'divide front at ((a down 15cm) to (b down 15cm)) into upper holding top, lower holding hem',
    );
    const names = (piece: string) =>
      pieceIn(pattern, piece).marks.map(({ name, paths }) => [name, paths[0]?.length]);
    assert.deepEqual(names('upper'), [
      ['one', undefined],
      ['long', 80],
    ]);
    assert.deepEqual(names('lower'), [
      ['other', undefined],
      ['long', 120],
    ]);
  });

  it('are mirrored with it', () => {
    const pattern = panel('button one = a right 5cm down 5cm', 'piece twin worked from front mirrored {\n}');
    assert.deepEqual(markIn(pattern, 'one', 'twin').points.map(spotWords), ['-50 50']);
  });

  it('may be added, or put in the place of one inherited', () => {
    const pattern = worked('button one = middle', 'button one = middle up 4cm\n  drill two = middle');
    const { marks } = pieceIn(pattern, 'long');
    assert.deepEqual(
      marks.map(({ name, points }) => [name, spotWords(points[0]!)]),
      [
        ['one', '100 110'],
        ['two', '100 150'],
      ],
    );
  });
});

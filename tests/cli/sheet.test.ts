/** The measuring sheet: what a pattern needs, in taking order, with what the body has and blanks for the next time. */
import assert from 'node:assert/strict';
import { inFolder } from '../support/command';

const glove = `pattern "Cuff"
drafted for gatekeeper
measure fist "round the closed hand, over the knuckles" in 15cm .. 35cm
body gatekeeper {
  taken 2026-09-14
  wrist 17cm
  shoulder left 12.6cm right 12.2cm
  waist 70cm
}
let opening = fist + 1cm
let cuff-round = max(wrist + 2cm, opening)
let half = shoulder.left / 2
let body-round = bust / 2
`;

describe('draftwright sheet', () => {
  it('prints what the pattern needs and no more, in taking order, its own measurements last', () =>
    inFolder({ 'cuff.draft': glove }, async (folder) => {
      const { exit, out, err } = await folder.run('sheet', 'cuff.draft');
      assert.deepEqual([exit, err], [0, '']);
      const rows = out.split('\n').filter((line) => /^(\d|Measuring)/.test(line));
      assert.deepEqual(rows, [
        'Measuring sheet of Cuff, for gatekeeper, last taken 2026-09-14. Lengths in cm.',
        '1  shoulder             12.60     12.20    ________     ________',
        '2  bust              ________  ________    ________     ________',
        '3  wrist                17.00              ________     ________',
        '4  fist              ________  ________    ________     ________',
      ]);
      assert.match(out, /\n {3}round the closed hand, over the knuckles\n/);
      assert.match(
        out,
        /\n {3}Along the top of the shoulder, each side by itself; few people have two\n {3}alike\.\n/,
      );
      assert.ok(
        out.split('\n').every((line) => line.length <= 80),
        out,
      );
    }));

  it('prints the same as JSON, in millimetres, with null for what was not taken', () =>
    inFolder({ 'cuff.draft': glove }, async (folder) => {
      const { exit, out } = await folder.run('sheet', 'cuff.draft', '--format', 'json');
      const sheet = JSON.parse(out);
      assert.deepEqual([exit, sheet.version, sheet.body, sheet.taken], [0, 1, 'gatekeeper', '2026-09-14']);
      const lines = sheet.measurements.map((line: Record<string, unknown>) => [
        line.name,
        line.left,
        line.right,
        line.sided,
        line.own,
      ]);
      assert.deepEqual(lines, [
        ['shoulder', 126, 122, true, false],
        ['bust', null, null, false, false],
        ['wrist', 170, 170, false, false],
        ['fist', null, null, false, true],
      ]);
      assert.deepEqual(sheet.measurements[3].how, 'round the closed hand, over the knuckles');
    }));

  it('is blank where the pattern is drafted for nobody, and says so where nothing is needed', () =>
    inFolder(
      { 'cuff.draft': 'let cuff-round = wrist + 2cm\n', 'tape.draft': 'pattern "Tape"\nlet long = 2m\n' },
      async (folder) => {
        const blank = await folder.run('sheet', 'cuff.draft');
        assert.equal(blank.exit, 0);
        assert.match(blank.out, /^Measuring sheet, for nobody yet\. Lengths in cm\.\n/);
        assert.match(blank.out, /\n1 {2}wrist +________ +________ +________ +________\n/);
        assert.match((await folder.run('sheet', 'tape.draft')).out, / Tape needs no measurements\.\n$/);
      },
    ));

  it('may be printed for another body, and refuses one that nobody knows', () =>
    inFolder({ 'cuff.draft': `${glove}body understudy {\n  fist 22cm\n}\n` }, async (folder) => {
      const { out } = await folder.run('sheet', 'cuff.draft', '--for', 'understudy');
      assert.match(out, /for understudy\. [\s\S]*\n4 {2}fist +22\.00 /);
      const { exit, err } = await folder.run('sheet', 'cuff.draft', '--for', 'gatekeepr');
      assert.equal(exit, 2);
      assert.match(err, /Did you mean gatekeeper\?/);
    }));

  it('ends with 1 where an error may hide a measurement', () =>
    inFolder({ 'cuff.draft': 'let cuff-round = wristt + 2cm\n' }, async (folder) => {
      const { exit, err } = await folder.run('sheet', 'cuff.draft');
      assert.equal(exit, 1);
      assert.match(err, /1 error; what rests on it may need more/);
    }));
});

/** The commands from end to end, run as functions in folders of their own. */
import assert from 'node:assert/strict';
import { mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { apron, apronWith } from '../support/apron';
import { inFolder } from '../support/command';

const broken = apronWith('right width', 'right wdith');

const table = `sizes chorus {
  size S "Tall M"
  waist 68cm 74cm
}
body ferrywoman {
  waist 74.5cm
}
`;
const belt = `pattern "Belt"
use "company.draft"
drafted for ferrywoman
choose overlap = 6cm in 4cm .. 10cm

let belt-length = waist + overlap
let turn = 30deg
let share = 1 / 3

draft strap {
  point near = origin
  point far = near right belt-length
  line top = near to far
}
`;

describe('draftwright check', () => {
  it('ends with 0 and one line for a clean pattern', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      assert.deepEqual(await folder.run('check', 'apron.draft'), {
        exit: 0,
        out: 'No problems in 1 file.\n',
        err: '',
      });
    }));

  it('ends with 1 for an error, and shows the line with carets and a next step', () =>
    inFolder({ 'apron.draft': broken }, async (folder) => {
      const { exit, out } = await folder.run('check', 'apron.draft');
      assert.equal(exit, 1);
      assert.match(out, /^apron\.draft:9:40 error unknown-name\n/);
      assert.match(out, / {2}9 \| {3}point waist-right = waist-left right wdith\n {4}\| {40}\^{5}\n/);
      assert.match(out, /\n {2}next step: /);
      assert.match(out, /\n1 error in 1 file\.\n$/);
    }));

  it('prints JSON that a program can read, with places counted from zero', () =>
    inFolder({ 'apron.draft': broken }, async (folder) => {
      const { exit, out } = await folder.run('check', 'apron.draft', '--format', 'json');
      const report = JSON.parse(out);
      assert.equal(exit, 1);
      assert.deepEqual([report.version, report.files], [1, ['apron.draft']]);
      const [problem] = report.problems;
      assert.deepEqual(Object.keys(problem), ['code', 'severity', 'message', 'file', 'range', 'related']);
      assert.deepEqual(problem.range, { start: { line: 8, character: 39 }, end: { line: 8, character: 44 } });
    }));

  it('reports the files it can read and ends with 2 for the one it can’t', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { exit, out, err } = await folder.run('check', 'apron.draft', 'gone.draft');
      assert.deepEqual(
        [exit, out, err],
        [2, 'No problems in 1 file.\n', 'There is no file gone.draft here.\n'],
      );
    }));

  it('says in a sentence why a file is no pattern', () =>
    inFolder(
      { 'photo.draft': new Uint8Array([137, 80, 0, 1]), 'latin.draft': new Uint8Array([0xe9, 10]) },
      async (folder) => {
        mkdirSync(join(folder.path, 'acts'));
        const why = async (path: string) => {
          const { exit, out, err } = await folder.run('check', path);
          assert.deepEqual([exit, out], [2, '']);
          return err;
        };
        assert.match(await why('photo.draft'), /^photo\.draft isn't text/);
        assert.match(await why('latin.draft'), /^latin\.draft isn't text in UTF-8/);
        assert.match(await why('acts/'), /^acts\/ is a folder\. .*acts\/\*\.draft/);
        assert.match(await why('apron.draft/x'), /^There is no file/);
      },
    ));

  it('takes a text with a byte order mark and with line ends of another system', () =>
    inFolder({ 'apron.draft': `\ufeff${apron.replaceAll('\n', '\r\n')}` }, async (folder) => {
      assert.equal((await folder.run('check', 'apron.draft')).exit, 0);
    }));

  it('lets no use leave the folder that the pattern belongs to, not even by a link', () =>
    inFolder({ 'inside/belt.draft': belt, 'company.draft': table }, async (folder) => {
      mkdirSync(join(folder.path, 'inside', '.git'));
      symlinkSync(join(folder.path, 'company.draft'), join(folder.path, 'inside', 'company.draft'));
      const { exit, out } = await folder.run('check', 'inside/belt.draft');
      assert.equal(exit, 1);
      assert.match(out, /error outside-workspace/);
    }));
});

describe('draftwright check over sizes and choices', () => {
  const files = {
    'company.draft': table,
    'belt.draft': `${belt.replace('for ferrywoman', 'for chorus S')}expect belt-length < 78.5cm\n`,
  };

  it('tries every size and both ends of every choice, and says for whom a fault holds', () =>
    inFolder(files, async (folder) => {
      const { exit, out } = await folder.run('check', 'belt.draft');
      assert.equal(exit, 1);
      assert.match(out.replace(/\s+/g, ' '), /size Tall M: .*\(S agrees\.\)/);
    }));

  it('tries the size alone that was asked for', () =>
    inFolder(files, async (folder) => {
      const { out } = await folder.run('check', 'belt.draft', '--for', 'chorus S', '--set', 'overlap=6cm');
      assert.equal(out, 'No problems in 1 file.\n');
    }));
});

describe('a body or a choice named on the command line', () => {
  const files = { 'belt.draft': belt, 'company.draft': table };
  const length = async (
    folder: { run: (...args: string[]) => Promise<{ out: string }> },
    ...args: string[]
  ) => JSON.parse((await folder.run('measure', 'belt.draft', '--format', 'json', ...args)).out);

  it('takes the place of the one in the file', () =>
    inFolder(files, async (folder) => {
      const own = await length(folder);
      assert.deepEqual([own.body, own.values['belt-length'].value], ['ferrywoman', 805]);
      const small = await length(folder, '--for', 'chorus S');
      assert.deepEqual([small.body, small.values['belt-length'].value], ['chorus S', 740]);
      const tall = await length(folder, '--for', 'chorus Tall M', '--set', 'overlap=5cm');
      assert.deepEqual([tall.body, tall.values['belt-length'].value], ['chorus Tall M', 790]);
    }));

  it('ends with 2 and a sentence when nobody knows it', () =>
    inFolder(files, async (folder) => {
      const refused = async (...args: string[]) => {
        const { exit, err, out } = await folder.run('check', 'belt.draft', ...args);
        assert.deepEqual([exit, out], [2, ''], args.join(' '));
        assert.ok(!err.includes('    at '), err);
        return err;
      };
      assert.match(await refused('--for', 'nobody'), /nobody/);
      assert.match(await refused('--for', 'chorus XXL'), /XXL/);
      assert.match(await refused('--set', 'no-such=5cm'), /no-such/);
      assert.match(await refused('--set', 'overlap=blue'), /overlap is a length/);
      assert.match(await refused('--set', 'overlap=#'), /#/);
      assert.match(await refused('--set', 'overlap'), /NAME=VALUE/);
      assert.match(await refused('--set', 'overlap=5cm', '--set', 'overlap=6cm'), /twice/);
    }));
});

describe('draftwright measure', () => {
  it('prints every figure in the unit of the file', () =>
    inFolder({ 'belt.draft': belt, 'company.draft': table }, async (folder) => {
      assert.deepEqual(await folder.run('measure', 'belt.draft'), {
        exit: 0,
        err: '',
        out: `Belt, drafted for ferrywoman. Lengths in cm.

values
  overlap        6.00
  belt-length   80.50
  turn          30deg
  share        0.3333

points        right  down
  strap.near   0.00  0.00
  strap.far   80.50  0.00

lines and curves  length
  strap.top        80.50
`,
      });
    }));

  it('prints pieces with their edges, and JSON with the same figures in millimetres', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { out } = await folder.run('measure', 'apron.draft');
      assert.match(out, /\npiece bib: cut 1, 750 square centimetres\n/);
      const json = JSON.parse((await folder.run('measure', 'apron.draft', '--format', 'json')).out);
      assert.equal(json.body, null);
      assert.deepEqual(json.points['bib-sheet.foot-right'], [300, 250]);
      assert.equal(json.pieces.bib.area, 75000);
      assert.deepEqual(json.pieces.bib.edges.top, { drawn: 300, sewn: 300 });
      assert.ok(Math.abs(json.curves['bib-sheet.diagonal'].length - Math.hypot(300, 250)) < 1e-6);
    }));

  it('measures what it can of a broken pattern, and ends with 1', () =>
    inFolder({ 'apron.draft': broken }, async (folder) => {
      const { exit, out, err } = await folder.run('measure', 'apron.draft', '--format', 'json');
      assert.equal(exit, 1);
      assert.deepEqual(Object.keys(JSON.parse(out).pieces), ['bib']);
      assert.match(err, /^apron\.draft has 1 error; what rests on it is not measured\./);
    }));
});

describe('draftwright draw', () => {
  it('says that a choice is set outside its range, and draws it so', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { exit, out, err } = await folder.run('draw', 'apron.draft', '--set', 'width=90cm');
      assert.deepEqual([exit, out], [0, 'apron.svg: 2 pieces\n']);
      assert.equal(
        err,
        'width is 90cm, outside its range of 40cm to 80cm. Choose within it, or widen the range.\n',
      );
      assert.equal((await folder.run('draw', 'apron.draft', '--set', 'width=80cm')).err, '');
    }));

  it('writes one picture a pattern, makes the folder, and leaves nothing half written', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { exit, out } = await folder.run('draw', 'apron.draft', '--out', 'out/wardrobe');
      assert.deepEqual([exit, out], [0, 'out/wardrobe/apron.svg: 2 pieces\n']);
      assert.deepEqual(readdirSync(join(folder.path, 'out/wardrobe')), ['apron.svg']);
      assert.match(readFileSync(join(folder.path, 'out/wardrobe/apron.svg'), 'utf8'), /^<(\?xml|svg)/);
    }));

  it('gives the same bytes twice', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      await folder.run('draw', 'apron.draft', '--out', 'one');
      await folder.run('draw', 'apron.draft', '--out', 'two');
      const bytes = (name: string) => readFileSync(join(folder.path, name, 'apron.svg'), 'utf8');
      assert.equal(bytes('one'), bytes('two'));
    }));

  it('writes a PNG as well', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      assert.equal((await folder.run('draw', 'apron.draft', '--format', 'png')).exit, 0);
      assert.equal(readFileSync(join(folder.path, 'apron.png')).subarray(1, 4).toString(), 'PNG');
    })).timeout(20000);

  it('draws what can be drawn, says what can’t, and ends with 1', () =>
    inFolder({ 'apron.draft': broken }, async (folder) => {
      const { exit, out, err } = await folder.run('draw', 'apron.draft');
      assert.deepEqual([exit, out], [1, 'apron.svg: 1 piece\n']);
      assert.match(err, /^skirt is not drawn: /);
    }));

  it('says of every piece made from a faulty one that it is not drawn, and of none that another’s error is its own', () =>
    inFolder({ 'apron.draft': MADE_FROM_FAULTY }, async (folder) => {
      const { exit, err } = await folder.run('draw', 'apron.draft');
      assert.equal(exit, 1);
      const rests = 'is not drawn: it rests on something that has an error.';
      assert.deepEqual(err.split('\n').slice(0, 3), [`two ${rests}`, `f ${rests}`, `l ${rests}`]);
      assert.match(err, /has 1 error\./);
    }));

  it('ends with 2 where the folder can’t be made', () =>
    inFolder({ 'apron.draft': apron, taken: 'a file' }, async (folder) => {
      const { exit, err } = await folder.run('draw', 'apron.draft', '--out', 'taken');
      assert.equal(exit, 2);
      assert.match(err, /taken.*can't be written/);
    }));
});

/** The dart is wider than its edge, so front is drawn without it and nothing can be made from front. */
const MADE_FROM_FAULTY = `draft skirt {
  point a = origin
  point b = a right 20cm
  point c = b down 60cm
  point d = a down 60cm
}
piece front of skirt {
  cut pair
  outline from a {
    waist straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  grain along centre
  dart one on waist at 1/2 from a, 30cm wide, 9cm long
  allow 1cm
}
piece two worked from front {
}
facing f of front along waist, 4cm deep
lining l of front {
}
`;

describe('draftwright explain', () => {
  it('prints the page of a code', () =>
    inFolder({}, async (folder) => {
      const { exit, out } = await folder.run('explain', 'missing-bracket');
      assert.equal(exit, 0);
      assert.match(out, /^# /);
    }));

  it('names the nearest code and all there are when there is no such page', () =>
    inFolder({}, async (folder) => {
      const { exit, err } = await folder.run('explain', 'unknown-nmae');
      assert.equal(exit, 2);
      assert.match(err, /^No problem is called unknown-nmae\. Did you mean unknown-name\?/);
    }));

  it('names the codes that hold the word of a person who does not know the whole code', () =>
    inFolder({}, async (folder) => {
      const { err } = await folder.run('explain', 'kinked');
      assert.match(err, /^No problem is called kinked\. Did you mean kinked-edge\? All there are:\n/);
      const several = (await folder.run('explain', 'pleats')).err;
      assert.match(several, / Did you mean incomplete-pleats or pleats-off-edge or overfull-pleats\? /);
    }));
});

describe('a command line that can’t be understood', () => {
  it('ends with 2, says why, and never shows a stack trace', () =>
    inFolder({}, async (folder) => {
      for (const args of [
        ['sew'],
        ['check'],
        ['check', 'a.draft', '--format', 'xml'],
        ['draw', 'a', '--loud'],
      ]) {
        const { exit, out, err } = await folder.run(...args);
        assert.deepEqual([exit, out], [2, ''], args.join(' '));
        assert.match(err, /^error: /);
        assert.ok(!err.includes('    at '));
      }
    }));

  it('is helped by --help, which lists the commands', () =>
    inFolder({}, async (folder) => {
      const { exit, out } = await folder.run('--help');
      assert.equal(exit, 0);
      for (const command of ['check', 'draw', 'measure', 'explain', 'lsp'])
        assert.match(out, new RegExp(`\\n  ${command} `));
    }));

  it('takes several settings after one option, and still finds its files', () =>
    inFolder({ 'belt.draft': belt, 'company.draft': table }, async (folder) => {
      assert.equal((await folder.run('check', '--set', 'overlap=5cm', 'belt.draft')).exit, 0);
    }));
});

describe('draftwright draw of a worked pattern', () => {
  it('says nothing of a step that is never cut', () => {
    const worked = `${apron}piece short-bib worked from bib {\n  cut 1\n  shorten 5cm at diagonal\n}\n`;
    return inFolder({ 'apron.draft': worked }, async (folder) => {
      const { err } = await folder.run('draw', 'apron.draft');
      assert.doesNotMatch(err, /is not drawn/);
    });
  });
});

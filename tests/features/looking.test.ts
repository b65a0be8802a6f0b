/** What an editor shows round and between the words: hints, lenses, forms, selections, links, symbols, colours. */
import assert from 'node:assert/strict';
import { FUNCTIONS, parse } from '../../grammar/index';
import { colours } from '../../server/features/colours';
import { selections } from '../../server/features/selection';
import { SIGNATURES } from '../../server/features/signature';
import {
  checkColours,
  checkHints,
  checkHintsBetween,
  checkLenses,
  checkLinks,
  checkSelections,
  checkSignature,
  checkSymbols,
} from '../support/looking';
import { files, read } from '../support/sources';

const panel = `let long = 20cm * 2
draft sheet {
  let half = long / 2
  point a = origin
  point b = a right 30cm
  point c = b down half
}
piece front of sheet {
  cut pair
  outline from a {
    top straight to b
    side straight to c
    rest straight to a
  }
  grain along side
  allow 1cm
}
piece back worked from front {
  cut pair
}
seam side front.side = back.side
finish edges front.top, front.rest, back.top, back.rest turned up 1cm
`;

describe('hints between the words', () => {
  it('say what a value comes to, how long an edge is, and both lengths of a seam', () =>
    checkHints(
      panel,
      panel
        .replace('20cm * 2', '20cm * 2‹= 40cm›')
        .replace('long / 2', 'long / 2‹= 20cm›')
        .replace('top straight', 'top‹30cm› straight')
        .replace('side straight', 'side‹20cm› straight')
        .replace('rest straight', 'rest‹36.06cm› straight')
        .replace('= back.side', '= back.side‹20cm to 20cm›'),
    ));

  it('are left out by kind, and all at once', () => {
    checkHints(panel, panel, { enabled: false });
    checkHints(panel, panel.replace('20cm * 2', '20cm * 2‹= 40cm›').replace('long / 2', 'long / 2‹= 20cm›'), {
      edges: false,
      seams: false,
    });
    checkHints(panel, panel.replace('= back.side', '= back.side‹20cm to 20cm›'), {
      edges: false,
      values: false,
    });
  });

  it('are given for the lines in sight alone', () => checkHintsBetween(panel, [11, 12], ['30cm', '20cm']));

  it('say nothing of a plain figure, nor of what can’t be worked out', () => {
    checkHints('let a = 4cm\n', 'let a = 4cm\n');
    checkHints('let a = lost * 2\n', 'let a = lost * 2\n');
  });
});

describe('lenses', () => {
  it('say how a piece is cut and what a seam measures', () =>
    checkLenses(panel, [
      'front: cut pair · no problems',
      'back: cut pair · no problems',
      'side: front.side 20cm · back.side 20cm',
    ]));

  it('count the problems of a piece', () =>
    checkLenses(panel.replace(', back.top, back.rest', ''), [
      'front: cut pair · no problems',
      'back: cut pair · 1 problem',
      'side: front.side 20cm · back.side 20cm',
    ]));
});

describe('the form of what is being written', () => {
  it('is that of the function round the cursor, with the parameter at hand', () => {
    checkSignature('let a = distance(p, q)\n#                ^ here\n', 'distance([POINT], POINT)');
    checkSignature('let a = distance(p, q)\n#                   ^ here\n', 'distance(POINT, [POINT])');
    checkSignature(
      'let a = max(1cm, (2cm + 1cm), 3cm)\n#                              ^ here\n',
      'max(VALUE, [VALUE], …)',
    );
    checkSignature('let a = min(length(l), 3cm)\n#                  ^ here\n', 'length([LINE])');
  });

  it('is that of the statement that the line begins', () => {
    checkSignature('seam side front.side\n#         ^ here\n', 'seam NAME PIECE.EDGE = PIECE.EDGE');
    checkSignature('piece p of d {\n  button top = a\n#          ^ here\n}\n', 'button NAME = POINT');
  });

  it('is not given in a comment, nor outside all of them', () => {
    checkSignature('let a = 2cm # max(1\n#                  ^ here\n', undefined);
    checkSignature('\n# ^ here\n', undefined);
  });

  it('is known of every function', () => assert.deepEqual(Object.keys(SIGNATURES), [...FUNCTIONS]));
});

describe('widening a selection', () => {
  it('goes from the name to its phrase, the statement, the block and the file', () =>
    checkSelections('units cm\ndraft d {\n  let a = (waist + 4cm) / 2\n#          ^ here\n}\n', [
      'waist',
      'waist + 4cm',
      '(waist + 4cm)',
      '(waist + 4cm) / 2',
      'let a = (waist + 4cm) / 2',
      'draft d {/  let a = (waist + 4cm) / 2/}',
      'units cm/draft d {/  let a = (waist + 4cm) / 2/}/',
    ]));

  it('grows at every step, wherever the cursor is in a sample', () => {
    const text = read('samples/harbour-skirt.draft');
    const file = parse(text);
    for (let offset = 0; offset <= text.length; offset += 5) {
      const found = selections(file, text, offset);
      found.reduce(
        (inner, { from, to }) => {
          assert.ok(from <= inner.from && to >= inner.to && to - from > inner.to - inner.from);
          return { from, to };
        },
        { from: offset, to: offset - 1 },
      );
      assert.deepEqual(found.at(-1), { from: 0, to: text.length });
    }
  });
});

describe('links in a text', () => {
  it('are the paths of its use lines, without their quotes', () =>
    checkLinks('use "bodies/company.draft"\nuse "block.draft" as block\nlabel "no.draft"\n', [
      'bodies/company.draft',
      'block.draft',
    ]));
});

describe('looking for a name in the workspace', () => {
  const texts = {
    'a.draft': 'draft skirt {\n  point hip-side = origin\n  point side = origin\n}\n',
    'b.draft': 'choose side-ease = 1cm\nlet aside = 2cm\nlet sd = 1cm\n',
  };

  it('finds it in every file, the best fit first', () =>
    checkSymbols(
      texts,
      'side',
      [
        'shape side in skirt (a.draft)',
        'value side-ease (b.draft)',
        'shape hip-side in skirt (a.draft)',
        'value aside (b.draft)',
      ].map((line) => line.replace('value side-ease', 'choice side-ease')),
    ));

  it('takes letters in their order, in either case', () =>
    checkSymbols(texts, 'HS', ['shape hip-side in skirt (a.draft)']));
});

describe('colours', () => {
  it('tell values, measurements, shapes, pieces, edges and seams apart', () =>
    checkColours('let a = waist / n # so\nseam side front.side = back.side\n', [
      'let keyword',
      'a value*',
      '= operator',
      'waist measurement',
      '/ operator',
      'n value',
      '# so comment',
      'seam keyword',
      'side seam*',
      'front block',
      '. operator',
      'side part',
      '= operator',
      'back block',
      '. operator',
      'side part',
    ]));

  it('take a word of the language for the name that it is used as', () =>
    checkColours('draft line {\n  point centre = origin\n}\n', [
      'draft keyword',
      'line block*',
      'point keyword',
      'centre shape*',
      '= operator',
      'origin word',
    ]));

  it('stand in order, within their lines, and name what they say in every sample', () => {
    for (const path of files('samples').filter((one) => one.endsWith('.draft'))) {
      const text = read(path);
      let last = 0;
      for (const { from, to } of colours(parse(text))) {
        assert.ok(from >= last && to > from && !/[\r\n]/.test(text.slice(from, to)), `${path} ${from}`);
        last = to;
      }
    }
  });
});

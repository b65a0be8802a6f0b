/** Another name for a thing, everywhere it is named; and back again. */
import assert from 'node:assert/strict';
import { occurrencesIn, type Occurrence } from '../../server/features/occurrences';
import { rename } from '../../server/features/rename';
import { checkPrepared, checkRename, Wardrobe } from '../support/naming';
import { files, read } from '../support/sources';

const sheet = `choose width = 60cm
draft sheet {
  let half = width / 2
  point a = origin
  point b = a right half
  line top = a to b
}
piece front of sheet {
  cut 1
  outline from a {
    top along top to b
    rest straight to a
  }
  dart pin on top at halfway, 1cm wide, 4cm long
  allow 1cm at top
}
piece low worked from front {
  allow 2cm at top
}
seam side front.top = low.top
notch knee on side at b
`;

/** The sheet with a mark under the first place of `words` in one of its lines. */
function at(line: string, words: string, text = sheet): string {
  assert.ok(text.includes(`${line}\n`), line);
  const marks = `#${' '.repeat(line.indexOf(words) - 1)}^ here`;
  return text.replace(`${line}\n`, `${line}\n${marks}\n`);
}

describe('giving another name', () => {
  it('to a choice changes it where it is defined and where it is used', () =>
    checkRename(at('  let half = width / 2', 'width'), 'breadth', sheet.replaceAll('width', 'breadth')));

  it('to a point changes it in its draft, in the outline of a piece and in a seam’s notch', () =>
    checkRename(at('  point b = a right half', 'b ='), 'far-end', sheet.replaceAll(/\bb\b/g, 'far-end')));

  it('to an edge leaves the curve alone whose name it bears', () =>
    checkRename(
      at('  allow 1cm at top', 'top'),
      'upper-edge',
      sheet
        .replace('top along top', 'upper-edge along top')
        .replace('on top at', 'on upper-edge at')
        .replaceAll('at top\n', 'at upper-edge\n')
        .replaceAll('.top', '.upper-edge'),
    ));

  it('to a curve leaves the edge alone that runs along it', () =>
    checkRename(
      at('  line top = a to b', 'top'),
      'rim',
      sheet.replace('line top', 'line rim').replace('along top', 'along rim'),
    ));

  it('to a piece changes it where another is worked from it, and before the dot', () =>
    checkRename(at('seam side front.top = low.top', 'front'), 'fore', sheet.replaceAll('front', 'fore')));

  it('to an edge or a point changes it in a notch of the piece’s own block', () => {
    const notched = sheet.replace(
      '  allow 1cm at top\n}\npiece low',
      '  allow 1cm at top\n  notch own on rest at 5cm from b\n  notch full on front.rest at b\n}\npiece low',
    );
    checkRename(
      at('    rest straight to a', 'rest', notched),
      'lower-edge',
      notched
        .replace('rest straight', 'lower-edge straight')
        .replace('on rest', 'on lower-edge')
        .replace('front.rest', 'front.lower-edge'),
    );
    checkRename(
      at('  point b = a right half', 'b =', notched),
      'far-end',
      notched.replaceAll(/\bb\b/g, 'far-end'),
    );
  });

  it('to a seam changes it in the notch on it', () =>
    checkRename(
      at('notch knee on side at b', 'side'),
      'flank',
      sheet.replace('seam side', 'seam flank').replace('on side', 'on flank'),
    ));

  it('to a word of a choice changes it where it is offered and compared', () => {
    const text = 'choose closure = zip among zip, laces\nexpect closure = zip\n';
    checkRename(at('expect closure = zip', 'zip', text), 'hooks', text.replaceAll('zip', 'hooks'));
  });

  it('to a measurement of one’s own changes it in bodies and in every file that uses them', () => {
    const bodies = 'measure fist "round the closed hand"\nbody ferrywoman {\n  fist 24cm\n}\n';
    const text = 'use "company.draft"\ndrafted for ferrywoman\nlet pocket = fist + 4cm\n';
    checkRename(
      at('let pocket = fist + 4cm', 'fist', text),
      'grip',
      text.replace('fist', 'grip'),
      { 'company.draft': bodies },
      { 'company.draft': bodies.replaceAll(/\bfist\b/g, 'grip') },
    );
  });

  it('to a thing of a used file changes it in all files that use it, under their alias as well', () => {
    const block = 'draft block {\n  point a = origin\n  point b = a right 9cm\n}\n';
    const user = 'use "under-test.draft" as old\nlet reach = distance(old.block.a, old.block.b)\n';
    checkRename(
      at('  point b = a right 9cm', 'b', block),
      'far',
      block.replace('point b', 'point far'),
      { 'coat.draft': user },
      { 'coat.draft': user.replace('block.b', 'block.far') },
    );
  });

  it('is refused for a name that is taken, reserved or no name, with the reason', () => {
    const marked = at('  let half = width / 2', 'half');
    checkRename(marked, 'width', 'A value is called width already.');
    checkRename(marked, 'waist', 'waist is a measurement.');
    checkRename(marked, 'toward', "toward is a word of the language and can't be a name.");
    checkRename(marked, 'length', "length is a function and can't be a name.");
    checkRename(marked, 'origin', 'origin means something already, in every pattern.');
    checkRename(marked, 'half_hip', 'Words of a name are joined by a hyphen: hip-line.');
    checkRename(
      marked,
      '2b',
      'A name is made of letters and digits and begins with a letter; hyphens stand before letters: hip-line, b2.',
    );
    checkRename(at('  allow 1cm at top', 'top'), 'rest', 'The piece front has a rest already.');
    checkRename(at('  point b = a right half', 'b ='), 'A', 'A point is called a already.');
  });

  it('is refused where a line that can’t be read speaks of it too', () =>
    checkRename(
      at('let a = 1cm', 'a =', 'let a = 1cm\nlet b = a a\nlet c = = a\n'),
      'd',
      "A line that can't be read speaks of a too: mend that line first.",
    ));

  it('is refused where the new name would catch a name that leads nowhere', () =>
    checkRename(
      at('let a = 1cm', 'a =', 'let a = 1cm\nlet c = lost * 2\n'),
      'lost',
      'A line speaks of lost already, though nothing bears that name: it would mean this.',
    ));

  it('is offered for names alone, and not for those that every pattern knows', () => {
    checkPrepared(at('  let half = width / 2', 'width'), 'width');
    checkPrepared(
      'let a = waist / 2\n#       ^ here\n',
      'waist is a measurement that every pattern knows by this name.',
    );
    checkPrepared('let a = pi * 2cm\n#       ^ here\n', 'pi is not a name that this pattern gives.');
    checkPrepared('let a = 2cm\n#     ^ here\n', undefined);
  });
});

describe('giving another name and the old one again', () => {
  const samples = files('samples').filter((path) => path.endsWith('.draft') && !path.includes('/faults/'));
  const texts = Object.fromEntries(samples.map((path) => [path.slice('samples/'.length), read(path)]));
  /** Renames what occurs at a place, checks that as much is named afterwards, and renames back. */
  function thereAndBack(wardrobe: Wardrobe, file: string, one: Occurrence): void {
    const { name } = one.meaning;
    const names = wardrobe.of(file);
    const edits = rename(names, wardrobe.text(file), one.from, 'zz-other', wardrobe.names);
    assert.ok(edits !== undefined && !('refused' in edits), `${name}: ${JSON.stringify(edits)}`);
    wardrobe.apply(edits);
    assert.deepEqual(lost(wardrobe), []);
    const there = edits.find(({ uri }) => uri === names.uri)!.from;
    const back = rename(names, wardrobe.text(file), there, name, wardrobe.names);
    assert.ok(back !== undefined && !('refused' in back), `back to ${name}: ${JSON.stringify(back)}`);
    assert.equal(back.length, edits.length, name);
    wardrobe.apply(back);
    assert.deepEqual(wardrobe.texts, texts);
  }

  const lost = ({ names }: Wardrobe): string[] =>
    names.flatMap(({ network }) =>
      [...network.nodes.values()].flatMap(({ links }) => links.findings.map(({ message }) => message)),
    );

  for (const file of Object.keys(texts)) {
    it(`changes nothing in ${file}, whatever is named there`, () => {
      const wardrobe = new Wardrobe(texts);
      const names = wardrobe.of(file);
      const all = names.root.topLevels.flatMap((top) => occurrencesIn(names, names.root, top));
      const own = all.filter(({ meaning }) => meaning.uri === names.uri);
      const once = new Map(own.map((one) => [one.meaning.key, one]));
      for (const one of once.values()) thereAndBack(wardrobe, file, one);
      assert.ok(once.size > 0);
    }).timeout(60000);
  }
});

/** Places of a name that change together while one of them is typed in. */
import assert from 'node:assert/strict';
import { linked, TYPED_NAME } from '../../server/features/linked';
import { occurrencesIn } from '../../server/features/occurrences';
import { rename } from '../../server/features/rename';
import { checkLinked, nameOf, Wardrobe } from '../support/naming';
import { files, read } from '../support/sources';

const apron = `let width = 60cm
draft sheet {
  point a = origin
  point b = a right width
  line top = a to b
  line foot = top parallel 40cm below
}
piece front of sheet {
  outline from a {
    top along top to b
    rest straight to a
  }
  allow width / 60 at top, rest
}
`;

/** The apron with a mark below the first place of `words` in one of its lines. */
function at(line: string, words: string, text = apron): string {
  assert.ok(text.includes(`${line}\n`), line);
  return text.replace(`${line}\n`, `${line}\n#${' '.repeat(line.indexOf(words) - 1)}^ here\n`);
}

describe('the places of a name that are typed in together', () => {
  it('are all that name the thing, from its definition and from a use of it', () => {
    checkLinked(at('let width = 60cm', 'width'), ['1', '4', '13']);
    checkLinked(at('  allow width / 60 at top, rest', 'width'), ['1', '4', '13']);
  });

  it('leave a thing of another kind alone that bears the same name', () => {
    checkLinked(at('  line top = a to b', 'top'), ['5', '6', '10']);
    checkLinked(at('  allow width / 60 at top, rest', 'top'), ['10', '13']);
  });

  it('are none where the name stands once, or is one that every pattern knows', () => {
    checkLinked(at('piece front of sheet {', 'front'), []);
    checkLinked(at('let half = waist / 2 + waist / 4', 'waist', 'let half = waist / 2 + waist / 4\n'), []);
    checkLinked(at('let half = 2cm', '2cm', 'let half = 2cm\n'), []);
  });

  it('are none where another file speaks of the thing, and some where it only lies beside', () => {
    const user = (path: string) => `use "${path}"\nlet half = width / 2\n`;
    checkLinked(at('let width = 60cm', 'width'), [], { 'coat.draft': user('under-test.draft') });
    checkLinked(at('let width = 60cm', 'width'), ['1', '4', '13'], {
      'coat.draft': user('cloth.draft'),
      'cloth.draft': 'let width = 60cm\n',
    });
    const text = 'use "cloth.draft"\nlet half = width / 2\nlet third = width / 3\n';
    checkLinked(at('let half = width / 2', 'width', text), [], { 'cloth.draft': 'let width = 60cm\n' });
  });

  it('are none where the name is given twice: who types there tells two things apart', () => {
    const twice = 'let a = 1cm\nlet a = 2cm\nlet b = a\n';
    checkLinked(at('let a = 2cm', 'a =', twice), []);
    const edges = apron.replace('rest straight', 'top straight');
    checkLinked(at('    top straight to a', 'top', edges), []);
    const body = 'body one {\n  fist 24cm\n  fist 25cm\n}\nbody two {\n  fist 22cm\n}\n';
    checkLinked(at('  fist 24cm', 'fist', body), []);
    checkLinked(at('  fist 24cm', 'fist', body.replace('  fist 25cm\n', '')), ['2', '5']);
  });

  it('are none where a line that can’t be read speaks of the thing', () =>
    checkLinked(at('let a = 1cm', 'a =', 'let a = 1cm\nlet b = a\nlet c = a a\n'), []));

  it('are none where a place is written otherwise, as letters can be', () => {
    const text = 'let ärmel = 60cm\nlet half = ärmel / 2\n';
    checkLinked(at('let ärmel = 60cm', 'ärmel', text), ['1', '2']);
    checkLinked(at('let ärmel = 60cm', 'ärmel', text.replace('ärmel /', 'a\u0308rmel /')), []);
  });
});

describe('a name while it is typed', () => {
  const whole = (flags: string) => new RegExp(`^(?:${TYPED_NAME})$`, flags);

  it('is known by a pattern that reads the same with and without knowing letters', () => {
    for (const flags of ['', 'u']) {
      for (const name of ['a', 'b2', 'hip-line', 'hip-', 'Ärmel', 'ширина', '袖', 'a\u0308rmel'])
        assert.ok(whole(flags).test(name), name);
      for (const other of ['', '2b', 'côté-2x', 'a b', 'a.b', 'a–b', 'a×b', 'a_b', 'hip--line', 'a,', '“a'])
        assert.ok(!whole(flags).test(other), other);
    }
  });
});

describe('typing in all places of a name in the samples', () => {
  const samples = files('samples').filter((path) => path.endsWith('.draft') && !path.includes('/faults/'));
  const wardrobe = new Wardrobe(
    Object.fromEntries(samples.map((path) => [path.slice('samples/'.length), read(path)])),
  );

  for (const names of wardrobe.names) {
    const file = nameOf(names.uri);
    it(`is giving another name in ${file}, and is left out where that would touch more than this text`, () => {
      const text = wardrobe.text(file);
      const all = names.root.topLevels.flatMap((top) => occurrencesIn(names, names.root, top));
      const known = new Set<string>();
      for (const { meaning, from } of all) {
        if (known.has(meaning.key)) continue;
        known.add(meaning.key);
        const edits = rename(names, text, from, 'zz-other', wardrobe.names);
        const own =
          edits !== undefined && !('refused' in edits) && edits.every(({ uri }) => uri === names.uri);
        const expected = own && edits.length > 1 ? edits.map((one) => [one.from, one.to]) : undefined;
        const found = linked(names, text, from, wardrobe.names);
        assert.deepEqual(
          found?.places.map((one) => [one.from, one.to]),
          expected,
          meaning.name,
        );
      }
      assert.ok(known.size > 0);
    });
  }
});

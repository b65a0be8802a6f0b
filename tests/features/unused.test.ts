/** Names that nothing speaks of: which are faded, and which are left in peace. */
import assert from 'node:assert/strict';
import { unused } from '../../server/features/unused';
import { Names } from '../../server/features/names';
import { draftOf, uri } from '../support/features';
import { drafts, patternOf } from '../support/faults';

/** The faded names, where other files lie beside the text, and those of them given use it. */
function faded(text: string, beside: Readonly<Record<string, string>> = {}): string[] {
  const { pattern, workshop, files } = draftOf(text, beside);
  const users = Object.keys(beside).map((name) => `file:///wardrobe/${name}`);
  const names = () => users.map((one) => new Names(one, files, (of) => workshop.source(of)).upToDate());
  return unused(pattern, names).map(({ name, place }) => {
    assert.deepEqual([place.uri, text.slice(place.from, place.to)], [uri, name]);
    return name;
  });
}

const strap = `draft strap {
  let width = 3cm
  let spare = 4cm
  point a = origin
  point b = a right width
  point c = b down 50cm
  point d = a down 50cm
  point e = a down 20cm
  line middle = a to c
}
piece strap-piece of strap {
  outline from a {
    top straight to b
    side straight to c
    foot straight to d
    other straight to a
  }
}
`;

describe('names that nothing uses', () => {
  it('are values, points and lines of which no line speaks', () =>
    assert.deepEqual(faded(strap), ['spare', 'e', 'middle']));

  it('are none that a piece, a dart, a seam, an expectation or another value speaks of', () => {
    const used = strap
      .replace('  line middle = a to c\n', '')
      .replace('  }\n}\n', '  }\n  mark sign = e\n}\n');
    assert.deepEqual(faded(used), ['spare']);
    assert.deepEqual(faded(`${used}expect strap.spare > 1cm\n`), []);
    assert.deepEqual(faded(`${used}let more = strap.spare\nexpect more > 1cm\n`), []);
  });

  it('are none that are named through the piece, or in a piece worked from it', () => {
    const used = strap.replace('  let spare = 4cm\n', '').replace('  line middle = a to c\n', '');
    assert.deepEqual(faded(used), ['e']);
    assert.deepEqual(faded(`${used}notch n on strap-piece.other at strap-piece.e, single\n`), []);
    assert.deepEqual(faded(`${used}piece longer worked from strap-piece {\n  lengthen 2cm at e\n}\n`), []);
  });

  it('are choices as well, for they change nothing', () =>
    assert.deepEqual(faded(`choose depth = 3cm in 2cm .. 4cm\n${strap}`)[0], 'depth'));

  it('are not looked for before a piece is made, nor in a draft of which none is', () => {
    assert.deepEqual(faded(strap.slice(0, strap.indexOf('piece'))), []);
    assert.deepEqual(faded(`draft other {\n  point f = origin\n}\n${strap}`), ['spare', 'e', 'middle']);
  });

  it('are none of which a file speaks that uses this one', () => {
    const user = 'use "under-test.draft" as block\nlet half = block.strap.spare / 2\n';
    assert.deepEqual(faded(strap, { 'user.draft': user }), ['e', 'middle']);
  });

  it('are not there while a line has a name that leads nowhere, which may be meant for one', () =>
    assert.deepEqual(faded(`${strap}let half = spare / 2\n`).includes('spare'), false));

  it('are none in the wardrobe', () => {
    for (const path of [...drafts('.'), ...drafts('bodies')]) {
      assert.deepEqual(
        patternOf(path).unused.map(({ source }) => source),
        [],
        path,
      );
    }
  });
});

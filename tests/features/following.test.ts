/** Every name of the wardrobe, followed: it leads to where its thing is defined, and somebody who points at it is told of it. */
import assert from 'node:assert/strict';
import { Workshop } from '../../server/drafting/workshop';
import { definition } from '../../server/features/definition';
import { hover } from '../../server/features/hover';
import { occurrencesIn } from '../../server/features/occurrences';
import { references } from '../../server/features/references';
import { Files, nothingBehind } from '../../server/lsp/files';
import { checkDefinition, checkHover } from '../support/features';
import { nameOf, Wardrobe } from '../support/naming';
import { files, read } from '../support/sources';

const samples = files('samples').filter((path) => path.endsWith('.draft') && !path.includes('/faults/'));
const texts = Object.fromEntries(samples.map((path) => [path.slice('samples/'.length), read(path)]));

describe('every name in the samples', () => {
  const wardrobe = new Wardrobe(texts);
  const desk = new Files(nothingBehind);
  desk.setFolders(['file:///wardrobe']);
  for (const { uri } of wardrobe.names) desk.setBuffer(uri, wardrobe.text(nameOf(uri)));
  const workshop = new Workshop(desk);

  for (const names of wardrobe.names) {
    const file = nameOf(names.uri);
    it(`leads in ${file} to a place that defines it, and has something to be told`, () => {
      const text = wardrobe.text(file);
      const pattern = workshop.pattern(names.uri);
      const sources = pattern.files.map((uri) => ({ uri, file: workshop.source(uri)! }));
      const following = { names, tied: () => wardrobe.names };
      for (const { meaning, from } of names.root.topLevels.flatMap((top) =>
        occurrencesIn(names, names.root, top),
      )) {
        const defining = references(meaning, wardrobe.names).filter(({ defines }) => defines);
        const place = definition(pattern, names.uri, text, from, sources, following);
        const leads = defining.some((one) => one.uri === place?.uri && one.from === place.from);
        assert.ok(leads || defining.length === 0, `${meaning.name} at ${from}`);
        if (meaning.kind === 'alias') continue;
        assert.ok(hover(pattern, names, text, from) !== undefined, `${meaning.name} at ${from}`);
      }
    }).timeout(20000);
  }
});

const body =
  'measure fist "round the closed hand"\n\n# tall\nbody ferrywoman {\n  fist 24cm\n  waist 74cm\n}\n';

describe('pointing at a name in a body', () => {
  it('tells how a measurement is taken where it is written down', () => {
    checkHover(
      body.replace('  fist 24cm\n', '  fist 24cm\n# ^ here\n'),
      '**fist** · measurement\n\nround the closed hand',
    );
    checkHover(
      body.replace('  waist 74cm\n', '  waist 74cm\n# ^ here\n'),
      '**waist** · measurement\n\nThe girth at the natural waist, midway between the lowest rib and the top of the hip bone\\. Tie a tape round the waist and let it settle; measure there\\. Leave the tape on for the lengths\\.',
    );
  });

  it('tells of the body where a pattern is drafted for it', () =>
    checkHover(`${body}drafted for ferrywoman\n#           ^ here\n`, '**ferrywoman** · body\n\ntall'));

  it('leads from a piece before the dot to that piece, not to its edge', () => {
    const text = `draft d {
  point a = origin
  point b = a right 9cm
  point c = b down 9cm
}
piece front of d {
  outline from a {
    top straight to b
    side straight to c
    rest straight to a
  }
}
expect length(front.top) = 9cm
#             ^ here
`;
    checkDefinition(text, 'piece front of d { (front)');
    checkDefinition(text.replace('#             ^', '#                   ^'), 'top straight to b (top)');
  });
});

/** Where a thing is named, and lighting it up. */
import { checkHighlights, checkReferences } from '../support/naming';

const text = `use "company.draft"
drafted for ferrywoman
choose width = 60cm
draft sheet {
  point a = origin
  point b = a right width - waist / 4
}
piece front of sheet {
  outline from a {
    top straight to b
    rest straight to a
  }
  dart pin on top at halfway, 1cm wide, 4cm long
}
piece low worked from front {
  close pin into rest
}
seam side front.top = low.top, zip 4cm from b
`;
const beside = {
  'company.draft': 'body ferrywoman {\n  waist 74cm\n}\n',
  'coat.draft':
    'use "company.draft"\ndrafted for ferrywoman\nuse "under-test.draft"\nlet a = waist + width\n',
  'stranger.draft': 'body ferrywoman {\n  waist 74cm\n}\n',
};

/** The text with a mark under the first `words` of a line. */
function at(line: string, words: string): string {
  return text.replace(`${line}\n`, `${line}\n#${' '.repeat(line.indexOf(words) - 1)}^ here\n`);
}

describe('finding where a thing is named', () => {
  it('finds a value in its own file and in those that use it', () =>
    checkReferences(at('choose width = 60cm', 'width'), ['3*', '6', 'coat.draft 4'], beside));

  it('finds a measurement in bodies and in every file that is tied to them', () =>
    checkReferences(
      at('  point b = a right width - waist / 4', 'waist'),
      ['6', 'company.draft 2*', 'coat.draft 4'],
      { 'company.draft': beside['company.draft'], 'coat.draft': beside['coat.draft'] },
    ));

  it('finds a point in its draft, in outlines and in an opening', () =>
    checkReferences(at('  point b = a right width - waist / 4', 'b ='), ['6*', '10', '18']));

  it('finds an edge through the piece that is worked from it', () =>
    checkReferences(at('    rest straight to a', 'rest'), ['11*', '16']));

  it('finds a dart where it is laid and where it is closed', () =>
    checkReferences(at('  close pin into rest', 'pin'), ['13*', '16']));

  it('finds a body from the file that is drafted for it', () =>
    checkReferences(
      at('drafted for ferrywoman', 'ferrywoman'),
      ['2', 'company.draft 1*', 'coat.draft 2'],
      beside,
    ));

  it('finds nothing for a word that names nothing', () =>
    checkReferences(at('  point a = origin', 'origin'), []));

  it('lights up a piece where it is made and where it is sewn', () =>
    checkHighlights(at('piece front of sheet {', 'front'), ['8*', '15', '18']));
});

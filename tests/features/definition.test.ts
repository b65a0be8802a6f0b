/** From a name to where it is defined. */
import { checkDefinition } from '../support/features';

const draft = `choose width = 60cm
draft sheet {
  let half = width / 2
  point a = origin
  point b = a right half
}
`;

describe('going to a definition', () => {
  it('leads from a use of a value to its line', () =>
    checkDefinition(
      `${draft}let twice = width * 2
#           ^ here
`,
      'choose width = 60cm (width)',
    ));

  it('leads inside a draft to the nearest definition', () =>
    checkDefinition(
      draft.replace('right half\n', 'right half\n#                    ^ here\n'),
      'let half = width / 2 (half)',
    ));

  it('leads from the name of a draft’s value outside the draft to its line', () =>
    checkDefinition(
      `${draft}let quarter = sheet.half / 2
#                    ^ here
`,
      'let half = width / 2 (half)',
    ));

  it('leads into a used file', () =>
    checkDefinition(
      `use "company.draft"
drafted for ferrywoman
#           ^ here
`,
      'company.draft: body ferrywoman { (ferrywoman)',
      { 'company.draft': 'body ferrywoman {\n  waist 74cm\n}\n' },
    ));

  it('leads from a measurement to its line in the body that the pattern is drafted for', () =>
    checkDefinition(
      `use "company.draft"
drafted for understudy
let half = waist / 2
#          ^ here
`,
      'company.draft: waist 74cm (waist)',
      {
        'company.draft':
          'sizes chorus {\n  size S\n  waist 74cm\n}\nbody understudy from chorus S {\n  hip 99cm\n}\n',
      },
    ));

  it('leads from a use to the file', () =>
    checkDefinition('use "acts/company.draft"\n#     ^ here\n', 'company.draft: body ferrywoman { ()', {
      'acts/company.draft': 'body ferrywoman {\n  waist 74cm\n}\n',
    }));

  it('leads nowhere from a name that nobody knows', () =>
    checkDefinition('let a = nobody\n#       ^ here\n', undefined));
});

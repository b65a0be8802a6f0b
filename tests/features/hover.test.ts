/** What a person reads when pointing at a name. */
import { checkHover } from '../support/features';
import { apron } from '../support/apron';

/** The apron with a mark under a line of it, at the first place of `words` in that line. */
function pointingAt(line: string, words: string, text = apron): string {
  const column = line.indexOf(words);
  const marks = `#${' '.repeat(column - 1)}^ here`;
  return text.replace(`${line}\n`, `${line}\n${marks}\n`);
}

describe('pointing at a name', () => {
  it('shows what a choice comes to, and the comment above it', () =>
    checkHover(
      pointingAt('choose width = 60cm in 40cm .. 80cm', 'width'),
      '**width** · choice · `60cm`\n\nhow wide it is at the waist',
    ));

  it('shows the same where the name is used', () =>
    checkHover(
      pointingAt('  point waist-right = waist-left right width', 'width'),
      '**width** · choice · `60cm`\n\nhow wide it is at the waist',
    ));

  it('shows where a point lies and how long a line is', () => {
    checkHover(
      pointingAt('  point foot-right = top-right down bib-height', 'foot-right'),
      '**foot\\-right** · point · 30cm across, 25cm down',
    );
    checkHover(
      pointingAt('  line diagonal = top-left to foot-right', 'diagonal'),
      '**diagonal** · line · `39.05cm`\n\nslope 39\\.81deg',
    );
  });

  it('shows how much cloth a closed curve holds', () =>
    checkHover(
      `draft lid {
  circle rim = centre origin radius 10cm
#        ^ here
}
`,
      '**rim** · curve · `62.83cm`\n\n314.2 square centimetres within',
    ));

  it('shows a piece with its cutting words, area and edges', () =>
    checkHover(
      pointingAt('piece bib of bib-sheet {', 'bib'),
      '**bib** · piece\n\ncut 1  \n750 square centimetres within the sewing line  \nedges `top`, `near-side`, `foot`, `far-side`',
    ));

  it('shows an edge with its lengths and the allowance that its finish gives', () =>
    checkHover(
      pointingAt('    foot straight to foot-left', 'foot'),
      '**foot** · edge · `30cm`\n\n30cm when sewn  \nallowance 2cm  \nlevel',
    ));

  it('shows a row of marks with how many and how far apart', () =>
    checkHover(
      pointingAt(
        '  eyelets lace = 5 along top',
        'lace',
        apron.replace(
          '  grain from top-left to foot-left\n',
          (grain) => `${grain}  eyelets lace = 5 along top\n`,
        ),
      ),
      '**lace** · mark\n\n5 eyelets, 7\\.5cm apart',
    ));

  it('shows a measurement with its definition and how it is taken', () =>
    checkHover(
      `body ferrywoman {
  waist 74.5cm
}
drafted for ferrywoman
let half = waist / 2
#          ^ here
`,
      '**waist** · measurement · `74.5cm`\n\n' +
        'The girth at the natural waist, midway between the lowest rib and the top of the hip bone\\. ' +
        'Tie a tape round the waist and let it settle; measure there\\. Leave the tape on for the lengths\\.',
    ));

  it('never takes an author’s words for layout or links', () =>
    checkHover(
      `# *wide* [here](command:x) <b>
choose width = 60cm
#      ^ here
`,
      '**width** · choice · `60cm`\n\n\\*wide\\* \\[here\\]\\(command:x\\) \\<b\\>',
    ));

  it('shows nothing where nothing is named', () => checkHover('let a = 2cm\n#     ^ here\n', undefined));
});

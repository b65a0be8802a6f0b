/** What may be written at the cursor. */
import assert from 'node:assert/strict';
import { completions } from '../../server/features/completion';
import { checkCompletions, draftOf, uri } from '../support/features';

const draft = `choose width = 60cm
draft sheet {
  let half = width / 2
  point a = origin
  point b = a right half
  point c = a down half
  line top = a to b
`;

const piece = `${draft}}
piece front of sheet {
  cut 1
  outline from a {
    upper along top to b
    rest straight to c
    side straight to a
  }
`;

const sewn = `${piece}}\npiece back worked from front {\n  cut 1\n}\n`;

/** The last of some lines with the cursor at its end. */
const here = (line: string): string => `${line}\n#${' '.repeat(Math.max(0, line.length - 1))}^ here\n`;

/** The piece with lines in the place of those of its outline, the cursor at the end of the last. */
const inOutline = (...lines: string[]): string => {
  const last = lines.pop()!;
  const from = piece.indexOf('    upper');
  return `${piece.slice(0, from)}${lines.join('')}${here(last)}  }\n}\n`;
};

describe('completing', () => {
  it('offers the words that a line may begin with', () => {
    checkCompletions('\n# ^ here\n', { also: ['pattern', 'draft', 'seam'], never: ['outline'] });
    checkCompletions(`${draft}  \n# ^ here\n}\n`, { also: ['point', 'let'], never: ['seam'] });
  });

  it('offers the names of the draft, then what the whole file knows', () =>
    checkCompletions(`${draft}  point d = \n#           ^ here\n}\n`, {
      first: ['a', 'b', 'c', 'top', 'origin', 'half', 'width'],
      also: ['waist', 'length'],
    }));

  it('offers the words that go on from what is written, and no name where none may stand', () => {
    checkCompletions(`${draft}${here('  point d = a ')}}\n`, {
      also: ['down', 'right', 'squared'],
      never: ['b', 'waist', 'zip'],
    });
    checkCompletions(inOutline('    rest '), { first: ['along', 'straight'], never: ['a', 'to'] });
    checkCompletions(`${piece}${here('  grain ')}}\n`, { first: ['along', 'bias', 'from'], never: ['a'] });
    const seam = 'seam flank front.side = back.side';
    checkCompletions(sewn + here(`${seam} `), { also: ['easing', 'within'], never: ['front'] });
    checkCompletions(sewn + here(`${seam}, `), { also: ['zip', 'buttoned', 'laced'], never: ['easing'] });
    const notch = 'notch n on front.side at halfway';
    checkCompletions(sewn + here(`${notch}, single `), { also: ['when'], never: ['into'] });
    checkCompletions(sewn + here('divide front at half '), { also: ['along', 'into', 'when'] });
  });

  it('goes on from the lines before where a statement has several', () => {
    checkCompletions(inOutline('    rest straight to c\n', '      then '), {
      first: ['along', 'straight'],
      never: ['a'],
    });
    checkCompletions(`${draft}  point d = a down half +\n${here('    ')}}\n`, {
      also: ['width'],
      never: ['down'],
    });
  });

  it('goes on from the lines before in a text whose lines end as those of Windows do', () =>
    checkCompletions(`let a = 2cm\r\nlet b = a +\r\n${here('  ')}`, {
      first: ['a'],
      never: ['pattern', 'draft'],
    }));

  it('begins anew after a remark, whatever sign the remark ends in', () => {
    for (const sign of ['------', 'wide, in all,', 'a =', 'a +', 'b *', 'and/']) {
      checkCompletions(`# ${sign}\n${here('  ')}`, { also: ['pattern', 'draft'], never: ['waist'] });
      const after = `${draft}  point d = a right half # ${sign}\n${here('  ')}}\n`;
      checkCompletions(after, { also: ['point', 'let'], never: ['waist', 'width'] });
    }
    const going = `pattern "no. #1"\n${draft}  point d = a down half + # of "all" -\n${here('    ')}}\n`;
    checkCompletions(going, { also: ['width'], never: ['down', 'point'] });
    checkCompletions(`note "cut #1 +"\n${here('')}`, { also: ['pattern', 'draft'], never: ['waist'] });
  });

  it('offers lines before points where a line is meant, and points where a point is', () => {
    checkCompletions(inOutline('    upper along '), { first: ['top', 'a'] });
    checkCompletions(inOutline('    rest straight to '), { first: ['a', 'b', 'c', 'top'] });
  });

  it('offers nothing where a new name is made up', () => {
    for (const head of ['let ', 'choose ', 'seam ', 'notch '])
      checkCompletions(`${piece}}\n${here(head)}`, { never: ['width', 'waist', 'front', 'a'] });
  });

  it('offers a seam for a notch, then the corners of what it sews', () => {
    const joined = `${sewn}seam flank front.side = back.side\n`;
    checkCompletions(joined + here('notch knee on '), { first: ['flank', 'front', 'back'] });
    checkCompletions(joined + here('notch knee on flank at '), { first: ['a', 'b', 'c'] });
  });

  it('offers the edges and corners of a piece after its dot', () =>
    checkCompletions(`${piece}}\nseam s front.\n#            ^ here\n`, {
      first: ['upper', 'rest', 'side'],
      never: ['width'],
    }));

  it('offers pieces in a seam, and bodies after drafted for', () => {
    checkCompletions(`${piece}}\nseam s \n#      ^ here\n`, { first: ['front'] });
    checkCompletions(
      'use "company.draft"\ndrafted for \n#           ^ here\n',
      { first: ['ferrywoman', 'chorus'] },
      { 'company.draft': 'body ferrywoman {\n  waist 74cm\n}\nsizes chorus {\n  size S\n  waist 70cm\n}\n' },
    );
  });

  it('offers a draft’s points where its piece is outlined', () =>
    checkCompletions(
      piece.replace('side straight to a\n', 'side straight to \n#                    ^ here\n'),
      {
        also: ['a', 'b', 'top'],
        never: ['waist'],
      },
    ));

  it('offers the ranges that checks judge by, and the codes that can be accepted', () => {
    checkCompletions('usual \n#     ^ here\n', { also: ['hip-ease'], never: ['unfinished-edge', 'waist'] });
    checkCompletions('accept \n#      ^ here\n', {
      also: ['unfinished-edge', 'mismatched-seam'],
      never: ['unclosed-outline', 'hip-ease'],
    });
    checkCompletions(`${piece}}\naccept unfinished-edge at \n#                         ^ here\n`, {
      first: ['front'],
    });
  });

  it('offers measurements in a body and in a value, those of the pattern’s own among them', () => {
    const fist = 'measure fist "round the closed hand" in 15cm .. 35cm\n';
    checkCompletions(`${fist}body pilot {\n  calf 36cm\n  \n# ^ here\n}\n`, {
      first: ['taken'],
      also: ['waist', 'fist'],
    });
    checkCompletions(`${fist}let a = \n#       ^ here\n`, { also: ['waist', 'fist'] });
  });

  it('offers what used files name, bare or behind their name', () => {
    const block = { 'block.draft': `choose ease = 3cm in 0cm .. 9cm\n${piece}}\n` };
    checkCompletions('use "block.draft"\nlet a = \n#       ^ here\n', { also: ['ease'] }, block);
    checkCompletions('use "block.draft" as block\nlet a = \n#       ^ here\n', { never: ['ease'] }, block);
    checkCompletions(
      'use "block.draft" as block\nlet a = block.\n#             ^ here\n',
      { first: ['width', 'ease'].reverse(), also: ['sheet', 'front'] },
      block,
    );
    checkCompletions(
      'use "block.draft"\npiece p worked from \n#                   ^ here\n',
      { also: ['front'] },
      block,
    );
  });

  it('offers whole statements that may stand in the block, with places to fill in', () => {
    checkCompletions('\n# ^ here\n', {
      also: ['seam NAME PIECE.EDGE = PIECE.EDGE', 'piece NAME of DRAFT {', 'piece NAME worked from PIECE {'],
      never: ['point NAME = …', 'cloth NAME {'],
    });
    checkCompletions(`${draft}  \n# ^ here\n}\n`, { also: ['line NAME = …', 'arc NAME = …'] });
    checkCompletions(piece.replace('side straight to a\n', '\n#  ^ here\n'), {
      first: ['NAME along CURVE to POINT', 'NAME straight to POINT'],
    });
    checkCompletions('let \n#   ^ here\n', { never: ['let NAME = VALUE'] });
  });

  it('keeps quiet in a comment and in a text', () => {
    checkCompletions('let a = 1cm # wai\n#              ^ here\n', { first: [], never: ['waist'] });
    checkCompletions('pattern "wai"\n#           ^ here\n', { never: ['waist'] });
  });

  it('offers what can’t be drafted while the line that it rests on is being written, and not the line itself', () =>
    checkCompletions(`draft d {\n  point a = origin\n  point c = b right 2cm\n${here('  point b = ')}}\n`, {
      first: ['a', 'c', 'origin'],
      never: ['b'],
    }));

  it('offers the words of a choice where it is compared', () =>
    checkCompletions(
      `choose lid = flat among flat, domed\n${sewn}${here('seam flank front.side = back.side when lid = ')}`,
      { first: ['flat', 'domed'], never: ['width'] },
    ));

  it('offers the edges of a piece that is drafted for each side by the name of both', () => {
    const sided = piece.replace('of sheet {', 'of sheet each side {');
    checkCompletions(`${sided}${here('  grain along ')}}\n`, { first: ['upper', 'rest', 'side'] });
    checkCompletions(`${sided}}\n${here('seam flank front.')}`, { also: ['upper', 'side'] });
  });

  it('offers to go on with an edge, but not before there is one', () => {
    checkCompletions(inOutline('    upper along top to b\n', '    '), { also: ['then'] });
    checkCompletions(inOutline('    '), { never: ['then'] });
  });

  it('offers the sizes of a table that is drafted for', () =>
    checkCompletions(`sizes crew {\n  size S M\n  waist 70cm 76cm\n}\n${here('drafted for crew ')}`, {
      first: ['S', 'M'],
      never: ['crew'],
    }));

  it('says of what stays as it was drafted what its remark and the unit are now', () => {
    const lines = ['# the waist', 'let waist = 10cm', 'draft d {', '  # half of it', '  line a = o to b'];
    const text = `units cm\n${lines.join('\n')}\n  point o = origin\n  point b = o right waist\n  line c = \n}\n`;
    const { workshop } = draftOf(text);
    const told = (old = '', put = ''): readonly string[] => {
      const { text: before } = workshop.source(uri)!;
      const from = before.indexOf(old);
      workshop.edit(uri, [{ from, to: from + old.length, text: put }]);
      const file = workshop.source(uri)!;
      const offset = file.text.indexOf('line c = ') + 'line c = '.length;
      const { items } = completions(workshop.pattern(uri), [file], file.text, offset);
      const found = items.filter(({ label }) => label === 'a');
      return found.map(({ detail, doc }) => `${detail}: ${doc}`);
    };
    assert.deepEqual(told(), ['line, 10cm: half of it']);
    assert.deepEqual(told('half of it', 'all of it'), ['line, 10cm: all of it']);
    assert.deepEqual(told('10cm', '12cm'), ['line, 12cm: all of it']);
    assert.deepEqual(told('units cm', 'units mm'), ['line, 120mm: all of it']);
  });
});

/** What a definition is built from, and what moves with it, one step at a time. */
import { checkBuilt } from '../support/naming';

const skirt = `let depth = hip / 10
draft skirt {
  let quarter = hip / 4
  point waist = origin
  point hip-cf = waist down depth
  point hip-side = hip-cf left quarter
  line hip-line = hip-cf to hip-side
  line drop = hip-side to (hip-side down depth * 2)
}
piece front of skirt {
  outline from waist {
    centre straight to hip-cf
    hem along hip-line to hip-side
    side straight to waist
  }
  fold centre
}
piece back of skirt {
  outline from waist {
    side straight to hip-side
    hem along hip-line to hip-cf
    centre straight to waist
  }
}
seam side front.side = back.side
expect length(front.side) > depth
`;

/** The pattern with a mark under the name that stands in a line. */
function marked(line: string, name: string): string {
  const start = skirt.indexOf(line);
  const column = skirt.slice(start).indexOf(name) + (start - skirt.lastIndexOf('\n', start) - 1);
  const end = skirt.indexOf('\n', start) + 1;
  return `${skirt.slice(0, end)}#${' '.repeat(column - 1)}^ here\n${skirt.slice(end)}`;
}

describe('what a thing is built from and what it moves', () => {
  it('is for a point the points and lengths of its own line, and whatever rests on it', () =>
    checkBuilt(marked('  point hip-side', 'hip-side'), {
      itself: 'hip-side: point hip-side = hip-cf left quarter',
      from: ['shape hip-cf (6)', 'value quarter (6)'],
      moves: ['shape hip-line (7)', 'shape drop (8 8)', 'edge hem (13)', 'edge side (20)'],
    }));

  it('is for an edge the runs of its line, and the seams that take it', () =>
    checkBuilt(marked('    hem along hip-line to hip-side', 'hem'), {
      itself: 'hem: hem along hip-line to hip-side',
      from: ['shape hip-line (13)', 'shape hip-side (13)'],
      moves: [],
    }));

  it('is for a seam its edges and their pieces', () =>
    checkBuilt(marked('seam side', 'side'), {
      itself: 'side: seam side front.side = back.side',
      from: ['piece front (25)', 'edge side (25)', 'piece back (25)', 'edge side (25)'],
      moves: [],
    }));

  it('is for a piece its draft and what its outline walks along, not its own edges', () =>
    checkBuilt(marked('piece front', 'front'), {
      itself: 'front: piece front of skirt',
      from: [
        'draft skirt (10)',
        'shape waist (11 14)',
        'shape hip-cf (12)',
        'shape hip-line (13)',
        'shape hip-side (13)',
      ],
      moves: ['seam side (25)'],
    }));

  it('leads to the file that a thing comes from, and back to every file that uses it', () => {
    const beside = { 'bodies.draft': 'body tall {\n  hip 100cm\n}\n' };
    checkBuilt(
      'use "bodies.draft"\ndrafted for tall\nlet quarter = hip / 4\n#   ^ here\n',
      { itself: 'quarter: let quarter = hip / 4', from: ['bodies.draft value hip (3)'], moves: [] },
      beside,
    );
    checkBuilt(
      'let wide = 3cm\n#   ^ here\n',
      { itself: 'wide: let wide = 3cm', from: [], moves: ['other.draft value half (2)'] },
      { 'other.draft': 'use "under-test.draft"\nlet half = wide / 2\n' },
    );
  });

  it('is nothing for a word that names nothing', () =>
    checkBuilt('let wide = 3cm\n# ^ here\n', { itself: undefined, from: [], moves: [] }));
});

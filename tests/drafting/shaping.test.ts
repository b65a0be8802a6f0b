/** Fish darts, pleats, gathers and faulty darts: what is drawn, what is sewn, what is said. */
import assert from 'node:assert/strict';
import { areaOf, distance } from '../../server/geometry';
import type { Edge, Pattern, Piece } from '../../server/drafting/model';
import { checkDraft, patternIn, saidOf } from '../support/drafts';

/** A rectangle of 30cm by 40cm, whatever lines its piece has besides. */
const panel = (lines: string, more = ''): string => `draft panel {
  point a = origin
  point b = a right 30cm
  point c = b down 40cm
  point d = a down 40cm
}
piece front of panel {
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    back straight to a
  }
${lines}
}
${more}`;

const pieceOf = (pattern: Pattern, name = 'front'): Piece => {
  const found = pattern.pieces.find((piece) => piece.name === name);
  assert.ok(found, `${name} is made: ${pattern.findings.map(({ finding }) => finding.message).join('\n')}`);
  return found;
};

const front = (lines: string): Piece => pieceOf(patternIn(panel(lines)));

const edge = (piece: Piece, name: string): Edge => piece.edges.find((one) => one.name === name)!;

const near = (found: number, wanted: number, within = 1e-6): void =>
  assert.ok(Math.abs(found - wanted) <= within, `${found} should be ${wanted}`);

describe('pleats that are added', () => {
  it('let the piece grow by what they take, from the edge to the opposite one', () => {
    const piece = front(
      '  pleats fan = 3 knife on top at 6cm, 12cm, 18cm from a, taking 4cm each, folds toward side, added',
    );
    const [top, hem] = [edge(piece, 'top'), edge(piece, 'hem')];
    near(top.drawn, 420);
    near(top.sewn, 300);
    near(hem.sewn, 420);
    near(edge(piece, 'side').sewn, 400);
    near(piece.area, 420 * 400, 1e-3);
  });

  it('that meet are drawn three times as wide as they are sewn', () => {
    // common practice, computed: each knife pleat takes twice its depth, and pleats that meet are as deep as they are apart
    const piece = front(
      '  pleats fan = 10 knife on top from a to b, taking 6cm each, folds toward side, added',
    );
    const top = edge(piece, 'top');
    near(top.drawn, 3 * top.sewn);
    assert.deepEqual(
      saidOf(panel('  pleats fan = 10 knife on top from a to b, taking 6cm each, folds toward side, added')),
      [],
    );
  });

  it('lie where they are told, each in the middle of its share where they are told evenly', () => {
    const [row] = front(
      '  pleats fan = 3 knife on top from a to b, taking 4cm each, folds toward side, added',
    ).shaping!.pleats;
    assert.deepEqual(row!.places, [50, 150, 250]);
  });

  it('carry with them what is drawn on the part that moves', () => {
    const piece = front(
      '  balance line hip from (a down 20cm) to (b down 20cm)\n  pleats fan = 1 knife on top at 10cm from a, taking 4cm each, folds toward side, added',
    );
    near(piece.balance[0]!.path.length, 340);
    near(piece.corners.find(({ name }) => name === 'c')!.point.x, 340);
  });

  it('run along the grain, else square to the edge', () => {
    const slanting = (lines: string) =>
      panel(lines).replace('point b = a right 30cm', 'point b = a right 30cm down 6cm');
    const down = (text: string): { x: number; y: number } => {
      const { start } = pieceOf(patternIn(text)).shaping!.pleats[0]!.pleats[0]!;
      const along = start.tangentAt(0);
      return { x: along.x, y: along.y };
    };
    const line = '  pleats fan = 1 knife on top at 10cm from a, taking 4cm each, folds toward side, added';
    near(down(slanting(`  grain along back\n${line}`)).x, 0);
    near(down(slanting(line)).x, -6 / Math.hypot(30, 6));
  });
});

describe('pleats out of the width drawn', () => {
  it('leave the outline and let the edge be sewn shorter', () => {
    const piece = front(
      '  pleats fan = 2 inverted on top at 8cm, 16cm from a, taking 5cm each, out of the width drawn',
    );
    near(edge(piece, 'top').drawn, 300);
    near(edge(piece, 'top').sewn, 200);
    near(piece.area, 300 * 400, 1e-3);
    // the second lies beyond the first by what that takes
    near(piece.shaping!.pleats[0]!.pleats[1]!.start.start.x, 210);
  });

  it('are counted from either end alike', () => {
    const at = (point: string): number[] =>
      front(
        `  pleats fan = 2 inverted on top at 8cm, 12cm from ${point}, taking 5cm each, out of the width drawn`,
      )
        .shaping!.pleats[0]!.pleats.map(({ start }) => start.start.x)
        .sort((a, b) => a - b);
    assert.deepEqual(at('a').map(Math.round), [80, 170]);
    assert.deepEqual(
      at('b')
        .map((x) => Math.round(300 - x - 50))
        .reverse(),
      [80, 170],
    );
  });

  it('of box form fold away from each other, half of what is taken on each side', () => {
    const { pleats } = front(
      '  pleats fan = 1 box on top at 10cm from a, taking 8cm each, out of the width drawn',
    ).shaping!.pleats[0]!;
    assert.deepEqual(
      pleats.map(({ folds, width }) => [folds, width]),
      [
        ['end', 40],
        ['start', 40],
      ],
    );
  });

  it('of inverted form take four times the depth of their folds: one width of one side, three of the other', () => {
    // Baldt, Clothing for Women (1916): for an inverted pleat at a seam add its width to one edge and three to the other
    const piece = front(
      '  pleats fan = 1 inverted on top at 10cm from a, taking 4 * 2cm each, out of the width drawn',
    );
    const { start, end } = piece.shaping!.pleats[0]!.pleats[0]!;
    near(distance(start.start, end.start) / 4, 20);
    near(edge(piece, 'top').drawn - edge(piece, 'top').sewn, (1 + 3) * 20);
  });

  it('can not take all of an edge', () => {
    assert.deepEqual(
      saidOf(panel('  pleats fan = 3 inverted on top from a to b, taking 10cm each, out of the width drawn')),
      [
        'pleats-off-edge: The pleats of fan take 30cm in all, but top has 30cm. Move them, take less each, or say added.',
      ],
    );
  });
});

describe('gathers', () => {
  it('draw a stretch up to its length, and what is sewn of the edge with it', () => {
    const piece = front('  gathers fullness on top from 5cm from a to 5cm from b, to 8cm');
    near(edge(piece, 'top').drawn, 300);
    near(edge(piece, 'top').sewn, 50 + 80 + 50);
  });

  it('of a ruffle of one and a half times its line are usual', () => {
    // Ingalls, Text-Book on Domestic Art (c. 1911): a ruffle is one and a half times the line it is sewn to
    assert.deepEqual(saidOf(panel('  gathers ruffle on top, to 20cm')), []);
  });

  it('are counted by seams and by length, not by drawn', () => {
    checkDraft(`${panel('  gathers fullness on top, to 20cm')}
expect length(front.top) = 20cm
expect drawn(front.top) = 30cm
`);
  });

  it('let a stretch of a seam count as it is drawn up', () => {
    const text = `${panel('  gathers fullness on top from a to 10cm from b, to 10cm')}
piece plain worked from front {
}
seam joined front.top from a to (on front.top halfway) = plain.top from a to (on plain.top halfway)
`;
    const [seam] = patternIn(text).seams;
    near(seam!.leftLength, 75);
  });
});

describe('fish darts', () => {
  const lines =
    '  fish dart shaping from (a right 15cm down 5cm) to (a right 15cm down 25cm), 3cm wide at 8cm from (a right 15cm down 5cm), pressed toward back';

  it('have two points and their width at the place between', () => {
    const [dart] = front(lines).shaping!.fishDarts;
    near(distance(dart!.left, dart!.right), 30);
    near(dart!.left.y, 130);
    assert.equal(dart!.pressed, 'right');
  });

  it('change neither the outline nor an edge', () => {
    const piece = front(lines);
    near(piece.area, 300 * 400, 1e-3);
    near(edge(piece, 'top').sewn, 300);
  });

  it('answer for their widest places, nearer to and farther from where they are pressed', () => {
    checkDraft(`${panel(lines)}
expect distance(front.shaping.inner, front.a) < distance(front.shaping.outer, front.a)
`);
  });

  it('are carried when the paper is turned over, and pressed to the same side of the cloth', () => {
    const pattern = patternIn(panel(lines, 'piece other worked from front mirrored {\n}\n'));
    const [own, other] = [pieceOf(pattern), pieceOf(pattern, 'other')].map(
      ({ shaping }) => shaping!.fishDarts[0]!,
    );
    near(other!.from.x, -own!.from.x);
    assert.equal(other!.pressed, 'left');
  });
});

describe('a fault in what shapes a piece', () => {
  it('takes neither the piece nor what else shapes it away, but compares no seam of it', () => {
    const text = `${panel(`  dart one on top at 10cm from a, 2cm wide, 9cm long
  dart two on top at 29cm from a, 4cm wide, 9cm long`)}
piece plain of panel {
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    back straight to a
  }
}
seam joined front.top = plain.top
`;
    const pattern = patternIn(text);
    assert.deepEqual(
      pieceOf(pattern).darts.map(({ name }) => name),
      ['one'],
    );
    assert.deepEqual(
      pattern.findings.map(({ finding }) => finding.code),
      ['darts-overlap'],
    );
    assert.equal(pattern.seams[0]!.comparable, false);
  });

  it('is told of a name that leads nowhere as of any other, and the piece is drawn', () => {
    const pattern = patternIn(panel('  dart one on top at 10cm from a, widht wide, 9cm long'));
    assert.deepEqual(
      pattern.findings.map(({ finding }) => finding.code),
      ['unknown-name'],
    );
    assert.equal(pieceOf(pattern).darts.length, 0);
  });

  it('leaves the piece as well where the line could not be read at all', () => {
    const pattern = patternIn(panel('  dart one on top at'));
    assert.deepEqual(pieceOf(pattern).unbuilt, ['one']);
  });
});

describe('a dart that was closed', () => {
  it('is named with the line that closed it, however many pieces ago', () => {
    checkDraft(`${panel('  dart one on top at 10cm from a, 2cm wide, 9cm long')}
piece flared worked from front {
  close one into hem
}
piece again worked from flared {
  swing one to side at halfway
#       ^^^ error[unknown-name]: one was closed by “close one into hem” before: there is no such dart any more
#       | at this step.
#       see \`close one into hem\`: one was closed here.
}
`);
  });
});

describe('a dart drafted in the outline', () => {
  const drafted = (more: string): string => `draft panel {
  point a = origin
  point p = a right 14cm
  point q = p right 2cm
  point apex = p right 1cm down 12cm
  point b = q right 14cm
  point c = b down 40cm
  point d = a down 40cm
}
piece front of panel {
  cut pair
  outline from a {
    top straight to p
      then dart shaping by apex to q
      then straight to b
    side straight to c
    hem straight to d
    back straight to a
  }
  grain along back
${more}
}
`;

  it('is trued by a line of its piece: legs alike, the bend gone, and what was moved on record', () => {
    const piece = pieceOf(patternIn(drafted('  true top')));
    const [dart] = piece.darts;
    near(distance(dart!.from, dart!.pivot), distance(dart!.to, dart!.pivot), 0.01);
    const [trued] = piece.trued;
    near(trued!.kinks[0]!, -(2 * Math.atan(1 / 12) * 180) / Math.PI);
    near(trued!.sewnBefore, 280);
    assert.ok(trued!.moved > 1);
    assert.ok(Math.abs(areaOf(piece.edges.map(({ path }) => path)) - piece.area) < 1e-6);
  });

  it('is left as it is drafted without such a line', () => {
    const piece = pieceOf(patternIn(drafted('')));
    near(edge(piece, 'top').sewn, 280);
    assert.deepEqual(piece.trued, []);
  });
});

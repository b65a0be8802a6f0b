/** What stands on a printed piece: all that its cutter must know, and none of it over a line or over other words. */
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Workshop } from '../../server/drafting/workshop';
import { draw } from '../../server/drawing/draw';
import type { PieceDrawing } from '../../server/drawing/model';
import { printed, type PrintedOptions } from '../../server/drawing/paper/printed';
import { paperNamed } from '../../server/drawing/paper/papers';
import { toPdf } from '../../server/drawing/paper/pdf';
import { missingLetters, printable } from '../../server/drawing/paper/font';
import { apron, apronWith } from '../support/apron';
import { diskDoor } from '../support/door';
import { drafted } from '../support/drafted';
import { awayFrom, chordsOf, collisions, cutLabels, cutWords } from '../support/lettering';
import { root } from '../support/sources';

const folder = join(root, 'samples');
const wardrobe = readdirSync(folder).filter((name) => name.endsWith('.draft'));
/** Each is drafted and printed once for all that is asked of it. */
function once<T>(make: (name: string) => T): (name: string) => T {
  const made = new Map<string, T>();
  return (name) => {
    if (!made.has(name)) made.set(name, make(name));
    return made.get(name)!;
  };
}
const sample = once((name) => new Workshop(diskDoor(folder)).pattern(pathToFileURL(join(folder, name)).href));
const printedOf = once((name) => printed(sample(name)));
const lettered = (text: string, options: PrintedOptions = {}) => printed(drafted(text), options).drawing;
const piecesOf = (name: string) => printedOf(name).drawing.pieces;
const said = ({ texts }: PieceDrawing): string => texts.map(({ text }) => text).join(' | ');

describe('the words on a printed piece', function () {
  this.timeout(60_000);

  it('never lie on a line nor on each other, in the whole wardrobe, upright and turned and small', () => {
    for (const name of wardrobe) {
      const pattern = sample(name);
      for (const scale of [1, 5]) {
        const { drawing, turn } = printed(pattern, { scale, date: '2026-11-28', revision: '3' });
        const all = drawing.pieces.flatMap((piece) => [...collisions(piece), ...collisions(turn(piece))]);
        assert.deepEqual(all, [], `${name} at 1:${scale}`);
      }
    }
  });

  it('can be read on the table: capitals of 2.5 mm at least, in the whole wardrobe', () => {
    for (const name of wardrobe) {
      const { drawing, turn } = printedOf(name);
      const small = drawing.pieces
        .flatMap((piece) => [piece, turn(piece)])
        .flatMap(({ texts }) => texts.filter(({ size }) => size < 2.5))
        .map(({ text, size }) => `${text}: ${size}`);
      assert.deepEqual(small, [], name);
    }
  });

  it('name the grain on its line, which runs along no other line and no edge, in the whole wardrobe', () => {
    for (const name of wardrobe) {
      for (const piece of piecesOf(name)) {
        const grain = piece.lines.find(({ role }) => role === 'grain');
        if (grain === undefined) continue;
        const [ax, ay] = [grain.start.x, grain.start.y];
        const [bx, by] = grain.stretches[0]!;
        assert.match(said(piece), /(^| )grain/, `${name} ${piece.name}`);
        const others = { ...piece, lines: piece.lines.filter((line) => line !== grain) };
        for (const [c, d] of chordsOf(others)) {
          const [dx, dy] = [d.x - c.x, d.y - c.y];
          const long = Math.hypot(dx, dy) * Math.hypot(bx! - ax, by! - ay);
          const slant = Math.abs(dx * (by! - ay) - dy * (bx! - ax)) / (long || 1);
          if (slant > 0.05) continue;
          const near = [0.3, 0.5, 0.7].map((share) =>
            awayFrom({ x: ax + (bx! - ax) * share, y: ay + (by! - ay) * share }, [c, d]),
          );
          assert.ok(
            Math.min(...near) > 6,
            `${name}: the grain of ${piece.name} lies ${Math.min(...near)} mm off`,
          );
        }
      }
    }
  });

  it('say the pattern, the body, which piece of how many, how it is cut, and which line is which', () => {
    const [back] = piecesOf('harbour-skirt.draft');
    for (const words of ['back', 'Harbour skirt', 'for ferrywoman', 'piece 1 of 3', 'cut pair', 'grain'])
      assert.ok(
        back!.texts.some(({ text }) => text === words),
        words,
      );
    assert.match(said(back!), /finished size: the thin dashed line/);
  });

  it('say of each edge its finished length, what it is sewn to, and its allowance', () => {
    const [back, front] = piecesOf('harbour-skirt.draft');
    assert.match(said(back!), /centre 67cm, sewn to its pair, a zip over 20cm/);
    assert.match(said(back!), /hem 25\.75cm, turned up 4cm/);
    assert.match(said(front!), /centre 68cm, on the fold, never cut/);
    for (const words of ['allow 2.5cm', 'allow 1.5cm', 'allow 4cm'])
      assert.ok(said(back!).includes(words), words);
    for (const name of wardrobe) {
      const pattern = sample(name);
      const { drawing } = printedOf(name);
      for (const piece of pattern.pieces.filter(({ cut }) => cut !== undefined)) {
        const words = said(drawing.pieces.find((one) => one.name === piece.name)!);
        for (const edge of piece.edges)
          assert.ok(
            words.includes(`${edge.name} `) || words.includes(`${edge.name}:`),
            `${name} ${edge.name}`,
          );
      }
    }
  });

  it('say of a piece that serves both sides what it is sewn to, and mark where its opening ends once', () => {
    const [top] = piecesOf('two-piece-sleeve.draft');
    assert.match(said(top!), /sewn to back armhole and front armhole, eased by 3cm/);
    assert.match(said(top!), /sewn to under-sleeve hind, buttons over 9cm/);
    assert.equal(top!.lines.filter(({ tip }) => tip?.startsWith('end of the buttoned opening')).length, 1);
  });

  it('say that an edge is stretched at that edge, and of its partner that the other one is', () => {
    const [front, back] = piecesOf('trousers.draft');
    assert.match(said(back!), /inseam [\d.]+cm, sewn to front inseam, stretched by 6mm/);
    assert.match(said(front!), /inseam [\d.]+cm, sewn to back inseam, which is stretched by 6mm/);
    assert.doesNotMatch(said(front!) + said(back!), /eased/);
  });

  it('say a width that runs in the order in which it is met, whichever way the words are read', () => {
    const pattern = sample('trousers.draft');
    const { drawing, turn } = printed(pattern);
    const back = drawing.pieces.find(({ name }) => name === 'back')!;
    for (const piece of [back, turn(back)]) {
      const words = piece.texts.find(({ text }) => /^allow (1cm to 4cm|4cm to 1cm)$/.test(text))!;
      assert.ok(words, said(piece));
      const rise = piece.lines.find(({ role, name }) => role === 'sewing' && name === 'rise')!;
      // the rise is drawn from the waist, where most is allowed
      const end = rise.stretches.at(-1)!;
      const angle = (words.turn * Math.PI) / 180;
      const [x, y] = [end.at(-2)! - rise.start.x, end.at(-1)! - rise.start.y];
      const isDown = x * Math.cos(angle) + y * Math.sin(angle) > 0;
      assert.equal(words.text, isDown ? 'allow 4cm to 1cm' : 'allow 1cm to 4cm');
    }
  });

  it('say a width that runs as it is met on the stretch where they stand, where an edge doubles back', () => {
    const text = `pattern "Slotted flat"
draft flat {
  point a = origin
  point b = a right 20cm
  point e = a right 23cm
  point c = b down 60cm
  point d = e down 60cm
  point f = a right 43cm
  point g = f down 80cm
  point h = a down 80cm
  line down-slot = b to c
  line foot-of-slot = c to d
  line up-slot = d to e
  curve round-slot = run down-slot then foot-of-slot then up-slot
}
piece flap of flat {
  cut 1
  outline from a {
    near straight to b
    slot along round-slot to e
    far straight to f
    side straight to g
    foot straight to h
    back straight to a
  }
  grain along back
  allow 1cm
  allow 8mm at b running to 4mm at e
}
`;
    const { drawing, turn } = printed(drafted(text));
    for (const piece of [drawing.pieces[0]!, turn(drawing.pieces[0]!)]) {
      const words = piece.texts.find(({ text }) => /^allow (8mm to 4mm|4mm to 8mm)$/.test(text));
      assert.ok(words, said(piece));
      const slot = piece.lines.find(({ role, name }) => role === 'sewing' && name === 'slot')!;
      const [c, d, e] = slot.stretches.map((to) => ({ x: to.at(-2)!, y: to.at(-1)! }));
      const [start, end] = [slot.start, c!, d!, e!]
        .slice(1)
        .map((to, i) => [[slot.start, c!, d!][i]!, to] as const)
        .sort((one, other) => awayFrom(words.at, one) - awayFrom(words.at, other))[0]!;
      const angle = (words.turn * Math.PI) / 180;
      const isAlong = (end.x - start.x) * Math.cos(angle) + (end.y - start.y) * Math.sin(angle) > 0;
      assert.equal(words.text, isAlong ? 'allow 8mm to 4mm' : 'allow 4mm to 8mm');
    }
  });

  it('tell of every bone, eyelet, button and hole what it is, in the whole wardrobe', () => {
    let found = 0;
    for (const name of wardrobe) {
      const pattern = sample(name);
      const { drawing } = printedOf(name);
      for (const piece of pattern.pieces.filter(({ cut }) => cut !== undefined)) {
        const words = said(drawing.pieces.find((one) => one.name === piece.name)!);
        for (const mark of piece.marks) {
          assert.ok(words.includes(mark.name), `${name}: ${mark.name} of ${piece.name}`);
          found++;
        }
      }
    }
    assert.ok(found > 10);
    const [back] = piecesOf('laced-bodice.draft');
    assert.match(said(back!), /back-bone, bone, 23\.23cm long/);
    const front = piecesOf('laced-bodice.draft').find(({ name }) => name === 'front-left')!;
    assert.match(said(front), /lacing-holes, 11 eyelets, 2\.65cm apart/);
    assert.ok(front.texts.some(({ text, role }) => role === 'edge' && text.startsWith('lacing-holes')));
  });

  it('say which line is the finished size, and that edges which are laced all along only meet', () => {
    const pieces = piecesOf('laced-bodice.draft');
    const words = (name: string) => said(pieces.find((piece) => piece.name === name)!);
    assert.match(words('shoulder-straps'), /no allowance: the line is the finished size/);
    assert.match(words('front-left'), /meets its pair, laces over/);
  });

  it('say side and right side up where the wearer’s sides differ', () => {
    const right = piecesOf('princess-bodice.draft').find(({ name }) => name === 'side-front-right')!;
    assert.match(said(right), /cut 1 right, right side up/);
    assert.match(said(right), /for the wearer’s right/);
  });

  it('say the day and the revision that were given, and none that were not', () => {
    const [dated] = lettered(apron, { date: '2026-11-28', revision: 'after the second fitting' }).pieces;
    assert.match(said(dated!), /2026-11-28, revision after the second fitting/);
    assert.doesNotMatch(said(lettered(apron).pieces[0]!), /revision|20\d\d-/);
  });

  it('say the revision and the day of the pattern’s first line, and others where they are given', () => {
    const text = apronWith('apron"', 'apron", revision "2, pocket", dated 2026-11-27');
    const [own] = lettered(text).pieces;
    assert.match(said(own!), /2026-11-27, revision 2, pocket/);
    const [given] = lettered(text, { revision: '3' }).pieces;
    assert.match(said(given!), /2026-11-27, revision 3/);
    const [alone] = lettered(apronWith('apron"', 'apron", dated 2026-11-27')).pieces;
    assert.match(said(alone!), /\| 2026-11-27 \|/);
  });

  it('count the pieces of the whole pattern when some are printed', () => {
    const { pieces } = lettered(apron, { pieces: ['bib'] });
    assert.equal(pieces.length, 1);
    assert.match(said(pieces[0]!), /piece 2 of 2/);
  });

  it('say that a piece has no grain, and how many errors it has', () => {
    const text = apronWith('  grain from top-left to foot-left\n', '');
    const [skirt, bib] = lettered(text, { errorsOf: (piece) => (piece === 'bib' ? 2 : 0) }).pieces;
    assert.match(said(bib!), /no grain stated/);
    assert.match(said(bib!), /2 errors: mend before you cut/);
    assert.doesNotMatch(said(skirt!), /grain stated|error/);
  });

  it('stand on the piece itself, a narrow stand included, in the whole wardrobe', () => {
    for (const name of wardrobe) {
      const { drawing, turn } = printedOf(name);
      for (const piece of drawing.pieces.flatMap((one) => [one, turn(one)])) {
        const spots = chordsOf(piece).flat();
        const [low, high] = [Math.min(...spots.map(({ y }) => y)), Math.max(...spots.map(({ y }) => y))];
        const outside = piece.texts.filter(({ at }) => at.y < low || at.y > high).map(({ text }) => text);
        assert.deepEqual(outside, [], `${name} ${piece.name}`);
      }
    }
  });

  it('stand below a piece that is too small for them, within its frame, and its name stays on it', () => {
    const small = apronWith('waist-left right width', 'waist-left right 2cm').replace(
      'down 50cm',
      'down 2cm',
    );
    const [skirt] = lettered(small.replace('down 50cm', 'down 2cm')).pieces;
    assert.deepEqual(collisions(skirt!), []);
    const below = skirt!.texts.filter(({ at }) => at.y > 40);
    assert.ok(below.some(({ text }) => text.includes('cut 1')));
    for (const { at } of below) assert.ok(at.y < skirt!.frame.bottom && at.x < skirt!.frame.right);
  });
});

describe('the names of edges in a drawing', () => {
  it('slide aside of marks, darts and balance lines, in the whole wardrobe, where their edge has room', () => {
    const hit = wardrobe.flatMap((name) =>
      draw(sample(name)).pieces.flatMap((piece) => {
        const edges = piece.texts.filter(({ role }) => role === 'edge');
        return collisions({ ...piece, texts: edges });
      }),
    );
    // hollow all along, as short as its name, and beside a row of buttons from end to end
    assert.deepEqual(hit, [
      'back-right: armhole 22.17cm on a line',
      'back-left: armhole 22.1cm on a line',
      'stand: front 3.75cm on a line',
      'front: front-edge 24.5cm on a line',
    ]);
  });
});

describe('letters for paper', () => {
  it('lose what steers others and has no look, and keep the rest', () => {
    assert.equal(printable('a\u202eb\u200dc\n d\ufe0f'), 'abc d');
    assert.equal(printable('E\u0301t\u00e9 <50 %> "x"'), '\u00c9t\u00e9 <50 %> "x"');
  });

  it('that the font lacks are told, each once', () => {
    assert.deepEqual(missingLetters(['שק 🧵', 'Ärmel ש']), ['ש', 'ק', '🧵']);
  });
});

describe('words on sheets', function () {
  this.timeout(60_000);

  it('keep off the sheets’ edges: a label stands whole on one sheet', async () => {
    for (const name of ['harbour-skirt.draft', 'sleeve.draft', 'trousers.draft']) {
      const { drawing, turn, off } = printedOf(name);
      const { tiling, drawing: laid } = await toPdf(drawing, { paper: paperNamed('A4')!, turn, off });
      assert.deepEqual(cutLabels(laid, tiling!), [], name);
    }
  });

  it('keep off them along edges too: another stretch, a shorter word or the label is found first', async () => {
    for (const [name, size] of [
      ['court-skirt.draft', 'A4'],
      ['princess-bodice.draft', 'A4'],
      ['bodice-block.draft', 'Letter'],
      ['harbour-skirt.draft', 'Letter'],
      ['waistcoat.draft', 'Letter'],
    ] as const) {
      const { drawing, turn, off } = printed(sample(name), { date: '2026-11-28' });
      const { tiling, drawing: laid } = await toPdf(drawing, { paper: paperNamed(size)!, turn, off });
      assert.deepEqual(cutWords(laid, tiling!, ['title', 'detail', 'edge']), [], `${name} on ${size}`);
      const words = laid.pieces.map(said).join(' | ');
      for (const { name: edge } of sample(name).pieces.flatMap(({ edges }) => edges))
        assert.ok(words.includes(`${edge} `), `${name} on ${size}: ${edge}`);
    }
  });
});

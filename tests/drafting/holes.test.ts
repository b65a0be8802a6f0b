/** Holes: closed like an outline, cut out of the area, with edges of their own. */
import assert from 'node:assert/strict';
import { areaOf } from '../../server/geometry';
import { saidOf } from '../support/drafts';
import { drawnIn, linesOf, panel, panelText, pieceIn } from '../support/panel';

const WHOLE = 200 * 300;
const ROUND = `point top-of-eye = middle up 4cm
circle eye = centre middle radius 4cm
hole keyhole from top-of-eye {
  rim along eye to top-of-eye
}`;
const SLOT = `hole slot from (a right 5cm down 5cm) {
  mouth straight to (a right 9cm down 5cm)
  inner straight to (a right 9cm down 11cm)
  foot straight to (a right 5cm down 11cm)
  outer straight to (a right 5cm down 5cm)
}`;

describe('a hole', () => {
  it('takes its area out of the piece: a round one π r²', () => {
    const piece = pieceIn(panel(ROUND));
    assert.ok(Math.abs(piece.holes[0]!.area - Math.PI * 40 * 40) < 1e-4);
    assert.ok(Math.abs(piece.area - (WHOLE - Math.PI * 40 * 40)) < 1e-4);
  });

  it('takes the sum of several out of it', () => {
    const { area, holes } = pieceIn(panel(`${ROUND}\n${SLOT}`));
    assert.deepEqual(
      holes.map(({ name }) => name),
      ['keyhole', 'slot'],
    );
    assert.ok(Math.abs(area - (WHOLE - Math.PI * 1600 - 40 * 60)) < 1e-4);
  });

  it('is cut within its sewing line by the allowance: radius less allowance', () => {
    const { holes, cutting } = pieceIn(panel(`${ROUND}\nallow 1cm`));
    assert.ok(Math.abs(areaOf(holes[0]!.cutting!) - Math.PI * 30 * 30) < 0.5);
    assert.equal(Math.round(areaOf(cutting!)), 220 * 320);
  });

  it('has the allowance of each of its edges', () => {
    const { holes } = pieceIn(panel(`${SLOT}\nallow 1cm\nallow 5mm at mouth, foot\nallow 0cm at outer`));
    // 40 by 60: 10 off one side, none off the other, 5 off both ends
    assert.ok(Math.abs(areaOf(holes[0]!.cutting!) - 30 * 50) < 1e-6);
  });

  it('walked the other way round is the same hole', () => {
    const other = SLOT.replace(
      'mouth straight to (a right 9cm down 5cm)',
      'mouth straight to (a right 5cm down 11cm)',
    ).replace('foot straight to (a right 5cm down 11cm)', 'foot straight to (a right 9cm down 5cm)');
    const [one, two] = [SLOT, other].map((lines) => pieceIn(panel(`${lines}\nallow 5mm`)).holes[0]!);
    assert.equal(two!.area, one!.area);
    assert.ok(Math.abs(areaOf(two!.cutting!) - areaOf(one!.cutting!)) < 1e-6);
  });

  it('that its allowances fill has no cutting line, and that is told', () => {
    const text = panelText(`${SLOT}\nallow 2.5cm`);
    assert.equal(pieceIn(panel(`${SLOT}\nallow 2.5cm`)).holes[0]!.cutting, undefined);
    assert.match(saidOf(text).join('\n'), /hole-too-small/);
    // a square turned inside out both ways looks like a hole again
    const square = SLOT.replaceAll('down 11cm', 'down 9cm');
    assert.equal(pieceIn(panel(`${square}\nallow 2.6cm`)).holes[0]!.cutting, undefined);
    assert.ok(pieceIn(panel(`${square}\nallow 1.9cm`)).holes[0]!.cutting);
  });

  it('has edges that are sewn and finished as those of the outline are', () => {
    const seam = `piece patch of panel {
  cut pair
  outline from (a right 5cm down 5cm) {
    p-mouth straight to (a right 9cm down 5cm)
    p-inner straight to (a right 9cm down 11cm)
    p-foot straight to (a right 5cm down 11cm)
    p-outer straight to (a right 5cm down 5cm)
  }
  grain from a to d
}
seam mouth patch.p-mouth = front.mouth
seam long patch.p-inner = front.inner
finish rest front.foot, front.outer, patch.p-foot, patch.p-outer bound 6mm`;
    const pattern = panel(SLOT, seam);
    assert.deepEqual(
      pattern.seams.map(({ name, rightLength, difference }) => [name, rightLength, difference]),
      [
        ['mouth', 40, 0],
        ['long', 60, 0],
      ],
    );
    const open = saidOf(panelText(SLOT, seam)).filter((said) => said.startsWith('unfinished-edge'));
    assert.deepEqual(
      open.map((said) => /of ([^:]+):/.exec(said)![1]),
      ['front.top, front.side, front.hem and front.centre'],
    );
  });

  it('answers for the lengths of its edges, and takes notches', () => {
    const pattern = panel(
      SLOT,
      'let long = length(front.inner)\nnotch half on front.inner at halfway, single',
    );
    assert.deepEqual(pattern.values.get('long'), { kind: 'length', amount: 60 });
    const [notch] = pieceIn(pattern).notches;
    assert.deepEqual([notch!.edge, notch!.distance], ['inner', 30]);
  });

  it('with a gap is an unclosed outline, told by the name of the hole', () => {
    const said = saidOf(panelText(SLOT.replace('  outer straight to (a right 5cm down 5cm)\n', '')));
    assert.match(
      said.find((one) => one.startsWith('unclosed-outline'))!,
      /The outline of the hole slot in front does not come back to its start: after foot there is a gap of 6cm/,
    );
  });

  it('whose edge bears the name of another edge is refused', () => {
    const said = saidOf(panelText(SLOT.replace('mouth straight', 'hem straight')));
    assert.match(said.join('\n'), /defined-twice: This piece has an edge called hem already/);
  });

  it('without edges, or with a dart, is told', () => {
    assert.match(
      saidOf(panelText('hole slot from a {\n}')).join('\n'),
      /empty-outline: The hole slot has no edges/,
    );
    const dart =
      'mouth straight to (a right 6cm down 5cm) then dart tuck by middle to (a right 9cm down 5cm)';
    const said = saidOf(panelText(SLOT.replace('mouth straight to (a right 9cm down 5cm)', dart)));
    assert.match(said.join('\n'), /wrong-kind: A hole has no darts to be sewn/);
  });

  it('that reaches over the outline, or lies outside it, is an error', () => {
    const across = SLOT.replaceAll('right 9cm', 'right 25cm');
    const beyond = SLOT.replaceAll('right 9cm', 'right 29cm').replaceAll('right 5cm', 'right 22cm');
    assert.match(
      saidOf(panelText(across)).join('\n'),
      /hole-outside: The hole slot reaches over side of front/,
    );
    assert.match(saidOf(panelText(beyond)).join('\n'), /hole-outside: The hole slot lies outside front/);
    assert.doesNotMatch(saidOf(panelText(`${ROUND}\n${SLOT}`)).join('\n'), /hole-outside/);
  });

  it('that runs into another hole is an error', () => {
    const said = saidOf(panelText(`${ROUND}\n${SLOT.replaceAll('down 11cm', 'down 14cm')}`));
    assert.match(said.join('\n'), /hole-outside: The hole slot runs into the hole keyhole/);
  });

  it('moves with the part of the piece that holds it, and is inherited', () => {
    const pattern = panel(
      SLOT,
      'piece long worked from front {\n  lengthen 3cm at ((a down 3cm) to (b down 3cm))\n}',
    );
    const [hole] = pieceIn(pattern, 'long').holes;
    assert.equal(hole!.edges[0]!.path.start.y, 80);
    assert.ok(Math.abs(pieceIn(pattern, 'long').area - (200 * 330 - 2400)) < 1e-6);
  });

  it('may be cut into a piece that is worked further', () => {
    const pattern = panel('', `piece cut-out worked from front {\n  ${SLOT.replaceAll('\n', '\n  ')}\n}`);
    assert.equal(pieceIn(pattern, 'cut-out').area, WHOLE - 2400);
    assert.equal(pieceIn(pattern).area, WHOLE);
  });

  it('is drawn as a closed thick line, with its sewing lines round it', () => {
    const drawing = drawnIn(panel(`${SLOT}\nallow 5mm`));
    const [cut] = linesOf(drawing, 'slot');
    assert.deepEqual([cut!.role, cut!.closed, cut!.tip], ['hole', true, 'slot, cut out']);
    assert.deepEqual(
      ['mouth', 'inner', 'foot', 'outer'].flatMap((name) => linesOf(drawing, name).map(({ role }) => role)),
      ['sewing', 'sewing', 'sewing', 'sewing'],
    );
  });
});

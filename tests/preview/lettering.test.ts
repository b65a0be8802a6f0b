/** Words of a piece at every zoom of the preview: large enough to be read, on no line and not on each other. */
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { crossedBy, enclosed, overlap, uprightBox } from '../../client/preview/view/boxes';
import { edgeWordsOf, labelOf, lettered, type LabelAt } from '../../client/preview/view/lettering';
import { Workshop } from '../../server/drafting/workshop';
import { draw } from '../../server/drawing/draw';
import type { DrawnText, PieceDrawing, Spot } from '../../server/drawing/model';
import { pathOf } from '../../server/drawing/path';
import { diskDoor } from '../support/door';
import { drafted } from '../support/drafted';
import { root } from '../support/sources';

const folder = join(root, 'samples');
const wardrobe = readdirSync(folder).filter((name) => name.endsWith('.draft'));

/** Screen pixels a millimetre: from a cloak in a narrow column to a collar in more than full size. */
const ZOOMS = [0.08, 0.2, 0.35, 0.6, 1, 2, 3.8, 8];

const pieces = (): readonly PieceDrawing[] =>
  wardrobe.flatMap(
    (name) => draw(new Workshop(diskDoor(folder)).pattern(pathToFileURL(join(folder, name)).href)).pieces,
  );

/** The corners of what letters cover, worked out here anew. */
function cornersOf(at: Spot, text: string, size: number, turnDeg: number): readonly Spot[] {
  const half = (text.length * 0.54 * size) / 0.72 / 2;
  const angle = (turnDeg * Math.PI) / 180;
  return [
    [-half, -size],
    [half, -size],
    [half, size * 0.1],
    [-half, size * 0.1],
  ].map(([x, y]) => ({
    x: at.x + x! * Math.cos(angle) - y! * Math.sin(angle),
    y: at.y + x! * Math.sin(angle) + y! * Math.cos(angle),
  }));
}

/** The same of a piece's name, which may run upward. */
function ringOf({ at, scale, upward }: LabelAt, { at: { y }, text, size }: DrawnText, middle: number) {
  const off = (y - middle) * scale;
  const spot = upward ? { x: at.x + off, y: at.y } : { x: at.x, y: at.y + off };
  return cornersOf(spot, text, size * scale, upward ? -90 : 0);
}

type Chord = readonly [Spot, Spot];
const sidesOf = (ring: readonly Spot[]): Chord[] => ring.map((a, i) => [a, ring[(i + 1) % ring.length]!]);
const turnOf = (a: Spot, b: Spot, c: Spot) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
const cross = ([a, b]: Chord, [c, d]: Chord) =>
  turnOf(a, b, c) * turnOf(a, b, d) < 0 && turnOf(c, d, a) * turnOf(c, d, b) < 0;
const meet = (a: readonly Spot[], b: readonly Spot[]) =>
  sidesOf(a).some((one) => sidesOf(b).some((other) => cross(one, other)));

/** Lines that words of edges must not lie on, in millimetre chords; the grain makes way for the label alone. */
const linesIn = ({ lines }: PieceDrawing) =>
  lines
    .filter(({ role }) => ['cutting', 'sewing', 'fold', 'dart', 'hole', 'grain'].includes(role))
    .map((line) => {
      const spots = pathOf(line).polyline(0.05);
      return { source: line.source, chords: spots.slice(1).map((q, i): Chord => [spots[i]!, q]) };
    });

describe('words of a piece in the preview', () => {
  it('at no zoom lies the name of an edge on a line, on another name or on the label, in the whole wardrobe', () => {
    const wrong: string[] = [];
    for (const piece of pieces()) {
      const lines = linesIn(piece);
      for (const zoom of ZOOMS) {
        const { edges, label } = lettered(piece, zoom);
        const texts = edgeWordsOf(piece);
        const boxes = edges.flatMap((one, i) => {
          const { text, size, turn, source } = texts[i]!;
          return one ? [{ text, source, ring: cornersOf(one.at, text, size * one.scale, turn) }] : [];
        });
        const [title] = labelOf(piece);
        const name = label && title ? ringOf(label, title, middle(piece)) : [];
        boxes.forEach(({ text, source, ring }, i) => {
          const on = lines.find(
            (line) =>
              line.source !== source &&
              line.chords.some((one) => sidesOf(ring).some((side) => cross(side, one))),
          );
          const other = boxes.slice(i + 1).find((one) => meet(one.ring, ring));
          if (on) wrong.push(`${piece.name} at ${zoom}: ${text} lies on ${on.source}`);
          if (other) wrong.push(`${piece.name} at ${zoom}: ${text} lies on ${other.text}`);
          if (meet(name, ring)) wrong.push(`${piece.name} at ${zoom}: ${text} lies on the label`);
        });
      }
    }
    assert.deepEqual(wrong, []);
  }).timeout(20_000);

  it('the name of an edge that grows stays within its piece, where the next one has its own words', () => {
    const outside: string[] = [];
    for (const piece of pieces()) {
      const cut = piece.lines.filter(({ role, closed }) => role === 'cutting' && closed);
      const round = cut.map((line) => pathOf(line).polyline(0.05));
      if (round.length === 0) continue;
      for (const zoom of ZOOMS)
        lettered(piece, zoom).edges.forEach((one, i) => {
          const { text, at } = edgeWordsOf(piece)[i]!;
          if (one && enclosed(at, round) && !enclosed(one.at, round))
            outside.push(`${piece.name} at ${zoom}: ${text}`);
        });
    }
    assert.deepEqual(outside, []);
  }).timeout(20_000);

  it('a sign of a problem on an edge moves its name aside, or takes its room', () => {
    const [piece] = pieces().filter(
      ({ name, texts }) => name === 'front' && texts.some(({ text }) => text.startsWith('hem ')),
    );
    const at = edgeWordsOf(piece!).findIndex(({ text }) => text.startsWith('hem '));
    const { source } = edgeWordsOf(piece!)[at]!;
    const hem = pathOf(piece!.lines.find((line) => line.source === source && line.role === 'sewing')!);
    const sign = hem.pointAt(hem.length / 2);
    const [before, after] = [[], [sign]].map((signs) => lettered(piece!, 1, signs).edges[at]);
    const away = (one: { readonly at: Spot } | undefined) =>
      one && Math.hypot(one.at.x - sign.x, one.at.y - sign.y);
    assert.ok(away(before)! < 20, `${away(before)}`);
    assert.ok(after === undefined || away(after)! > 30, `${away(after)}`);
  });

  it('what is shown can be read: capitals of seven pixels in a piece’s name, of five and a half in an edge’s', () => {
    for (const piece of pieces())
      for (const zoom of ZOOMS) {
        const { edges, label } = lettered(piece, zoom);
        const texts = edgeWordsOf(piece);
        edges.forEach((one, i) => assert.ok(!one || texts[i]!.size * one.scale * zoom > 5.49, piece.name));
        if (label) assert.ok(labelOf(piece)[0]!.size * label.scale * zoom > 6.99, `${piece.name} ${zoom}`);
      }
  });

  it('every piece has its name where it is a few centimetres large on the screen', () => {
    const nameless = pieces().filter((piece) => {
      const { left, right, top, bottom } = piece.frame;
      const zoom = 200 / Math.min(right - left, bottom - top);
      return lettered(piece, zoom).label === undefined;
    });
    assert.deepEqual(
      nameless.map(({ name }) => name),
      [],
    );
  });

  it('a long name that fits no other way runs upward in small letters', () => {
    const [pocket] = draw(
      drafted(`draft pocket {
  point a = origin
  point b = a right 18cm
  point c = b down 20cm
  point d = a down 20cm
}
piece patch-pocket of pocket {
  cut 1
  outline from a {
    top straight to b
    fore straight to c
    foot straight to d
    rear straight to a
  }
  grain along rear
  allow 1cm
}
finish top patch-pocket.top turned twice 2cm
`),
    ).pieces;
    const { label } = lettered(pocket!, 0.333);
    assert.deepEqual([label?.bare, label?.upward], [true, true]);
  });

  it('a name that crosses the lines of its piece stays within it, and off the piece beside it', () => {
    const strip = draw(drafted('strip shoulder-strap 70cm by 6cm\n')).pieces[0]!;
    const { left, right } = strip.frame;
    for (const zoom of [0.15, 0.2, 0.24, 0.3, 0.4]) {
      const { label } = lettered(strip, zoom);
      if (label === undefined || label.upward) continue;
      const half = ('shoulder-strap'.length * 0.54 * labelOf(strip)[0]!.size * label.scale) / 0.72 / 2;
      assert.ok(label.at.x - half > left && label.at.x + half < right, `it leaves the strip at ${zoom}`);
    }
  });

  it('words that are large enough as they are printed stand where they are printed', () => {
    for (const piece of pieces()) {
      const zoom = 12 / labelOf(piece)[0]!.size;
      const { label } = lettered(piece, zoom);
      assert.deepEqual([label?.scale, label?.bare, label?.at.x], [1, false, labelOf(piece)[0]!.at.x]);
    }
  });
});

const middle = (piece: PieceDrawing): number => {
  const label = labelOf(piece);
  return (label[0]!.at.y + label.at(-1)!.at.y) / 2;
};

describe('boxes of words', () => {
  const box = uprightBox({ x: 0, y: 0 }, 10, 4);
  const turned = { ...box, turn: [Math.SQRT1_2, Math.SQRT1_2] as const };

  it('lie on each other by what they cover, not by what stands round them', () => {
    assert.ok(overlap(box, { ...box, middle: { x: 9, y: 0 } }));
    assert.ok(!overlap(box, { ...box, middle: { x: 11, y: 0 } }));
    // a slanting box reaches less far to the side than its corners are from each other
    assert.ok(overlap(box, { ...turned, middle: { x: 0, y: 5 } }));
    assert.ok(!overlap(box, { ...turned, middle: { x: 6, y: -4.5 } }));
  });

  it('are crossed by a line that runs through them, ends in them or passes them by', () => {
    const course = (...places: readonly (readonly [number, number])[]) => {
      const spots = places.map(([x, y]) => ({ x, y }));
      const frame = { left: -99, top: -99, right: 99, bottom: 99 };
      return { spots, frame };
    };
    const through = course([-20, -8], [20, 8]);
    const level = course([-20, 3], [20, 3]);
    assert.deepEqual([crossedBy(box, through), crossedBy(turned, through)], [true, true]);
    assert.ok(crossedBy(box, course([1, 1], [1, 50])));
    assert.deepEqual([crossedBy(box, level), crossedBy(turned, level)], [false, true]);
    assert.ok(!crossedBy(box, { ...through, frame: { left: 6, top: -99, right: 99, bottom: 99 } }));
  });

  it('lie within a ring and not in its bay', () => {
    const bay = [
      [0, 0],
      [10, 0],
      [10, 10],
      [5, 3],
      [0, 10],
      [0, 0],
    ].map(([x, y]) => ({ x: x!, y: y! }));
    assert.deepEqual([enclosed({ x: 5, y: 1 }, [bay]), enclosed({ x: 5, y: 8 }, [bay])], [true, false]);
  });
});

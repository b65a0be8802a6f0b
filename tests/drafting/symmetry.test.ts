/** A pattern drawn elsewhere on the paper, or its pieces turned and mirrored, measures the same and has the same faults. */
import assert from 'node:assert/strict';
import { catalogue } from '../../server/checks/catalogue';
import { check } from '../../server/checks/index';
import type { Pattern, Piece } from '../../server/drafting/model';
import { Workshop } from '../../server/drafting/workshop';
import { areaOf, mirror, point, rotation, translation, type Affine } from '../../server/geometry';
import { near } from '../support/curves';
import { diskDoor } from '../support/door';
import { drafts, patternOf, samples, sampleText, uriOf } from '../support/faults';
import { turnedPiece, turnedText, TURNINGS, type Turning } from '../support/turned';

/** A millionth of a millimetre, and of a square centimetre. */
const WITHIN = 1e-6;
const AREA_WITHIN = 1e-4;

/** Every origin of the drafts ten metres away; comments and texts stay. */
const shifted = (text: string): string =>
  text
    .split('\n')
    .map((line) =>
      /^\s*#/.test(line) ? line : line.replace(/(?<![\w"-])origin(?![\w-])/g, '(origin right 10m down 10m)'),
    )
    .join('\n');

interface Figure {
  readonly what: string;
  readonly amount: number;
  readonly within: number;
}

/** Every length and area of a pattern. */
function figures(pattern: Pattern): readonly Figure[] {
  const length = (what: string, amount: number): Figure => ({ what, amount, within: WITHIN });
  return [
    ...[...pattern.values].flatMap(([path, value]) =>
      value.kind === 'text' ? [] : [length(path, value.amount)],
    ),
    ...[...pattern.shapes].flatMap(([path, shape]) =>
      shape.kind === 'point' ? [] : [length(path, shape.path.length)],
    ),
    ...pattern.pieces.flatMap(({ name, area, edges }) => [
      { what: name, amount: area, within: AREA_WITHIN },
      ...edges.flatMap((edge) => [
        length(`${name}.${edge.name} drawn`, edge.drawn),
        length(`${name}.${edge.name} sewn`, edge.sewn),
      ]),
    ]),
    ...pattern.seams.map(({ name, difference }) => length(`seam ${name}`, difference)),
  ];
}

const said = (pattern: Pattern) =>
  check(pattern).map(({ code, severity, message }) => `${severity} ${code}: ${message}`);

const WAYS: Readonly<Record<string, Affine>> = {
  'a quarter turn': rotation(point(0, 0), Math.PI / 2),
  'a half turn': rotation(point(0, 0), Math.PI),
  'three quarter turns': rotation(point(0, 0), -Math.PI / 2),
  'one radian': rotation(point(100, 50), 1),
  'a mirror': mirror(point(0, 0), point(1, 2)),
  'ten metres': translation(point(10_000, 10_000)),
};

describe('patterns elsewhere on the paper', () => {
  for (const path of drafts('.')) {
    it(`measure and say the same ten metres away: ${path}`, () => {
      const [here, there] = [patternOf(path), patternOf(path, shifted(sampleText(path)))];
      const moved = figures(there);
      assert.deepEqual(
        moved.map(({ what }) => what),
        figures(here).map(({ what }) => what),
      );
      figures(here).forEach(({ what, amount, within }, i) => near(moved[i]!.amount, amount, within, what));
      assert.deepEqual(said(there), said(here));
    });
  }
});

/** Every file of the samples with its directions turned; `up to` stands where `down to` was the wrong way. */
function turnedPattern(path: string, turning: Turning): Pattern {
  const disk = diskDoor(samples);
  const turned = (uri: string): string | undefined => {
    const text = disk.read(uri);
    return text === undefined ? undefined : turnedText(text, turning);
  };
  const workshop = new Workshop({ ...disk, read: turned });
  const uri = uriOf(path);
  for (;;) {
    const pattern = workshop.pattern(uri);
    const wrong = check(pattern).filter(({ code }) => code === 'other-way');
    if (wrong.length === 0) return pattern;
    for (const { fixes } of wrong.reverse()) {
      const { place, text } = fixes[0]!.edits[0]!;
      const source = workshop.source(place.uri)!.text;
      workshop.setText(place.uri, source.slice(0, place.from) + text + source.slice(place.to));
    }
  }
}

/** Values that say which way a line runs change with it. */
const running = (path: string, pattern: Pattern): boolean => pattern.values.get(path)?.kind === 'angle';

/** A finding without the words of direction in it. */
const undirected = (message: string): string =>
  message
    .replace(/(?<![\w-])(to the )?(up|down|left|right|above|below|across|upper|lower)( of)?(?![\w-])/g, '·')
    .replace(/· and ·/g, '·');

describe('patterns drawn another way round', () => {
  for (const [way, turning] of Object.entries(TURNINGS)) {
    for (const path of drafts('.')) {
      it(`measure and say the same after ${way}: ${path}`, () => {
        const [here, there] = [patternOf(path), turnedPattern(path, turning)];
        const [is, was] = [here, there].map((pattern) =>
          figures(pattern).filter(({ what }) => !running(what, pattern)),
        ) as [Figure[], Figure[]];
        assert.deepEqual(
          was.map(({ what }) => what),
          is.map(({ what }) => what),
        );
        is.forEach(({ what, amount, within }, i) => near(was[i]!.amount, amount, within, what));
        assert.deepEqual(said(there).map(undirected), said(here).map(undirected));
      });
    }
  }
});

describe('pieces laid another way', () => {
  const judging = catalogue.flatMap((entry) =>
    entry.by === 'judgement' && entry.ofPiece ? [{ code: entry.code, judge: entry.ofPiece }] : [],
  );
  const judgements = (piece: Piece, pattern: Pattern): readonly string[] =>
    judging.flatMap(({ code, judge }) =>
      judge(piece, pattern).map(({ message }) => `${code}: ${undirected(message)}`),
    );

  for (const path of [...drafts('.'), ...drafts('faults')]) {
    it(`measure the same and have the same faults: ${path}`, () => {
      const pattern = patternOf(path);
      for (const piece of pattern.pieces) {
        const { name, edges } = piece;
        for (const [way, m] of Object.entries(WAYS)) {
          const moved = turnedPiece(piece, m);
          moved.edges.forEach((edge, i) =>
            near(edge.path.length, edges[i]!.path.length, WITHIN, `${name}.${edge.name}, ${way}`),
          );
          const paths = moved.edges.map((edge) => edge.path);
          near(
            Math.abs(areaOf(paths)),
            Math.abs(areaOf(edges.map((edge) => edge.path))),
            AREA_WITHIN,
            `${name}, ${way}`,
          );
          assert.deepEqual(judgements(moved, pattern), judgements(piece, pattern), `${name}, ${way}`);
        }
      }
    });
  }
});

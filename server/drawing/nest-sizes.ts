/** The sizes of a nest, each written beside its own line, near the line's end, where nothing else is in the way. */
import type { Path, Point } from '../geometry';
import type { DrawnLine, DrawnText } from './model';
import { arrowHeads, HEAD_HALF_WIDTH_MM, HEAD_LENGTH_MM } from './lines';
import { pathOf, rounded } from './path';
import { meets } from './room';

/** Height of the capitals, mm, and the width of a letter against it in the bundled font, with a little room. */
const SIZE = 3.2;
const LETTER = 0.95;
/** From the line to the words, and from the words to whatever else is drawn, mm. */
const OFF = 1.2;
const AROUND = 1;
/**
 * How far another line of its kind must be from the line, mm: where sizes fan out their words stand well apart; where
 * they run closer than the least nobody can tell whose the words are.
 */
const APART = [4.5, 2.5] as const;
/** Places tried along a line. */
const TRIES = 160;
/** Chords of curves for looking where they run, mm. */
const COARSE = 0.4;

type Chord = readonly [Point, Point];

interface Candidate {
  readonly at: Point;
  /** Radians, upright. */
  readonly turn: number;
  readonly crossed: number;
  readonly clear: boolean;
}

export function sizeWords(
  lines: readonly DrawnLine[],
  label: readonly DrawnText[],
  sizes: readonly string[],
): readonly DrawnText[] {
  const drawn = lines.map((line) => ({ line, chords: [...chordsOf(pathOf(line)), ...headChords(line)] }));
  const words: DrawnText[] = [];
  const taken: Chord[] = label.flatMap((text) => strokesOf(text));
  for (const size of sizes) {
    const own = outlineOf(lines, size);
    if (own === undefined) continue;
    const others = drawn.filter(({ line }) => line !== own);
    const alike = others.filter(({ line }) => line.role === own.role).flatMap(({ chords }) => chords);
    const best = bestPlace(pathOf(own), size.length * SIZE * LETTER, {
      all: [...others.flatMap(({ chords }) => chords), ...taken],
      alike,
      words: taken,
    });
    if (best === undefined) continue;
    const word: DrawnText = {
      role: 'size',
      source: own.source,
      text: size,
      at: baseLine(best.at, best.turn),
      size: SIZE,
      turn: rounded((best.turn * 180) / Math.PI),
      ofSize: size,
      ...(best.clear && { clear: true }),
    };
    words.push(word);
    taken.push(...strokesOf(word));
  }
  return words;
}

/** The line by which a size is known: where it is cut, else where it is sewn. */
function outlineOf(lines: readonly DrawnLine[], size: string): DrawnLine | undefined {
  const own = lines.filter(({ ofSize }) => ofSize === size);
  return longest(own.filter(({ role }) => role === 'cutting')) ?? longest(own.filter(isSewn));
}

const isSewn = ({ role }: DrawnLine): boolean => role === 'sewing';

const longest = (lines: readonly DrawnLine[]): DrawnLine | undefined =>
  lines.reduce<DrawnLine | undefined>(
    (best, line) => (best === undefined || pathOf(line).length > pathOf(best).length ? line : best),
    undefined,
  );

interface InTheWay {
  readonly all: readonly Chord[];
  /** The same lines of other sizes. */
  readonly alike: readonly Chord[];
  readonly words: readonly Chord[];
}

/** What it costs, in lines crossed, to stand where the line is not alone, and on other words. */
const NOT_ALONE = 10;
const ON_WORDS = 100;

/** A place on the line, from its end backwards. */
interface OnLine {
  readonly on: Point;
  readonly along: Point;
  readonly turn: number;
}

/** The first place beside the line that is free, the line well alone if it can be; else on it where least is crossed. */
function bestPlace(path: Path, wide: number, inTheWay: InTheWay): Candidate | undefined {
  const { length } = path;
  if (!(length > wide)) return undefined;
  const places = Array.from({ length: TRIES }, (_, i): OnLine => {
    const s = length - wide - ((length - 2 * wide) * i) / TRIES;
    const along = path.tangentAt(s);
    return { on: path.pointAt(s), along, turn: upright(Math.atan2(along.y, along.x)) };
  });
  const all = [...inTheWay.all, ...chordsOf(path)];
  for (const apart of APART) {
    const alone = places.filter(({ on, turn }) => isAlone(on, turn, wide, apart, inTheWay));
    for (const place of alone) {
      const free = beside(place, wide, all);
      if (free !== undefined) return free;
    }
  }
  return onLine(places, wide, inTheWay);
}

const isAlone = (on: Point, turn: number, wide: number, apart: number, { alike }: InTheWay): boolean =>
  crossings(on, turn, { wide, high: 2 * apart }, alike) === 0;

/** On either side of the line, where nothing is met. */
function beside({ on, along, turn }: OnLine, wide: number, all: readonly Chord[]): Candidate | undefined {
  const ways = [1, -1].map((side) => side * (OFF + SIZE / 2));
  const spots = ways.map((off) => ({ x: on.x - along.y * off, y: on.y + along.x * off }));
  const at = spots.find((spot) => crossings(spot, turn, { wide, high: SIZE }, all) === 0);
  return at && { at, turn, crossed: 0, clear: false };
}

function onLine(places: readonly OnLine[], wide: number, inTheWay: InTheWay): Candidate | undefined {
  let spare: Candidate | undefined;
  const [near] = APART.slice(-1);
  for (const { on, turn } of places) {
    const box = { wide, high: SIZE };
    const crossed =
      crossings(on, turn, box, inTheWay.all) +
      (isAlone(on, turn, wide, near!, inTheWay) ? 0 : NOT_ALONE) +
      ON_WORDS * crossings(on, turn, box, inTheWay.words);
    if (spare === undefined || crossed < spare.crossed) spare = { at: on, turn, crossed, clear: true };
  }
  return spare;
}

/** How many chords meet the box of the words. */
function crossings(
  at: Point,
  turn: number,
  box: { readonly wide: number; readonly high: number },
  chords: readonly Chord[],
): number {
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const [half, high] = [box.wide / 2 + AROUND, box.high / 2 + AROUND];
  const reach = half + high;
  const inBox = (p: Point): Point => ({
    x: (p.x - at.x) * c + (p.y - at.y) * s,
    y: (p.y - at.y) * c - (p.x - at.x) * s,
  });
  let count = 0;
  for (const [p, q] of chords) {
    if (Math.max(p.x, q.x) < at.x - reach || Math.min(p.x, q.x) > at.x + reach) continue;
    if (Math.max(p.y, q.y) < at.y - reach || Math.min(p.y, q.y) > at.y + reach) continue;
    if (meets(inBox(p), inBox(q), -half, half, -high, high)) count++;
  }
  return count;
}

/** Never upside down. */
function upright(turn: number): number {
  if (turn > Math.PI / 2 + 1e-5) return turn - Math.PI;
  return turn <= -Math.PI / 2 + 1e-5 ? turn + Math.PI : turn;
}

/** Words are placed by the middle of their base line, half a capital below their own middle. */
function baseLine(at: Point, turn: number): Point {
  return { x: rounded(at.x - (Math.sin(turn) * SIZE) / 2), y: rounded(at.y + (Math.cos(turn) * SIZE) / 2) };
}

/** The words as strokes through their lower, middle and upper part, for keeping clear of them. */
function strokesOf({ text, at, size, turn }: DrawnText): readonly Chord[] {
  const radians = (turn * Math.PI) / 180;
  const [c, s] = [Math.cos(radians), Math.sin(radians)];
  const half = (text.length * size * LETTER) / 2;
  return [0, size / 2, size].map((up): Chord => {
    const [x, y] = [at.x + s * up, at.y - c * up];
    return [
      { x: x - c * half, y: y - s * half },
      { x: x + c * half, y: y + s * half },
    ];
  });
}

function chordsOf(path: Path): readonly Chord[] {
  const points = path.polyline(COARSE);
  return points.slice(1).map((point, i): Chord => [points[i]!, point]);
}

/** Across the back of its arrow heads. */
const headChords = (line: DrawnLine): readonly Chord[] =>
  arrowHeads(line).map(({ at, turn }): Chord => {
    const radians = (turn * Math.PI) / 180;
    const [c, s] = [Math.cos(radians), Math.sin(radians)];
    const corner = (side: number): Point => ({
      x: at.x - c * HEAD_LENGTH_MM - s * side * HEAD_HALF_WIDTH_MM,
      y: at.y - s * HEAD_LENGTH_MM + c * side * HEAD_HALF_WIDTH_MM,
    });
    return [corner(1), corner(-1)];
  });

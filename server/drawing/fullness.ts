/**
 * Pleats and gathers. A pleat: the line that is folded, the line that it is laid on, an arrow from one to the other, and
 * stitching as far as it is stitched down. Gathers: a wave along the stretch, a notch at each end (common practice).
 */
import { say } from '../../grammar/say';
import type { Gathers, Piece, Pleat, Pleats } from '../drafting/model';
import { gathersInWords, pleatsInWords } from '../drafting/pieces/told';
import { add, lerp, Path, scale, signedArea, type Point } from '../geometry';
import type { Around } from './draw';
import type { DrawnLine } from './model';
import { notchStrokes } from './notches';
import { pathLine } from './path';

export const fullnessLines = (piece: Piece, around: Around): DrawnLine[] => {
  const { pleats, gathers } = piece.shaping ?? NONE;
  return [
    ...pleats.flatMap((row) => rowLines(row, around)),
    ...gathers.flatMap((one) => gatherLines(piece, one, around)),
  ];
};

const NONE = { pleats: [], gathers: [] };

type Words = Pick<DrawnLine, 'name' | 'source' | 'tip'>;

function rowLines(row: Pleats, { unit }: Around): DrawnLine[] {
  const { name, source } = row;
  const words = { name, source, tip: `${name}, ${pleatsInWords(row, unit)}` };
  return row.pleats.flatMap((pleat) => pleatLines(pleat, row, words));
}

/** How far below the edge the arrow lies, mm, and between the ends of the lines where they are shorter. */
const ARROW = 30;

function pleatLines({ start, end, folds }: Pleat, { stitched, name }: Pleats, words: Words): DrawnLine[] {
  const middle = Path.line(lerp(start.start, end.start, 0.5), lerp(start.end, end.end, 0.5));
  const folded = folds === 'both' ? [start, end] : folds === 'start' ? [start] : [end];
  const on = folds === 'both' ? middle : folds === 'start' ? end : start;
  return [
    ...folded.flatMap((line) => [
      ...stitchedLine(line, stitched, 'crease', { ...words, tip: say`${words.tip}: fold here` }),
      arrow(line, on, words),
    ]),
    ...stitchedLine(on, folds === 'both' ? 0 : stitched, 'mark', {
      ...words,
      tip: say`${name}: the fold is laid on this line`,
    }),
  ];
}

/** Stitched as far as it is stitched down; the rest as the line it is. */
function stitchedLine(line: Path, stitched: number, role: 'crease' | 'mark', words: Words): DrawnLine[] {
  const down = Math.min(stitched, line.length);
  const rest = line.length - down > 0.5 ? [pathLine(role, line.part(down, line.length), words)] : [];
  return down > 0.5 ? [pathLine('dart', line.part(0, down), words), ...rest] : rest;
}

/** From the fold toward the line that it is laid on. */
function arrow(fold: Path, on: Path, words: Words): DrawnLine {
  const at = Math.min(ARROW, fold.length / 2, on.length / 2);
  const [from, to] = [fold.pointAt(at), on.pointAt(at)];
  return { ...pathLine('mark', Path.line(from, to), words), arrows: 'end' };
}

/** Half the height of the wave and half its length, mm. */
const HIGH = 1.5;
const LONG = 4;
/** It runs in the middle of an allowance that is wide enough, else so far inside the sewing line, mm. */
const INSIDE = 4;
const WIDE_ENOUGH = 6;

function gatherLines(piece: Piece, gathers: Gathers, { unit }: Around): DrawnLine[] {
  const { name, source } = gathers;
  const edge = piece.edges.find((one) => one.name === gathers.edge);
  const own = edge?.parts.filter((part) => part.gathered?.by === name).map(({ path }) => path) ?? [];
  if (own.length === 0) return [];
  const tip = `${name}, ${gathersInWords(gathers, unit)}`;
  const words = { name, source, tip };
  const inward = signedArea(piece.edges.map(({ path }) => path)) < 0 ? -1 : 1;
  const ends = [own[0]!.start, own[own.length - 1]!.end];
  const notches = ends.flatMap((point) =>
    notchStrokes(piece, { name, source, edge: gathers.edge, distance: 0, count: 1, point }).map((line) => ({
      ...line,
      tip,
    })),
  );
  const allowance = piece.allowances.get(gathers.edge) ?? 0;
  const off = inward * (allowance < WIDE_ENOUGH ? INSIDE : -allowance / 2);
  return [...own.map((path) => pathLine('mark', wave(path, off), words)), ...notches];
}

/** A wave beside a path, to the right of its way where `beside` is positive; in whole waves. */
function wave(path: Path, beside: number): Path {
  const count = Math.max(2, 2 * Math.round(path.length / LONG / 2));
  const at = (i: number): Point => {
    const s = (i / count) * path.length;
    const along = path.tangentAt(s);
    const off = beside + (i === 0 || i === count ? 0 : i % 2 === 0 ? HIGH : -HIGH);
    return add(path.pointAt(s), scale({ x: -along.y, y: along.x }, off));
  };
  const level = (i: number): Point =>
    scale(path.tangentAt((i / count) * path.length), path.length / count / 2);
  return Path.of(
    Array.from({ length: count }, (_, i) => {
      const [p0, p3] = [at(i), at(i + 1)];
      return { kind: 'cubic', p0, p1: add(p0, level(i)), p2: add(p3, scale(level(i + 1), -1)), p3 } as const;
    }),
  );
}

/** Marks, each by the sign a cutter knows it by; what it is and how far apart is said where it is pointed at. */
import { say } from '../../grammar/say';
import type { Mark, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import {
  add,
  circle,
  normalised,
  parallel,
  Path,
  perpendicular,
  scale,
  subtract,
  type Point,
} from '../geometry';
import type { Around } from './draw';
import type { DrawnDot, DrawnLine, LineRole } from './model';
import { pathLine, spot } from './path';

/** Radius of a button whose width is not stated, of a drill hole, and of an eyelet outside and inside, mm. */
const BUTTON = 6;
const DRILL = 2;
const EYELET_OUTSIDE = 3.5;
const EYELET_INSIDE = 2;
/** Half the width of a cross, and of the stroke at either end of a buttonhole, mm. */
const CROSS = 4;
const END = 2.5;
/** Half the width of a bone's channel, mm: a flat bone of 7 mm with its ease (common practice). */
export const BONE = 4.5;

/** Line types of marks that are lines; the signs of the others are thin and solid. */
const LINE_ROLES: Partial<Record<Mark['word'], LineRole>> = {
  tape: 'tape',
  topstitch: 'topstitch',
  crease: 'crease',
};

export const markLines = (piece: Piece, around: Around): DrawnLine[] =>
  piece.marks.flatMap((mark) => {
    const words = { name: mark.name, source: mark.source, tip: markTold(mark, around) };
    const role = LINE_ROLES[mark.word] ?? 'mark';
    return signOf(mark).map((path, i) => {
      const line = pathLine(role, path, words);
      const drilled = mark.word === 'drill' ? { drilled: spot(mark.points[i]!) } : {};
      return role === 'mark' && path.isClosed() ? { ...line, closed: true, ...drilled } : line;
    });
  });

/** The middle of a drill hole: where the awl goes in. */
export const markDots = (piece: Piece): DrawnDot[] =>
  piece.marks
    .filter(({ word }) => word === 'drill')
    .flatMap(({ points, source, name }) =>
      points.map((point): DrawnDot => ({ role: 'mark', source, name, at: spot(point) })),
    );

function signOf({ word, points, paths, size }: Mark): readonly Path[] {
  switch (word) {
    case 'button':
      return points.flatMap((at) => {
        const radius = size === undefined ? BUTTON : size / 2;
        return [circle(at, radius), ...crossed(at, radius)];
      });
    case 'drill':
      return points.map((at) => circle(at, DRILL));
    case 'eyelet':
      return points.flatMap((at) => [circle(at, EYELET_OUTSIDE), circle(at, EYELET_INSIDE)]);
    case 'mark':
      return [...points.flatMap((at) => crossed(at, CROSS)), ...paths];
    case 'buttonhole':
      return paths.flatMap((path) => [path, ...endStrokes(path)]);
    case 'bone':
      return paths.map(channel);
    default:
      return paths;
  }
}

const crossed = ({ x, y }: Point, half: number): readonly Path[] => [
  Path.line({ x: x - half, y }, { x: x + half, y }),
  Path.line({ x, y: y - half }, { x, y: y + half }),
];

function endStrokes(path: Path): readonly Path[] {
  return [0, path.length].map((s) => {
    const across = scale(perpendicular(path.tangentAt(s)), END);
    const at = path.pointAt(s);
    return Path.line(subtract(at, across), add(at, across));
  });
}

/** Both sides of the bone's channel, closed at its ends. */
function channel(path: Path): Path {
  const [one, other] = [sideOf(path, BONE), sideOf(path, -BONE)];
  if (one === undefined || other === undefined) return path;
  const back = other.reversed();
  return one.joinedTo(Path.line(one.end, back.start)).joinedTo(back).joinedTo(Path.line(back.end, one.start));
}

function sideOf(path: Path, by: number): Path | undefined {
  const straight = path.isStraight(1e-6) ? normalised(subtract(path.end, path.start)) : undefined;
  if (straight === undefined) return parallel(path, by)[0];
  const aside = scale(perpendicular(straight), -by);
  return Path.line(add(path.start, aside), add(path.end, aside));
}

const many = (word: Mark['word']): string =>
  ({
    mark: say`marks`,
    button: say`buttons`,
    buttonhole: say`buttonholes`,
    drill: say`drill holes`,
    bone: say`bones`,
    eyelet: say`eyelets`,
    tape: say`tapes`,
    topstitch: say`lines of topstitching`,
    crease: say`creases`,
  })[word];

/** What one of them is called. */
export const markWord = (word: Mark['word']): string =>
  ({
    mark: say`mark`,
    button: say`button`,
    buttonhole: say`buttonhole`,
    drill: say`drill hole`,
    bone: say`bone`,
    eyelet: say`eyelet`,
    tape: say`tape`,
    topstitch: say`topstitching`,
    crease: say`crease`,
  })[word];

/** "fronts, 8 buttons, 9.4cm apart"; "busk, bone, 31cm long"; "top-button, button, 1.8cm wide" */
export function markTold(mark: Mark, { unit }: Pick<Around, 'unit'>): string {
  const { name, word, points, paths, row, size } = mark;
  const count = Math.max(points.length, paths.length);
  const apart = row !== undefined && count > 1 ? [say`${printLength(row.apart, unit)} apart`] : [];
  const is =
    row === undefined ? markWord(word) : count === 1 ? `1 ${markWord(word)}` : `${count} ${many(word)}`;
  const wide = word === 'button' && size !== undefined ? [say`${printLength(size, unit)} wide`] : [];
  return [name, is, ...apart, ...wide, ...longs(mark, unit)].join(', ');
}

/** How long its lines are; from the shortest to the longest where they differ. */
function longs({ paths }: Mark, unit: Around['unit']): readonly string[] {
  if (paths.length === 0) return [];
  const lengths = paths.map(({ length }) => length);
  const [low, high] = [printLength(Math.min(...lengths), unit), printLength(Math.max(...lengths), unit)];
  return [low === high ? say`${low} long` : say`${low} to ${high} long`];
}

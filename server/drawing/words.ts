/** The words on a piece: its label in plain lines, and the names of its edges along them. */
import { say } from '../../grammar/say';
import type { Edge, Piece } from '../drafting/model';
import { layerWords } from '../drafting/pieces/cut-words';
import { printLength } from '../drafting/values/quantity';
import { boxOfPaths, Path, signedArea, type Box, type Point } from '../geometry';
import type { Around } from './draw';
import type { DrawnLine, DrawnText } from './model';
import { rounded } from './path';
import { roomFor, stretchesWithin, type Stretch } from './room';
import { forWhom } from './told';

/** Height of the capitals of a piece's name, mm: a 27th of the piece's width, within what can be read at arm's length and what leaves room. */
const TITLE_SHARE = 1 / 27;
const TITLE_FROM = 6;
const TITLE_TO = 16;
/** The other lines of the label, and the names of edges, against the piece's name. */
const DETAIL_SHARE = 0.58;
const EDGE_FROM = 3;
const EDGE_TO = 6;
const EDGE_SHARE = 0.4;
/** Across a piece narrower than this, mm, there is no room for the label between the names of its edges. */
const NARROW = 100;
/** There the names of long edges stand aside: so far along, and only where they are this many times shorter. */
const ASIDE = 0.2;
const LONG = 4;
/** Height of a line of text, in heights of a capital. */
const LEADING = 1.9;

export function texts(piece: Piece, around: Around, grain: readonly DrawnLine[]): DrawnText[] {
  const paths = piece.edges.map(({ path }) => path);
  const box = boxOfPaths(paths);
  const wide = Math.min(box.maxX - box.minX, box.maxY - box.minY);
  const title = Math.min(TITLE_TO, Math.max(TITLE_FROM, wide * TITLE_SHARE));
  const edge = Math.min(EDGE_TO, Math.max(EDGE_FROM, title * EDGE_SHARE));
  const inTheWay = stretchesWithin(piece, grain);
  const set = { size: edge, narrow: wide < NARROW, inward: signedArea(paths) < 0 ? -1 : 1, inTheWay };
  return [
    ...label(piece, around, grain, { title, box }),
    ...piece.edges.flatMap((one) => edgeName(one, around, set)),
  ];
}

/** One line a cloth: a cutter looks for the one on the table. */
export function cutLines({ cut }: Piece): readonly string[] {
  if (cut === undefined || cut.layers.length < 2) return cut === undefined ? [] : [cut.text];
  const layers = cut.layers.map((layer) => say`cut ${layerWords(layer)}`);
  return cut.rightSideUp ? [...layers, say`right side up`] : layers;
}

/** What of these lines stands there as its author wrote it: cloths and labels. */
export const authoredOf = ({ cut, labels }: Piece): readonly string[] =>
  [...new Set([...(cut?.layers ?? []).map(({ cloth }) => cloth), ...labels.map(({ text }) => text)])].filter(
    (text) => text !== '',
  );

/** Piece; pattern; body or size; cut and cloth; what the author adds. */
function label(
  piece: Piece,
  around: Around,
  grain: readonly DrawnLine[],
  { title, box }: { readonly title: number; readonly box: Box },
): DrawnText[] {
  const detail = title * DETAIL_SHARE;
  const lines = [
    around.title,
    around.body === '' ? '' : forWhom(around.body),
    ...cutLines(piece),
    ...piece.remarks,
    ...piece.labels.filter(({ at }) => at === undefined).map(({ text }) => text),
  ].filter((line) => line !== '');
  const wide = Math.max(piece.name.length * title, ...lines.map((line) => line.length * detail)) * 0.72;
  const high = title * LEADING + lines.length * detail * LEADING;
  // clear of the names that stand along the edges
  const room = roomFor(piece, box, { wide: wide + title, high: high + 2 * title }, grain);
  const base = { source: piece.source, turn: 0 };
  const at = (y: number): DrawnText['at'] => ({ x: rounded(room.x), y: rounded(room.y + y * room.scale) });
  const found: DrawnText[] = [
    {
      ...base,
      role: 'title',
      text: piece.name,
      at: at(-high / 2 + title),
      size: rounded(title * room.scale),
    },
    ...lines.map((text, i): DrawnText => ({
      ...base,
      role: 'detail',
      text,
      at: at(-high / 2 + title * LEADING + (i + 0.8) * detail * LEADING),
      size: rounded(detail * room.scale),
    })),
  ];
  for (const { text, at: place, source } of piece.labels) {
    if (place === undefined) continue;
    found.push({
      role: 'note',
      source,
      text,
      at: { x: rounded(place.x), y: rounded(place.y) },
      size: rounded(detail),
      turn: 0,
    });
  }
  return found;
}

interface Setting {
  readonly size: number;
  readonly narrow: boolean;
  readonly inward: number;
  readonly inTheWay: readonly Stretch[];
}

/** Where along its edge a name is tried, as shares of the room that it leaves there, from the usual place to either side. */
const SHIFTS = [0, 0.15, -0.15, 0.3, -0.3, 0.5, -0.5, 0.7, -0.7, 0.9, -0.9];

/**
 * Along the middle of the longest part of its edge, inside the piece, never upside down; aside of signs and lines that stand
 * there. Edges too short for it go without.
 */
function edgeName(edge: Edge, around: Around, setting: Setting): DrawnText[] {
  const { size, narrow, inTheWay } = setting;
  const length = printLength(edge.sewn, around.unit);
  const text = `${edge.name} ${length}`;
  const sewn = edge.parts.filter((part) => part.dart === undefined).map((part) => part.path);
  const path = sewn.reduce((a, b) => (b.length > a.length ? b : a), sewn[0] ?? edge.path);
  const wide = text.length * size * 0.85;
  if (wide > path.length) return [];
  const middle = path.length * (narrow && wide * LONG < path.length ? ASIDE : 1 / 2);
  const placed = SHIFTS.map((shift) => middle + (shift * (path.length - wide)) / 2)
    .filter((at) => at >= wide / 2 - 1e-9 && at <= path.length - wide / 2 + 1e-9)
    .map((at) => standing(path, at, setting));
  const isClear = ({ at, turn }: Standing): boolean => {
    const line = lineOf(at, turn, text.length * size * LETTER, size);
    return inTheWay.every((stretch) => apart(line, stretch) > size * 0.6) && isOff(path, line, size * 0.6);
  };
  const found = placed.find(isClear) ?? standing(path, middle, setting);
  return [{ role: 'edge', source: edge.source, text, length, size: rounded(size), ...found }];
}

/** Width of a letter against its capitals, in the mean. */
const LETTER = 0.72;

type Standing = Pick<DrawnText, 'at' | 'turn'>;

/** Beside a place of the edge, read from one side. */
function standing(path: Path, middle: number, { size, inward }: Setting): Standing {
  const at = path.pointAt(middle);
  const along = path.tangentAt(middle);
  const turn = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  const upright = turn > 90.001 || turn <= -89.999 ? turn + 180 : turn;
  const inside = { x: -along.y * inward, y: along.x * inward };
  // the base line stands nearer the edge when the text hangs below it
  const hangs =
    Math.cos((upright * Math.PI) / 180) * inside.y - Math.sin((upright * Math.PI) / 180) * inside.x > 0;
  const off = hangs ? size * 2 : size;
  return {
    at: { x: rounded(at.x + inside.x * off), y: rounded(at.y + inside.y * off) },
    turn: rounded(((upright + 540) % 360) - 180),
  };
}

/** The middle line of words, half a capital above their base line. */
function lineOf({ x, y }: Point, turn: number, wide: number, size: number): Stretch {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const middle = { x: x + (sin * size) / 2, y: y - (cos * size) / 2 };
  const by = wide / 2;
  return [
    { x: middle.x - cos * by, y: middle.y - sin * by },
    { x: middle.x + cos * by, y: middle.y + sin * by },
  ];
}

/** Whether words keep off the edge that they stand along: where it bends it may come through them. */
const isOff = (path: Path, [a, b]: Stretch, least: number): boolean =>
  path.isStraight(1) ||
  [0, 0.25, 0.5, 0.75, 1].every(
    (t) => path.locate({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }).distance > least,
  );

/** How far two straight lines lie apart; 0 where they cross. */
function apart([a, b]: Stretch, [c, d]: Stretch): number {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return 0;
  return Math.min(
    ...[a, b].map((end) => Path.line(c, d).locate(end).distance),
    ...[c, d].map((end) => Path.line(a, b).locate(end).distance),
  );
}

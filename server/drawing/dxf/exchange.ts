/**
 * The exchange format of pattern pieces, ASTM D6673 (after ANSI/AAMA-292): one style a file, each piece in each size a
 * block of its own, inserted once, laid beside the others. No header and no tables, which some readers refuse. Written
 * *from memory* of the standard: see layers.ts, and server/cli/FORMATS.md for what is left out.
 */
import type { Pattern } from '../../drafting/model';
import type { Point } from '../../geometry';
import { place, shown } from '../draw';
import type { Drawing, Placement } from '../model';
import { Names } from './ascii';
import { exchangePiece, type ExchangeNotch, type ExchangePiece } from './exchange-piece';
import type { Flat } from './flat';
import { LAYERS } from './layers';
import {
  blockTags,
  END,
  fileOf,
  insertTags,
  lineTags,
  pointTags,
  polylineTags,
  real,
  section,
  textTags,
  type Tag,
} from './tags';

/** A pattern with what was drawn of it, for one size or body. */
export interface DraftedSize {
  /** '' for a pattern that is drafted for nobody. */
  readonly size: string;
  readonly pieces: readonly ExchangePiece[];
}

export const draftedSize = (pattern: Pattern, drawing: Drawing): DraftedSize => {
  const size = pattern.body?.size ?? pattern.body?.name ?? '';
  const named = new Map(drawing.pieces.map((piece) => [piece.name, piece]));
  const pieces = shown(pattern).flatMap((piece) => {
    const drawn = named.get(piece.name);
    return drawn === undefined ? [] : [exchangePiece(piece, drawn, size)];
  });
  return { size, pieces };
};

export interface Style {
  /** The pattern's title, or the name of its file. */
  readonly title: string;
  /** The size that the pattern itself is drafted for. */
  readonly sampleSize: string;
  /** In the order of their table. */
  readonly sizes: readonly DraftedSize[];
  /** What is wrong with the pattern as a whole: pieces that could not be drawn. */
  readonly annotations: readonly string[];
}

export function toExchangeDxf(style: Style): string {
  const names = new Names();
  const pieces = byPiece(style.sizes);
  const { placements, frame } = place(pieces.map(({ drawing }) => drawing));
  const blocks = pieces.map((piece, i) => ({ piece, placement: placements[i]!, name: nameOf(piece, names) }));
  return fileOf([
    ...section(
      'BLOCKS',
      blocks.flatMap(({ piece, name }) => blockTags(name, pieceTags(piece))),
    ),
    ...section('ENTITIES', [
      ...styleTags(style, { x: frame.left, y: frame.top - ABOVE }),
      ...blocks.flatMap(({ name, placement }) => inserted(name, placement)),
    ]),
    END,
  ]);
}

const inserted = (name: string, { by }: Placement): readonly Tag[] => insertTags(name, by);

/** Every size of the first piece, then of the next, pieces in the order of the file. */
function byPiece(sizes: readonly DraftedSize[]): readonly ExchangePiece[] {
  const all = sizes.flatMap(({ pieces }) => pieces);
  const names = [...new Set(all.map(({ name }) => name))];
  return names.flatMap((name) => all.filter((piece) => piece.name === name));
}

const nameOf = ({ name, size }: ExchangePiece, names: Names): string =>
  names.of(size === '' ? name : `${name}_${size}`);

/** Height of capitals, mm, from line to line in heights, and from the words of the style to the pieces. */
const HEIGHT = 5;
const LEADING = 1.8;
const ABOVE = 20;

function styleTags({ title, sampleSize, annotations }: Style, last: Point): readonly Tag[] {
  const records = [
    `STYLE NAME: ${title}`,
    'AUTHOR: Draftwright',
    ...(sampleSize === '' ? [] : [`SAMPLE SIZE: ${sampleSize}`]),
    'UNITS: METRIC',
    ...annotations.map((words) => `ANNOTATION: ${words}`),
  ];
  return stacked(LAYERS.boundary, records, {
    x: last.x,
    y: last.y - (records.length - 1) * HEIGHT * LEADING,
  });
}

const stacked = (layer: string, lines: readonly string[], { x, y }: Point, height = HEIGHT): readonly Tag[] =>
  lines.flatMap((words, i) => textTags(layer, { x, y: y + i * height * LEADING }, words, { height }));

function pieceTags(piece: ExchangePiece): readonly Tag[] {
  const { boundary, cutOuts, sewLines, internal } = piece;
  return [
    ...recordTags(piece),
    ...flatTags(LAYERS.boundary, boundary),
    ...cutOuts.flatMap((flat) => flatTags(LAYERS.cutOut, flat)),
    ...sewLines.flatMap((flat) => flatTags(LAYERS.sewLine, flat)),
    ...internal.flatMap((flat) => flatTags(LAYERS.internal, flat)),
    ...straight(LAYERS.mirrorLine, piece.mirrorLine),
    ...straight(LAYERS.grain, piece.grain),
    ...piece.notches.flatMap(notchTags),
    ...piece.drillHoles.flatMap((at) => pointTags(LAYERS.drillHole, at)),
    ...piece.words.flatMap(({ text, at, size, turn }) =>
      textTags(LAYERS.annotation, at, text, { height: size, turn, middle: true }),
    ),
  ];
}

function recordTags({ name, size, quantity, cloths, annotations, drawing }: ExchangePiece): readonly Tag[] {
  const records = [
    `PIECE NAME: ${name}`,
    ...(size === '' ? [] : [`SIZE: ${size}`]),
    ...(quantity === undefined ? [] : [`QUANTITY: ${quantity}`]),
    ...(cloths.length === 0 ? [] : [`MATERIAL: ${cloths.join(', ')}`]),
    ...annotations.map((words) => `ANNOTATION: ${words}`),
  ];
  const { left, right, top, bottom } = drawing.frame;
  const title = drawing.texts.find(({ role }) => role === 'title');
  const height = Math.min(HEIGHT, (title?.size ?? HEIGHT) * RECORD_SHARE);
  const widest = Math.max(...records.map(({ length }) => length)) * height * LETTER;
  const middle = title?.at ?? { x: (left + right) / 2, y: (top + bottom) / 2 };
  return stacked(LAYERS.boundary, records, { x: middle.x - widest / 2, y: middle.y }, height);
}

/** The words about a piece take the room of its label on paper, and have longer lines. */
const RECORD_SHARE = 0.4;
/** Width of a letter against its capitals in the plain letters of a drawing program, about. */
const LETTER = 0.9;

/** A line with every point of it told to be a turn or a point of a curve. */
function flatTags(layer: string, { points, closed }: Flat): readonly Tag[] {
  const [from, to] = points;
  const line =
    points.length === 2 && !closed ? lineTags(layer, from!, to!) : polylineTags(layer, points, closed);
  const marked = points.flatMap((point) =>
    pointTags(point.turns ? LAYERS.turnPoint : LAYERS.curvePoint, point),
  );
  return [...line, ...marked];
}

const straight = (layer: string, [from, to]: readonly Point[]): readonly Tag[] =>
  from === undefined || to === undefined ? [] : lineTags(layer, from, to);

/** A slit: its depth stands as the thickness of the point, its direction as the angle (*from memory*). */
const notchTags = ({ at, depth, turn }: ExchangeNotch): readonly Tag[] =>
  pointTags(LAYERS.notch, at, [
    [39, real(depth)],
    [50, real((360 - turn) % 360)],
  ]);

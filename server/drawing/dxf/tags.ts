/**
 * The groups that a DXF file is made of: a code on one line, its value on the next, lines ended by CR LF as the format's
 * own programs write them. What is drawn comes in our millimetres, y down, and is turned over here: a DXF has y up.
 * Group codes after the published DXF reference, release 12, *from memory*.
 */
import type { Point } from '../../geometry';
import { asciiOf } from './ascii';

/** A code and its value, ready to be written. */
export type Tag = readonly [code: number, value: string];

const LINE_END = '\r\n';
/** Codes stand right-justified in three columns. */
const CODE_WIDE = 3;
/** A millionth of a millimetre: so small that areas come out as they were drawn. */
const DECIMALS = 6;

/** A million kilometres, mm: nobody cuts there, and a number beyond might need an exponent. */
const FARTHEST = 1e12;

export const fileOf = (tags: readonly Tag[]): string =>
  tags.map(([code, value]) => `${String(code).padStart(CODE_WIDE)}${LINE_END}${value}${LINE_END}`).join('');

/** A number with its point, as the format wants of every real one; never `-0` nor an exponent. */
export function real(value: number): string {
  const near = Number.isNaN(value) ? 0 : Math.min(FARTHEST, Math.max(-FARTHEST, value));
  const digits = near.toFixed(DECIMALS).replace(/0+$/, '').replace(/\.$/, '.0');
  return digits === '-0.0' ? '0.0' : digits;
}

const at = ({ x, y }: Point, more = 0): readonly Tag[] => [
  [10 + more, real(x)],
  [20 + more, real(-y)],
];

export const section = (name: string, inside: readonly Tag[]): readonly Tag[] => [
  [0, 'SECTION'],
  [2, name],
  ...inside,
  [0, 'ENDSEC'],
];

export const END: Tag = [0, 'EOF'];

export const pointTags = (layer: string, point: Point, more: readonly Tag[] = []): readonly Tag[] => [
  [0, 'POINT'],
  [8, layer],
  ...at(point),
  ...more,
];

export const lineTags = (layer: string, from: Point, to: Point): readonly Tag[] => [
  [0, 'LINE'],
  [8, layer],
  ...at(from),
  ...at(to, 1),
];

/** In a closed one the first point is not repeated at the end. */
export const polylineTags = (layer: string, points: readonly Point[], closed: boolean): readonly Tag[] => [
  [0, 'POLYLINE'],
  [8, layer],
  [66, '1'],
  [10, '0.0'],
  [20, '0.0'],
  [70, closed ? '1' : '0'],
  ...points.flatMap((point): readonly Tag[] => [[0, 'VERTEX'], [8, layer], ...at(point)]),
  [0, 'SEQEND'],
  [8, layer],
];

export interface TextLook {
  /** Height of a capital, mm. */
  readonly height: number;
  /** Degrees, clockwise as seen on paper. */
  readonly turn?: number;
  /** The point is the middle of the base line, not its beginning. */
  readonly middle?: boolean;
}

export const textTags = (layer: string, point: Point, words: string, look: TextLook): readonly Tag[] => [
  [0, 'TEXT'],
  [8, layer],
  ...at(point),
  [40, real(look.height)],
  [1, asciiOf(words)],
  ...(look.turn ? ([[50, real(-look.turn)]] as const) : []),
  ...(look.middle ? ([[72, '1'], ...at(point, 1)] as const) : []),
];

export const blockTags = (name: string, inside: readonly Tag[]): readonly Tag[] => [
  [0, 'BLOCK'],
  [8, '1'],
  [2, name],
  [70, '0'],
  [10, '0.0'],
  [20, '0.0'],
  ...inside,
  [0, 'ENDBLK'],
  [8, '1'],
];

export const insertTags = (name: string, by: Point): readonly Tag[] => [
  [0, 'INSERT'],
  [8, '1'],
  [2, name],
  ...at(by),
];

/**
 * The one table from what a line is to how it looks, and the path data of a line: shared by every printer that draws.
 *
 * Types and proportions after ISO 128 (line widths from the series 0.13 0.18 0.25 0.35 0.5 0.7 mm, wide to narrow as
 * 2 to 1; dash 12 d, long dash 24 d, gap 3 d, wide gap 18 d for a line of width d) *from memory*. The dot of a
 * dash-dot line is drawn one d long, since half a d is lost on an office printer.
 */
import { say } from '../../grammar/say';
import type { DrawnLine, LineRole, Spot } from './model';

export interface LineType {
  /** Width of the line, mm on paper. */
  readonly weight: number;
  /** Dash and gap lengths in turn, mm on paper; empty for a solid line. */
  readonly dash: readonly number[];
  /** What the line is, in the words of a key: English in the table, put into the person's words where it is shown. */
  readonly words: string;
}

const VERY_SHORT_DASH = 6;
const SHORT_DASH = 12;
const LONG_DASH = 24;
const GAP = 3;
const WIDE_GAP = 18;
const DOT = 1;

function lineType(weight: number, words: string, ...pattern: readonly number[]): LineType {
  return { weight, words, dash: pattern.map((times) => Math.round(times * weight * 1000) / 1000) };
}

export const lineTypes: Readonly<Record<LineRole, LineType>> = {
  cutting: lineType(0.7, 'cutting line'),
  hole: lineType(0.7, 'cut out'),
  notch: lineType(0.5, 'notch'),
  sewing: lineType(0.35, 'sewing line, the finished size', SHORT_DASH, GAP),
  inlay: lineType(0.25, 'end of the allowance, inlay beyond it', LONG_DASH, GAP, DOT, GAP, DOT, GAP),
  dart: lineType(0.35, 'dart', SHORT_DASH, GAP),
  fold: lineType(0.35, 'fold, never cut', LONG_DASH, GAP, DOT, GAP),
  grain: lineType(0.35, 'grain'),
  centre: lineType(0.25, 'centre line', LONG_DASH, GAP, DOT, GAP),
  mark: lineType(0.35, 'mark'),
  tape: lineType(0.35, 'tape', LONG_DASH, GAP, VERY_SHORT_DASH, GAP, VERY_SHORT_DASH, GAP),
  topstitch: lineType(0.25, 'topstitching', VERY_SHORT_DASH, GAP),
  crease: lineType(0.25, 'crease', LONG_DASH, GAP),
  balance: lineType(0.25, 'balance line', SHORT_DASH, WIDE_GAP),
  construction: lineType(0.13, 'construction'),
};

/**
 * How the sizes of a nest are told apart, in the order of their table: each by a dash of its own, in widths of the
 * line, and its neighbours by weight as well. A table longer than the dashes begins them anew with the weights
 * changed over.
 */
const SIZE_DASHES: readonly (readonly number[])[] = [
  [],
  [SHORT_DASH, GAP],
  [LONG_DASH, GAP, DOT, GAP],
  [VERY_SHORT_DASH, GAP],
  [LONG_DASH, GAP, DOT, GAP, DOT, GAP],
  [DOT, GAP],
  [LONG_DASH, GAP, VERY_SHORT_DASH, GAP],
  [LONG_DASH, GAP],
];
const SIZE_WEIGHTS = [0.5, 0.35] as const;
/** Lines that the shears or the needle follow; signs and words of a size keep their look. */
const SIZED_ROLES: ReadonlySet<LineRole> = new Set(['cutting', 'hole', 'sewing', 'dart']);
const WITHIN = 0.18;

/** How a line is drawn: by what it is and, in a nest, by its size. */
export function lineTypeOf(
  { role, ofSize }: Pick<DrawnLine, 'role' | 'ofSize'>,
  sizes: readonly string[] = [],
): LineType {
  const index = ofSize === undefined ? -1 : sizes.indexOf(ofSize);
  if (index < 0 || !SIZED_ROLES.has(role)) return lineTypes[role];
  const round = Math.floor(index / SIZE_DASHES.length);
  const outline = role === 'cutting' || role === 'hole';
  const weight = outline ? SIZE_WEIGHTS[(index + round) % 2]! : WITHIN;
  const dash = SIZE_DASHES[index % SIZE_DASHES.length]!;
  return lineType(weight, say`size ${ofSize!}`, ...dash.map((times) => (outline ? times : times * 1.5)));
}

/** Roles from the quietest to the loudest: a printer that draws in this order never buries a cutting line. */
export const paintOrder: readonly LineRole[] = [
  'construction',
  'balance',
  'grain',
  'crease',
  'topstitch',
  'tape',
  'mark',
  'centre',
  'inlay',
  'dart',
  'sewing',
  'fold',
  'notch',
  'hole',
  'cutting',
];

/** A number as drawn: thousandths of a millimetre, never `-0` nor an exponent. */
export function decimal(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return Number.isFinite(rounded) ? String(rounded === 0 ? 0 : rounded) : '0';
}

/** SVG path data of a line, in the line's own millimetres. */
export function pathData(line: DrawnLine): string {
  const stretches = line.stretches.map((s) => `${s.length === 2 ? 'L' : 'C'}${s.map(decimal).join(' ')}`);
  return `M${decimal(line.start.x)} ${decimal(line.start.y)}${stretches.join('')}${line.closed ? 'Z' : ''}`;
}

/** Length and half width of an arrow head, mm: a closed head of about 20°. */
export const HEAD_LENGTH_MM = 5;
export const HEAD_HALF_WIDTH_MM = 0.9;

export interface ArrowHead {
  /** The tip of the arrow. */
  readonly at: Spot;
  /** Degrees clockwise as seen, 0 pointing right. */
  readonly turn: number;
}

/** The arrow heads that a line asks for: at its end, or at both ends. A line without length has none. */
export function arrowHeads(line: DrawnLine): ArrowHead[] {
  if (line.arrows === 'none') return [];
  const spots = controlPolygon(line);
  const ends = line.arrows === 'both' ? [spots, [...spots].reverse()] : [spots];
  return ends.flatMap(headAtLast);
}

function controlPolygon(line: DrawnLine): Spot[] {
  const spots: Spot[] = [line.start];
  for (const stretch of line.stretches) {
    for (let i = 0; i < stretch.length; i += 2) spots.push({ x: stretch[i]!, y: stretch[i + 1]! });
  }
  return spots;
}

/** A curve leaves its end along its control polygon; control points lying on the end tell nothing and are passed over. */
function headAtLast(spots: readonly Spot[]): ArrowHead[] {
  const at = spots[spots.length - 1]!;
  const before = [...spots].reverse().find((spot) => Math.hypot(at.x - spot.x, at.y - spot.y) > 1e-6);
  if (!before) return [];
  const turn = (Math.atan2(at.y - before.y, at.x - before.x) * 180) / Math.PI;
  return [{ at, turn }];
}

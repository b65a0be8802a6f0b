/** The label of a printed piece: its name and plain lines below it, as large as they fit, turned where the piece is narrow. */
import type { DrawnText, Frame, Spot } from '../model';
import { rounded } from '../path';
import { runs } from './along';
import type { Metrics } from './font';
import { baseOf, rectOfText, type Space } from './space';

/** Capital heights, mm: read from 60 cm, on the table (*common practice*); of a small print no smaller than in a book. */
const [TITLE_MOST, DETAIL_MOST] = [12, 4.5];
const ON_TABLE = { title: 4, detail: 2.5 };
const IN_HAND = { title: 3, detail: 1.8 };
const DETAIL_SHARE = 0.5;
/** The name is a 27th of the piece's width, and smaller where that finds no room. */
const TITLE_SHARE = 1 / 27;
const STEPS = [1, 0.8, 0.65, 0.5, 0.4];
/** Lines are folded, or joined, to so many times their natural width: pieces are broad or narrow. */
const WIDTHS = [1, 0.7, 1.6, 0.5, 2.5, 4, Infinity];
/** Height of a line of words, in heights of a capital; on a narrow piece the lines stand closer. */
const [LEADING, CLOSE_LEADING] = [1.85, 1.6];
/** White that is kept round the label besides, mm. */
const ROUND_MM = 2;
/** A label below its piece is folded to no less than this, mm. */
const LEAST_BELOW_MM = 60;
/** Places tried across and down; and so many where none of these has room, which takes nine times as long. */
const TRIES = 23;
export const CLOSER_TRIES = 3 * TRIES;

export interface Label {
  readonly title: string;
  readonly lines: readonly string[];
  /** Read in the hand, not on the table. */
  readonly inHand: boolean;
}

const leastOf = ({ inHand }: Label): typeof ON_TABLE => (inHand ? IN_HAND : ON_TABLE);

export interface Ground {
  readonly frame: Frame;
  readonly space: Space;
  /** Whether a spot lies within the finished size. */
  readonly inside: (at: Spot) => boolean;
  /** The way of the longest edge, degrees. */
  readonly way: number;
  /** Places are tried from here; from the upper middle unless told. */
  readonly near?: Spot;
  /** How many places are tried across and down. */
  readonly tries?: number;
}

type Row = Pick<DrawnText, 'role' | 'text' | 'size'>;

/** A block of rows, each in the middle. */
interface Block {
  readonly rows: readonly Row[];
  readonly leading: number;
  readonly wide: number;
  readonly high: number;
}

type Placed = Pick<DrawnText, 'role' | 'text' | 'size' | 'at' | 'turn'>;

/** The rows where they stand, as one block, as a close one, or the name apart; undefined where the piece has no room for them. */
export function placedLabel(label: Label, ground: Ground, font: Metrics): readonly Placed[] | undefined {
  const usual = placedBlock(label, ground, font, LEADING);
  // in the hand it is read as well below its piece
  if (usual !== undefined || label.inHand) return usual;
  return placedBlock(label, ground, font, CLOSE_LEADING) ?? placedApart(label, ground, font);
}

/** So far from the name the rest of a label begins with it once more, mm. */
const FAR_MM = 60;

/** The name of a narrow piece, and all else beside it. */
function placedApart(label: Label, ground: Ground, font: Metrics): readonly Placed[] | undefined {
  if (label.title === '' || label.lines.length === 0) return undefined;
  const name = placedBlock({ ...label, lines: [] }, ground, font, LEADING);
  if (name === undefined) return undefined;
  const space = ground.space.copy();
  for (const row of name) space.add(rectOfText(row, runs(row.text, row.size, font)));
  const near = name[0]!.at;
  const restOf = (lines: readonly string[]): readonly Placed[] | undefined =>
    placedBlock({ ...label, title: '', lines }, { ...ground, space, near }, font, CLOSE_LEADING);
  const rest = restOf(label.lines);
  if (rest === undefined) return undefined;
  const { at } = rest[0]!;
  const isFar = Math.hypot(at.x - near.x, at.y - near.y) > FAR_MM;
  if (!isFar) return [...name, ...rest];
  const [first, ...others] = label.lines;
  const named = restOf([label.title, ...label.lines]) ?? restOf([`${label.title} · ${first}`, ...others]);
  return named === undefined ? undefined : [...name, ...named];
}

function placedBlock(
  label: Label,
  ground: Ground,
  font: Metrics,
  leading: number,
): readonly Placed[] | undefined {
  const spots = spotsOn(ground);
  for (const { size, turn } of ways(ground, leastOf(label).title)) {
    for (const block of blocksFor(label, { size, leading }, font)) {
      const [wide, high] = [block.wide + 2 * ROUND_MM, block.high + ROUND_MM];
      const least = Math.min(high, wide) / 2;
      const found = spots.find(
        ({ at, clear }) => clear >= least && ground.space.free({ ...at, wide, high, turn }),
      );
      if (found !== undefined) return rowsAt(block, found.at, turn);
    }
  }
  return undefined;
}

/** Sizes and turns in the order in which they are tried: a label that is turned costs so many steps of size. */
const TURNED_COSTS = 2.5;

function ways(
  { frame, way }: Ground,
  least: number,
): readonly { readonly size: number; readonly turn: number }[] {
  const all = titleSizes(frame, least).flatMap((size, step) =>
    turnsFor(way).map((turn, i) => ({ size, turn, cost: step + (turn === 0 ? 0 : TURNED_COSTS + i / 10) })),
  );
  return all.sort((a, b) => a.cost - b.cost);
}

/** Below a piece that is too small for it, its upper left corner given, about as wide as the piece. */
export function labelBelow(
  label: Label,
  { x, y, wide }: Spot & { readonly wide: number },
  font: Metrics,
): { readonly rows: readonly Placed[]; readonly wide: number; readonly high: number } {
  const { title } = leastOf(label);
  const set = { size: title, leading: LEADING };
  const natural = blockOf(label, set, 1, font);
  const share = Math.max(wide, LEAST_BELOW_MM) / natural.wide;
  const block = blockOf(label, set, share, font);
  const middle = { x: x + block.wide / 2, y: y + block.high / 2 };
  return { rows: rowsAt(block, middle, 0), wide: block.wide, high: block.high };
}

function titleSizes({ left, top, right, bottom }: Frame, least: number): number[] {
  const usual = Math.min(right - left, bottom - top) * TITLE_SHARE;
  const most = Math.min(TITLE_MOST, Math.max(5, usual));
  return [...new Set(STEPS.map((step) => Math.max(least, most * step)))];
}

/** The capitals of the name, mm, and how close the lines stand. */
type Setting = { readonly size: number; readonly leading: number };

function blocksFor(label: Label, set: Setting, font: Metrics): Block[] {
  const blocks = WIDTHS.map((share) => blockOf(label, set, share, font));
  return blocks.filter(
    (block, i) => blocks.findIndex(({ wide, high }) => wide === block.wide && high === block.high) === i,
  );
}

function blockOf(label: Label, { size: titleSize, leading }: Setting, share: number, font: Metrics): Block {
  const { title, lines } = label;
  const size = Math.min(DETAIL_MOST, Math.max(leastOf(label).detail, titleSize * DETAIL_SHARE));
  const natural = Math.max(0, ...lines.map((line) => runs(line, size, font)));
  const wide = Math.max(natural * share, runs(title, titleSize, font));
  const rows: Row[] = [
    ...(title === '' ? [] : [{ role: 'title', text: title, size: titleSize } as const]),
    ...flowed(lines, wide, share > 1, (text) => runs(text, size, font)).map((text): Row => ({
      role: 'detail',
      text,
      size,
    })),
  ];
  const high = rows.reduce((sum, row) => sum + row.size * leading, 0);
  return { rows, leading, wide: Math.max(...rows.map((row) => runs(row.text, row.size, font))), high };
}

/** Lines folded to a width, or several of them on one row. */
export function flowed(
  lines: readonly string[],
  wide: number,
  join: boolean,
  runsOf: (text: string) => number,
): readonly string[] {
  const rows: string[] = [];
  for (const line of lines) {
    const last = rows[rows.length - 1];
    const both = `${last} · ${line}`;
    if (join && last !== undefined && runsOf(both) <= wide) rows[rows.length - 1] = both;
    else rows.push(...folded(line, wide, runsOf));
  }
  return rows;
}

/** As few rows as the width allows, and those of like lengths: no word is left alone. */
function folded(line: string, wide: number, runsOf: (text: string) => number): string[] {
  let rows = foldedAt(line, wide, runsOf);
  for (let share = 0.95; share > 0.4; share -= 0.05) {
    const closer = foldedAt(line, wide * share, runsOf);
    if (closer.length > rows.length) break;
    rows = closer;
  }
  return rows;
}

function foldedAt(line: string, wide: number, runsOf: (text: string) => number): string[] {
  const rows: string[] = [];
  for (const word of line.split(' ')) {
    const longer = `${rows[rows.length - 1]} ${word}`;
    if (rows.length > 0 && runsOf(longer) <= wide + 1e-6) rows[rows.length - 1] = longer;
    else rows.push(word);
  }
  return rows;
}

function rowsAt({ rows, high, leading }: Block, middle: Spot, turn: number): readonly Placed[] {
  const angle = (turn * Math.PI) / 180;
  let down = -high / 2;
  return rows.map((row) => {
    const lead = row.size * leading;
    const by = down + lead / 2;
    down += lead;
    const own = { x: middle.x - Math.sin(angle) * by, y: middle.y + Math.cos(angle) * by };
    const at = baseOf(own, row.size, turn);
    return { ...row, size: rounded(row.size), turn, at: { x: rounded(at.x), y: rounded(at.y) } };
  });
}

/** Level, upright, and along a slanting piece. */
function turnsFor(way: number): number[] {
  const slant = way > 90 ? way - 180 : way <= -90 ? way + 180 : way;
  const own = Math.abs(slant) > 8 && Math.abs(slant) < 82 ? [rounded(slant)] : [];
  return [0, -90, ...own];
}

/** Places on the piece, those that the eye looks at first before the others. */
function spotsOn({
  frame,
  space,
  inside,
  near,
  tries = TRIES,
}: Ground): { readonly at: Spot; readonly clear: number }[] {
  const [wide, high] = [frame.right - frame.left, frame.bottom - frame.top];
  const steps = Array.from({ length: tries }, (_, i) => (i + 0.5) / tries);
  const unrest = (u: number, v: number): number =>
    near === undefined
      ? (u - 0.5) ** 2 + (v - 0.4) ** 2
      : Math.hypot(frame.left + u * wide - near.x, frame.top + v * high - near.y);
  return steps
    .flatMap((u) => steps.map((v) => ({ u, v, rank: unrest(u, v) })))
    .sort((a, b) => a.rank - b.rank)
    .map(({ u, v }) => ({ x: frame.left + u * wide, y: frame.top + v * high }))
    .filter(inside)
    .map((at) => ({ at, clear: space.clearance(at) }));
}

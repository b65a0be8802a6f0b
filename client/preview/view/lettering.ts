/**
 * Which words of a piece are seen at a zoom, how large and where: words that could not be read are grown, as long as
 * they lie on no line nor on each other; what finds no room is left to the tip. Knows no DOM.
 */
import type {
  DrawnLine,
  DrawnText,
  Frame,
  LineRole,
  PieceDrawing,
  Spot,
} from '../../../server/drawing/model';
import { crossedBy, enclosed, overlap, uprightBox, type WordBox } from './boxes';
import { nearestOn } from './snap';

/** Capital height as a share of the font size, for common screen fonts. */
export const CAPITAL_HEIGHT = 0.72;
/** Mean width of a letter as a share of its capitals: enough to guess a line's length without measuring it. */
const LETTER_WIDTH = 0.6 / CAPITAL_HEIGHT;

/** Capitals of a piece's name that are looked for, in screen pixels, the best first; with the lines below it. */
const WITH_DETAILS = [10, 9];
const NAME_ALONE = [10, 8.5, 7];
const UPWARD = [8.5, 7];
/** Capitals of the names of edges are grown to so many pixels, by so much at most; lower than the last they are no use. */
const EDGE_PX = 7;
const EDGE_MOST = 5;
const EDGE_LEAST_PX = 5.5;
/** How large the sign of a problem is, pixels. */
const SIGN_PX = 18;
/** Left free round a label, pixels. */
const CLEAR_PX = 3;

/** Where the label is drawn: its own middle goes there. */
export interface LabelAt {
  readonly at: Spot;
  readonly scale: number;
  /** The piece's name alone. */
  readonly bare: boolean;
  /** It runs upward, in a piece that is too narrow for it. */
  readonly upward: boolean;
}

/** Where the name of an edge is drawn; its base line is turned as on paper. */
export interface EdgeWordsAt {
  readonly at: Spot;
  readonly scale: number;
}

export interface Lettering {
  /** Undefined: there is no room for any. */
  readonly label: LabelAt | undefined;
  /** In the order of the drawing. */
  readonly edges: readonly (EdgeWordsAt | undefined)[];
}

/** The lines of the label, which stand upright under one another. */
export const labelOf = ({ texts }: PieceDrawing): readonly DrawnText[] =>
  texts.filter(({ role, turn }) => (role === 'title' || role === 'detail') && turn === 0);

export const edgeWordsOf = ({ texts }: PieceDrawing): readonly DrawnText[] =>
  texts.filter(({ role }) => role === 'edge');

/** Half way between its first and its last line. */
export function middleOf(label: readonly DrawnText[]): Spot {
  const { x, y } = label[0]!.at;
  return { x, y: (y + label.at(-1)!.at.y) / 2 };
}

/** @param signs where the signs of problems stand on the piece: no words lie below them */
export function lettered(piece: PieceDrawing, zoom: number, signs: readonly Spot[] = []): Lettering {
  const ground = groundOf(piece);
  const taken = signs.map((at) => uprightBox(at, SIGN_PX / zoom, SIGN_PX / zoom));
  const wanted = edgeWordsOf(piece).map((text, i) =>
    edgeAt(text, ground.feet[i]!, ground, { zoom, words: taken }),
  );
  const kept: WordBox[] = [];
  const edges = wanted.map((one) => {
    if (one === undefined || kept.some((other) => overlap(other, one.box))) return undefined;
    kept.push(one.box);
    return one;
  });
  const label = labelAt(labelOf(piece), piece, ground, { zoom, words: [...kept, ...taken] });
  return {
    label,
    edges: edges.map((one) => (one && (!label || !overlap(label.box, one.box)) ? one : undefined)),
  };
}

// The names of edges

type EdgePlaced = EdgeWordsAt & { readonly box: WordBox };

function edgeAt(
  text: DrawnText,
  foot: Foot,
  { lines, grain, round, nested }: Ground,
  { zoom, words }: Around,
): EdgePlaced | undefined {
  const { at, size, source } = text;
  const scale = Math.min(Math.max(EDGE_PX / (size * zoom), 1), EDGE_MOST);
  const wide = text.text.length * LETTER_WIDTH * size * scale;
  if (size * scale * zoom < EDGE_LEAST_PX || wide > foot.length) return undefined;
  // grown away from its edge, which it would else come to lie on
  const { near } = foot;
  const grown = { x: near.x + (at.x - near.x) * scale, y: near.y + (at.y - near.y) * scale };
  const own = edgePlaced(text, grown, scale, wide);
  // grown out of its piece it would lie on words of the next one
  const within = !nested && enclosed(edgePlaced(text, at, 1, wide / scale).box.middle, round);
  const clear = ({ box }: EdgePlaced) =>
    (!within || enclosed(box.middle, round)) &&
    ![...lines, ...grain].some((one) => one.source !== source && crossedBy(box, one)) &&
    !words.some((other) => overlap(other, box));
  if (clear(own)) return own;
  // aside on its edge, as near to it as before, which a bend may not let it
  const [cos, sin] = own.box.turn;
  const by = wide / 2 + SIGN_PX / zoom;
  const off = apart(grown, near);
  return [-by, by]
    .map((aside) => edgePlaced(text, { x: grown.x + cos * aside, y: grown.y + sin * aside }, scale, wide))
    .find((one) => {
      const edge = foot.edge;
      if (edge === undefined || !clear(one) || crossedBy(one.box, edge)) return false;
      return apart(nearestOn(edge.line, one.at), one.at) < 1.5 * off;
    });
}

const apart = (a: Spot, b: Spot): number => Math.hypot(a.x - b.x, a.y - b.y);

function edgePlaced({ size, turn }: DrawnText, at: Spot, scale: number, wide: number): EdgePlaced {
  const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
  const up = (size * scale) / 2;
  const middle = { x: at.x + sin * up, y: at.y - cos * up };
  const box: WordBox = { middle, halfWide: wide / 2, halfHigh: size * scale * 0.7, turn: [cos, sin] };
  return { at, scale, box };
}

/** Where the name of an edge stands on it, and how long that edge is. */
interface Foot {
  readonly near: Spot;
  readonly length: number;
  readonly edge?: Chords;
}

/** Of an edge and its twin in the other half, the one that a name stands at. */
function footOf(at: Spot, edges: readonly Chords[]): Foot {
  const feet = edges.map((edge): Foot => ({
    near: nearestOn(edge.line, at),
    length: lengthOf(edge.spots),
    edge,
  }));
  const away = ({ near }: Foot) => Math.hypot(near.x - at.x, near.y - at.y);
  return feet.reduce(
    (best, one) => (away(one) < away(best) ? one : best),
    feet[0] ?? { near: at, length: Infinity },
  );
}

// The label

interface Around {
  readonly zoom: number;
  /** Boxes of words that it should not lie on. */
  readonly words: readonly WordBox[];
}

type Placed = LabelAt & { readonly box: WordBox };

function labelAt(
  label: readonly DrawnText[],
  piece: PieceDrawing,
  ground: Ground,
  { zoom, words }: Around,
): Placed | undefined {
  if (label.length === 0) return undefined;
  const capital = label[0]!.size * zoom;
  const large = capital >= WITH_DETAILS[0]!;
  const forms = formsOf(label, capital);
  const printed = placed(label, middleOf(label), { scale: 1, bare: false, upward: false });
  if (large && liesClear(printed, ground)) return printed;
  for (const others of large ? [[]] : [words, []]) {
    for (const form of forms) {
      const found = roomFor(label, { piece, ground, form, clear: CLEAR_PX / zoom, words: others });
      if (found) return found;
    }
  }
  if (large) return printed;
  // a name across the lines of a narrow piece is better than none
  const { left, right, top, bottom } = piece.frame;
  const form = forms.at(-1 - UPWARD.length)!;
  const across = placed(label, within(piece.frame, placed(label, middleOf(label), form).box), form);
  if (across.box.halfWide * 2 <= right - left) return across;
  const up = placed(label, { x: (left + right) / 2, y: (top + bottom) / 2 }, forms.at(-1)!);
  return up.box.halfHigh * 2 <= bottom - top ? up : undefined;
}

/** The place nearest to its own where a box lies within a frame; in the middle of what is too small for it. */
function within({ left, right, top, bottom }: Frame, { middle, halfWide, halfHigh }: WordBox): Spot {
  const kept = (at: number, low: number, high: number): number =>
    low > high ? (low + high) / 2 : Math.min(Math.max(at, low), high);
  return {
    x: kept(middle.x, left + halfWide, right - halfWide),
    y: kept(middle.y, top + halfHigh, bottom - halfHigh),
  };
}

type Form = Pick<LabelAt, 'scale' | 'bare' | 'upward'>;

/** @param capital height of the capitals as they are printed, in screen pixels */
function formsOf(label: readonly DrawnText[], capital: number): readonly Form[] {
  const upright = { upward: false };
  return [
    ...WITH_DETAILS.map((px) => ({ ...upright, scale: px / capital, bare: label.length === 1 })),
    ...NAME_ALONE.map((px) => ({ ...upright, scale: px / capital, bare: true })),
    ...UPWARD.map((px) => ({ scale: px / capital, bare: true, upward: true })),
  ];
}

/** Printed words were laid out by their own font: only what plainly lies on a line is judged by a guess at their width. */
function liesClear({ box: { middle, halfWide, halfHigh } }: Placed, { lines }: Ground): boolean {
  const core = uprightBox(middle, 1.6 * halfWide, 1.6 * halfHigh);
  return !lines.some((line) => crossedBy(core, line));
}

interface Sought {
  readonly piece: PieceDrawing;
  readonly ground: Ground;
  readonly form: Form;
  readonly clear: number;
  readonly words: readonly WordBox[];
}

function roomFor(label: readonly DrawnText[], sought: Sought): Placed | undefined {
  const { piece, ground, form, clear, words } = sought;
  for (const at of placesFor(label, piece, ground)) {
    const one = placed(label, at, form);
    const { middle, halfWide, halfHigh } = one.box;
    const box = uprightBox(middle, 2 * (halfWide + clear), 2 * (halfHigh + clear));
    const free =
      (ground.nested || enclosed(middle, ground.round)) &&
      !ground.lines.some((line) => crossedBy(box, line)) &&
      !words.some((other) => overlap(box, other));
    if (free) return one;
  }
  return undefined;
}

/** Where a label may stand, its place on paper first. */
function placesFor(
  label: readonly DrawnText[],
  { frame }: PieceDrawing,
  { nested }: Ground,
): readonly Spot[] {
  const own = middleOf(label);
  if (nested) return [own];
  const across = (share: number) => frame.left + (frame.right - frame.left) * share;
  const down = (share: number) => frame.top + (frame.bottom - frame.top) * share;
  return [
    own,
    { x: across(1 / 2), y: own.y },
    { x: own.x, y: down(1 / 2) },
    ...[1 / 2, 1 / 3, 2 / 3].flatMap((x) => [1 / 2, 1 / 3, 2 / 3].map((y) => ({ x: across(x), y: down(y) }))),
  ];
}

/** @param at where the middle of what is seen of it goes */
function placed(label: readonly DrawnText[], at: Spot, form: Form): Placed {
  const { scale, bare, upward } = form;
  const lines = bare ? label.slice(0, 1) : label;
  const wide = Math.max(...lines.map(({ text, size }) => text.length * LETTER_WIDTH * size)) * scale;
  const [first, last] = [lines[0]!, lines.at(-1)!];
  const high = (last.at.y - first.at.y + first.size + last.size * 0.3) * scale;
  // the block is drawn about its own middle, of which the name alone is only the head
  const seen = (first.at.y - first.size + last.at.y + last.size * 0.3) / 2;
  const off = (seen - middleOf(label).y) * scale;
  if (upward) return { ...form, at: { x: at.x - off, y: at.y }, box: uprightBox(at, high, wide) };
  return { ...form, at: { x: at.x, y: at.y - off }, box: uprightBox(at, wide, high) };
}

// What they stand on

interface Chords {
  readonly line: DrawnLine;
  readonly source: string;
  readonly spots: readonly Spot[];
  readonly frame: Frame;
}

interface Ground {
  /** Lines that no words should lie on. */
  readonly lines: readonly Chords[];
  /** It makes way for the label, which leaves bare paper round its words, and not for the names of edges. */
  readonly grain: readonly Chords[];
  /** Those of them that go round the piece. */
  readonly round: readonly (readonly Spot[])[];
  /** Where the names of edges stand, in the order of the drawing. */
  readonly feet: readonly Foot[];
  /** Sizes lie on one another: there is no one outline. */
  readonly nested: boolean;
}

const IN_THE_WAY: ReadonlySet<LineRole> = new Set([
  ...(['cutting', 'sewing', 'fold', 'centre', 'dart', 'hole', 'inlay', 'mark'] as const),
]);
const EDGES: ReadonlySet<LineRole> = new Set(['sewing', 'fold', 'centre']);

/** A piece is worked out once, not at every step of a zoom. */
const grounds = new WeakMap<PieceDrawing, Ground>();

function groundOf(piece: PieceDrawing): Ground {
  const known = grounds.get(piece);
  if (known !== undefined) return known;
  const lines = piece.lines.filter(({ role }) => IN_THE_WAY.has(role)).map(chordsOf);
  const of = (...roles: LineRole[]) =>
    lines.filter(({ line }) => roles.includes(line.role)).map(({ spots }) => spots);
  const cut = of('cutting');
  const edges = lines.filter(({ line }) => EDGES.has(line.role));
  const ground: Ground = {
    lines,
    grain: piece.lines.filter(({ role }) => role === 'grain').map(chordsOf),
    round: [...(cut.length > 0 ? cut : of('sewing')), ...of('fold', 'hole')],
    feet: edgeWordsOf(piece).map(({ at, source }) =>
      footOf(
        at,
        edges.filter((edge) => edge.source === source),
      ),
    ),
    nested: piece.lines.some(({ ofSize }) => ofSize !== undefined),
  };
  grounds.set(piece, ground);
  return ground;
}

/** Chords of a curve: a label that misses them misses the curve by all that can be seen. */
const CHORDS = 10;

function chordsOf(line: DrawnLine): Chords {
  const { start, stretches, closed, source } = line;
  const spots: Spot[] = [start];
  for (const stretch of stretches) {
    const from = spots.at(-1)!;
    if (stretch.length === 2) spots.push({ x: stretch[0], y: stretch[1] });
    else {
      const [x1, y1, x2, y2, x, y] = stretch;
      for (let i = 1; i <= CHORDS; i++) {
        const [t, s] = [i / CHORDS, 1 - i / CHORDS];
        const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
        spots.push({ x: a * from.x + b * x1 + c * x2 + d * x, y: a * from.y + b * y1 + c * y2 + d * y });
      }
    }
  }
  if (closed) spots.push(start);
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  const frame = {
    ...{ left: Math.min(...xs), right: Math.max(...xs) },
    ...{ top: Math.min(...ys), bottom: Math.max(...ys) },
  };
  return { line, source, spots, frame };
}

const lengthOf = (chords: readonly Spot[]): number =>
  chords.slice(1).reduce((sum, { x, y }, i) => sum + Math.hypot(x - chords[i]!.x, y - chords[i]!.y), 0);

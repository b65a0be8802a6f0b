/**
 * A pattern drawn another way round on the paper: its text with every direction turned or mirrored, and its pieces with
 * every point and path of theirs carried along.
 */
import { parse } from '../../grammar';
import type { Statement } from '../../grammar/syntax';
import type { Piece } from '../../server/drafting/model';
import { apply, mirror, Path, point, rotation, type Affine, type Point } from '../../server/geometry';

export interface Turning {
  readonly words: Readonly<Record<string, string>>;
  readonly affine: Affine;
}

const turning = (up: string, right: string, down: string, left: string, affine: Affine): Turning => {
  const words: Record<string, string> = { up, right, down, left };
  const picks: Record<string, string> = {
    up: 'upper',
    right: 'right-hand',
    down: 'lower',
    left: 'left-hand',
  };
  for (const [from, to] of Object.entries({ ...words })) words[picks[from]!] = picks[to]!;
  return { words, affine };
};
const mirrored = (one: Turning): Turning => ({
  ...one,
  words: { ...one.words, clockwise: 'anticlockwise', anticlockwise: 'clockwise' },
});

const ZERO = point(0, 0);

/** The four right angles and both mirrors, as words and as a transformation of the paper. */
export const TURNINGS: Readonly<Record<string, Turning>> = {
  'a quarter turn': turning('right', 'down', 'left', 'up', rotation(ZERO, Math.PI / 2)),
  'a half turn': turning('down', 'left', 'up', 'right', rotation(ZERO, Math.PI)),
  'three quarter turns': turning('left', 'up', 'right', 'down', rotation(ZERO, -Math.PI / 2)),
  'a mirror from side to side': mirrored(turning('up', 'left', 'down', 'right', mirror(ZERO, point(0, 1)))),
  'a mirror upside down': mirrored(turning('down', 'right', 'up', 'left', mirror(ZERO, point(1, 0)))),
};

const WORD = String.raw`(?<![\w.-])`;
const END = String.raw`(?![\w-])`;
const BEARING = new RegExp(`${WORD}(above|below) (left|right)${END}|${WORD}(left|right) of (up|down)${END}`);
const LEVEL = new RegExp(`${WORD}(across|up|down|left|right) to${END}`);
const PLAIN = new RegExp(
  `(?<!along )${WORD}(up|down|left|right|upper|lower|left-hand|right-hand|clockwise|anticlockwise)${END}`,
);
const DIRECTED = new RegExp(`${BEARING.source}|${LEVEL.source}|${PLAIN.source}`, 'g');

/**
 * A line's words of direction, turned. `across to` says no way of the two that it means; turned upright it is written
 * `down to`, and where that is wrong the fix that is offered makes `up to` of it.
 */
function turnedLine(line: string, { words }: Turning): string {
  const upright = words.up === 'left' || words.up === 'right';
  return line.replace(DIRECTED, (found, away?: string, along?: string, away2?: string, along2?: string) => {
    if (along ?? along2) {
      const from = away === undefined ? away2! : away === 'below' ? 'down' : 'up';
      return bearing(words[from]!, words[(along ?? along2)!]!);
    }
    const [, until] = /^(\S+) to$/.exec(found) ?? [];
    if (until === 'across') return upright ? 'down to' : found;
    if (until !== undefined) return upright && /up|down/.test(until) ? 'across to' : `${words[until]} to`;
    return words[found] ?? found;
  });
}

const bearing = (away: string, along: string): string =>
  along === 'left' || along === 'right'
    ? `${away === 'down' ? 'below' : 'above'} ${along}`
    : `${away} of ${along}`;

/** Statements whose directions are those of the paper; elsewhere left and right are the wearer's. */
const ON_PAPER = new Set([
  'outline',
  'hole',
  'grain',
  'balance',
  'shape',
  'circle',
  'mark',
  'marks',
  'label',
]);

/** A place is counted below the upper end of a line; turned, it is counted from that end. */
const fromEnds = (text: string): string => text.replace(/ (?:below|above) (?!left\b|right\b)/g, ' from ');

/**
 * Ease of one edge that lies above two places on the paper lies between them however it is turned; of an armhole, shared
 * as the trade shares it. Of a head of two parts the places name no way round.
 */
const easedBetween = (text: string): string =>
  /^seam \S+ \S+ = /.test(text)
    ? text.replace(/, none below (\S+) and (\S+)/g, ' between $1 and $2, 45% of front, 55% of back')
    : text;

/** The text with its drafts, outlines, grain and balance lines turned. */
export function turnedText(text: string, turning: Turning): string {
  let out = '';
  let done = 0;
  const visit = (statement: Statement, offset: number): void => {
    const { node, block, inside } = statement;
    if ((inside === 'draft' && node.kind !== 'drawn-as') || inside === 'outline' || ON_PAPER.has(node.kind)) {
      const from = offset + statement.start;
      // an edge may be called by a direction
      const [name] = inside === 'outline' ? /^\S+/.exec(statement.text)! : [''];
      const words = turnedLine(statement.text.slice(name.length), turning);
      out += text.slice(done, from) + name + (node.kind === 'marks' ? fromEnds(words) : words);
      done = from + statement.text.length;
    }
    if (node.kind === 'seam') {
      const from = offset + statement.start;
      out += text.slice(done, from) + easedBetween(statement.text);
      done = from + statement.text.length;
    }
    for (const child of block ?? []) visit(child, offset);
  };
  for (const { offset, statement } of parse(text).items) visit(statement, offset);
  return out + text.slice(done);
}

/** A piece with everything drawn of it transformed, and nothing else changed. */
export function turnedPiece(piece: Piece, m: Affine): Piece {
  const known = new Map<object, unknown>();
  const turn = (thing: unknown): unknown => {
    if (typeof thing !== 'object' || thing === null) return thing;
    if (thing instanceof Path) return thing.transformed(m);
    const before = known.get(thing);
    if (before !== undefined) return before;
    if (isPoint(thing)) return apply(m, thing);
    if (Array.isArray(thing)) return thing.map(turn);
    if (thing instanceof Map) return new Map([...thing].map(([key, value]) => [key, turn(value)]));
    if (thing instanceof Set || 'problems' in thing) return thing;
    const copy: Record<string, unknown> = {};
    known.set(thing, copy);
    for (const [key, value] of Object.entries(thing)) copy[key] = turn(value);
    return copy;
  };
  return turn(piece) as Piece;
}

const isPoint = (thing: object): thing is Point => {
  const { x, y } = thing as Partial<Point>;
  return typeof x === 'number' && typeof y === 'number' && Object.keys(thing).length === 2;
};

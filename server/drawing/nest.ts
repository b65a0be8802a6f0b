/**
 * A nest: several sizes of one pattern drawn on one another, piece by piece, as one drawing that every printer prints.
 *
 * A piece keeps still at the corner that all its sizes have and that moves least from size to size (in a draft that is
 * drawn from one point for everybody: that point), on the fold where there is one, with the grain of all sizes parallel.
 * What a size has for itself bears its name in `ofSize`: an editor or a reader of papers can show one size alone. What all sizes share (a grain
 * line, a label, a pocket that is not graded) bears none and is drawn once. How a size looks is said by `lineTypeOf` in
 * lines.ts; which size a line is stands written beside it as a text of the role `size`.
 */
import { say } from '../../grammar/say';
import { distance, identity, rotation, type Affine, type Point } from '../geometry';
import { place } from './draw';
import type { Drawing, DrawnDot, DrawnLine, DrawnText, Frame, PieceDrawing } from './model';
import { movedDot, movedLine, movedText } from './moved';
import { nestedLabel } from './nest-label';
import { sizeWords } from './nest-sizes';
import { frameOfLines, pathOf, rounded } from './path';

/** A pattern as it is drawn for one size. */
export interface Sized {
  readonly size: string;
  readonly drawing: Drawing;
}

export interface NestOptions {
  /** Draw the sewing lines as well where a piece has a cutting line. */
  readonly sewing?: boolean;
}

/** One piece in one size. */
export interface SizedPiece {
  readonly size: string;
  readonly piece: PieceDrawing;
}

/** One size alone is no nest, and comes back as it was drawn; none at all is a drawing without pieces. */
export function nest(sized: readonly Sized[], options: NestOptions = {}): Drawing {
  const [first] = sized;
  if (first === undefined) return { title: '', body: '', unit: 'cm', pieces: [], ...place([]) };
  if (sized.length === 1) return first.drawing;
  const sizes = sized.map(({ size }) => size);
  const names = [...new Set(sized.flatMap(({ drawing }) => drawing.pieces.map(({ name }) => name)))];
  const pieces = names.map((name) => nestedPiece(name, sized, sizes, options));
  const { title, unit } = first.drawing;
  return { title, unit, body: bodyOf(first, sizes), sizes, pieces, ...place(pieces) };
}

/** `deckhand, sizes S, M, L` */
function bodyOf({ size, drawing }: Sized, sizes: readonly string[]): string {
  const table = drawing.body.endsWith(` ${size}`) ? drawing.body.slice(0, -size.length - 1) : '';
  return [...(table === '' ? [] : [table]), say`sizes ${sizes.join(', ')}`].join(', ');
}

/** A piece that changed in no size keeps its nest, object for object. */
function nestedPiece(
  name: string,
  sized: readonly Sized[],
  sizes: readonly string[],
  options: NestOptions,
): PieceDrawing {
  const found = sized.flatMap(({ size, drawing }): SizedPiece[] => {
    const piece = drawing.pieces.find((one) => one.name === name);
    return piece === undefined ? [] : [{ size, piece }];
  });
  const key = JSON.stringify([sizes, found.map(({ size }) => size), options.sewing === true]);
  const before = kept.get(found[0]!.piece);
  if (before?.key === key && found.every(({ piece }, i) => piece === before.from[i])) return before.made;
  const made = madeNest(name, found, sized, sizes, options);
  kept.set(found[0]!.piece, { key, from: found.map(({ piece }) => piece), made });
  return made;
}

/** What a piece was made from, by its first size. */
interface Kept {
  readonly key: string;
  readonly from: readonly PieceDrawing[];
  readonly made: PieceDrawing;
}
const kept = new WeakMap<PieceDrawing, Kept>();

function madeNest(
  name: string,
  found: readonly SizedPiece[],
  sized: readonly Sized[],
  sizes: readonly string[],
  options: NestOptions,
): PieceDrawing {
  const laid = laidTogether(found);
  const lines = nestedLines(laid, sizes, options);
  const label = nestedLabel(laid, sized);
  const [first] = laid;
  const words = sizeWords(lines, label, sizes);
  const authored = new Set(laid.flatMap(({ piece }) => piece.authored ?? []));
  return {
    name,
    source: first!.piece.source,
    frame: withWords(frameOfLines(lines), words),
    lines,
    dots: nestedDots(laid, sizes),
    texts: [...label, ...words],
    ...(authored.size > 0 && { authored: [...authored] }),
    spoken: say`${first!.piece.spoken}, sizes ${laid.map(({ size }) => size).join(', ')}`,
  };
}

/** A size may stand outside its line. */
function withWords({ left, top, right, bottom }: Frame, words: readonly DrawnText[]): Frame {
  const spots = words.flatMap(({ at, size, text }) => {
    const reach = Math.max(size, (text.length * size) / 2);
    return [
      { x: at.x - reach, y: at.y - reach },
      { x: at.x + reach, y: at.y + reach },
    ];
  });
  return {
    left: rounded(Math.min(left, ...spots.map(({ x }) => x))),
    top: rounded(Math.min(top, ...spots.map(({ y }) => y))),
    right: rounded(Math.max(right, ...spots.map(({ x }) => x))),
    bottom: rounded(Math.max(bottom, ...spots.map(({ y }) => y))),
  };
}

/** Directions that differ by less, in radians, are one: grain lines are drawn to a thousandth of a millimetre. */
const SAME_WAY = 5e-5;

/** The pieces moved on to one another. */
function laidTogether(found: readonly SizedPiece[]): readonly SizedPiece[] {
  const corner = stillest(found);
  const [first] = found;
  const onto = first && anchorOf(first.piece, corner);
  const way = first && wayOf(first.piece);
  return found.map(({ size, piece }) => {
    const from = anchorOf(piece, corner);
    const turn = (way ?? 0) - (wayOf(piece) ?? way ?? 0);
    const by = { x: onto!.x - from.x, y: onto!.y - from.y };
    const turned =
      Math.abs(Math.sin(turn)) < SAME_WAY && Math.cos(turn) > 0 ? identity : rotation(from, turn);
    const moved = movedPiece(piece, { ...turned, e: turned.e + by.x, f: turned.f + by.y });
    return { size, piece: { ...moved, lines: moved.lines.map((line) => fromAnchor(line, onto!)) } };
  });
}

/** Folds of all sizes lie on one another: drawn from the point that keeps still, their dashes do as well. */
function fromAnchor(line: DrawnLine, anchor: Point): DrawnLine {
  const [only, ...more] = line.stretches;
  if (!isFold(line) || only === undefined || only.length !== 2 || more.length > 0) return line;
  const end = { x: only[0], y: only[1] };
  if (distance(line.start, anchor) <= distance(end, anchor)) return line;
  return { ...line, start: end, stretches: [[line.start.x, line.start.y]] };
}

/** The corner, by name, that all sizes have and that moves least; the first of the outline where several keep as still. */
function stillest(found: readonly SizedPiece[]): string | undefined {
  const onFold = found.map(({ piece }) => cornersOf(piece.dots, (at) => isOnFold(piece, at)));
  return stillestOf(onFold) ?? stillestOf(found.map(({ piece }) => cornersOf(piece.dots)));
}

function stillestOf([first, ...rest]: readonly ReadonlyMap<string, Point>[]): string | undefined {
  let best: { readonly name: string; readonly moved: number } | undefined;
  for (const [name, at] of first ?? []) {
    const others = rest.map((corner) => corner.get(name));
    if (others.some((other) => other === undefined)) continue;
    const moved = rounded(Math.max(0, ...others.map((other) => distance(at, other!))));
    if (best === undefined || moved < best.moved) best = { name, moved };
  }
  return best?.name;
}

/** Named once in the outline: a whole that is drawn from its half has most corners twice. */
function cornersOf(
  dots: readonly DrawnDot[],
  wanted: (at: Point) => boolean = () => true,
): ReadonlyMap<string, Point> {
  const corners = new Map<string, Point>();
  for (const { role, name, at } of dots)
    if (role === 'corner' && name !== '' && !corners.has(name) && wanted(at)) corners.set(name, at);
  return corners;
}

/** How far off the fold a corner may lie and still be on it: rounding. */
const ON_FOLD = 0.01;

const isFold = ({ role }: DrawnLine): boolean => role === 'fold' || role === 'centre';

const isOnFold = ({ lines }: PieceDrawing, at: Point): boolean =>
  lines.some((line) => isFold(line) && pathOf(line).locate(at).distance < ON_FOLD);

/** Where a piece is held: at its corner of that name, else at the upper left of what is drawn. */
const anchorOf = ({ dots, frame }: PieceDrawing, corner: string | undefined): Point =>
  (corner === undefined ? undefined : cornersOf(dots).get(corner)) ?? { x: frame.left, y: frame.top };

/** The direction of the thread, else that of the fold. */
function wayOf({ lines }: PieceDrawing): number | undefined {
  const line = lines.find(({ role }) => role === 'grain') ?? lines.find(isFold);
  const last = line?.stretches.at(-1);
  if (line === undefined || last === undefined) return undefined;
  const [x, y] = last.slice(-2) as [number, number];
  return Math.atan2(y - line.start.y, x - line.start.x);
}

const isStill = ({ a, b, e, f }: Affine): boolean => a === 1 && b === 0 && e === 0 && f === 0;

function movedPiece(piece: PieceDrawing, m: Affine): PieceDrawing {
  if (isStill(m)) return piece;
  const lines = piece.lines.map((line) => movedLine(line, m));
  return {
    ...piece,
    frame: frameOfLines(lines),
    lines,
    dots: piece.dots.map((dot) => movedDot(dot, m)),
    texts: piece.texts.map((text): DrawnText => movedText(text, m)),
  };
}

/** The lines of every size; what is alike in all of them once, and one grain line. */
function nestedLines(
  laid: readonly SizedPiece[],
  sizes: readonly string[],
  { sewing = false }: NestOptions,
): readonly DrawnLine[] {
  const kept = laid.map(({ size, piece }) => {
    const outlined = piece.lines.some(({ role }) => role === 'cutting');
    return { size, lines: piece.lines.filter(({ role }) => sewing || !outlined || role !== 'sewing') };
  });
  const everywhere = inAll(
    kept.map(({ lines }) => lines),
    placeOf,
    sizes,
  );
  return kept.flatMap(({ size, lines }, i) =>
    lines.flatMap((line): DrawnLine[] => {
      if (line.role === 'grain') return i === 0 ? [line] : [];
      if (everywhere(line)) return i === 0 ? [line] : [];
      return [{ ...line, ofSize: size, tip: say`size ${size}: ${line.tip}` }];
    }),
  );
}

/** Lines of one kind at one place are one line; hundredths of a millimetre are rounding. */
function placeOf({
  role,
  name,
  start,
  stretches,
}: Pick<DrawnLine, 'role' | 'name' | 'start' | 'stretches'>): string {
  const numbers = [start.x, start.y, ...stretches.flat()].map((mm) => Math.round(mm * 100));
  return `${role} ${name} ${numbers.join(' ')}`;
}

const nestedDots = (laid: readonly SizedPiece[], sizes: readonly string[]): readonly DrawnDot[] => {
  const placeOfDot = ({ name, at }: DrawnDot): string =>
    placeOf({ role: 'mark', name, start: at, stretches: [] });
  const everywhere = inAll(
    laid.map(({ piece }) => piece.dots),
    placeOfDot,
    sizes,
  );
  return laid.flatMap(({ size, piece }, i) =>
    piece.dots.flatMap((dot) => (everywhere(dot) ? (i === 0 ? [dot] : []) : [{ ...dot, ofSize: size }])),
  );
};

/** Whether a thing lies at its place in every size of the nest. */
function inAll<T>(
  ofSizes: readonly (readonly T[])[],
  key: (thing: T) => string,
  sizes: readonly string[],
): (thing: T) => boolean {
  const counts = new Map<string, number>();
  for (const things of ofSizes)
    for (const one of new Set(things.map(key))) counts.set(one, (counts.get(one) ?? 0) + 1);
  return (thing) => counts.get(key(thing)) === sizes.length;
}

/**
 * Taking hold of a point in the drawing: where its line in the text gives it a place by plain lengths, these follow the
 * hand; a point that is worked out says from what.
 */
import type { Axis, Grip } from '../../client/preview/protocol';
import type { Expr, Quantity, SourceFile, Statement, Step } from '../../grammar/syntax';
import type { Source } from '../drafting/finding';
import type { Pattern, PlacedFix, Shape } from '../drafting/model';
import { eachReference } from '../drafting/names/references';
import { written } from '../drafting/values/quantity';

interface Held {
  readonly axis: Axis;
  readonly at: Quantity;
}

/**
 * How a point of a piece can be moved by hand.
 *
 * @param source the point's definition, as a dot of the drawing names it
 * @param piece the piece in whose drawing it was taken hold of
 */
export function gripOf(pattern: Pattern, source: Source, piece: string, fileOf: FileOf): Grip {
  const found = pointLine(pattern, source, fileOf);
  const shape = pattern.info(source)?.shape;
  if (found === undefined || shape?.kind !== 'point') {
    return { reason: 'It comes from a piece that was worked on, not from a point of a draft.' };
  }
  const corner = pattern.pieces
    .find(({ name }) => name === piece)
    ?.corners.find((one) => one.name === found.name);
  const away = corner && Math.hypot(corner.point.x - shape.point.x, corner.point.y - shape.point.y);
  if (away === undefined || away > SAME_PLACE)
    return {
      reason: `${piece} was worked on or turned over after ${found.name} was drawn: move it in the draft.`,
    };
  const held = heldBy(pattern, source, found.phrase, shape.point);
  return held.length > 0 ? { axes: held.map(({ axis }) => axis) } : { reason: reasonFor(found) };
}

/** Lies where the draft has it, mm. */
const SAME_PLACE = 0.01;

/** The syntax of a file that a pattern was read from. */
export type FileOf = (uri: string) => SourceFile | undefined;

/** The edits that write new amounts into a point's line, in the order of its axes. */
export function pulled(
  pattern: Pattern,
  source: Source,
  amounts: readonly number[],
  fileOf: FileOf,
): PlacedFix | undefined {
  const found = pointLine(pattern, source, fileOf);
  const shape = pattern.info(source)?.shape;
  if (found === undefined || shape?.kind !== 'point') return undefined;
  const held = heldBy(pattern, source, found.phrase, shape.point);
  if (held.length !== amounts.length || !amounts.every(Number.isFinite)) return undefined;
  const edits = held.map(({ at }, i) => ({
    place: { uri: found.uri, from: found.offset + at.at.from, to: found.offset + at.at.to },
    text: `${trimmed(amounts[i]!)}${at.unit ?? ''}`,
  }));
  return { title: `Move ${found.name}`, edits };
}

const trimmed = (amount: number): string => String(Number(Math.max(amount, 0).toFixed(4)));

interface PointLine {
  readonly name: string;
  readonly uri: string;
  /** Where the statement begins in the file. */
  readonly offset: number;
  readonly statement: Statement;
  readonly phrase: Expr;
}

function pointLine(pattern: Pattern, source: Source, fileOf: FileOf): PointLine | undefined {
  const place = pattern.locate(source);
  const file = place && fileOf(place.uri);
  const top = file?.items.find(
    ({ offset, statement }) =>
      place!.from >= offset + statement.start && place!.from < offset + statement.end,
  );
  if (place === undefined || top === undefined) return undefined;
  const inside = place.from - top.offset;
  const statement = (top.statement.block ?? []).find(({ start, end }) => inside >= start && inside < end);
  if (statement?.node.kind !== 'shape' || statement.node.form !== 'point') return undefined;
  const { name, phrase } = statement.node;
  return { name: name.text, uri: place.uri, offset: top.offset + statement.start, statement, phrase };
}

/** The plain lengths at the end of a phrase: steps by a length, or one distance along a line. */
function heldBy(
  pattern: Pattern,
  source: Source,
  phrase: Expr,
  at: { readonly x: number; readonly y: number },
): readonly Held[] {
  if (phrase.kind === 'bracket') return heldBy(pattern, source, phrase.inside, at);
  if (phrase.kind === 'placed') return alongLine(pattern, source, phrase, at);
  const held: Held[] = [];
  for (let step: Expr = phrase; step.kind === 'step' && step.step.kind === 'by'; step = step.base) {
    const one = stepHeld(step.step);
    if (one === undefined) break;
    // two steps one way: only the last is moved
    if (held.every(({ axis }) => axis.x * one.axis.x + axis.y * one.axis.y === 0)) held.push(one);
  }
  return held;
}

const WAYS = { up: [0, -1], down: [0, 1], left: [-1, 0], right: [1, 0] } as const;

function stepHeld(step: Extract<Step['step'], { kind: 'by' }>): Held | undefined {
  const [x, y] = WAYS[step.direction];
  return lengthHeld(step.distance, x, y);
}

function lengthHeld(length: Expr, x: number, y: number): Held | undefined {
  if (length.kind !== 'quantity' || length.unit === undefined) return undefined;
  const { kind } = written(length);
  const { amount, unit } = length;
  if (kind !== 'length') return undefined;
  const mm = written({ ...length, amount: 1 }).amount;
  return { axis: { x, y, amount, unit, mm }, at: length };
}

/** `on L 7cm from A`: along the line, away from A. */
function alongLine(
  pattern: Pattern,
  source: Source,
  { on, place }: Extract<Expr, { kind: 'placed' }>,
  at: { readonly x: number; readonly y: number },
): readonly Held[] {
  const line =
    on.kind === 'ref' && on.path.length === 1 ? siblingShape(pattern, source, on.path[0]!.text) : undefined;
  if (place.counted !== 'from' || line === undefined || line.kind === 'point') return [];
  const { path } = line;
  const { s } = path.locate(at);
  const tangent = path.tangentAt(s);
  const bare = lengthHeld(place.value, 0, 0);
  if (bare === undefined) return [];
  const distance = bare.axis.amount * bare.axis.mm;
  const way =
    Math.abs(s - distance) < SAME_PLACE ? 1 : Math.abs(path.length - s - distance) < SAME_PLACE ? -1 : 0;
  if (way === 0) return [];
  return [{ axis: { ...bare.axis, x: way * tangent.x, y: way * tangent.y }, at: bare.at }];
}

function siblingShape(pattern: Pattern, source: Source, name: string): Shape | undefined {
  const draft = source.slice(0, source.lastIndexOf('/') + 1);
  return pattern.info(`${draft}${name}`)?.shape;
}

function reasonFor({ name, statement, phrase }: PointLine): string {
  if (phrase.kind === 'ref')
    return `${name} is where ${statement.text.slice(phrase.at.from, phrase.at.to)} is.`;
  const names = new Set<string>();
  eachReference(statement, ({ path }) => names.add(path.map(({ text }) => text).join('.')));
  const from = [...names].filter((one) => one !== name && one !== 'origin');
  return `${name} is worked out${from.length > 0 ? ` from ${from.join(', ')}` : ''}: change that in the text.`;
}

/**
 * Taking hold of a point in the drawing: where its line in the text gives it a place by plain lengths, these follow the
 * hand; a point that is worked out says from what.
 */
import { say } from '../../grammar/say';
import type { Grip } from '../../client/preview/protocol';
import type { Expr, SourceFile, Statement } from '../../grammar/syntax';
import type { Source } from '../drafting/finding';
import type { Pattern, PlacedFix, Shape } from '../drafting/model';
import { eachReference } from '../drafting/names/references';
import { ALIKE_WITHIN } from '../drafting/pieces/both-sides';
import { liesAsDrafted } from '../drawing/draft';
import type { Point } from '../geometry';
import { heldBy, type Sibling } from './grip-axes';

/**
 * How a point of a piece, or the deepest place of a curve, can be moved by hand.
 *
 * @param source its definition, as a dot of the drawing names it
 * @param piece the piece in whose drawing it was taken hold of
 */
export function gripOf(pattern: Pattern, source: Source, piece: string, fileOf: FileOf): Grip {
  const found = lineOf(pattern, source, fileOf);
  const at = spotOf(pattern.info(source)?.shape);
  if (found === undefined || at === undefined) {
    return { reason: say`It comes from a piece that was worked on, not from a point of a draft.` };
  }
  if (!liesThere(pattern, piece, found.name, at))
    return {
      reason: say`${piece} was worked on or turned over after ${found.name} was drawn: move it in the draft.`,
    };
  const held = heldBy(found.phrase, at, siblingsOf(pattern, source));
  return held.length > 0 ? { axes: held.map(({ axis }) => axis) } : { reason: reasonFor(found) };
}

/** The place that can be taken hold of. */
const spotOf = (shape: Shape | undefined): Point | undefined =>
  shape?.kind === 'point' ? shape.point : shape?.kind === 'curve' ? shape.deepest : undefined;

/** Whether a piece has the place of a draft where the draft has it; points beside its outline go with the whole. */
function liesThere(pattern: Pattern, name: string, point: string, at: Point): boolean {
  const piece = pattern.pieces.find((one) => one.name === name);
  const corner = piece?.corners.find((one) => one.name === point);
  if (corner) return Math.hypot(corner.point.x - at.x, corner.point.y - at.y) <= ALIKE_WITHIN;
  return piece !== undefined && liesAsDrafted(piece, pattern);
}

/** The syntax of a file that a pattern was read from. */
export type FileOf = (uri: string) => SourceFile | undefined;

/** The edits that write new amounts into a point's line, in the order of its axes. */
export function pulled(
  pattern: Pattern,
  source: Source,
  amounts: readonly number[],
  fileOf: FileOf,
): PlacedFix | undefined {
  const found = lineOf(pattern, source, fileOf);
  const spot = spotOf(pattern.info(source)?.shape);
  if (found === undefined || spot === undefined) return undefined;
  const held = heldBy(found.phrase, spot, siblingsOf(pattern, source));
  if (held.length !== amounts.length || !amounts.every(Number.isFinite)) return undefined;
  const edits = held.map(({ at }, i) => ({
    place: { uri: found.uri, from: found.offset + at.at.from, to: found.offset + at.at.to },
    text: `${trimmed(amounts[i]!)}${at.unit ?? ''}`,
  }));
  return { title: say`Move ${found.name}`, edits };
}

const trimmed = (amount: number): string => String(Number(Math.max(amount, 0).toFixed(4)));

interface ShapeLine {
  readonly name: string;
  readonly uri: string;
  /** Where the statement begins in the file. */
  readonly offset: number;
  readonly statement: Statement;
  readonly phrase: Expr;
}

function lineOf(pattern: Pattern, source: Source, fileOf: FileOf): ShapeLine | undefined {
  const place = pattern.locate(source);
  const file = place && fileOf(place.uri);
  const top = file?.items.find(
    ({ offset, statement }) =>
      place!.from >= offset + statement.start && place!.from < offset + statement.end,
  );
  if (place === undefined || top === undefined) return undefined;
  const inside = place.from - top.offset;
  const statement = (top.statement.block ?? []).find(({ start, end }) => inside >= start && inside < end);
  if (statement?.node.kind !== 'shape') return undefined;
  const { name, phrase } = statement.node;
  return { name: name.text, uri: place.uri, offset: top.offset + statement.start, statement, phrase };
}

/** The shapes of the draft that a source belongs to. */
function siblingsOf(pattern: Pattern, source: Source): Sibling {
  const draft = source.slice(0, source.lastIndexOf('/') + 1);
  return (name) => pattern.info(`${draft}${name}`)?.shape;
}

function reasonFor({ name, statement, phrase }: ShapeLine): string {
  if (phrase.kind === 'ref')
    return say`${name} is where ${statement.text.slice(phrase.at.from, phrase.at.to)} is.`;
  const names = new Set<string>();
  eachReference(statement, ({ path }) => names.add(path.map(({ text }) => text).join('.')));
  const from = [...names].filter((one) => one !== name && one !== 'origin');
  return say`${name} is worked out${from.length > 0 ? say` from ${from.join(', ')}` : ''}: change that in the text.`;
}

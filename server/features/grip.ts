/**
 * Taking hold of a point in the drawing: where its line in the text gives it a place by plain lengths, these follow the
 * hand; a point that is worked out says from what.
 */
import { say } from '../../grammar/say';
import type { Grip } from '../../client/preview/protocol';
import type { Expr, SourceFile, Statement } from '../../grammar/syntax';
import type { Source } from '../drafting/finding';
import type { Pattern, Piece, PlacedFix, Shape } from '../drafting/model';
import { eachReference } from '../drafting/names/references';
import { ALIKE_WITHIN } from '../drafting/pieces/both-sides';
import { hollowRuns } from '../drafting/pieces/hollow-runs';
import { liesAsDrafted } from '../drawing/draft';
import { heldBy, hollowHeld, type Grasp, type Held, type Sibling } from './grip-axes';

/**
 * How a point of a piece, a drill hole, or the deepest place of a curve can be moved by hand.
 *
 * @param source its definition, as a dot of the drawing names it
 * @param piece the piece in whose drawing it was taken hold of
 */
export function gripOf(pattern: Pattern, source: Source, piece: string, fileOf: FileOf): Grip {
  const line = lineOf(pattern, source, fileOf);
  if (line === undefined) return { reason: reasonWithoutLine(pattern, source) };
  if (!liesThere(pattern, piece, line))
    return {
      reason: say`${piece} was worked on or turned over after ${line.name} was drawn: move it in the draft.`,
    };
  return line.held.length > 0
    ? { axes: line.held.map(({ axis }) => axis) }
    : { reason: reasonFor(line, pattern) };
}

/** Whether a piece has the place of a draft where the draft has it; points beside its outline go with the whole. */
function liesThere(pattern: Pattern, name: string, { name: point, at }: Line): boolean {
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
  const line = lineOf(pattern, source, fileOf);
  if (line === undefined || line.held.length !== amounts.length || !amounts.every(Number.isFinite))
    return undefined;
  const edits = line.held.map(({ at }, i) => ({
    place: { uri: line.uri, from: line.offset + at.at.from, to: line.offset + at.at.to },
    text: `${trimmed(amounts[i]!)}${at.unit ?? ''}`,
  }));
  return { title: say`Move ${line.name}`, edits };
}

const trimmed = (amount: number): string => String(Number(Math.max(amount, 0).toFixed(4)));

/** A line of the text that says where a point is. */
interface Line {
  readonly name: string;
  readonly uri: string;
  /** Where the statement begins in the file. */
  readonly offset: number;
  readonly statement: Statement;
  /** Where the point is. */
  readonly at: Grasp['at'];
  /** Where it is the same as that of another point: how that is written. */
  readonly where?: Expr;
  readonly held: readonly Held[];
}

function lineOf(pattern: Pattern, source: Source, fileOf: FileOf): Line | undefined {
  const written = statementOf(pattern, source, fileOf);
  if (written === undefined) return undefined;
  const { node } = written.statement;
  if (node.kind === 'edge') return runLine(pattern, source, written);
  const grasp = graspOf(pattern, source);
  if ((node.kind !== 'shape' && node.kind !== 'mark') || grasp === undefined) return undefined;
  const { name, phrase } = node;
  return {
    ...written,
    ...{ name: name.text, at: grasp.at, held: heldBy(phrase, grasp, siblingsOf(pattern, source)) },
    ...(phrase.kind === 'ref' && { where: phrase }),
  };
}

/** A stretch of an outline that is hollow. */
function runLine(pattern: Pattern, source: Source, written: Written): Line | undefined {
  const runs = pattern.pieces.flatMap((piece) => hollowRuns(piece).map((run) => ({ piece, ...run })));
  const found = runs.find((run) => run.source === source);
  if (found === undefined) return undefined;
  const { piece, edge, run, from, to, deepest: at } = found;
  const held = hollowHeld(run.options, { at, ends: [from, to] }, inDraft(pattern, piece.draft));
  return { ...written, name: edge.name, at, held: held === undefined ? [] : [held] };
}

/** The place that can be taken hold of. */
function graspOf(pattern: Pattern, source: Source): Grasp | undefined {
  const hole = markOf(pattern, source)?.points[0];
  if (hole !== undefined) return { at: hole };
  const shape = pattern.info(source)?.shape;
  if (shape?.kind === 'point') return { at: shape.point };
  if (shape?.kind !== 'curve' || shape.deepest === undefined) return undefined;
  return { at: shape.deepest, ends: [shape.path.start, shape.path.end] };
}

const pieceOf = (pattern: Pattern, source: Source): Piece | undefined =>
  pattern.pieces.find((piece) => source.startsWith(`${piece.source}/`));

const markOf = (pattern: Pattern, source: Source) =>
  pieceOf(pattern, source)?.marks.find((one) => one.source === source && one.points.length === 1);

type Written = Pick<Line, 'uri' | 'offset' | 'statement'>;

/** The line of a block that names a source; of a stretch of an edge, the line of its edge. */
function statementOf(pattern: Pattern, source: Source, fileOf: FileOf): Written | undefined {
  const place = pattern.locate(source);
  const file = place && fileOf(place.uri);
  const top = file?.items.find(
    ({ offset, statement }) =>
      place!.from >= offset + statement.start && place!.from < offset + statement.end,
  );
  if (place === undefined || top === undefined) return undefined;
  const statement = innermost(top.statement, place.from - top.offset);
  return statement && { uri: place.uri, offset: top.offset + statement.start, statement };
}

function innermost({ block = [] }: Statement, at: number): Statement | undefined {
  const line = block.find(({ start, end }) => at >= start && at < end);
  return line && (innermost(line, at) ?? line);
}

/** The shapes of the draft that a source belongs to: a draft's own, or that of its piece. */
function siblingsOf(pattern: Pattern, source: Source): Sibling {
  const piece = markOf(pattern, source) && pieceOf(pattern, source);
  return inDraft(pattern, piece ? piece.draft : source.slice(0, source.lastIndexOf('/')));
}

const inDraft =
  (pattern: Pattern, draft: string): Sibling =>
  (name): Shape | undefined =>
    pattern.info(`${draft}/${name}`)?.shape;

/** A dart swings about its pivot; all else that no line places came of the work on a piece. */
function reasonWithoutLine(pattern: Pattern, source: Source): string {
  const info = pattern.info(source);
  return info?.kind === 'dart'
    ? say`It is the pivot of the dart ${info.name}: move the point that the dart swings about, or change its length in the text.`
    : say`It comes from a piece that was worked on, not from a point of a draft.`;
}

/** What is chosen is tried beside the drawing, which is nearer to the hand than its line in the text. */
function reasonFor({ name, statement, where }: Line, { choices }: Pattern): string {
  if (where !== undefined)
    return say`${name} is where ${statement.text.slice(where.at.from, where.at.to)} is.`;
  const names = new Set<string>();
  eachReference(statement, ({ path }) => names.add(path.map(({ text }) => text).join('.')));
  const from = [...names].filter((one) => one !== name && one !== 'origin');
  const chosen = from.filter((one) => choices.some(({ path }) => path === one));
  if (chosen.length > 0)
    return say`${name} is worked out from ${from.join(', ')}: change that in the text, or ${chosen.join(', ')} under Choices.`;
  return say`${name} is worked out${from.length > 0 ? say` from ${from.join(', ')}` : ''}: change that in the text.`;
}

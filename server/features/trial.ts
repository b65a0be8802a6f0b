/** What is tried in the preview without touching the text, and the edits that write it into the text at last. */
import { say } from '../../grammar/say';
import type { Trial, TriedChoice } from '../../client/preview/protocol';
import type { SourceFile } from '../../grammar/syntax';
import type { BodyChoice, Pattern, PatternChoice, PlacedFix, Value } from '../drafting/model';
import { print } from '../drafting/values/quantity';
import type { Choice } from '../drafting/workshop';

export const NOTHING_TRIED: Trial = { set: {} };

/** A trial as the workshop takes it: what the pattern no longer offers is left out. */
export function choiceFor({ everybody, choices }: Pattern, trial: Trial): Choice {
  const paths = new Set(choices.map(({ path }) => path));
  const set = new Map(Object.entries(trial.set).filter(([path]) => paths.has(path)));
  const known = everybody.some((one) => sameBody(one, trial.for));
  return { ...(known && trial.for && { for: trial.for }), ...(set.size > 0 && { set }) };
}

export const isNothing = (choice: Choice): boolean => choice.for === undefined && choice.set === undefined;

export const sameBody = (one: BodyChoice | undefined, other: BodyChoice | undefined): boolean =>
  one?.name === other?.name && one?.size === other?.size;

/** Every decision of a pattern, in the order of the file. */
export const triedChoices = (pattern: Pattern): readonly TriedChoice[] =>
  pattern.choices.flatMap((choice): TriedChoice[] => {
    const { path, doc, value, low, high, among } = choice;
    if (value === undefined) return [];
    const range = { ...(low !== undefined && { low }), ...(high !== undefined && { high }) };
    return [{ path, doc, value: inWords(value, pattern), written: writtenValue(choice), ...range, among }];
  });

const inWords = (value: Value, { unit }: Pattern): string =>
  value.kind === 'text' ? value.text : print(value, unit);

const writtenValue = ({ statement, valueAt }: PatternChoice): string =>
  statement.text.slice(valueAt.from, valueAt.to);

/** The edits that make the text say what was tried: one step that can be undone. */
export function writeTrial(pattern: Pattern, source: SourceFile, trial: Trial): PlacedFix {
  const { set = new Map<string, string>(), for: body } = choiceFor(pattern, trial);
  const edits = pattern.choices.flatMap((choice) => {
    const text = set.get(choice.path);
    if (text === undefined || text === writtenValue(choice)) return [];
    const { statement, valueAt, source: of } = choice;
    const fix = { title: '', edits: [{ statement, at: valueAt, text, source: of }] };
    const finding = { code: '', message: '', statement, at: valueAt, related: [], fixes: [fix] };
    return pattern.place({ source: of, finding }, 'note').fixes[0]!.edits;
  });
  return { title: say`Write what was tried`, edits: [...edits, ...bodyEdits(pattern, source, body)] };
}

/** The `drafted for` line changed, or written below the lines it belongs to. */
function bodyEdits(
  { uri }: Pattern,
  { items }: SourceFile,
  body: BodyChoice | undefined,
): PlacedFix['edits'] {
  if (body === undefined) return [];
  const words = [body.name, sizeInWords(body.size)].join(' ').trim();
  for (const { offset, statement } of items) {
    if (statement.node.kind !== 'drafted-for') continue;
    const start = offset + statement.start;
    const { body: name, size } = statement.node;
    return [{ place: { uri, from: start + name.at.from, to: start + (size ?? name).at.to }, text: words }];
  }
  const heads = items.filter(({ statement: { node } }) => node.kind === 'pattern' || node.kind === 'use');
  const last = heads[heads.length - 1];
  const at = last === undefined ? 0 : last.offset + last.statement.end;
  const line = last === undefined ? `drafted for ${words}\n` : `\ndrafted for ${words}`;
  return [{ place: { uri, from: at, to: at }, text: line }];
}

/** A size of several words stands in quotes. */
const sizeInWords = (size = ''): string => (/^[\p{L}\p{M}\d-]*$/u.test(size) ? size : `"${size}"`);

/** What stands round a pattern: bodies and sizes, choices, what it needs to be measured, the days written in it. */
import type { Expr, Range, Statement } from '../../grammar/syntax';
import { bodiesFrom } from './file-findings';
import type {
  BodyChoice,
  BodySheet,
  DisplayUnit,
  OwnMeasurement,
  PatternChoice,
  Quantity,
  SidedReason,
} from './model';
import type { FileNames, FileSet } from './names/files';
import { eachReference } from './names/references';
import type { Network } from './names/network';
import { same } from './same';
import { sidedDefinitions } from './sides';
import { bodyOf, sizesOf, type Body } from './values/body';
import { measurementNamed, measurements } from './values/measurements';
import { plainly, written } from './values/quantity';
import type { Answer } from './values/reader';

/** The sheets of the files as they stood when they were asked for last. */
const sheetsKept = new WeakMap<FileSet, { of: readonly unknown[]; sheets: readonly BodySheet[] }>();

/** The body drafted for, and all that stand in the pattern's own file; the same while they stay the same. */
export function bodySheets(
  files: FileSet,
  chosen: BodyChoice | undefined,
  unit: DisplayUnit,
): readonly BodySheet[] {
  const bodies = bodiesFrom(files.root);
  const own = files.root.bodies().map(({ statement }) => statement);
  const of = [unit, chosen?.name, chosen?.size, ...bodies.values(), ...own];
  const before = sheetsKept.get(files);
  if (before !== undefined && same(before.of, of)) return before.sheets;
  const sheets = readSheets(files, bodies, chosen, unit);
  sheetsKept.set(files, { of, sheets });
  return sheets;
}

function readSheets(
  files: FileSet,
  bodies: ReadonlyMap<string, Statement>,
  chosen: BodyChoice | undefined,
  unit: DisplayUnit,
): readonly BodySheet[] {
  const found: BodySheet[] = [];
  const add = (name: string, size?: string): void => {
    const statement = bodies.get(name);
    const body =
      statement && bodyOf({ name, ...(size !== undefined && { size }) }, (other) => bodies.get(other), unit);
    const repeated = found.some((one) => one.name === name && one.size === size);
    if (statement === undefined || body === undefined || repeated) return;
    const source = `${fileOf(files, statement)}body:${name}`;
    const taken = takenOn(statement);
    const foundation = foundationOf(statement, (other) => bodies.get(other), unit);
    found.push({
      name,
      source,
      statement,
      measures: body.measures,
      ...(size !== undefined && { size }),
      ...(taken && { taken }),
      ...(foundation && { foundation }),
    });
  };
  if (chosen !== undefined) add(chosen.name, chosen.size);
  for (const { statement, name } of files.root.bodies()) {
    if (statement.node.kind === 'body') add(name);
    else for (const size of sizesOf(statement)) add(name, size);
  }
  return found;
}

const fileOf = (files: FileSet, statement: Statement): string =>
  files.files().find((file) => file.bodies().some((body) => body.statement === statement))?.key ?? '';

function foundationOf(
  { node }: Statement,
  find: (name: string) => Statement | undefined,
  unit: DisplayUnit,
): BodySheet['foundation'] {
  if (node.kind !== 'body' || node.from?.size === undefined) return undefined;
  const { table, size } = node.from;
  const statement = find(table.text);
  if (statement?.node.kind !== 'sizes') return undefined;
  const sizes = sizesOf(statement).flatMap((each) => {
    const body = bodyOf({ name: table.text, size: each }, find, unit);
    return body === undefined ? [] : [{ size: each, measures: body.measures }];
  });
  return { table: table.text, size: size.text, at: size.at, sizes };
}

function takenOn(statement: Statement): BodySheet['taken'] {
  for (const line of statement.block ?? []) {
    if (line.node.kind === 'taken') return { date: line.node.date, statement: line };
  }
  return undefined;
}

const MEASUREMENT = 'measurement:';

/** Measurements that some definition in the order rests on. */
export function needed(network: Network): readonly string[] {
  const names = new Set<string>();
  for (const [id, askers] of network.dependents) {
    if (!id.startsWith(MEASUREMENT)) continue;
    if ([...askers].some((asker) => network.groupOf(asker) !== undefined))
      names.add(id.slice(MEASUREMENT.length));
  }
  const known = measurements.map(({ name }) => name).filter((name) => names.has(name));
  return [...known, ...[...names].filter((name) => !measurementNamed.has(name)).sort()];
}

/** What `measure` lines declare; of two with one name the first. */
export function ownMeasurements(files: FileSet): ReadonlyMap<string, OwnMeasurement> {
  const found = new Map<string, OwnMeasurement>();
  for (const file of files.files()) {
    for (const { statement } of file.ofKind('measure')) {
      const { node } = statement;
      if (node.kind !== 'measure' || found.has(node.name.text)) continue;
      const [low, high] = [plainLength(node.range?.low), plainLength(node.range?.high)];
      const range =
        low === undefined || high === undefined
          ? {}
          : { low: Math.min(low, high), high: Math.max(low, high) };
      found.set(node.name.text, { name: node.name.text, words: node.how.text, ...range });
    }
  }
  return found;
}

/** A written length in mm: the range of a measurement rests on nothing. */
function plainLength(expr: Expr | undefined): number | undefined {
  const value = expr?.kind === 'quantity' ? written(expr) : undefined;
  return value?.kind === 'length' ? value.amount : undefined;
}

/** Choices that can be set from outside; of two with one path the first. */
export function choicesOf(
  files: FileSet,
  unit: DisplayUnit,
  answerOf: (id: string) => Answer | undefined,
): readonly PatternChoice[] {
  const found = new Map<string, PatternChoice>();
  for (const file of files.files()) {
    for (const { statement, scope, name, id } of file.choices()) {
      const { node, text, doc } = statement;
      const path = scope === '' ? name : `${scope}.${name}`;
      if (node.kind !== 'choose' || found.has(path)) continue;
      const words = ({ at }: { at: { from: number; to: number } }): string => text.slice(at.from, at.to);
      const source = file.key + id;
      const answer = answerOf(source);
      const { value, ends } = answer?.is === 'value' ? answer : {};
      found.set(path, {
        path,
        source,
        doc,
        statement,
        valueAt: node.value.at,
        among: (node.among ?? []).map(words),
        ...(value !== undefined && { value }),
        ...(node.range && ends && rangeOf(text, node.range, ends, unit)),
      });
    }
  }
  return [...found.values()];
}

/** The two ends of a range as they can be set: as written where they are plain, worked out where they are not. */
function rangeOf(
  text: string,
  { low, high }: Range,
  ends: readonly [Quantity, Quantity],
  unit: DisplayUnit,
): { low: string; high: string } | undefined {
  const end = ({ kind, at }: Expr, worked: Quantity): string | undefined =>
    kind === 'quantity' ? text.slice(at.from, at.to) : plainly(worked, unit);
  const [from, to] = [end(low, ends[0]), end(high, ends[1])];
  return from === undefined || to === undefined ? undefined : { low: from, high: to };
}

/** Everybody the pattern can be drafted for: bodies, and every size of every table, of its own file and those it uses. */
export const everybody = (files: FileSet): readonly BodyChoice[] =>
  [...bodiesFrom(files.root)].flatMap(([name, statement]): readonly BodyChoice[] =>
    statement.node.kind === 'sizes' ? sizesOf(statement).map((size) => ({ name, size })) : [{ name }],
  );

/** Sizes of the table that a choice of body names. */
export function sizesFor(files: FileSet, chosen: BodyChoice | undefined): readonly string[] {
  const statement = chosen && bodiesFrom(files.root).get(chosen.name);
  return statement?.node.kind === 'sizes' ? sizesOf(statement) : [];
}

/** Days of fittings and of cutting. */
export function daysOf(file: FileNames): readonly string[] {
  return file.ofKind('later').flatMap(({ statement }) => {
    const { node, text } = statement;
    if (node.kind !== 'later' || !/^(cut|fitting)/.test(node.word)) return [];
    return /\d{4}-\d{2}-\d{2}/.exec(text)?.slice(0, 1) ?? [];
  });
}

/** Taken left and right, and not the same. */
function isUneven(body: Body | undefined, measurement: string): boolean {
  const measure = body?.measures.get(measurement);
  return measure?.sided === true && measure.left.amount !== measure.right.amount;
}

/** The places where a piece comes to rest on a measurement whose two sides differ. */
export function sidedReasons(
  network: Network,
  body: Body | undefined,
  piece: string,
): readonly SidedReason[] {
  if (!sidedDefinitions(network, body).has(piece)) return [];
  const seen = new Set([piece]);
  for (const id of seen) for (const input of network.nodes.get(id)?.links.inputs ?? []) seen.add(input);
  const found: SidedReason[] = [];
  for (const id of seen) {
    const node = network.nodes.get(id);
    if (node === undefined || node.links.bare.size === 0) continue;
    eachReference(node.declaration.statement, (ref, _, statement) => {
      const target = node.links.targets.get(ref);
      const measurement = ref.path[0]!.text;
      if (target?.kind !== 'measurement' || target.rest.length > 0 || !isUneven(body, measurement)) return;
      found.push({ measurement, source: id, statement, at: ref.at });
    });
  }
  return found;
}

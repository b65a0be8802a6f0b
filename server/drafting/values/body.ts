/** The measurements of one body, or of one size of a table. */
import { say } from '../../../grammar/say';
import type { Quantity as Written, Span, Statement } from '../../../grammar/syntax';
import type { Finding } from '../finding';
import type { BodyChoice, DisplayUnit, Quantity } from '../model';
import { written } from './quantity';

/** A measurement as taken: once, or on both sides of the body. */
export interface Taken {
  readonly left: Quantity;
  readonly right: Quantity;
  /** Whether it was taken on both sides. */
  readonly sided: boolean;
  /** Where it stands. */
  readonly statement: Statement;
  readonly at: Span;
}

export interface Body {
  readonly measures: ReadonlyMap<string, Taken>;
  readonly findings: readonly Finding[];
}

/** Finds the `body` or `sizes` statement of a name. */
export type FindTable = (name: string) => Statement | undefined;

/** A body may be taken from a table, and the table is no body: one step. More than this is a slip. */
const LONGEST_CHAIN = 5;

/** @returns undefined when there is no such body, or no such size */
export function bodyOf(choice: BodyChoice, find: FindTable, unit: DisplayUnit, depth = 0): Body | undefined {
  const statement = find(choice.name);
  if (statement === undefined || depth > LONGEST_CHAIN) return undefined;
  const { node } = statement;
  if (node.kind === 'sizes') return ofSize(statement, choice.size, unit);
  if (node.kind !== 'body') return undefined;
  const measures = new Map<string, Taken>();
  if (node.from !== undefined) {
    const base = bodyOf({ name: node.from.table.text, size: node.from.size?.text }, find, unit, depth + 1);
    for (const [name, taken] of base?.measures ?? []) measures.set(name, taken);
  }
  const findings: Finding[] = [];
  for (const line of statement.block ?? []) {
    if (line.node.kind !== 'measured') continue;
    const { name, value, left, right } = line.node;
    const [a, b] = [cell(line, value ?? left, unit, findings), cell(line, value ?? right, unit, findings)];
    if (a !== undefined && b !== undefined) {
      measures.set(name.text, {
        left: a,
        right: b,
        sided: value === undefined,
        statement: line,
        at: name.at,
      });
    }
  }
  return { measures, findings: [...new Map(findings.map((one) => [one.at, one])).values()] };
}

/** The sizes a table has, as written. */
export function sizesOf(statement: Statement): readonly string[] {
  for (const { node } of statement.block ?? []) {
    if (node.kind === 'size-row') return node.sizes.map(({ text }) => text);
  }
  return [];
}

function ofSize(statement: Statement, size: string | undefined, unit: DisplayUnit): Body | undefined {
  const column = sizesOf(statement).indexOf(size ?? '');
  if (column < 0) return undefined;
  const measures = new Map<string, Taken>();
  const findings: Finding[] = [];
  for (const line of statement.block ?? []) {
    if (line.node.kind !== 'row') continue;
    const value = cell(line, line.node.cells[column], unit, findings);
    if (value !== undefined) {
      const at = line.node.cells[column]!.at;
      measures.set(line.node.name.text, { left: value, right: value, sided: false, statement: line, at });
    }
  }
  return { measures, findings };
}

/** A cell's value; a bare number is reported, with the units it may have. */
function cell(
  statement: Statement,
  number: Written | undefined,
  unit: DisplayUnit,
  findings: Finding[],
): Quantity | undefined {
  if (number === undefined) return undefined;
  const value = written(number);
  if (number.unit !== undefined || value.kind !== 'ratio') return value;
  const text = statement.text.slice(number.at.from, number.at.to);
  findings.push({
    code: 'missing-unit',
    message: say`${text} has no unit, but a measurement wants one: write ${text}${unit}.`,
    statement,
    at: number.at,
    related: [],
    fixes: [
      { title: say`Write ${text}${unit}`, edits: [{ statement, at: number.at, text: `${text}${unit}` }] },
    ],
  });
  return undefined;
}

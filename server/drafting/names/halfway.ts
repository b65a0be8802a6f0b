/** What is said of `halfway` where a name should stand: it is a place of a line, and no point to count from. */
import { say } from '../../../grammar/say';
import type { Ref, Statement } from '../../../grammar/syntax';
import type { Finding } from '../finding';
import { resolveShape, type Scope } from './resolve';

/** A count before the name, as in `12cm after halfway`. */
const COUNTED = /\s(after|before|from|beyond|below|above)\s+$/;
/** The line on which it is counted, where nothing but the count stands between: `on hem-line 12cm after`. */
const ON = /\bon\s+([\p{L}\p{M}\p{Nd}.-]+)\s[^(),]*$/u;

export function misplacedHalfway(scope: Scope, ref: Ref, statement: Statement): Finding | undefined {
  const [name, ...rest] = ref.path;
  if (name!.text !== 'halfway' || rest.length > 0) return undefined;
  const before = statement.text.slice(0, ref.at.from);
  const counted = COUNTED.exec(before)?.[1];
  const line = ON.exec(before)?.[1];
  const found = { code: 'wrong-kind' as const, statement, at: ref.at, related: [] };
  if (counted === undefined) {
    const message = say`halfway is a place on a line, and stands behind its name: on L halfway. As a length, write length(L) / 2.`;
    return { ...found, message, fixes: [] };
  }
  if (line === undefined || !isShape(scope, ref, line)) {
    const message = say`halfway can't take a distance ${counted} it. Make that place a point of the draft (point middle = on … halfway), and name it here.`;
    return { ...found, message, fixes: [] };
  }
  const text = `(on ${line} halfway)`;
  const message = say`halfway can't take a distance ${counted} it: write ${counted} ${text}, which is a point.`;
  return {
    ...found,
    message,
    fixes: [{ title: say`Write ${text}`, edits: [{ statement, at: ref.at, text }] }],
  };
}

const isShape = (scope: Scope, { path }: Ref, line: string): boolean =>
  resolveShape(
    scope,
    line.split('.').map((text) => ({ ...path[0]!, text })),
  ) !== undefined;

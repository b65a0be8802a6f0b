/** Times of a whole pattern: read, drafted, checked and drawn from nothing. */
import { parse } from '../../grammar';
import type { Statement } from '../../grammar/syntax';
import { check } from '../../server/checks';
import type { Pattern, PlacedFinding } from '../../server/drafting/model';
import { Workshop } from '../../server/drafting/workshop';
import { draw } from '../../server/drawing/draw';
import type { Drawing } from '../../server/drawing/model';
import { door, generated, lines, samples, type Case } from './cases';
import { checksum, fastest, quantile, timed } from './figures';

export type Say = (line: string) => void;

/** All that a person sees of a pattern, as one string. */
export function seen(pattern: Pattern, findings: readonly PlacedFinding[], drawing: Drawing): string {
  return JSON.stringify([findings, [...pattern.values], drawing]);
}

export const ms = (time: number): string => (time < 9.95 ? time.toFixed(2) : time.toFixed(1));

/** A figure beside what it may be. */
export function judged(time: number, budget: number | undefined): string {
  if (budget === undefined) return ms(time);
  return `${ms(time)} of ${budget}${time > budget ? ' OVER BUDGET' : ''}`;
}

interface Phases {
  readonly read: number;
  readonly drafted: number;
  readonly checked: number;
  readonly drawn: number;
  readonly pattern: Pattern;
  readonly seen: string;
}

/** Read, drafted, checked and drawn from nothing. */
function opened({ uri, text }: Case): void {
  const workshop = new Workshop(door);
  workshop.setText(uri, text);
  const pattern = workshop.pattern(uri);
  check(pattern);
  draw(pattern);
}

function once({ uri, text }: Case): Phases {
  const workshop = new Workshop(door);
  const { ms: read } = timed(() => workshop.setText(uri, text));
  const { ms: drafted, result: pattern } = timed(() => workshop.pattern(uri));
  const { ms: checked, result: findings } = timed(() => check(pattern));
  const { ms: drawn, result: drawing } = timed(() => draw(pattern));
  return { read, drafted, checked, drawn, pattern, seen: seen(pattern, findings, drawing) };
}

const total = ({ read, drafted, checked, drawn }: Phases): number => read + drafted + checked + drawn;

function statements(text: string): { statements: number; definitions: number } {
  let [all, named] = [0, 0];
  const visit = ({ node, block = [] }: Statement): void => {
    all++;
    if ('name' in node) named++;
    block.forEach(visit);
  };
  for (const { statement } of parse(text).items) visit(statement);
  return { statements: all, definitions: named };
}

function size({ text }: Case, pattern: Pattern): string {
  const count = statements(text);
  const figures = [
    text.split('\n').length - 1,
    count.statements,
    count.definitions,
    pattern.pieces.length,
    pattern.seams.length,
  ];
  return figures.map((figure) => String(figure).padStart(6)).join('');
}

export function measureWhole(unit: number, say: Say): void {
  say(`Whole patterns, milliseconds (best of several). Baseline of this machine: ${ms(unit)} ms.`);
  say(
    `${''.padEnd(26)} lines stmts  defs pieces seams   read draft check  draw    all  ratio checksum  (budget)`,
  );
  for (const one of [...samples(), ...generated()]) {
    const runs = one.text.length > 100_000 ? 5 : 15;
    let best = once(one);
    for (let i = 1; i < runs; i++) {
      const next = once(one);
      if (total(next) < total(best)) best = next;
    }
    const all = total(best);
    const phases = [best.read, best.drafted, best.checked, best.drawn]
      .map((time) => ms(time).padStart(6))
      .join('');
    const ratio = (all / unit).toFixed(2).padStart(6);
    const budget = one.budget.whole === undefined ? '' : `  ${judged(all, one.budget.whole)}`;
    say(
      `${one.name.padEnd(26)}${size(one, best.pattern)} ${phases}${ms(all).padStart(7)} ${ratio} ${checksum(best.seen)}${budget}`,
    );
  }
  measureSolve(unit, say);
}

/** What the unknown of one sleeve head costs: a keystroke in its range, which nothing else is touched by. */
function measureSolve(unit: number, say: Say): void {
  const sleeve = lines(200);
  const workshop = new Workshop(door);
  workshop.setText(sleeve.uri, sleeve.text);
  workshop.pattern(sleeve.uri);
  const from = sleeve.text.indexOf('30cm so that');
  let high = 30;
  const { ms: time } = fastest(60, () => {
    high = high === 30 ? 31 : 30;
    workshop.edit(sleeve.uri, [{ from, to: from + 2, text: String(high) }]);
    workshop.pattern(sleeve.uri);
  });
  say(
    `\nSolve of a sleeve head, drafted again: ${judged(time, 2)} ms, ${(time / unit).toFixed(3)} of the baseline`,
  );
}

/** What a person waits when a pattern of 10,000 lines is opened, milliseconds by the clock. */
const OPENING = 500;

/**
 * Opening by the clock, since a person waits for it: the first pattern of a process, whose program is not compiled yet,
 * and the same in a server that has read patterns before.
 */
export function measureOpening(unit: number, say: Say, count: number): void {
  const one = lines(count);
  const wait = (): number => {
    const since = performance.now();
    opened(one);
    return performance.now() - since;
  };
  const first = wait();
  say(
    `\nOpening ${count} lines in a fresh process: ${ms(first)} ms, ${(first / unit).toFixed(1)} of the baseline`,
  );
  const again = quantile([1, 2, 3, 4, 5].map(wait), 0.5);
  const budget = count > 2000 ? OPENING : undefined;
  say(`The same in a process that has read it before: ${judged(again, budget)} ms (median of 5)`);
}

/** Times of keystrokes: from the edit to the findings, and to the changed drawing. */
import { check } from '../../server/checks';
import { Workshop } from '../../server/drafting/workshop';
import { draw } from '../../server/drawing/draw';
import { door, generated, samples, type Case } from './cases';
import { dartStrokes, keystrokes, type Keystroke } from './edits';
import { checksum, quantile, timed } from './figures';
import { judged, ms, seen, type Say } from './whole';

interface Times {
  readonly kind: Keystroke['kind'];
  readonly read: number;
  readonly drafted: number;
  readonly checked: number;
  readonly drawn: number;
}

const COUNT = 240;

function stroke(workshop: Workshop, uri: string, key: Keystroke): Times {
  const { ms: read } = timed(() => workshop.edit(uri, [key]));
  const { ms: drafted, result: pattern } = timed(() => workshop.pattern(uri));
  const { ms: checked } = timed(() => check(pattern));
  const { ms: drawn } = timed(() => draw(pattern));
  return { kind: key.kind, read, drafted, checked, drawn };
}

function whatIsSeen(workshop: Workshop, uri: string): string {
  const pattern = workshop.pattern(uri);
  return checksum(seen(pattern, check(pattern), draw(pattern)));
}

function measure({ uri, text }: Case): { times: readonly Times[]; before: string; after: string } {
  const workshop = new Workshop(door);
  workshop.setText(uri, text);
  const before = whatIsSeen(workshop, uri);
  for (const key of keystrokes(text, COUNT, 7)) stroke(workshop, uri, key);
  const times = keystrokes(text, COUNT, 11).map((key) => stroke(workshop, uri, key));
  return { times, before, after: whatIsSeen(workshop, uri) };
}

/** What a keystroke in the width of a dart costs, to the findings and the drawing. */
function inDarts({ uri, text }: Case): readonly number[] {
  const workshop = new Workshop(door);
  workshop.setText(uri, text);
  whatIsSeen(workshop, uri);
  const times = dartStrokes(text, COUNT, 13).map((key) => stroke(workshop, uri, key));
  return times.slice(COUNT / 4).map(({ read, drafted, checked, drawn }) => read + drafted + checked + drawn);
}

/** @param only the part of a case's name; all when empty */
export function measureEdits(unit: number, say: Say, only: string): void {
  say(
    `\nKeystrokes, milliseconds at the 50th and 95th of a hundred. Baseline of this machine: ${ms(unit)} ms.`,
  );
  const cases = [...samples(), ...generated()].filter(({ name }) => name.includes(only));
  for (const one of cases) {
    const { times, before, after } = measure(one);
    const of = (take: (one: Times) => number): number[] => times.map(take);
    const pair = (take: (one: Times) => number): string => {
      return `${ms(quantile(of(take), 0.5))}/${ms(quantile(of(take), 0.95))}`;
    };
    const reading = of(({ read }) => read);
    const findings = of(({ read, drafted, checked }) => read + drafted + checked);
    const drawing = of(({ read, drafted, checked, drawn }) => read + drafted + checked + drawn);
    say(`${one.name}: ${before}${before === after ? '' : ` but ${after} after edits that cancel out`}`);
    say(
      `  read ${ms(quantile(reading, 0.5))}/${judged(quantile(reading, 0.95), one.budget.read)}  drafted ${pair((t) => t.drafted)}  checked ${pair((t) => t.checked)}  drawn ${pair((t) => t.drawn)}`,
    );
    for (const kind of ['number', 'name', 'comment'] as const) {
      const all = times.filter((t) => t.kind === kind).map((t) => t.read + t.drafted + t.checked + t.drawn);
      say(`  ${kind.padEnd(8)} ${ms(quantile(all, 0.5))}/${ms(quantile(all, 0.95))}`);
    }
    if (one.budget.dart !== undefined) {
      const darts = inDarts(one);
      say(
        `  in a dart's width, to the drawing ${ms(quantile(darts, 0.5))}/${judged(quantile(darts, 0.95), one.budget.dart)}`,
      );
    }
    say(
      `  to the findings ${ms(quantile(findings, 0.5))}/${judged(quantile(findings, 0.95), one.budget.findings)}, to the drawing ${ms(quantile(drawing, 0.5))}/${judged(quantile(drawing, 0.95), one.budget.drawing)}, ratio ${(quantile(drawing, 0.95) / unit).toFixed(2)}`,
    );
  }
}

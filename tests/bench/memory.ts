/** Memory of the language server while patterns are edited for long: what it holds must not grow with the keystrokes. */
import { generated, samples, type Case } from './cases';
import { keystrokes } from './edits';
import { Served } from './server';

/** MiB that the server may hold after a thousand edits of the largest sample, all of it: the program and what it read. */
const HELD = 120;

/**
 * MiB that the last 500 edits may seem to add. None is the aim; two readings of one state differ by less than this,
 * because Node translates and lays out anew what of the program runs often.
 */
const NOISE = 0.25;

const [WARM, EDITS] = [700, 500];

const say = (line: string): void => void process.stdout.write(`${line}\n`);

function held(): number {
  for (let i = 0; i < 4; i++) (globalThis as { gc?: () => void }).gc?.();
  return process.memoryUsage().heapUsed / 1024 / 1024;
}

const largest = (all: readonly Case[]): Case => [...all].sort((a, b) => b.text.length - a.text.length)[0]!;

function measure(one: Case): void {
  const served = new Served(one);
  const edit = (count: number, seed: number): void => {
    for (const key of keystrokes(one.text, count, seed)) served.stroke(one.text, key);
  };
  edit(WARM, 3);
  const readings = [held()];
  for (const seed of [5, 9]) {
    edit(EDITS, seed);
    readings.push(held());
  }
  const [first, before, last] = readings as [number, number, number];
  const growth = last - before;
  const over = growth > NOISE || last > HELD ? ' OVER BUDGET' : '';
  say(
    `  ${one.name}: ${first.toFixed(1)} MiB after ${WARM} edits, ${before.toFixed(1)} after ${WARM + EDITS}, ` +
      `${last.toFixed(1)} of ${HELD} after ${WARM + 2 * EDITS}; the last ${EDITS} added ${growth.toFixed(2)} of 0 (noise ${NOISE})${over}`,
  );
}

say(`\nMemory held by the server, an open text with its preview (${held().toFixed(1)} MiB before any)`);
const cases = generated().filter(({ name }) => name.includes('2000 lines'));
for (const one of [largest(samples()), ...cases]) measure(one);
const rss = process.memoryUsage().rss / 1024 / 1024;
say(`  all of the process, with the room that Node keeps for its next work: ${rss.toFixed(0)} MiB`);

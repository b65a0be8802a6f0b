/** Memory of a pattern that is edited for long: what stands must not grow with the number of keystrokes. */
import { check } from '../../server/checks';
import { Workshop } from '../../server/drafting/workshop';
import { draw } from '../../server/drawing/draw';
import { door, lines } from './cases';
import { keystrokes } from './edits';
import type { Say } from './whole';

function held(): number {
  for (let i = 0; i < 3; i++) (globalThis as { gc?: () => void }).gc?.();
  return process.memoryUsage().heapUsed / 1024 / 1024;
}

export function measureMemory(say: Say): void {
  const { uri, text } = lines(2000);
  const workshop = new Workshop(door);
  workshop.setText(uri, text);
  const work = (count: number, seed: number): void => {
    for (const key of keystrokes(text, count, seed)) {
      workshop.edit(uri, [key]);
      const pattern = workshop.pattern(uri);
      check(pattern);
      draw(pattern);
    }
  };
  work(200, 3);
  const before = held();
  work(1000, 5);
  const after = held();
  work(1000, 9);
  const last = held();
  say(
    `\nMemory of 2000 lines: ${before.toFixed(1)} MiB after 200 edits, ${after.toFixed(1)} after 1000 more, ${last.toFixed(1)} after 1000 more`,
  );
}

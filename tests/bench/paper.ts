/** Printing on paper: a drawing of 64 sheets written as PDF, and every garment lettered, laid out and written. */
import { Workshop } from '../../server/drafting/workshop';
import { draw } from '../../server/drawing/draw';
import type { Drawing } from '../../server/drawing/model';
import { paperNamed } from '../../server/drawing/paper/papers';
import { toPdf } from '../../server/drawing/paper/pdf';
import { printed } from '../../server/drawing/paper/printed';
import { door, samples } from './cases';
import { checksum } from './figures';
import { judged, type Say } from './whole';

/** Milliseconds for 64 sheets of A4, from the drawing as it is laid to the bytes. */
const BUDGET = 50;
const SHEETS = 64;
const RUNS = 15;
const A4 = paperNamed('A4')!;

async function timedAsync<T>(work: () => Promise<T>): Promise<{ readonly ms: number; readonly result: T }> {
  const since = process.cpuUsage();
  const result = await work();
  const { user, system } = process.cpuUsage(since);
  return { ms: (user + system) / 1000, result };
}

async function fastest<T>(
  runs: number,
  work: () => Promise<T>,
): Promise<{ readonly ms: number; readonly result: T }> {
  let best = await timedAsync(work);
  for (let i = 1; i < runs; i++) {
    const next = await timedAsync(work);
    if (next.ms < best.ms) best = next;
  }
  return best;
}

/** Pieces of a garment beside each other, as many as cover so many sheets. */
function sheetsOf(drawing: Drawing): Drawing {
  const [wide, high] = [180 * 8 + 10, 267 * 8 + 10];
  const [first] = drawing.pieces;
  const { left, top, right, bottom } = first!.frame;
  const by = (x: number, y: number) => ({ piece: first!.name, by: { x: x - left, y: y - top } });
  const placements = [];
  for (let y = 0; y < high; y += bottom - top + 20)
    for (let x = 0; x < wide; x += right - left + 20) placements.push(by(x, y));
  return {
    ...drawing,
    pieces: [first!],
    placements,
    frame: { left: 0, top: 0, right: wide - 2, bottom: high - 2 },
  };
}

export async function measurePaper(say: Say): Promise<void> {
  say('\nPrinting on A4, milliseconds');
  const skirt = samples().find(({ name }) => name === 'harbour-skirt.draft')!;
  const many = sheetsOf(draw(workshopOf(skirt.uri, skirt.text).pattern(skirt.uri)));
  const { ms, result } = await fastest(RUNS, () => toPdf(many, { paper: A4, asLaid: true }));
  say(`  ${`${SHEETS} sheets, as laid`.padEnd(42)} ${judged(ms, BUDGET)}  ${told(result)}`);
  for (const { name, uri, text } of samples()) {
    const workshop = workshopOf(uri, text);
    const one = await fastest(3, () => {
      const { drawing, turn, off } = printed(workshop.pattern(uri));
      return toPdf(drawing, { paper: A4, turn, off });
    });
    say(`  ${name.padEnd(42)} ${judged(one.ms, undefined)}  ${told(one.result)}`);
  }
}

function workshopOf(uri: string, text: string): Workshop {
  const workshop = new Workshop(door);
  workshop.setText(uri, text);
  return workshop;
}

const told = ({ sheets, value }: { readonly sheets: number; readonly value: Uint8Array }): string =>
  `${sheets} sheets, ${(value.length / 1024).toFixed(0)} KiB, ${checksum(String.fromCharCode(...value.subarray(0, 60_000)))}`;

/** Memory of a real server in a process of its own, idle after edits: all that the machine counts, Node's program included. */
import { execFileSync, spawn } from 'node:child_process';
import { join } from 'node:path';
import { IDLE_MS } from '../../server/lsp/idle';
import { methods } from '../../client/preview/protocol';
import { Lines } from '../../server/features/lines';
import { TestClient } from '../support/client';
import { samples } from './cases';
import { keystrokes } from './edits';

/** MB that an idle server may take of the machine after a thousand edits of the largest sample. */
const HELD = 120;
const EDITS = 500;
/** MB by which two readings of one state differ: Node takes and returns whole pages. */
const NOISE = 4;

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** Resident memory of a process, MB, as the machine's own list of processes tells it. */
const resident = (pid: number): number =>
  (Number(execFileSync('ps', ['-o', 'rss=', '-p', `${pid}`], { encoding: 'utf8' })) * 1024) / 1e6;

async function measure(): Promise<void> {
  const { uri, text } = [...samples()].sort((a, b) => b.text.length - a.text.length)[0]!;
  const server = spawn(process.execPath, [join(process.cwd(), 'dist', 'cli.js'), 'lsp', '--stdio'], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const client = await TestClient.connect(server.stdout, server.stdin);
  await client.open(uri, text);
  await client.connection.sendRequest(methods.openPreview, { uri });
  const readings = [];
  for (const seed of [5, 9]) {
    for (const { from, to, text: typed } of keystrokes(text, EDITS, seed)) {
      const now = client.texts.get(uri)!;
      const range = new Lines(now).range(from, to);
      await client.change(uri, range, typed, now.slice(0, from) + typed + now.slice(to));
      const shown = { start: { line: 0, character: 0 }, end: { line: 300, character: 0 } };
      await client.connection.sendRequest('textDocument/inlayHint', { textDocument: { uri }, range: shown });
    }
    const busy = resident(server.pid!);
    await pause(IDLE_MS + 7000);
    readings.push({ busy, idle: resident(server.pid!) });
  }
  await client.dismiss();
  const [half, whole] = readings as [(typeof readings)[0], (typeof readings)[0]];
  const growth = whole.idle - half.idle;
  const over = whole.idle > HELD || growth > NOISE ? ' OVER BUDGET' : '';
  process.stdout.write(
    `\nA server in a process of its own, ${uri.split('/').at(-1)}: ${whole.idle.toFixed(0)} of ${HELD} MB idle after ` +
      `${2 * EDITS} edits (${whole.busy.toFixed(0)} while at work); the last ${EDITS} added ${growth.toFixed(1)} of 0 (noise ${NOISE})${over}\n`,
  );
}

if (process.platform === 'win32') process.stdout.write('\nSKIPPED: idle memory is read with `ps`.\n');
else void measure();

/** A change reviewed: one number of ten thousand lines, and two hundred commits, git and reading included, by the clock. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { run } from '../../server/cli/commands';
import { manyDrafts } from './generate';
import { checksum } from './figures';
import type { Say } from './whole';

const BUDGETS = { change: 1000, history: 60_000 };
const COMMITS = 200;
const WHO = ['-c', 'user.name=bench', '-c', 'user.email=bench@theatre.invalid', '-c', 'gc.auto=0'];

/** The n-th length of the text a millimetre longer. */
function changed(text: string, n: number): string {
  let count = 0;
  return text.replace(/(\d+(?:\.\d+)?)cm/g, (all, amount: string) =>
    count++ === n ? `${(Number(amount) + 0.1).toFixed(2)}cm` : all,
  );
}

interface Cost {
  /** Milliseconds by the clock, and of this process's own work. */
  readonly ms: number;
  readonly own: number;
  readonly out: string;
}

const git = (folder: string, ...args: readonly string[]) =>
  execFileSync('git', [...WHO, ...args], { cwd: folder, stdio: ['ignore', 'pipe', 'pipe'] });

/** A repository of one pattern of ten thousand lines, and commits that change a number each. */
function history(folder: string): void {
  git(folder, 'init', '--quiet');
  let text = manyDrafts(10_000, 1893);
  for (let i = 0; i <= COMMITS; i++) {
    writeFileSync(join(folder, 'costumes.draft'), text);
    git(folder, 'add', '--all');
    git(folder, 'commit', '--quiet', '-m', 'a change');
    text = changed(text, 40 + i * 7);
  }
}

async function compared(folder: string, ...args: string[]): Promise<Cost> {
  let out = '';
  const [since, worked] = [performance.now(), process.cpuUsage()];
  const io = {
    ...{ cwd: folder, width: 100, colour: false },
    out: (words: string) => void (out += words),
    err: () => undefined,
  };
  await run(['compare', ...args], io);
  const { user, system } = process.cpuUsage(worked);
  return { ms: performance.now() - since, own: (user + system) / 1000, out };
}

export async function measureCompare(say: Say): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'draftwright-bench-'));
  const told = (what: string, { ms, own, out }: Cost, budget: number): void =>
    say(
      `${what.padEnd(46)} ${ms.toFixed(0).padStart(6)} ms of ${budget}, own work ${own.toFixed(0).padStart(5)} ms` +
        `${ms > budget ? '  OVER BUDGET' : ''}  ${checksum(out.replace(/^[0-9a-f]{7,} /gm, ''))}`,
    );
  try {
    history(folder);
    say('\nA change reviewed, git included, by the clock:');
    const one = ['HEAD~1..HEAD'];
    told('one number of 10000 lines, in a fresh process', await compared(folder, ...one), BUDGETS.change);
    told('the same again', await compared(folder, ...one), BUDGETS.change);
    const all = await compared(folder, `HEAD~${COMMITS}..HEAD`, '--each');
    told(`${COMMITS} commits of 10000 lines, one by one`, all, BUDGETS.history);
    say(`most memory at any time: ${(process.resourceUsage().maxRSS / 1024).toFixed(0)} MiB`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

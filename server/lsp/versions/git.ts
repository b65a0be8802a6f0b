/** The one door to git: run without a shell, without a network, without writing anything, whatever its settings say. */
import { say } from '../../../grammar/say';
import { spawnSync } from 'node:child_process';
import { Refusal } from './tree';

/** The most that is read of one answer, bytes: a history of patterns, not of photographs. */
const MOST_BYTES = 256 * 1024 * 1024;

/** Settings that could start other programs or fetch what a partial clone lacks are set aside for each call. */
const SETTINGS = [
  '--no-optional-locks',
  '--no-pager',
  '--literal-pathspecs',
  ...['core.fsmonitor=false', 'core.quotepath=off', 'protocol.allow=never'].flatMap((one) => ['-c', one]),
];

export interface Answer {
  readonly ok: boolean;
  readonly out: Buffer;
  readonly err: string;
}

/** Runs git in a folder and waits for it. Throws Refusal where it can't be started at all. */
export function git(folder: string, args: readonly string[], input = ''): Answer {
  const { error, status, stdout, stderr } = spawnSync('git', [...SETTINGS, ...args], {
    cwd: folder,
    input,
    maxBuffer: MOST_BYTES,
    windowsHide: true,
    env: { ...process.env, GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', LC_ALL: 'C' },
  });
  const code = (error as NodeJS.ErrnoException | undefined)?.code;
  if (code === 'ENOENT')
    throw new Refusal(say`git can’t be started here. Install it, or compare two files or two folders.`);
  if (code === 'ENOBUFS')
    throw new Refusal(say`The patterns of this repository are too many to be compared at once. Name a path.`);
  if (error !== undefined) throw new Refusal(say`git can’t be run (${code ?? error.message}).`);
  return { ok: status === 0, out: stdout, err: stderr.toString('utf8') };
}

/** The first line of what git printed. */
export const line = ({ out }: Answer): string => out.toString('utf8').split('\n')[0]!.trim();

/** Parts of an answer that end with a nought. */
export const parts = ({ out }: Answer): string[] => out.toString('utf8').split('\0').filter(Boolean);

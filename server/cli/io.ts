/** What a command may do to the world round it, so that tests can hand in a world of their own. */
import { isAbsolute, join, relative, sep } from 'node:path';

export interface Io {
  /** Folder that relative paths count from. */
  readonly cwd: string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Columns that messages are wrapped to. */
  readonly width: number;
  readonly colour: boolean;
  /** Shows how far long work has come, in a line that the next one takes the place of; '' takes it away. */
  readonly progress?: (words: string) => void;
  /** Begins to listen for a person who wants the work stopped. */
  readonly stoppable?: () => Stop;
  /** Texts that are open in an editor, by address: they count before the disk. */
  readonly texts?: ReadonlyMap<string, string>;
}

/** Whether the work is to stop; `done` gives the keys back. */
export interface Stop {
  readonly asked: () => boolean;
  readonly done: () => void;
}

/** What a command ends with: nothing to mend, something to mend, or it could not run. */
export const CLEAN = 0;
export const FAULTY = 1;
export const UNABLE = 2;
export type Exit = typeof CLEAN | typeof FAULTY | typeof UNABLE;

/** A reason why a command can't run, in a sentence for the person who called it. */
export class Unable extends Error {}

export const absolute = (io: Io, path: string): string => (isAbsolute(path) ? path : join(io.cwd, path));

/** A path as it is printed: counted from the working folder where it lies inside, with forward slashes. */
export function shown(io: Io, path: string): string {
  const short = relative(io.cwd, path);
  const inside = short !== '' && !short.startsWith('..') && !isAbsolute(short);
  return (inside ? short : path).split(sep).join('/');
}

/** The widest and the narrowest that text is wrapped to: longer lines tire the eye, shorter ones break names. */
const WIDEST = 100;
const NARROWEST = 40;

/** The world of a process. Colour only where a terminal shows it and NO_COLOR (no-color.org) does not forbid it. */
export function processIo(): Io {
  const { stdout, stderr, env } = process;
  const line = (words: string): void => void stderr.write(`\r\u001b[2K${words}`);
  const forbidden = env.NO_COLOR !== undefined && env.NO_COLOR !== '';
  return {
    cwd: process.cwd(),
    out: (text) => void stdout.write(text),
    err: (text) => void stderr.write(text),
    ...(stderr.isTTY === true && { progress: line }),
    stoppable,
    width: Math.min(Math.max(stdout.columns ?? WIDEST, NARROWEST), WIDEST),
    colour: stdout.isTTY === true && !forbidden && env.TERM !== 'dumb',
  };
}

/** Ctrl+C asks once to stop, and the second time ends the process: files are written whole between two looks. */
function stoppable(): Stop {
  let asked = false;
  const listen = (): void => {
    if (asked) process.exit(UNABLE);
    asked = true;
  };
  process.on('SIGINT', listen);
  return { asked: () => asked, done: () => void process.off('SIGINT', listen) };
}

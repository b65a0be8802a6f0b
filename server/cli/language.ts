/** `--language`: what is said and written in words, in the one place that reads it; never taken from the environment. */
import { Option } from 'commander';
import { readDialect, type Dialect } from '../../grammar/dialect';
import { isEnglish, say } from '../../grammar/say';
import { speakTo } from '../lsp/tongue';
import type { Io } from './io';

export const LANGUAGE_FLAG = '--language';

/** Each by its own name; the first holds where nothing is asked for. */
export const LANGUAGE_NAMES = { en: 'English', de: 'Deutsch' } as const;
const LANGUAGES = Object.keys(LANGUAGE_NAMES);

/** For every command that tells a person something. */
export const language = (): Option =>
  new Option(
    `${LANGUAGE_FLAG} <language>`,
    say`what is said and written in words, English or German; never taken from the environment`,
  )
    .choices(LANGUAGES)
    .default(LANGUAGES[0]);

/** What `--words` asks for. German knows no American words of the trade, which is told; it is no reason to stop. */
export function dialectIn(words: string, io: Io): Dialect {
  const asked = readDialect(words);
  if (isEnglish() || asked === 'British') return asked;
  io.err(`${say`--words chooses between British and American words, so it does nothing in German.`}\n`);
  return 'British';
}

/** The language that a command line asks for, the last one counts; read before anything is said, help and refusals included. */
function askedFor(args: readonly string[]): string | undefined {
  const [flag, end] = [LANGUAGE_FLAG, args.indexOf('--')];
  const options = end < 0 ? args : args.slice(0, end);
  const asked = options.flatMap((arg, i) => {
    if (arg.startsWith(`${flag}=`)) return [arg.slice(flag.length + 1)];
    return options[i - 1] === flag ? [arg] : [];
  });
  return asked.at(-1);
}

/** What is spoken belongs to the process, so one command line waits for the one before it. */
let turn: Promise<unknown> = Promise.resolve();

/** Runs a command line in the language that it asks for; afterwards English is spoken again. */
export function inItsLanguage<T>(args: readonly string[], work: () => Promise<T>): Promise<T> {
  const asked = askedFor(args);
  const mine = turn.then(async () => {
    if (asked === undefined) return work();
    speakTo(asked);
    return work().finally(() => speakTo(undefined));
  });
  turn = mine.catch(() => undefined);
  return mine;
}

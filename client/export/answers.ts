/** What a person answered to the options of an export: kept for the next time, and made into a command line. */
import { basename, join } from 'node:path';
import { isGerman, say } from '../../grammar/say';
import type { ExportOption, ExportTarget } from '../../server/drawing/exporting';
import type { Trial } from '../preview/protocol';

/** By flag: `--paper` is `A3`, `--as-laid` is `yes`, `--pieces` is `front, back`. */
export type Answers = Readonly<Record<string, string>>;

/** What is remembered of a workspace. */
export interface Remembered {
  readonly last?: string;
  readonly folder?: string;
  readonly answers: Readonly<Record<string, Answers>>;
}

export const NOTHING_REMEMBERED: Remembered = { answers: {} };

const LANGUAGE = '--language';

/** What is written and drawn speaks as the editor does, unless another language is chosen for it. */
export const inLanguageOf = (editor: string): Answers => ({
  [LANGUAGE]: isGerman(editor) ? 'de' : 'en',
});

/** What is tried in a preview is exported as it is seen there; it is never remembered. */
const TRIED: ReadonlySet<string> = new Set(['--for', '--set']);

export function triedAnswers({ for: body, set }: Trial): Answers {
  const choices = Object.entries(set).map(([path, value]) => `${path}=${value}`);
  return {
    ...(body && { '--for': [body.name, body.size].filter(Boolean).join(' ') }),
    ...(choices.length > 0 && { '--set': choices.join('; ') }),
  };
}

/** What the form begins with: the last answers that still fit, and what is tried. */
export function firstAnswers(target: ExportTarget, { answers }: Remembered, trial: Trial): Answers {
  const before = Object.entries(answers[target.id] ?? {}).filter(([flag, value]) => {
    const option = target.options.find((one) => one.flag === flag);
    return option !== undefined && !TRIED.has(flag) && fits(option, value);
  });
  return { ...Object.fromEntries(before), ...triedAnswers(trial) };
}

function fits({ answering, values, open, everything }: ExportOption, value: string): boolean {
  if (answering === 'some') return value === everything || listed(value).every((one) => values.includes(one));
  return open || values.includes(value);
}

/** @param usual what the form begins with where nobody chose: it follows the editor, and is not remembered */
export function remember(
  before: Remembered,
  target: ExportTarget,
  answers: Answers,
  folder: string,
  usual: Answers = {},
): Remembered {
  const kept = Object.entries(answers).filter(([flag, value]) => !TRIED.has(flag) && usual[flag] !== value);
  return {
    last: target.id,
    folder,
    answers: { ...before.answers, [target.id]: Object.fromEntries(kept) },
  };
}

export const listed = (words: string): readonly string[] =>
  words
    .split(',')
    .map((word) => word.trim())
    .filter(Boolean);

/** How an answer is shown in the form. */
export function shownAnswer(option: ExportOption, answers: Answers): string {
  const { flag, answering, fallback } = option;
  if (answering === 'switch') return answers[flag] === 'yes' ? say`yes` : say`no`;
  const without =
    { '--for': say`as the pattern says`, '--pieces': say`all`, '--sizes': say`one` }[flag] ?? '';
  const answer = answers[flag] || fallback || without;
  return option.names?.[answer] ?? answer;
}

/** Dialects are of English alone. */
const isSpoken = (flag: string, answers: Answers): boolean =>
  flag !== '--words' || (answers[LANGUAGE] ?? 'en') === 'en';

/** What is asked, as far as it means something beside the other answers. */
export const optionsFor = ({ options }: ExportTarget, answers: Answers): readonly ExportOption[] =>
  options.filter(({ flag }) => isSpoken(flag, answers));

const EXTENSIONS: Readonly<Record<string, string>> = { markdown: 'md', text: 'txt' };

/** The command line that makes it. Flag and value are one word, so that no value is taken for a flag. */
export function argsFor(
  target: ExportTarget,
  file: string,
  answers: Answers,
  folder: string,
): readonly string[] {
  const given = optionsFor(target, answers).flatMap(({ flag, answering, fallback }): string[] => {
    const value = answers[flag] ?? fallback;
    if (value === '') return [];
    if (answering === 'switch') return value === 'yes' ? [flag] : [];
    if (flag === '--set') return value.split(';').map((one) => `${flag}=${one.trim()}`);
    return [`${flag}=${value}`];
  });
  const { flag, is } = target.place;
  return [
    ...target.args,
    file,
    `${flag}=${is === 'folder' ? folder : fileFor(target, file, answers, folder)}`,
    ...given,
  ];
}

/** `harbour-skirt-cutting.csv` */
function fileFor({ id, options }: ExportTarget, file: string, answers: Answers, folder: string): string {
  const format = answers['--format'] ?? options.find(({ flag }) => flag === '--format')?.fallback ?? '';
  const stem = basename(file).replace(/\.draft$/, '');
  return join(folder, `${stem}-${id.split(' ').at(-1)}.${EXTENSIONS[format] ?? format}`);
}

/** The files that a command says it wrote: each begins a line, before a colon. */
export const writtenFiles = (out: string): readonly string[] =>
  out.split('\n').flatMap((line) => /^(.+\.[a-z]{2,4}): /.exec(line)?.[1] ?? []);

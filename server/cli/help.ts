/** What the library that reads command lines says by itself, help and refusals, in the person's language. */
import { Help, type Argument, type Command, type HelpConfiguration, type Option } from 'commander';
import { isEnglish, say } from '../../grammar/say';

const TITLES: Readonly<Record<string, () => string>> = {
  'Usage:': () => say`Usage:`,
  'Options:': () => say`Options:`,
  'Arguments:': () => say`Arguments:`,
  'Commands:': () => say`Commands:`,
};

/** What stands for something that is put in its place. */
const PLACES: Readonly<Record<string, () => string>> = {
  file: () => say`file`,
  folder: () => say`folder`,
  path: () => say`path`,
  body: () => say`body`,
  'name=value': () => say`name=value`,
  'code=severity': () => say`code=severity`,
  dialect: () => say`dialect`,
  format: () => say`format`,
  language: () => say`language`,
  what: () => say`what`,
  code: () => say`code`,
  names: () => say`names`,
  name: () => say`name`,
  words: () => say`words`,
  ratio: () => say`ratio`,
  day: () => say`day`,
  kind: () => say`kind`,
};

const place = (name: string): string => PLACES[name]?.() ?? name;

const plain = new Help();
const placeholders = (words: string): string =>
  words
    .replace('[options]', say`[options]`)
    .replace('[command]', say`[command]`)
    .replace(/<([a-z=]+)(\.*)>/g, (_, name: string, more: string) => `<${place(name)}${more}>`);

/** For `configureHelp`. */
export const helpInWords: HelpConfiguration = {
  styleTitle: (title: string) => TITLES[title]?.() ?? title,
  commandUsage: (command: Command) => placeholders(plain.commandUsage(command)),
  subcommandTerm: (command: Command) => placeholders(plain.subcommandTerm(command)),
  optionTerm: (option: Option) => placeholders(plain.optionTerm(option)),
  argumentTerm: (argument: Argument) => place(plain.argumentTerm(argument)),
  optionDescription: (option: Option) =>
    explained(plain.optionDescription(option), option.description, option),
};

/** The words about an option, with what may be chosen and what holds by itself. */
function explained(
  whole: string,
  own: string,
  { argChoices, defaultValue, defaultValueDescription }: Option,
): string {
  if (whole === own) return own;
  const quoted = (value: unknown): string => JSON.stringify(value);
  const facts = [
    ...(argChoices === undefined ? [] : [say`choices: ${argChoices.map(quoted).join(', ')}`]),
    ...(defaultValue === undefined ? [] : [say`default: ${defaultValueDescription ?? quoted(defaultValue)}`]),
  ];
  return facts.length === 0 ? own : `${own} (${facts.join(', ')})`;
}

/** Refusals as the library words them, and what to say instead; it says one a line. */
const REFUSALS: readonly (readonly [RegExp, (one: string, other: string, third: string) => string])[] = [
  [/^error: unknown option '(.*)'$/, (flag) => say`error: unknown option '${flag}'`],
  [/^error: unknown command '(.*)'$/, (name) => say`error: unknown command '${name}'`],
  [
    /^error: missing required argument '(.*)'$/,
    (name) => say`error: missing required argument '${place(name)}'`,
  ],
  [
    /^error: option '(.*)' argument missing$/,
    (flag) => say`error: option '${placeholders(flag)}' argument missing`,
  ],
  [
    /^error: option '(.*)' argument '(.*)' is invalid\. Allowed choices are (.*)\.$/,
    (flag, value, choices) =>
      say`error: option '${placeholders(flag)}' argument '${value}' is invalid. Allowed choices are ${choices}.`,
  ],
  [
    /^error: option '(.*?)' argument '(.*?)' is invalid\. (.*)$/,
    (flag, value, why) => say`error: option '${placeholders(flag)}' argument '${value}' is invalid. ${why}`,
  ],
  [
    /^error: too many arguments for '(.*)'\. Expected (\d+) arguments? but got (\d+)\.$/,
    (name, wanted, got) => say`error: too many arguments for '${name}'. Expected ${wanted} but got ${got}.`,
  ],
  [/^\(Did you mean (?:one of )?(.*)\?\)$/, (names) => say`(Did you mean ${names}?)`],
];

export const refusalInWords = (words: string): string =>
  isEnglish() ? words : words.split('\n').map(lineInWords).join('\n');

function lineInWords(line: string): string {
  for (const [refusal, said] of REFUSALS) {
    const found = refusal.exec(line);
    if (found !== null) return said(found[1] ?? '', found[2] ?? '', found[3] ?? '');
  }
  return line;
}

/** Opens pattern files for a command: reads them, drafts them for the asked body and choices, or says why it can't. */
import { say } from '../../grammar/say';
import { resolve } from 'node:path';
import { readSettings, type Severities } from '../checks';
import type { BodyChoice, Pattern } from '../drafting/model';
import { Workshop } from '../drafting/workshop';
import { diskBehind, readText, uriOfPath, type Reading } from '../lsp/disk';
import { Files } from '../lsp/files';
import { absolute, shown, Unable, type Io } from './io';

/** What a command was asked for beside its files. */
export interface Choice {
  readonly for?: BodyChoice;
  readonly set: ReadonlyMap<string, string>;
}

export interface Opened {
  /** As the person wrote it, with forward slashes. */
  readonly path: string;
  readonly uri: string;
  readonly pattern: Pattern;
}

const REASONS: Readonly<Record<Extract<Reading, { fault: string }>['fault'], (path: string) => string>> = {
  missing: (path) => say`There is no file ${path} here.`,
  folder: (path) =>
    say`${path} is a folder. Name the pattern files in it, for example ${path.replace(/\/$/, '')}/*.draft.`,
  unreadable: (path) => say`${path} can't be read. Look at its permissions.`,
  binary: (path) => say`${path} isn't text in UTF-8, so it can't be a pattern.`,
  'too-large': (path) => say`${path} is far too large for a pattern.`,
};

/**
 * The text of a file that was named on the command line, its full path, and its name as written, with forward slashes.
 * The byte order mark stays where `keepMark` asks for it. Throws Unable where the file can't be read.
 */
export function readNamed(
  io: Io,
  path: string,
  keepMark = false,
): { readonly full: string; readonly written: string; readonly text: string } {
  const full = resolve(absolute(io, path));
  const open = io.texts?.get(uriOfPath(full));
  if (open !== undefined) return { full, written: path.split('\\').join('/'), text: open };
  const reading = readText(full, keepMark);
  const written = path.split('\\').join('/');
  if ('fault' in reading) throw new Unable(REASONS[reading.fault](written));
  return { full, written, text: reading.text };
}

/** Reads text files through the one door and drafts them; used files are shared by all of them. */
export class Bench {
  readonly files: Files;
  readonly workshop: Workshop;

  constructor(private readonly io: Io) {
    this.files = new Files(diskBehind(io.cwd));
    io.texts?.forEach((text, uri) => this.files.setBuffer(uri, text));
    this.workshop = new Workshop(this.files);
  }

  /** Throws Unable where the file can't be read, or knows nothing of the body or a choice that was asked for. */
  open(path: string, choice: Choice): Opened {
    const { full, written, text } = readNamed(this.io, path);
    const uri = uriOfPath(full);
    this.workshop.setText(uri, text);
    const pattern = this.workshop.pattern(uri, choice);
    const refused = [...pattern.refused, ...unfit(pattern, choice)];
    if (refused.length > 0) throw new Unable(refused.map((why) => `${written}: ${why}`).join('\n'));
    return { path: written, uri, pattern };
  }

  /** The author's own texts: the pattern's and those of the files that it uses. */
  textsOf({ uri, files }: Pattern): readonly string[] {
    return [uri, ...files].map((one) => this.files.read(one) ?? '');
  }

  /** How a file of the pattern is printed: an opened one as it was written, others counted from the working folder. */
  shownPath(uri: string, opened: readonly Opened[]): string {
    const own = opened.find((file) => file.uri === uri);
    return own?.path ?? shown(this.io, decodeURIComponent(new URL(uri).pathname));
  }
}

/** What is said of settings that are no value of their choice's kind: a word for a length, an angle for a word. */
const unfit = (pattern: Pattern, choice: Choice): string[] => saidOfSettings(pattern, choice, 'wrong-kind');

/** A line for each setting that lies outside what its choice allows; it holds all the same. */
export const beyondRange = (pattern: Pattern, choice: Choice): readonly string[] =>
  saidOfSettings(pattern, choice, 'choice-out-of-range').map((message) => `${message}\n`);

function saidOfSettings(pattern: Pattern, { set }: Choice, code: string): string[] {
  const sources = new Set(
    [...set.keys()].map((path) =>
      path.replace(/(?:(.*)\.)?(.*)/, (_, scope, name) => `${scope ? `${scope}/` : ''}=${name}`),
    ),
  );
  return pattern.findings
    .filter(({ source, finding }) => finding.code === code && sources.has(source))
    .map(({ finding }) => finding.message);
}

/** `ferrywoman` or `chorus M`; a size may have blanks of its own. */
export function bodyChoice(words: string): BodyChoice {
  const [, name, size] = /^\s*(\S+)(?:\s+(.*\S))?\s*$/.exec(words) ?? [];
  if (name === undefined)
    throw new Unable(say`--for needs a body or a size: --for ferrywoman, --for "chorus M".`);
  return size === undefined ? { name } : { name, size: size.replace(/^"(.*)"$/, '$1') };
}

/** `hip-ease=5cm`, each name once. */
export function settings(words: readonly string[]): ReadonlyMap<string, string> {
  const set = new Map<string, string>();
  for (const word of words) {
    const [, name, value] = /^\s*([^=]*?)\s*=\s*(.*?)\s*$/.exec(word) ?? [];
    if (!name || !value)
      throw new Unable(say`--set ${word} isn't NAME=VALUE; for example --set hip-ease=5cm.`);
    if (set.has(name)) throw new Unable(say`--set names ${name} twice.`);
    set.set(name, value);
  }
  return set;
}

/** `hidden-name=off`, added to those before it, each code once. */
export function severitySetting(words: string, before: Severities): Severities {
  const [, code, word] = /^\s*([^=]*?)\s*=\s*(.*?)\s*$/.exec(words) ?? [];
  if (!code || !word)
    throw new Unable(say`--severity ${words} isn't CODE=SEVERITY; for example --severity hidden-name=off.`);
  if (before.has(code)) throw new Unable(say`--severity names ${code} twice.`);
  const { severities, refusals } = readSettings([[code, word]]);
  if (refusals.length > 0) throw new Unable(refusals.join('\n'));
  return new Map([...before, ...severities]);
}

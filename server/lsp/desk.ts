/** Everything the services work on: the open texts, the workshop behind them, and what each pattern comes to. */
import { usedPaths } from '../../grammar';
import { isEnglish } from '../../grammar/say';
import { check, NO_SEVERITIES, withSeverities, type Severities, findingsInDialect } from '../checks';
import { Workshop } from '../drafting/workshop';
import type { Pattern, PlacedFinding } from '../drafting/model';
import type { ReadFile } from '../features/definition';
import { ALL_HINTS } from '../features/hints';
import { Lines } from '../features/lines';
import { Names, tiedTo } from '../features/names';
import { problemsOf } from '../features/problems';
import { unused, type Unused } from '../features/unused';
import type { Addresses } from './convert';
import { inDialect, type Dialect } from '../../grammar/dialect';
import { Documents } from './documents';
import { ALL_BUT_PICTURES, type Shown } from './shown';
import { Files, type Behind } from './files';
import { canonical } from './uris';

export class Desk implements Addresses {
  readonly files: Files;
  readonly workshop: Workshop;
  readonly documents: Documents;
  /** Which hints the client wants between the words. */
  hintKinds = ALL_HINTS;
  /** What the client can show: see `shown`. */
  shows: Shown = ALL_BUT_PICTURES;
  /** Whether the client shows annotated changes before they are made. */
  annotates = false;
  /** Whether the client wants names that nothing uses to be faded. */
  fadesUnused = true;
  /** The trade's words that the person reads. */
  dialect: Dialect = 'British';
  /** Lines of files that are not open, kept while their text is the same. */
  readonly #lines = new Map<string, Lines>();
  readonly #names = new Map<string, Names>();
  #found = new WeakMap<Pattern, readonly PlacedFinding[]>();
  #severities = NO_SEVERITIES;

  constructor(behind: Behind) {
    this.files = new Files(behind);
    this.workshop = new Workshop(this.files);
    this.documents = new Documents(this.files, this.workshop);
  }

  pattern(uri: string): Pattern {
    return this.workshop.pattern(canonical(uri));
  }

  /** Takes over how grave each problem is; answers whether that is another than before. */
  judgeBy(severities: Severities): boolean {
    const before = this.#severities;
    const alike =
      severities.size === before.size &&
      [...severities].every(([code, setting]) => before.get(code) === setting);
    if (alike) return false;
    this.#severities = severities;
    this.#found = new WeakMap();
    return true;
  }

  get severities(): Severities {
    return this.#severities;
  }

  /** All that is to be said of a pattern, made once for each drafting of it. */
  findings(pattern: Pattern): readonly PlacedFinding[] {
    const found = this.#found.get(pattern) ?? withSeverities(check(pattern), this.#severities);
    this.#found.set(pattern, found);
    return found;
  }

  /** The findings as its own file shows them. */
  problems(pattern: Pattern): readonly PlacedFinding[] {
    const found = problemsOf(pattern, this.findings(pattern), this.workshop.source(pattern.uri));
    const own = () => this.#textsOf(pattern);
    return isEnglish() ? findingsInDialect(this.dialect, found, own) : found;
  }

  /** Words about a pattern in the person's dialect; the author's own words are left. */
  said(pattern: Pattern, words: string): string {
    return isEnglish() ? inDialect(this.dialect, words, () => this.#textsOf(pattern)) : words;
  }

  #textsOf(pattern: Pattern): readonly string[] {
    return [pattern.uri, ...pattern.files].map((uri) => this.files.read(uri) ?? '');
  }

  /** The names of its own file that an editor may fade. */
  unused(pattern: Pattern): readonly Unused[] {
    return unused(pattern, () => this.#usersOf(pattern.uri));
  }

  /** Closed files that use a file, until files come, go or change. */
  readonly #users = new Map<string, readonly string[]>();

  #usersOf(uri: string): readonly Names[] {
    const open = this.documents.keys().filter((one) => one !== uri && this.pattern(one).files.includes(uri));
    const closed = this.#users.get(uri) ?? this.#closedUsersOf(uri);
    this.#users.set(uri, closed);
    return [...new Set([...open, ...closed])].map((one) => this.names(one));
  }

  #closedUsersOf(uri: string): readonly string[] {
    const closed = this.tied(uri).filter((names) => names.uri !== uri && names.uris().includes(uri));
    return closed.map((names) => names.uri).filter((one) => this.documents.get(one) === undefined);
  }

  /** Files came, went or changed otherwise than by typing. */
  filesMoved(): void {
    this.#users.clear();
  }

  /** The files of a pattern that can be read, itself first. */
  read({ files }: Pattern): readonly ReadFile[] {
    return files.flatMap((uri) => {
      const file = this.workshop.source(uri);
      return file === undefined ? [] : [{ uri, file }];
    });
  }

  /** The names of a file, as its text and those it uses stand now. */
  names(uri: string): Names {
    const key = canonical(uri);
    const names = this.#names.get(key) ?? new Names(key, this.files, (one) => this.workshop.source(one));
    this.#names.set(key, names);
    return names.upToDate();
  }

  /** The names of every file of the workspace that may speak of what a file defines, or define what it speaks of. */
  tied(uri: string): readonly Names[] {
    const all = new Map(this.files.all().map((one) => [one, this.#used(one)]));
    const tied = tiedTo(canonical(uri), all);
    for (const key of this.#names.keys()) if (!all.has(key)) this.#names.delete(key);
    return tied.filter((one) => this.workshop.source(one) !== undefined).map((one) => this.names(one));
  }

  #used(uri: string): readonly string[] {
    const paths = usedPaths(this.files.read(uri) ?? '').map((path) => this.files.resolve(uri, path));
    return paths.flatMap((found) => ('uri' in found ? [found.uri] : []));
  }

  lines(uri: string): Lines | undefined {
    const open = this.documents.get(uri);
    if (open !== undefined) return open.lines;
    const key = canonical(uri);
    const text = this.files.read(key);
    if (text === undefined) return undefined;
    const held = this.#lines.get(key);
    if (held?.text === text) return held;
    const lines = new Lines(text, this.documents.encoding);
    this.#lines.set(key, lines);
    return lines;
  }

  clientUri(uri: string): string {
    return this.documents.get(uri)?.clientUri ?? uri;
  }
}

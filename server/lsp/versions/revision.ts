/** Trees of a git repository: of any revision, and of the working tree; blobs are read in batches and kept while small. */
import { say } from '../../../grammar/say';
import { join } from 'node:path';
import { readText } from '../disk';
import { git, line, parts } from './git';
import { contentOf, Refusal, type Content, type Tree } from './tree';

const isPattern = (path: string): boolean => path.endsWith('.draft');

/** How much text of a repository is kept in memory, in characters; what was read longest ago goes first. */
const KEPT = 32 * 1024 * 1024;

/** In characters; of what is no text, nothing is kept. */
const sizeOf = (content: Content): number => ('text' in content ? content.text.length : 0);

/** A repository that a folder lies in. */
export class Repository {
  private readonly blobs = new Map<string, Content>();
  private size = 0;

  private constructor(readonly top: string) {}

  /** The repository around a folder; undefined where there is none. */
  static around(folder: string): Repository | undefined {
    const answer = git(folder, ['rev-parse', '--show-toplevel']);
    return answer.ok ? new Repository(line(answer)) : undefined;
  }

  /** The commit that a name means; throws Refusal where it means none. */
  commit(name: string): string {
    const found = this.peeled(name);
    if (found === undefined)
      throw new Refusal(say`This repository has no revision called ${name}.` + this.hint());
    return found;
  }

  /** Whether a name means a commit here. */
  has(name: string): boolean {
    return this.peeled(name) !== undefined;
  }

  private peeled(name: string): string | undefined {
    if (name === '' || name.startsWith('-')) return undefined;
    const answer = git(this.top, ['rev-parse', '--verify', '--quiet', `${name}^{commit}`]);
    return answer.ok ? line(answer) : undefined;
  }

  /** Where two revisions parted. */
  parting(one: string, other: string): string {
    const answer = git(this.top, ['merge-base', this.commit(one), this.commit(other)]);
    if (answer.ok) return line(answer);
    throw new Refusal(say`${one} and ${other} have no commit in common here.` + this.hint());
  }

  /** What a clone that was cut short lacks. */
  private hint(): string {
    const shallow = line(git(this.top, ['rev-parse', '--is-shallow-repository'])) === 'true';
    return shallow
      ? say` The clone is shallow: it holds the latest commits only. Fetch the others (git fetch --unshallow; fetch-depth: 0 in a recipe) and compare again.`
      : say` See git log --oneline --all for those that there are.`;
  }

  /** Commits after the first up to the second that touch pattern files, oldest first, on the main line. */
  commits(
    from: string,
    to: string,
  ): { readonly id: string; readonly short: string; readonly subject: string }[] {
    const range = `${this.commit(from)}..${this.commit(to)}`;
    const answer = git(this.top, [
      'log',
      '--first-parent',
      '--reverse',
      '--format=%H%x09%h%x09%s%x00',
      range,
    ]);
    return parts(answer).flatMap((text) => {
      const [id = '', short = '', subject = ''] = text.trim().split('\t');
      return id === '' ? [] : [{ id, short, subject }];
    });
  }

  /** The pattern files of a revision, as they are called there. */
  revision(name: string): Tree {
    if (name.startsWith('-')) this.commit(name);
    const listed = git(this.top, ['ls-tree', '-r', '-z', '--full-tree', `${name}^{commit}`]);
    if (!listed.ok) this.commit(name); // which says what is wrong with it
    const entries = new Map(
      parts(listed).flatMap((entry) => {
        const [, mode, id, path] = /^(\d+) blob (\S+)\t([\s\S]*)$/.exec(entry) ?? [];
        // links lead elsewhere: what they hold is no pattern
        return path !== undefined && mode !== '120000' && isPattern(path) ? [[path, id!] as const] : [];
      }),
    );
    return {
      name,
      list: () => [...entries.keys()],
      readAhead: (paths) => this.readAhead(paths.flatMap((path) => entries.get(path) ?? [])),
      read: (path) => {
        const id = entries.get(path);
        return id === undefined ? { fault: 'missing' } : this.blob(id);
      },
    };
  }

  /** The pattern files of the working tree: those that git follows, and new ones that it is not told to ignore. */
  workingTree(): Tree {
    const listed = git(this.top, [
      'ls-files',
      '-z',
      '--cached',
      '--others',
      '--exclude-standard',
      '--deduplicate',
    ]);
    const paths = parts(listed).filter(isPattern);
    const read = (path: string): Content => {
      const reading = readText(join(this.top, path));
      return 'text' in reading ? reading : { fault: reading.fault === 'folder' ? 'missing' : reading.fault };
    };
    const there = paths.filter(
      (path) => !('fault' in read(path)) || (read(path) as { fault: string }).fault !== 'missing',
    );
    return { name: say`the working tree`, list: () => there, readAhead: () => undefined, read };
  }

  private blob(id: string): Content {
    if (!this.blobs.has(id)) this.readAhead([id]);
    return this.blobs.get(id) ?? { fault: 'unreadable' };
  }

  /** Reads blobs in one go: each is told with a line of its name, kind and size before its bytes. */
  private readAhead(ids: readonly string[]): void {
    const wanted = [...new Set(ids)].filter((id) => !this.blobs.has(id));
    if (wanted.length === 0) return;
    const { out } = git(this.top, ['cat-file', '--batch'], wanted.map((id) => `${id}\n`).join(''));
    let at = 0;
    for (const id of wanted) {
      const end = out.indexOf(10, at);
      if (end < 0) break;
      const [, kind, size] = out.toString('utf8', at, end).split(' ');
      if (kind !== 'blob') {
        // a partial clone lacks it, and nothing is fetched here
        at = end + 1;
        this.keep(id, { fault: 'unreadable' });
        continue;
      }
      const bytes = out.subarray(end + 1, end + 1 + Number(size));
      this.keep(id, contentOf(bytes));
      at = end + 2 + Number(size);
    }
  }

  private keep(id: string, content: Content): void {
    this.blobs.set(id, content);
    this.size += sizeOf(content);
    for (const [old, one] of this.blobs) {
      if (this.size <= KEPT || old === id) break;
      this.blobs.delete(old);
      this.size -= sizeOf(one);
    }
  }
}

/** The door to files: open buffers first, then what lies behind. A `use` may not leave the workspace. */
import type { Door } from '../drafting/model';
import { pathBetween } from '../features/file-rename';
import { canonical, folderOf, hasFoldersBeside, isInside, joined, standsFor } from './uris';

/** What lies behind the open buffers: a disk, or nothing in a browser. */
export interface Behind {
  /** The text of a file; undefined for what is missing or isn't text. */
  read(uri: string): string | undefined;
  /** The folder that a file with no workspace belongs to, with or without its last slash. */
  home(uri: string): string | undefined;
  /** False for a link that leads out of all these folders. */
  staysIn(uri: string, folders: readonly string[]): boolean;
  /** The pattern files below a folder. */
  list(folder: string): readonly string[];
  /** The text of a page about a code, by its file name. */
  page(file: string): string | undefined;
}

export const nothingBehind: Behind = {
  read: () => undefined,
  home: () => undefined,
  staysIn: () => true,
  list: () => [],
  page: () => undefined,
};

export class Files implements Door {
  readonly #buffers = new Map<string, string>();
  #folders: readonly string[] = [];

  constructor(private readonly behind: Behind) {}

  /** The folders of the workspace, each an address. */
  setFolders(folders: readonly string[]): void {
    this.#folders = folders.map(canonical);
  }

  setBuffer(uri: string, text: string): void {
    this.#buffers.set(canonical(uri), text);
  }

  dropBuffer(uri: string): void {
    this.#buffers.delete(canonical(uri));
  }

  read(uri: string): string | undefined {
    const key = canonical(uri);
    return this.#buffers.get(key) ?? this.behind.read(key);
  }

  /** Every pattern file of the workspace, open ones among them, in the order of their addresses. */
  all(): readonly string[] {
    const behind = this.#folders.flatMap((folder) => this.behind.list(folder)).map(canonical);
    return [...new Set([...this.#buffers.keys(), ...behind])].sort();
  }

  /** Reads a page about a code by its file name. */
  readonly page = (file: string): string | undefined => this.behind.page(file);

  resolve(from: string, path: string): { readonly uri: string } | { readonly outside: true } {
    const file = this.#placeOf(from);
    const folders = this.#workspaceOf(file);
    const start = hasFoldersBeside(file, this.#folders) ? folderOf(file) : (folders[0] ?? '');
    if (/^([a-z][a-z0-9+.-]*:|[/\\])/i.test(path)) return { outside: true }; // an address or an absolute path
    const uri = joined(start, path);
    if (uri === undefined || !folders.some((folder) => isInside(uri, folder))) return { outside: true };
    return this.behind.staysIn(uri, folders) ? { uri } : { outside: true };
  }

  /** The ways from a file to the others that it may use, nearer ones first. */
  pathsFrom(from: string): readonly string[] {
    const file = this.#placeOf(from);
    const start = hasFoldersBeside(file, this.#folders) ? file : `${this.#folders[0] ?? ''}/`;
    const paths = this.all().flatMap((uri) => (uri === file ? [] : (pathBetween(start, uri) ?? [])));
    const usable = paths.filter((path) => 'uri' in this.resolve(file, path));
    const steps = (path: string): number => path.split('/').length;
    return usable.sort((a, b) => steps(a) - steps(b) || (a < b ? -1 : 1));
  }

  /** Where a text counts from: an older version of a file, and a text that was never saved, from the place that they name. */
  #placeOf(from: string): string {
    const file = canonical(from);
    if (hasFoldersBeside(file, this.#folders)) return file;
    return standsFor(file, this.#folders) ?? file;
  }

  /** The folders a file may use from: those of the workspace that hold it, else its home, else its own folder. */
  #workspaceOf(file: string): readonly string[] {
    if (!hasFoldersBeside(file, this.#folders)) return this.#folders;
    const holding = this.#folders.filter((folder) => isInside(file, folder));
    return holding.length > 0 ? holding : [canonical(this.behind.home(file) ?? folderOf(file))];
  }
}

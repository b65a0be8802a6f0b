/** Files that the client tells us of, where no disk can be read: in a browser, and in folders that lie elsewhere. */
import type { Behind } from './files';
import { canonical, isInside } from './uris';

/** A file as the client read it; null for one that is gone. */
export interface ToldFile {
  readonly uri: string;
  readonly text: string | null;
}

/** What was told, before what lies behind. */
export class Told implements Behind {
  readonly #texts = new Map<string, string>();

  constructor(private readonly behind: Behind) {}

  /** @returns the canonical addresses of the files that were told anew */
  take(files: readonly ToldFile[]): readonly string[] {
    return files.map(({ uri, text }) => {
      const key = canonical(uri);
      if (text === null) this.#texts.delete(key);
      else this.#texts.set(key, text);
      return key;
    });
  }

  read(uri: string): string | undefined {
    return this.#texts.get(uri) ?? this.behind.read(uri);
  }

  list(folder: string): readonly string[] {
    const told = [...this.#texts.keys()].filter((uri) => isInside(uri, canonical(folder)));
    return [...told, ...this.behind.list(folder)];
  }

  home(uri: string): string | undefined {
    return this.behind.home(uri);
  }

  staysIn(uri: string, folders: readonly string[]): boolean {
    return this.behind.staysIn(uri, folders);
  }

  page(file: string): string | undefined {
    return this.behind.page(file);
  }
}

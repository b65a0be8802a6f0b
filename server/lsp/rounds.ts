/** When open patterns are drafted again: a moment after the last keystroke, the newest text first, never a queue. */

import { breathe } from './service';

/**
 * Milliseconds of silence before a round. Shorter, and every letter of a burst costs a round of its own; longer, and
 * the drawing visibly trails the typing (about 50 ms is seen as a lag). A client sends a burst within 1-3 ms.
 */
export const SILENCE_MS = 10;

export interface RoundWork {
  /** The files to bring up to date; those touched last come first. */
  files(): readonly string[];
  /** Brings one file up to date. A call is never broken off. */
  update(uri: string): void;
}

export class Rounds {
  #timer: NodeJS.Timeout | undefined;
  #touched = '';
  #wanted = 0;
  #running = false;

  constructor(
    private readonly work: RoundWork,
    private readonly silenceMs: number = SILENCE_MS,
  ) {}

  /** Something changed in this file; a running round ends after the file it is at, and a new one follows. */
  touch(uri: string): void {
    this.#touched = uri;
    this.#wanted++;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#run(), this.silenceMs);
  }

  stop(): void {
    this.#wanted++;
    clearTimeout(this.#timer);
  }

  async #run(): Promise<void> {
    if (this.#running) return this.touch(this.#touched);
    this.#running = true;
    const round = this.#wanted;
    for (const uri of this.#inOrder()) {
      this.work.update(uri);
      await breathe();
      if (this.#wanted !== round) break;
    }
    this.#running = false;
  }

  #inOrder(): readonly string[] {
    const files = this.work.files();
    return files.includes(this.#touched)
      ? [this.#touched, ...files.filter((uri) => uri !== this.#touched)]
      : files;
  }
}

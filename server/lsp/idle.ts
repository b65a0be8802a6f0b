/** Room that nobody needs is given back while nobody types: an editor stays open all day beside other programs. */

/** Milliseconds without an edit or a request after which the person thinks, sews or has left. */
export const IDLE_MS = 4000;

/** Node shrinks the room for its next work only from the second collection on that finds little in it. */
export const COLLECTIONS = 3;

/** Between two of them, so that a key struck meanwhile waits for one at most. */
const BETWEEN_MS = 3000;

export class Idle {
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** @param collect gives back what it can; without it nothing is ever timed */
  constructor(
    private readonly collect: (() => void) | undefined,
    private readonly ms = { idle: IDLE_MS, between: BETWEEN_MS },
  ) {}

  /** There is work: what was due is put off. */
  stir(): void {
    this.stop();
    if (this.collect !== undefined) this.#after(this.ms.idle, COLLECTIONS);
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
  }

  #after(ms: number, left: number): void {
    this.#timer = setTimeout(() => {
      this.collect?.();
      if (left > 1) this.#after(this.ms.between, left - 1);
    }, ms);
  }
}

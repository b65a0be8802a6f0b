/** Grace for what is half-typed: while keys follow one another, nothing is told that has a problem more than before. */
import type { TextDocumentContentChangeEvent } from 'vscode-languageserver';

/**
 * Milliseconds without a key after which a word counts as typed. Shorter, and whoever types 40 words a minute (a key in
 * 300 ms, from memory) sees errors come and go with the letters; longer, and a real mistake is told late.
 */
export const GRACE_MS = 500;

/** Most characters that one key writes: a bracket or a quotation mark comes with its fellow. */
const BY_ONE_KEY = 2;

export class Grace {
  #timer: ReturnType<typeof setTimeout> | undefined;
  #held = false;

  /** @param over called when keys have rested and something was held back */
  constructor(
    private readonly over: () => void = () => undefined,
    private readonly ms: number = GRACE_MS,
  ) {}

  /** A key begins the grace, or prolongs it. A word that is put in whole ends it, and so does a new line. */
  follow(changes: readonly TextDocumentContentChangeEvent[]): void {
    this.stop();
    if (changes.every(isKey)) this.#timer = setTimeout(() => this.#rested(), this.ms);
  }

  stop(): void {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#held = false;
  }

  /** Whether what is found now, by codes, has to wait; the same problems with other figures need not. */
  waits(before: readonly string[], now: readonly string[]): boolean {
    if (this.#timer === undefined) return false;
    const left = [...before];
    const waits = now.some((code) => !takeOut(left, code));
    this.#held ||= waits;
    return waits;
  }

  #rested(): void {
    const held = this.#held;
    this.stop();
    if (held) this.over();
  }
}

const isKey = (change: TextDocumentContentChangeEvent): boolean =>
  'range' in change && change.text.length <= BY_ONE_KEY && !change.text.includes('\n');

function takeOut(codes: string[], code: string): boolean {
  const at = codes.indexOf(code);
  if (at >= 0) codes.splice(at, 1);
  return at >= 0;
}

/** What the view remembers over hiding and reloading, written a moment after it changed. */
import type { ViewState } from '../protocol';

/** Written at most so often, since every step of a drag changes the camera. */
const AFTER_MS = 150;

export class Memory {
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly keep: (state: ViewState) => void,
    private readonly now: () => ViewState,
  ) {
    window.addEventListener('pagehide', () => this.write());
    document.addEventListener('visibilitychange', () => this.write());
  }

  touch(): void {
    this.timer ??= setTimeout(() => this.write(), AFTER_MS);
  }

  private write(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    this.keep(this.now());
  }
}

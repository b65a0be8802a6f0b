/** Points of the drawing in the hand: taken by the pointer or by Space, with words beside them and for a screen reader. */
import type { FromView, Gripped } from '../protocol';
import { html } from './dom';
import type { Hold, Spot } from './gestures';
import { Hand } from './hand';
import type { Tip } from './tip';

const ARROWS: Readonly<Record<string, [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

export interface HandlingActions {
  post(message: FromView): void;
  zoom(): number;
  /** The node of a point as it is drawn now, in the piece in which it was taken. */
  dotOf(source: string, piece: string): SVGGElement | undefined;
  /** Where a node lies on the stage, pixels. */
  placeOf(node: SVGGElement): Spot;
}

export class Handling {
  /** What is read aloud. */
  readonly status = html('div', { class: 'spoken', role: 'status' });
  private at: Spot = { x: 0, y: 0 };
  private held: { readonly source: string; readonly piece: string } | undefined;
  private words = '';
  private readonly hand: Hand;

  constructor(
    private readonly tip: Tip,
    private readonly actions: HandlingActions,
  ) {
    this.hand = new Hand({
      grip: (source, piece) => actions.post({ type: 'grip', source, piece }),
      pull: (source, amounts) => actions.post({ type: 'pull', source, amounts }),
      release: () => actions.post({ type: 'release' }),
      say: (words) => this.say(words),
    });
  }

  gripped(message: Gripped): void {
    this.hand.gripped(message);
  }

  /** A dot that is dragged moves its point, in the text as well. */
  hold(target: Element): Hold | undefined {
    const dot = target.closest<SVGGElement>('.dot[data-source]');
    if (!dot || !this.hand.take(dot)) return undefined;
    this.held = undefined;
    return {
      move: (dx, dy, at) => {
        this.at = at;
        this.hand.move(dx / this.actions.zoom(), dy / this.actions.zoom());
      },
      end: () => this.hand.end(),
    };
  }

  /** Space on a dot: from now on arrow keys move it. */
  take(dot: SVGGElement): void {
    this.at = this.actions.placeOf(dot);
    const piece = dot.closest<SVGGElement>('[data-piece]')?.dataset.piece ?? '';
    if (this.hand.take(dot, true)) this.held = { source: dot.dataset.source!, piece };
  }

  /** True for a key that belongs to the point in the hand; any other lets go of it. */
  key({ key, shiftKey }: KeyboardEvent): boolean {
    if (!this.hand.byKeys || key === 'Shift') return false;
    const way = ARROWS[key];
    if (way) this.hand.step(...way, shiftKey);
    else this.letGo();
    return way !== undefined || ['Enter', ' ', 'Escape'].includes(key);
  }

  /** The keyboard went elsewhere. */
  letGo(): void {
    if (!this.hand.byKeys) return;
    this.hand.end();
    this.held = undefined;
  }

  /** The pieces were drawn anew: the words stay beside their point. */
  follow(): void {
    const dot = this.hand.byKeys && this.held && this.actions.dotOf(this.held.source, this.held.piece);
    if (!dot) return;
    this.at = this.actions.placeOf(dot);
    this.tip.show(this.words, this.at.x, this.at.y);
  }

  private say(words: string): void {
    this.words = words;
    this.status.textContent = words;
    this.tip.show(words, this.at.x, this.at.y);
  }
}

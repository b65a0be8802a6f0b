/** A button that opens a small panel below itself; Escape and a click elsewhere close it again. */
import { html } from './dom';

/** A panel keeps so far from the edge of the page. */
const EDGE_PX = 4;

export class Popover {
  readonly button: HTMLButtonElement;
  readonly panel: HTMLElement;
  readonly element: HTMLElement;

  constructor(name: string, words: string) {
    this.button = html('button', { type: 'button', class: `opens ${name}`, 'aria-expanded': 'false' }, words);
    this.panel = html('div', { class: `popover ${name}-list`, hidden: '' });
    this.element = html('div', { class: `popover-home ${name}-home` }, this.button, this.panel);
    this.button.addEventListener('click', () => this.open(this.panel.hidden));
    // a button that was pressed may be disabled by it, and the key then goes to the page
    document.addEventListener('keydown', (event) => this.closeByKey(event), { capture: true });
    document.addEventListener('pointerdown', (event) => {
      if (!this.element.contains(event.target as Node)) this.open(false);
    });
  }

  open(open: boolean): void {
    this.panel.hidden = !open;
    this.button.setAttribute('aria-expanded', String(open));
    if (open) this.keepWithin();
    if (open) this.panel.querySelector<HTMLElement>('button, input')?.focus();
  }

  /** The panel hangs from its button: where that stands near an edge, long words would leave the page. */
  private keepWithin(): void {
    this.panel.style.removeProperty('translate');
    const { left, right } = this.panel.getBoundingClientRect();
    const over = Math.max(EDGE_PX - left, Math.min(0, window.innerWidth - EDGE_PX - right));
    if (over !== 0) this.panel.style.setProperty('translate', `${over}px 0`);
  }

  private closeByKey(event: KeyboardEvent): void {
    if (event.key !== 'Escape' || this.panel.hidden) return;
    event.stopPropagation();
    this.open(false);
    this.button.focus();
  }
}

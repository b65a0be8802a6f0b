/** The *Show* list: which kinds of lines and words are drawn. */
import { html } from './dom';
import { Popover } from './popover';

/** What can be switched, the words for it, and whether it is on from the start. */
const KINDS = [
  { kind: 'sewing', words: 'Sewing lines', on: true },
  { kind: 'balance', words: 'Balance lines', on: true },
  { kind: 'along', words: 'Words along edges', on: true },
  { kind: 'dots', words: 'Points', on: true },
  { kind: 'construction', words: 'Lines of the draft', on: false },
] as const;

export const shownAtFirst: readonly string[] = KINDS.filter(({ on }) => on).map(({ kind }) => kind);

export class Show {
  private readonly popover = new Popover('show', 'Show');
  readonly element = this.popover.element;
  private readonly boxes = new Map<string, HTMLInputElement>();

  /** The root gets a class `show-KIND` for each kind that is on. */
  constructor(
    private readonly root: HTMLElement,
    private readonly changed: () => void,
  ) {
    this.popover.panel.append(...KINDS.map(({ kind, words }) => this.row(kind, words)));
    this.set(shownAtFirst);
  }

  get shown(): string[] {
    return [...this.boxes].filter(([, box]) => box.checked).map(([kind]) => kind);
  }

  set(shown: readonly string[]): void {
    for (const [kind, box] of this.boxes) box.checked = shown.includes(kind);
    this.apply();
  }

  private row(kind: string, words: string): HTMLElement {
    const box = html('input', { type: 'checkbox', name: kind });
    box.addEventListener('change', () => {
      this.apply();
      this.changed();
    });
    this.boxes.set(kind, box);
    return html('label', {}, box, words);
  }

  private apply(): void {
    for (const [kind, box] of this.boxes) this.root.classList.toggle(`show-${kind}`, box.checked);
  }
}

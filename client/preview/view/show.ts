/** The *Show* list: which kinds of lines and words are drawn, and what the server draws on demand. */
import { say } from '../../../grammar/say';
import type { Sheet, Want } from '../protocol';
import { html } from './dom';
import { Popover } from './popover';

/** What can be switched, the words for it, and whether it is on from the start. */
const KINDS = [
  { kind: 'cutting', words: () => say`Cutting lines`, on: true },
  { kind: 'sewing', words: () => say`Sewing lines`, on: true },
  { kind: 'grain', words: () => say`Grain`, on: true },
  { kind: 'marks', words: () => say`Notches and marks`, on: true },
  { kind: 'balance', words: () => say`Balance lines`, on: true },
  { kind: 'names', words: () => say`Names`, on: true },
  { kind: 'lengths', words: () => say`Lengths of edges`, on: true },
  { kind: 'dots', words: () => say`Points`, on: true },
  { kind: 'problems', words: () => say`Problems where they are`, on: true },
  { kind: 'construction', words: () => say`Lines of the draft`, on: false },
  { kind: 'whole', words: () => say`Halves as wholes`, on: false },
  { kind: 'sizes', words: () => say`All sizes on one another`, on: false },
] as const;

/** Kinds that the server draws only when they are wanted. */
const WANTED = ['whole', 'sizes', 'construction'] as const;

export const shownAtFirst: readonly string[] = KINDS.filter(({ on }) => on).map(({ kind }) => kind);

export class Show {
  private readonly popover = new Popover('show', say`Show`);
  readonly element = this.popover.element;
  private readonly boxes = new Map<string, HTMLInputElement>();

  /** The root gets a class `show-KIND` for each kind that is on. */
  constructor(
    private readonly root: HTMLElement,
    private readonly actions: { changed(): void; want(want: Want): void },
  ) {
    this.popover.panel.append(...KINDS.map(({ kind, words }) => this.row(kind, words())));
    this.set(shownAtFirst);
  }

  get shown(): string[] {
    return [...this.boxes].filter(([, box]) => box.checked).map(([kind]) => kind);
  }

  get want(): Want {
    return Object.fromEntries(
      WANTED.filter((kind) => this.boxes.get(kind)!.checked).map((kind) => [kind, true]),
    );
  }

  set(shown: readonly string[]): void {
    for (const [kind, box] of this.boxes) box.checked = shown.includes(kind);
    this.apply();
  }

  /** A pattern without a table has no sizes to lay on one another; sizes on one another have no one draft. */
  update({ sizes, nested }: Sheet): void {
    const box = this.boxes.get('sizes')!;
    box.disabled = sizes.length < 2 && !box.checked;
    this.boxes.get('construction')!.disabled = nested.length > 0;
  }

  private row(kind: string, words: string): HTMLElement {
    const box = html('input', { type: 'checkbox', name: kind });
    box.addEventListener('change', () => {
      this.apply();
      this.actions.changed();
      if (WANTED.some((wanted) => wanted === kind)) this.actions.want(this.want);
    });
    this.boxes.set(kind, box);
    return html('label', {}, box, words);
  }

  private apply(): void {
    for (const [kind, box] of this.boxes) this.root.classList.toggle(`show-${kind}`, box.checked);
  }
}

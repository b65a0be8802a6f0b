/** The *Tools* list: what can be done with the drawing besides looking at it, each in words. */
import { say } from '../../../grammar/say';
import { html } from './dom';
import { Popover } from './popover';

export interface Tool {
  readonly name: string;
  readonly words: string;
  /** Told when it is chosen. */
  choose(): void;
}

export class Tools {
  private readonly popover = new Popover('tools', say`Tools`);
  readonly element = this.popover.element;
  private readonly buttons = new Map<string, HTMLButtonElement>();

  constructor(
    private readonly tools: readonly Tool[],
    private readonly pinned: (pinned: boolean) => void,
  ) {
    this.popover.panel.append(...tools.map((tool) => this.row(tool)), this.pinRow());
  }

  private readonly pin = html('input', { type: 'checkbox', name: 'pinned', checked: '' });

  /** Chooses a tool by its name. */
  choose(name: string): void {
    this.tools.find((tool) => tool.name === name)?.choose();
  }

  /** Draws a tool as in use. */
  mark(name: string, on: boolean): void {
    this.buttons.get(name)?.setAttribute('aria-pressed', String(on));
  }

  /** Whether the preview stays with its file. */
  set isPinned(pinned: boolean) {
    this.pin.checked = pinned;
  }

  get isPinned(): boolean {
    return this.pin.checked;
  }

  private row({ name, words, choose }: Tool): HTMLElement {
    const button = html('button', { type: 'button', class: `tool ${name}`, 'aria-pressed': 'false' }, words);
    button.addEventListener('click', () => {
      this.popover.open(false);
      this.popover.button.focus();
      choose();
    });
    this.buttons.set(name, button);
    return button;
  }

  private pinRow(): HTMLElement {
    this.pin.addEventListener('change', () => this.pinned(this.pin.checked));
    const title = say`Otherwise it shows whichever draft you turn to`;
    return html('label', { class: 'pin', title }, this.pin, say`Stay with this file`);
  }
}

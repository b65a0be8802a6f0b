/** The search for a name: a box, and what its letters mean; Enter shows it, with Ctrl its line in the text as well. */
import { say } from '../../../grammar/say';
import type { PieceDrawing } from '../../../server/drawing/model';
import { html } from './dom';
import { findables, found, type Findable } from './finding';
import { Popover } from './popover';

/** More rows are no help to choose from. */
const MOST = 40;

export interface FindActions {
  pieces(): Iterable<PieceDrawing>;
  show(one: Findable, goto: boolean): void;
}

export class Find {
  private readonly popover = new Popover('find', say`Find`);
  readonly element = this.popover.element;
  private readonly box = html('input', {
    ...{
      type: 'text',
      role: 'combobox',
      placeholder: say`Name of a piece, an edge, a point`,
      spellcheck: 'false',
    },
    ...{ 'aria-label': say`Find a name`, 'aria-controls': 'found', 'aria-expanded': 'true' },
    ...{ 'aria-autocomplete': 'list' },
  });
  private readonly list = html('ul', { id: 'found', role: 'listbox', 'aria-label': say`Found` });
  private readonly none = html('p', { class: 'none', role: 'status' });
  private all: readonly Findable[] = [];
  private rows: readonly Findable[] = [];
  private at = 0;

  constructor(private readonly actions: FindActions) {
    this.popover.panel.append(this.box, this.list, this.none);
    this.popover.button.addEventListener('click', () => this.begin());
    this.box.addEventListener('input', () => this.search());
    this.box.addEventListener('keydown', (event) => this.key(event));
  }

  open(): void {
    this.popover.open(true);
    this.begin();
  }

  private begin(): void {
    this.all = findables(this.actions.pieces());
    this.box.select();
    this.search();
  }

  private search(): void {
    this.rows = found(this.all, this.box.value).slice(0, MOST);
    this.at = 0;
    this.list.replaceChildren(...this.rows.map((one, i) => this.row(one, i)));
    const letters = this.box.value.trim();
    this.none.textContent = letters && this.rows.length === 0 ? say`Nothing here is called ${letters}.` : '';
    this.mark();
  }

  private row(one: Findable, i: number): HTMLElement {
    const rest = one.tip.startsWith(one.name) ? one.tip.slice(one.name.length).replace(/^, /, '') : one.tip;
    const element = html(
      'li',
      { id: `found-${i}`, role: 'option', title: one.tip },
      html('span', { class: 'name' }, one.name),
      html('span', { class: 'rest' }, rest),
      html('span', { class: 'where' }, one.name === one.piece ? '' : one.piece),
    );
    element.addEventListener('click', (event) => this.choose(one, event.ctrlKey || event.metaKey));
    return element;
  }

  private key(event: KeyboardEvent): void {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (by !== undefined) this.at = Math.min(Math.max(this.at + by, 0), this.rows.length - 1);
    else if (event.key !== 'Enter') return;
    event.preventDefault();
    if (by !== undefined) return this.mark();
    const one = this.rows[this.at];
    if (one !== undefined) this.choose(one, event.ctrlKey || event.metaKey);
  }

  private choose(one: Findable, goto: boolean): void {
    this.popover.open(false);
    this.actions.show(one, goto);
  }

  private mark(): void {
    [...this.list.children].forEach((row, i) => row.setAttribute('aria-selected', String(i === this.at)));
    const row = this.list.children[this.at];
    row?.scrollIntoView({ block: 'nearest' });
    if (row) this.box.setAttribute('aria-activedescendant', row.id);
    else this.box.removeAttribute('aria-activedescendant');
  }
}

/** The bar above the drawing: what is shown, for whom, and a few plain buttons. */
import { say } from '../../../grammar/say';
import type { Sheet } from '../protocol';
import { FULL_SIZE } from './camera';
import { html } from './dom';

export interface BarActions {
  zoomOut(): void;
  zoomIn(): void;
  fit(): void;
  fullSize(): void;
}

export class Bar {
  private readonly title = html('span', { class: 'title' });
  private readonly body = html('span', { class: 'body-name' });
  private readonly percent = html('output', { class: 'percent', 'aria-label': say`Size on the screen` });
  readonly element: HTMLElement;

  constructor(actions: BarActions, lists: readonly HTMLElement[]) {
    this.element = html(
      'div',
      { class: 'bar', role: 'toolbar', 'aria-label': say`Preview` },
      html('div', { class: 'names' }, this.title, this.body),
      ...lists,
      html(
        'div',
        { class: 'sight' },
        html(
          'div',
          { class: 'zoom' },
          button('−', say`Smaller (-)`, () => actions.zoomOut()),
          this.percent,
          button('+', say`Larger (+)`, () => actions.zoomIn()),
        ),
        button(say`Fit`, say`Fit the whole drawing (0)`, () => actions.fit()),
        button('1:1', say`Full size, as the screen tells its own (1)`, () => actions.fullSize()),
      ),
    );
  }

  name(sheet: Sheet): void {
    this.title.textContent = sheet.title || say`Pattern`;
    this.body.textContent = sheet.body ? say`for ${sheet.body}` : '';
    this.title.title = [sheet.title, this.body.textContent].filter(Boolean).join(', ');
  }

  /** Shows the size on the screen, as a share of full size. */
  size(zoom: number): void {
    const share = (zoom / FULL_SIZE) * 100;
    this.percent.textContent = `${share < 10 ? share.toFixed(1) : Math.round(share)} %`;
  }
}

function button(words: string, title: string, action: () => void): HTMLButtonElement {
  const made = html(
    'button',
    { type: 'button', title, 'aria-label': `${words}: ${title.replace(/ \(.\)$/, '')}` },
    words,
  );
  made.addEventListener('click', action);
  return made;
}

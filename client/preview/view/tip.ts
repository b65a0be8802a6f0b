/** The small tip near the pointer. */
import { html, styled } from './dom';

const AWAY_PX = 14;

export class Tip {
  readonly element = html('div', { class: 'tip', 'aria-hidden': 'true' });

  /** Shows a text near a pixel of the stage, inside of it; no text hides the tip. */
  show(text: string, x: number, y: number): void {
    this.element.classList.toggle('shown', text !== '');
    if (text === '') return;
    this.element.textContent = text;
    const room = this.element.offsetParent ?? document.body;
    const left = Math.max(4, Math.min(x + AWAY_PX, room.clientWidth - this.element.offsetWidth - 4));
    const below = y + AWAY_PX + this.element.offsetHeight < room.clientHeight;
    const top = below ? y + AWAY_PX : y - AWAY_PX - this.element.offsetHeight;
    styled(this.element, { left: `${left}px`, top: `${top}px` });
  }
}

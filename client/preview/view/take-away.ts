/** The *Export* list: takes the drawing away as a file, or on the clipboard. */
import { say } from '../../../grammar/say';
import type { FromView, Picture } from '../protocol';
import { html } from './dom';
import { Popover } from './popover';

/** Milliseconds after which a picture that did not come is not waited for: a cloak in full size takes a few seconds. */
const PATIENCE = 60_000;

export class TakeAway {
  private readonly popover = new Popover('export', say`Export`);
  readonly element = this.popover.element;
  private waiting: ((picture: Picture) => void) | undefined;

  constructor(private readonly post: (message: FromView) => void) {
    this.popover.panel.append(
      this.row('export', say`Export…`, () => post({ type: 'export' })),
      this.row('copy-svg', say`Copy as SVG`, () => post({ type: 'copy', as: 'svg' })),
      this.row('copy-png', say`Copy as picture`, () => void this.copyPicture()),
    );
  }

  /** The bytes that were asked for have come. */
  take(picture: Picture): void {
    this.waiting?.(picture);
    this.waiting = undefined;
  }

  private row(name: string, words: string, choose: () => void): HTMLElement {
    const button = html('button', { type: 'button', class: `tool ${name}` }, words);
    button.addEventListener('click', () => {
      this.popover.open(false);
      this.popover.button.focus();
      choose();
    });
    return button;
  }

  /** Only a page may put a picture on the clipboard, and only at once after a click: so it promises the bytes. */
  private async copyPicture(): Promise<void> {
    try {
      const item = new ClipboardItem({ 'image/png': this.picture() });
      await navigator.clipboard.write([item]);
      this.post({ type: 'copied', failed: '' });
    } catch (fault) {
      const failed = fault instanceof Error ? fault.message : String(fault);
      this.post({ type: 'copied', failed: failed || say`the editor does not let it.` });
    }
  }

  private picture(): Promise<Blob> {
    return new Promise((done, failed) => {
      const late = setTimeout(() => failed(new Error(say`it did not come.`)), PATIENCE);
      this.waiting = ({ png, reason }) => {
        clearTimeout(late);
        if (png === '') failed(new Error(reason));
        else
          done(new Blob([Uint8Array.from(atob(png), (sign) => sign.charCodeAt(0))], { type: 'image/png' }));
      };
      this.post({ type: 'copy', as: 'png' });
    });
  }
}

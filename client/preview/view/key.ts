/** The key to sizes on one another: which dash and weight is whose, also where the words at the lines are too small to read. */
import { say } from '../../../grammar/say';
import { lineTypeOf } from '../../../server/drawing/lines';
import type { Sheet } from '../protocol';
import { html, styled, svg } from './dom';
import { dashesOf, px } from './draw';

/** A stretch of line that is long enough for the longest dash to come twice. */
const SAMPLE = 'M1 5H55';

export class Key {
  readonly element = html('ul', { class: 'key', 'aria-label': say`Sizes by their lines`, hidden: '' });
  private shown = '';

  update({ nested }: Sheet): void {
    this.element.hidden = nested.length === 0;
    if (this.shown === nested.join('\n')) return;
    this.shown = nested.join('\n');
    this.element.replaceChildren(...nested.map((size) => html('li', {}, sample(size, nested), size)));
  }
}

function sample(size: string, sizes: readonly string[]): SVGSVGElement {
  const { weight, dash } = lineTypeOf({ role: 'cutting', ofSize: size }, sizes);
  const line = svg('path', { class: 'line cutting', d: SAMPLE });
  styled(line, { '--weight': `${px(weight)}px`, '--dash': dashesOf(dash), '--from-afar': 1 });
  return svg('svg', { width: 56, height: 10, 'aria-hidden': 'true' }, line);
}

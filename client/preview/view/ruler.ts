/** The rulers along the top and the left of the stage, with a hair at the pointer. */
import type { Camera } from './camera';
import { html, svg } from './dom';
import { ticks, type Tick } from './scale';
import type { Sheet } from '../protocol';

/** Width of a ruler on the screen; the style sheet lays the page out with the same number. */
export const RULER_PX = 22;

const LENGTH_PX = { long: 9, middle: 6, short: 4 } as const;

class Ruler {
  private readonly marks = svg('path', { class: 'ticks' });
  private readonly numbers = svg('g', { class: 'numbers' });
  private readonly hair = svg('path', { class: 'hair', d: '' });
  readonly element: SVGSVGElement;

  constructor(private readonly side: 'top' | 'left') {
    this.element = svg(
      'svg',
      { class: `ruler ${side}`, 'aria-hidden': 'true' },
      this.marks,
      this.numbers,
      this.hair,
    );
  }

  draw(unit: Sheet['unit'], camera: Camera, pixels: number): void {
    const from = this.side === 'top' ? camera.left : camera.top;
    const px = (tick: Tick) => Math.round((tick.at - from) * camera.zoom) + 0.5;
    const all = ticks(unit, camera.zoom, from, pixels);
    this.marks.setAttribute('d', all.map((tick) => this.stroke(px(tick), LENGTH_PX[tick.size])).join(''));
    this.number(all.filter(({ words }) => words).map((tick) => [px(tick), tick.words]));
  }

  /** Shows where the pointer stands, pixels along the ruler. */
  point(at: number | undefined): void {
    this.hair.setAttribute('d', at === undefined ? '' : this.stroke(Math.round(at) + 0.5, RULER_PX));
  }

  private stroke(at: number, length: number): string {
    return this.side === 'top' ? `M${at} ${RULER_PX}v${-length}` : `M${RULER_PX} ${at}h${-length}`;
  }

  /** Text nodes are used again: a drag of the sheet makes none. */
  private number(numbers: readonly (readonly [number, string])[]): void {
    const nodes = this.numbers.children;
    while (nodes.length < numbers.length) this.numbers.append(svg('text'));
    while (nodes.length > numbers.length) this.numbers.lastChild!.remove();
    numbers.forEach(([at, words], i) => {
      const node = nodes[i]!;
      node.textContent = words;
      const place = this.side === 'top' ? `translate(${at + 3} 10)` : `translate(10 ${at - 3}) rotate(-90)`;
      node.setAttribute('transform', place);
    });
  }
}

/** Both rulers, and where they meet: the unit they count in. */
export class Rulers {
  private readonly top = new Ruler('top');
  private readonly left = new Ruler('left');
  private readonly corner = html('div', { class: 'corner' });
  readonly elements = [this.corner, this.top.element, this.left.element];

  draw(unit: Sheet['unit'], camera: Camera, room: HTMLElement): void {
    this.top.draw(unit, camera, room.clientWidth);
    this.left.draw(unit, camera, room.clientHeight);
    this.corner.textContent = unit;
  }

  /** Where the pointer stands, pixels of the stage. */
  point(at: { readonly x: number; readonly y: number } | undefined): void {
    this.top.point(at?.x);
    this.left.point(at?.y);
  }
}

/** The ruler that a person lays between two places: by two clicks, or by arrows and Enter. */
import { say } from '../../../grammar/say';
import { pathData } from '../../../server/drawing/lines';
import type { Spot } from '../../../server/drawing/model';
import type { Measured } from '../protocol';
import type { Camera } from './camera';
import { html, svg } from './dom';
import type { Questions } from './questions';
import { hop, pointsOf, snapped, type Snapped, type Spread } from './snap';
import { Tip } from './tip';

/** A point or a line within so many pixels is meant. */
const REACH_PX = 11;
/** Half the stroke across either end of the ruler, pixels. */
const END_PX = 6;

/** What the ruler needs to know of the view. */
export interface Ground {
  spreads(): readonly Spread[];
  camera(): Camera;
  /** Whether lines of the draft are out of sight. */
  quiet(): boolean;
  /** Brings a place into sight. */
  reveal(at: Spot): void;
  changed(on: boolean): void;
}

export class Measure {
  on = false;
  /** Drawn above the pieces, in the paper's millimetres. */
  readonly element = svg('g', { class: 'measure', 'aria-hidden': 'true' });
  private readonly tip = new Tip();
  readonly words = this.tip.element;
  /** What is read aloud. */
  readonly status = html('div', { class: 'spoken', role: 'status' });
  private from: Snapped | undefined;
  private to: Snapped | undefined;
  /** Both ends stand: the next place begins anew. */
  private done = false;
  private told: Measured | undefined;

  constructor(
    private readonly ground: Ground,
    private readonly questions: Questions,
  ) {
    this.words.classList.add('measured');
  }

  turn(on: boolean): void {
    this.on = on;
    this.clear();
    this.say(on ? say`Measuring. Arrow keys go from point to point, Enter sets an end, Escape ends.` : '');
    this.ground.changed(on);
  }

  /** The pointer is over a place of the paper. */
  move(at: Spot): void {
    if (this.done) return;
    this.point(this.snap(at));
  }

  /** A click, or Enter. */
  set(place: Snapped | undefined = this.to): void {
    if (place === undefined) return;
    if (this.from === undefined || this.done) {
      this.clear();
      this.from = this.to = place;
      this.say(place.words ? say`From ${place.words}` : say`From here`);
    } else {
      this.to = place;
      this.done = true;
      this.ask();
    }
    this.draw();
  }

  click(at: Spot): void {
    this.set(this.snap(at));
  }

  /** True for a key that belongs to the ruler. */
  key(key: string): boolean {
    const way = ARROWS[key];
    if (way !== undefined) this.hop(...way);
    else if (key === 'Enter' || key === ' ') this.set();
    else if (key === 'Escape') this.escape();
    else return false;
    return true;
  }

  /** The zoom or the drawing changed. */
  draw(): void {
    const { from, to, told } = this;
    const { zoom, left, top } = this.ground.camera();
    this.element.replaceChildren(...(to === undefined ? [] : this.lines(from ?? to, to, zoom)));
    const words = told === undefined ? (to?.words ?? '') : wordsOf(told);
    const shown = to !== undefined && this.on;
    this.tip.show(shown ? words : '', ((to?.at.x ?? 0) - left) * zoom, ((to?.at.y ?? 0) - top) * zoom);
  }

  private escape(): void {
    if (this.from === undefined) return this.turn(false);
    this.clear();
    this.draw();
  }

  private clear(): void {
    this.from = this.to = this.told = undefined;
    this.done = false;
    this.element.replaceChildren();
    this.tip.show('', 0, 0);
  }

  private snap(at: Spot): Snapped {
    return snapped(this.ground.spreads(), at, REACH_PX / this.ground.camera().zoom, this.ground.quiet());
  }

  private point(place: Snapped): void {
    this.to = place;
    if (this.from !== undefined) this.ask();
    this.draw();
  }

  private hop(x: number, y: number): void {
    const points = pointsOf(this.ground.spreads(), this.ground.quiet());
    const start = this.to ?? { at: { x: -1e6, y: -1e6 }, words: '' };
    const next = this.to === undefined ? firstOf(points) : hop(points, start.at, x, y);
    if (next === undefined) return;
    if (this.done) this.clear();
    this.ground.reveal(next.at);
    this.point(next);
    this.say(next.words);
  }

  private ask(): void {
    const { from, to } = this;
    if (from === undefined || to === undefined) return;
    this.questions.ask<Measured>('measure', { from: pinOf(from), to: pinOf(to) }, (answer) => {
      if (from !== this.from) return;
      this.told = answer;
      this.say(to.words ? say`${wordsOf(answer)}, to ${to.words}` : wordsOf(answer));
      this.draw();
    });
  }

  private say(words: string): void {
    this.status.textContent = words;
  }

  private lines(from: Snapped, to: Snapped, zoom: number): SVGElement[] {
    const [dx, dy] = [to.at.x - from.at.x, to.at.y - from.at.y];
    const size = Math.hypot(dx, dy);
    const [x, y] = size === 0 ? [0, 1] : [-dy / size, dx / size];
    const half = END_PX / zoom;
    const end = ({ at }: Snapped) =>
      `M${at.x - x * half} ${at.y - y * half}L${at.x + x * half} ${at.y + y * half}`;
    const across = ({ at }: Snapped) =>
      `M${at.x - half} ${at.y}h${2 * half}M${at.x} ${at.y - half}v${2 * half}`;
    const d =
      size === 0 ? across(to) : `M${from.at.x} ${from.at.y}L${to.at.x} ${to.at.y}${end(from)}${end(to)}`;
    const line = this.told?.line;
    const spread = this.ground.spreads().find(({ drawing }) => drawing.name === to.piece);
    const along =
      line && spread
        ? [svg('path', { class: 'along', d: pathData(line), transform: `matrix(${spread.by.join(' ')})` })]
        : [];
    return [...along, svg('path', { class: 'between-halo', d }), svg('path', { class: 'between', d })];
  }
}

const ARROWS: Readonly<Record<string, [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const pinOf = ({ at, piece, own }: Snapped) => ({ at, ...(piece !== undefined && { piece, own }) });

/** The point at the top left, where reading begins. */
const firstOf = (points: readonly Snapped[]): Snapped | undefined =>
  points.reduce<Snapped | undefined>(
    (best, point) => (best && best.at.x + best.at.y <= point.at.x + point.at.y ? best : point),
    undefined,
  );

const wordsOf = ({ straight, apart, along }: Measured): string =>
  [straight, apart, along ?? ''].filter(Boolean).join('\n');

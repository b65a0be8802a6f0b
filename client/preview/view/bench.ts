/** The bench: pieces laid out in front of the person instead of the sheet, and a strip that says what is compared. */
import { say } from '../../../grammar/say';
import { pathData } from '../../../server/drawing/lines';
import type { PieceDrawing, Source, Spot } from '../../../server/drawing/model';
import type { Laid, Layable, Laying, Walk } from '../protocol';
import { html, svg } from './dom';
import { drawPiece } from './draw';
import type { Hold } from './gestures';
import type { Spread } from './snap';
import { letter, textGroup } from './words';

type Kind = Laying['kind'];

export const layings = (): Readonly<Record<Kind, string>> => ({
  walk: say`Walk a seam`,
  together: say`Lay together at a seam`,
  darts: say`Close the darts`,
  sides: say`Left over right`,
});

const nothing = (): Readonly<Record<Kind, string>> => ({
  walk: say`No seam here can be walked: that takes two edges of which it is told which ends meet, and neither of a band.`,
  together: say`No pieces here can be laid together: that takes a seam of which it is told which ends meet, and neither edge of a band.`,
  darts: say`No piece here has a dart or a pleat on an edge.`,
  sides: say`No piece here is different on the left and on the right.`,
});

/** One step of an arrow key, mm; of the slider a fifth of it. */
const STEP = 10;

export interface BenchActions {
  /** What is to be laid out; undefined: the sheet again. */
  want(laying: Laying | undefined): void;
  /** Asks what can be laid out: only when somebody wants to. */
  layable(then: (all: readonly Layable[]) => void): void;
  /** Something else is laid out than before: all of it is to be seen. */
  turned(): void;
  /** What is laid out looks different. */
  changed(): void;
  zoom(): number;
  say(words: string): void;
}

export class Bench {
  readonly group = svg('g', { class: 'laid-out' });
  private readonly which = html('select', { 'aria-label': say`Which` });
  private readonly heading = html('span', { class: 'heading' });
  private readonly slider = html('input', {
    type: 'range',
    min: 0,
    step: STEP / 5,
    'aria-label': say`Walked so far`,
  });
  private readonly back = html('button', { type: 'button', 'aria-label': say`Back to the last stop` }, '‹');
  private readonly onward = html('button', { type: 'button', 'aria-label': say`On to the next stop` }, '›');
  private readonly way = html('span', { class: 'way' }, this.back, this.slider, this.onward);
  private readonly other = html('button', { type: 'button', class: 'other-end' }, say`Other end`);
  private readonly done = html('button', { type: 'button', class: 'done' }, say`Done`);
  private readonly words = html('div', { class: 'sentences', role: 'status' });
  readonly element = html(
    'div',
    { class: 'strip', role: 'region', 'aria-label': say`What is laid out`, hidden: '' },
    html('div', { class: 'strip-row' }, this.heading, this.which, this.way, this.other, this.done),
    this.words,
  );
  laying: Laying | undefined;
  private laid: Laid | undefined;
  private layable: readonly Layable[] = [];
  private readonly drawings = new Map<string, PieceDrawing>();

  constructor(private readonly actions: BenchActions) {
    this.which.addEventListener('change', () => this.turnTo(this.which.value));
    this.slider.addEventListener('input', () => this.walkTo(this.slider.valueAsNumber));
    this.back.addEventListener('click', () => this.toStop(-1));
    this.onward.addEventListener('click', () => this.toStop(1));
    this.other.addEventListener('click', () => this.otherEnd());
    this.done.addEventListener('click', () => this.end());
    this.slider.addEventListener('keydown', (event) => this.takeKey(event));
    this.element.addEventListener('keydown', (event) => event.key === 'Escape' && this.takeKey(event));
  }

  get on(): boolean {
    return this.laying !== undefined;
  }

  /** The text changed: there may be other seams and pieces now. */
  refresh(): void {
    if (!this.on) return;
    this.actions.layable((layable) => {
      this.layable = layable;
      if (this.laying !== undefined) this.list(this.laying.kind);
    });
  }

  /** @param selected what the person pointed at last: its seam or its piece is taken, if there is one */
  begin(kind: Kind, selected: Source | ''): void {
    this.actions.layable((layable) => {
      this.layable = layable;
      const all = layable.filter((one) => one.kind === kind);
      const one = all.find(({ about }) => about.includes(selected)) ?? all[0];
      if (one === undefined) return this.actions.say(nothing()[kind]);
      this.turnTo(one.of, kind);
      (kind === 'walk' ? this.slider : this.which).focus({ preventScroll: true });
    });
  }

  end(): void {
    this.laying = this.laid = undefined;
    this.group.replaceChildren();
    this.element.hidden = true;
    this.actions.want(undefined);
    this.actions.turned();
  }

  /** A page that begins again lays out what it had. */
  recall(laying: Laying): void {
    this.laying = laying;
  }

  receive(laid: Laid): void {
    if (this.laying === undefined || keyOf(laid.laying) !== keyOf(this.laying)) return;
    for (const { drawing } of laid.pieces) if (drawing) this.drawings.set(drawing.name, drawing);
    const turned = this.laid === undefined || keyOf(this.laid.laying) !== keyOf(laid.laying);
    // what can't be laid out any more stays as it was, under the words that say so
    this.laid = laid.pieces.length > 0 || turned ? laid : { ...this.laid!, words: laid.words };
    this.draw(this.laid);
    if (turned) this.actions.turned();
    else this.actions.changed();
  }

  get frame() {
    return this.laid?.frame;
  }

  /** The pieces as they lie. */
  spreads(): Spread[] {
    return (this.laid?.pieces ?? []).flatMap(({ piece, by }) => {
      const drawing = this.drawings.get(piece);
      return drawing ? [{ drawing, by }] : [];
    });
  }

  /** Sets the words for the zoom as it is now. */
  letter(): void {
    for (const node of this.group.querySelectorAll<SVGGElement>(':scope > [data-piece]'))
      letter(node, this.drawings.get(node.dataset.piece!)!, this.actions.zoom());
  }

  /** True for a key that belongs to the bench. */
  key(key: string): boolean {
    if (key === 'Escape') this.end();
    else if (this.laid?.walk === undefined) return false;
    else if (key === 'ArrowRight' || key === 'ArrowLeft') this.step(key === 'ArrowRight' ? 1 : -1);
    else if (key === 'PageDown' || key === 'PageUp') this.toStop(key === 'PageDown' ? 1 : -1);
    else if (key === 'Home' || key === 'End') this.walkTo(key === 'Home' ? 0 : this.laid.walk.length);
    else return false;
    return true;
  }

  /** The place where the two edges touch can be drawn along the seam. */
  hold(target: Element): Hold | undefined {
    const walk = this.laid?.walk;
    if (!walk || !target.closest('.touch')) return undefined;
    const { at } = walk;
    let { along } = walk;
    let moved = 0;
    return {
      move: (dx, dy) => {
        const by = (dx * along.x + dy * along.y) / this.actions.zoom();
        this.walkTo(at + by);
        // on a curve the way turns under the hand
        if (Math.abs(by - moved) > STEP) ({ along } = this.laid?.walk ?? walk);
        moved = by;
      },
      end: () => undefined,
    };
  }

  private takeKey(event: KeyboardEvent): void {
    if (!this.key(event.key)) return;
    event.preventDefault();
    event.stopPropagation();
  }

  private turnTo(of: Source, kind: Kind = this.laying!.kind): void {
    this.want(
      kind === 'walk' ? { kind, of, at: 0 } : kind === 'together' ? { kind, of, at: 'start' } : { kind, of },
    );
    this.list(kind);
  }

  private want(laying: Laying): void {
    this.laying = laying;
    this.actions.want(laying);
  }

  private list(kind: Kind): void {
    const all = this.layable.filter((one) => one.kind === kind);
    this.heading.textContent = layings()[kind];
    this.which.replaceChildren(...all.map(({ of, words }) => html('option', { value: of }, words)));
    this.which.value = this.laying!.of;
    this.way.hidden = kind !== 'walk';
    this.other.hidden = kind !== 'together';
    this.element.hidden = false;
  }

  private get walk(): Walk | undefined {
    return this.laid?.walk;
  }

  private walkTo(at: number): void {
    const { laying, walk } = this;
    if (laying?.kind !== 'walk' || walk === undefined) return;
    this.want({ ...laying, at: Math.min(Math.max(at, 0), walk.length) });
  }

  private otherEnd(): void {
    if (this.laying?.kind === 'together')
      this.want({ ...this.laying, at: this.laying.at === 'start' ? 'end' : 'start' });
  }

  /** To the next whole step. */
  private step(way: 1 | -1): void {
    const at = this.laying?.kind === 'walk' ? this.laying.at : 0;
    this.walkTo(way * Math.floor((way * at) / STEP + 1 + 1e-6) * STEP);
  }

  private toStop(way: 1 | -1): void {
    const at = this.laying?.kind === 'walk' ? this.laying.at : 0;
    const ahead = (this.walk?.stops ?? []).map((stop) => stop.at).filter((one) => way * (one - at) > 0.01);
    if (ahead.length > 0) this.walkTo(way > 0 ? Math.min(...ahead) : Math.max(...ahead));
  }

  private draw(laid: Laid): void {
    const { walk } = laid;
    this.words.replaceChildren(...laid.words.map((words) => html('p', {}, words)));
    if (walk) {
      this.slider.max = String(walk.length);
      this.slider.value = String(walk.at);
      this.slider.setAttribute('aria-valuetext', laid.words[1] ?? '');
      this.back.disabled = walk.at <= 0.01;
      this.onward.disabled = walk.at >= walk.length - 0.01;
    }
    this.group.replaceChildren(
      ...laid.pieces.flatMap(({ piece, by, faint }) => this.piece(piece, by, faint === true)),
      ...laid.lines.map(({ kind, line }) => svg('path', { class: `laid-line ${kind}`, d: pathData(line) })),
      ...laid.texts.map(textGroup),
      ...(walk ? [touch(walk.touch)] : []),
    );
  }

  private piece(name: string, by: readonly number[], faint: boolean): SVGElement[] {
    const drawing = this.drawings.get(name);
    if (!drawing) return [];
    const over = by[0]! * by[3]! - by[1]! * by[2]! < 0;
    const node = drawPiece(drawing, undefined);
    node.setAttribute('transform', `matrix(${by.join(' ')})`);
    node.classList.toggle('turned-over', over);
    node.classList.toggle('faint', faint);
    letter(node, drawing, this.actions.zoom());
    return [node];
  }
}

/** What is laid out; how far a seam was walked is no other thing. */
const keyOf = (laying: Laying): string =>
  `${laying.kind} ${laying.of} ${laying.kind === 'together' ? laying.at : ''}`;

const touch = ({ x, y }: Spot): SVGElement =>
  svg(
    'g',
    { class: 'touch', transform: `translate(${x} ${y})`, 'aria-hidden': 'true' },
    svg('circle', { class: 'steady grip', r: 14 }),
    svg('circle', { class: 'steady ring', r: 6 }),
  );

/** Brings the parts of the preview together: what arrives is drawn, what the person does is told to the extension. */
import type { Frame, Source } from '../../../server/drawing/model';
import type { FromView, Marked, PreviewProblem, Sheet, ToView, Trial, ViewState } from '../protocol';
import { PROTOCOL_VERSION } from '../protocol';
import { Bar } from './bar';
import * as camera from './camera';
import { Choices } from './choices';
import { html } from './dom';
import { listenToPointers, type Hold, type Spot } from './gestures';
import { Find } from './find';
import type { Findable } from './finding';
import { Hand } from './hand';
import { listenToKeys, rest, ZOOM_STEP } from './keyboard';
import { Measure } from './measure';
import { Memory } from './memory';
import { Problems } from './problems';
import { Questions } from './questions';
import { Ruler, rulerCorner } from './ruler';
import { Selection } from './selection';
import { applySheet, type Held } from './sheet';
import { Show, shownAtFirst } from './show';
import { movedBy, type Spread } from './snap';
import { Stage } from './stage';
import { Tip } from './tip';
import { TakeAway } from './take-away';
import { Tools } from './tools';

/** What the editor gives a webview: one channel, and a little memory that outlives the page. */
export interface Host {
  postMessage(message: FromView): void;
  getState(): ViewState | undefined;
  setState(state: ViewState): void;
}

/** About the room of a skirt, for the rulers of a sheet without pieces. */
const EMPTY_FRAME: Frame = { left: 0, top: 0, right: 700, bottom: 700 };

export class Viewer {
  private readonly stage = new Stage();
  private readonly selection = new Selection(this.stage);
  private readonly tip = new Tip();
  private readonly rulers = { top: new Ruler('top'), left: new Ruler('left') };
  private readonly corner = rulerCorner();
  private readonly empty = html('div', { class: 'empty', role: 'note' });
  private readonly room = html('div', { class: 'room' }, this.stage.element, this.empty, this.tip.element);
  private readonly problems = new Problems((problem) => this.toProblem(problem));
  private readonly choices = new Choices({
    tryOut: (trial) => this.tryOut(trial),
    write: (trial) => this.host.postMessage({ type: 'write', trial }),
  });
  /** Where the words of the hand are shown. */
  private handAt: Spot = { x: 0, y: 0 };
  private readonly hand = new Hand({
    grip: (source, piece) => this.host.postMessage({ type: 'grip', source, piece }),
    pull: (source, amounts) => this.host.postMessage({ type: 'pull', source, amounts }),
    release: () => this.host.postMessage({ type: 'release' }),
    say: (words) => this.tip.show(words, this.handAt.x, this.handAt.y),
  });
  private readonly questions = new Questions((message) => this.host.postMessage(message));
  private readonly measure = new Measure(
    {
      spreads: () => this.spreads(),
      camera: () => this.camera,
      quiet: () => !this.show.shown.includes('construction'),
      reveal: (at) => this.look(camera.revealing(this.camera, frameAt(at), this.size)),
      changed: (on) => this.measuring(on),
    },
    this.questions,
  );
  private readonly find = new Find({
    pieces: () => this.held?.pieces.values() ?? [],
    show: (one, goto) => this.showFound(one, goto),
  });
  private readonly tools = new Tools(
    [{ name: 'measure', words: 'Measure', choose: () => this.measure.turn(!this.measure.on) }],
    (pinned) => this.stay(pinned),
  );
  private readonly takeAway = new TakeAway((message) => this.host.postMessage(message));
  private readonly memory = new Memory(
    (state) => this.host.setState(state),
    () => this.state(),
  );
  private readonly show: Show;
  private readonly bar: Bar;

  private held: Held | undefined;
  private camera: camera.Camera = { zoom: 0, left: 0, top: 0, fit: true };
  private painting = 0;

  constructor(
    private readonly root: HTMLElement,
    private readonly host: Host,
    private readonly place: { readonly uri: string; readonly seat: string },
  ) {
    this.show = new Show(root, {
      changed: () => this.memory.touch(),
      want: (want) => this.host.postMessage({ type: 'want', want }),
    });
    this.bar = new Bar(this.buttons(), [
      this.problems.element,
      this.choices.element,
      this.show.element,
      this.find.element,
      this.tools.element,
      this.takeAway.element,
    ]);
    root.append(this.bar.element, this.room, this.corner, this.rulers.top.element, this.rulers.left.element);
    this.stage.over.append(this.measure.element);
    this.room.append(this.measure.words, this.measure.status);
    this.recall(host.getState());
    this.listen();
    this.say('Drawing …', '');
  }

  /** Tells the extension that the view can be sent a full sheet. */
  ready(): void {
    this.host.postMessage({
      type: 'ready',
      protocol: PROTOCOL_VERSION,
      trial: this.choices.trial,
      pinned: this.tools.isPinned,
      want: this.show.want,
    });
  }

  receive(message: ToView): void {
    if (message.type === 'sheet') this.receiveSheet(message);
    else if (message.type === 'marked') this.receiveMarked(message);
    else if (message.type === 'written') this.written();
    else if (message.type === 'gripped') this.hand.gripped(message);
    else if (message.type === 'answered') this.questions.answered(message.id, message.answer);
    else if (message.type === 'picture') this.takeAway.take(message);
    else if (message.type === 'do') this.choose(message.tool);
  }

  private receiveSheet(sheet: Sheet): void {
    const outcome = applySheet(this.held, sheet);
    if (outcome.kind === 'stranger')
      return this.say('This preview is out of date', 'Close it and open it again.');
    if (outcome.kind === 'ask')
      return this.host.postMessage({ type: 'ask', have: this.held?.sheet.version ?? 0 });
    const first = this.held === undefined;
    this.held = outcome.held;
    this.selection.paintPieces(this.stage.apply(outcome));
    if (!this.stage.sheet.querySelector('[tabindex="0"]')) rest(this.stage);
    this.bar.name(sheet);
    this.choices.update(sheet);
    this.show.update(sheet);
    this.problems.update(sheet.problems);
    this.sayWhetherEmpty(sheet);
    this.follow(first);
  }

  private choose(tool: string): void {
    if (tool === 'find') this.find.open();
    else this.tools.choose(tool);
  }

  private tryOut(trial: Trial): void {
    this.host.postMessage({ type: 'try', trial });
    this.memory.touch();
  }

  /** The text says now what was tried. */
  private written(): void {
    this.choices.clear();
    this.memory.touch();
  }

  private receiveMarked({ sources }: Marked): void {
    this.selection.mark(sources);
  }

  // What is seen

  private get frame(): Frame {
    const sheet = this.held?.sheet;
    return sheet && sheet.placements.length > 0 ? sheet.frame : EMPTY_FRAME;
  }

  private get size(): camera.Size {
    return { width: this.room.clientWidth, height: this.room.clientHeight };
  }

  /** The camera stays where it is, unless it shows the whole and the whole has outgrown it. */
  private follow(first: boolean): void {
    const fits = this.camera.fit && (first || camera.needsFitting(this.camera, this.frame, this.size));
    this.look(fits ? camera.fitTo(this.frame, this.size) : this.camera);
  }

  private look(next: camera.Camera): void {
    this.camera = next.fit ? next : camera.heldInSight(next, this.frame, this.size);
    this.painting ||= requestAnimationFrame(() => this.paint());
    this.memory.touch();
  }

  private paint(): void {
    this.painting = 0;
    if (this.camera.zoom <= 0) return;
    const unit = this.held?.sheet.unit ?? 'cm';
    this.stage.show(this.camera);
    this.rulers.top.draw(unit, this.camera, this.size.width);
    this.rulers.left.draw(unit, this.camera, this.size.height);
    this.corner.textContent = unit;
    this.bar.size(this.camera.zoom);
    if (this.measure.on) this.measure.draw();
  }

  private fit(): void {
    this.look(camera.fitTo(this.frame, this.size));
  }

  private zoom(factor: number): void {
    this.look(camera.zoomAbout(this.camera, factor, this.size.width / 2, this.size.height / 2));
  }

  private reveal(node: SVGGElement): void {
    this.look(camera.revealing(this.camera, this.stage.frameOf(node, this.camera), this.size));
  }

  private buttons() {
    return {
      zoomOut: () => this.zoom(1 / ZOOM_STEP),
      zoomIn: () => this.zoom(ZOOM_STEP),
      fit: () => this.fit(),
      fullSize: () => this.look(camera.fullSize(this.camera, this.size)),
    };
  }

  // What the person does

  private listen(): void {
    new ResizeObserver(() => this.resized()).observe(this.room);
    this.listenToPointer();
    this.listenToKeyboard();
  }

  private resized(): void {
    if (this.held && this.camera.fit) this.fit();
    else this.look(this.camera);
  }

  private listenToPointer(): void {
    listenToPointers(this.stage.element, {
      pan: (dx, dy) => this.look(camera.panBy(this.camera, dx, dy)),
      zoom: (factor, x, y) => this.look(camera.zoomAbout(this.camera, factor, x, y)),
      click: (target, goto, at) => {
        if (this.measure.on) this.measure.click(camera.underPixel(this.camera, at.x, at.y));
        else this.click(thingAt(target), goto);
      },
      hover: (target, x, y) => this.hover(target, x, y),
      hold: (target) => this.hold(target),
    });
  }

  private listenToKeyboard(): void {
    listenToKeys(this.stage, {
      zoom: (factor) => this.zoom(factor),
      fit: () => this.fit(),
      fullSize: () => this.look(camera.fullSize(this.camera, this.size)),
      pan: (dx, dy) => this.look(camera.panBy(this.camera, dx, dy)),
      reach: (stop) => this.reveal(stop),
      select: (stop) => this.select(stop.dataset.source ?? ''),
      goto: (stop) => this.click(stop, true),
      escape: () => this.select(''),
      tool: (key) => this.measure.on && this.measure.key(key),
    });
  }

  /** A dot that is dragged moves its point, in the text as well. */
  private hold(target: Element): Hold | undefined {
    const dot = target.closest<SVGGElement>('.dot[data-source]');
    if (this.measure.on || !dot || !this.hand.take(dot)) return undefined;
    return {
      move: (dx, dy, at) => {
        this.handAt = at;
        this.hand.move(dx / this.camera.zoom, dy / this.camera.zoom);
      },
      end: () => this.hand.end(),
    };
  }

  /** The pieces as they lie in front of the person. */
  private spreads(): Spread[] {
    const { held } = this;
    return (held?.sheet.placements ?? []).map(({ piece, by }) => ({
      drawing: held!.pieces.get(piece)!,
      by: movedBy(by),
    }));
  }

  /** Keys and clicks go to the ruler from now on, or no longer. */
  private measuring(on: boolean): void {
    this.root.classList.toggle('measuring', on);
    this.tools.mark('measure', on);
    this.tip.show('', 0, 0);
    if (on) this.stage.sheet.querySelector<SVGGElement>('[tabindex="0"]')?.focus({ preventScroll: true });
  }

  private stay(pinned: boolean): void {
    this.host.postMessage({ type: 'pin', pinned });
    this.memory.touch();
  }

  private click(thing: SVGGElement | undefined, goto: boolean): void {
    const source = thing?.dataset.source ?? '';
    this.select(source);
    const stop = thing?.closest<SVGGElement>('[tabindex]');
    if (stop && stop !== document.activeElement) stop.focus({ preventScroll: true });
    if (goto && source) this.host.postMessage({ type: 'goto', source });
  }

  private hover(target: Element | undefined, x: number, y: number): void {
    if (this.measure.on && target) this.measure.move(camera.underPixel(this.camera, x, y));
    else this.tip.show((target && thingAt(target)?.dataset.tip) ?? '', x, y);
    this.rulers.top.point(target && x);
    this.rulers.left.point(target && y);
  }

  private select(source: Source | ''): void {
    if (source === this.selection.selected) return;
    this.selection.select(source);
    this.host.postMessage({ type: 'select', source });
    this.memory.touch();
  }

  private toProblem(problem: PreviewProblem): void {
    this.select(problem.source);
    const things = this.stage.things();
    const about = things.find(({ dataset }) => dataset.source === problem.source);
    const node = about ?? things.find(({ dataset }) => dataset.piece === problem.piece);
    if (node) this.reveal(node);
    this.host.postMessage({ type: 'goto', source: problem.source });
  }

  private showFound({ source, piece }: Findable, goto: boolean): void {
    this.select(source);
    const things = this.stage.things().filter((node) => node.closest(`[data-piece="${CSS.escape(piece)}"]`));
    const shown = things.filter((node) => node.getClientRects().length > 0);
    const node = shown.find(({ dataset }) => dataset.source === source) ?? shown[0];
    if (node === undefined) return;
    this.reveal(node);
    node.closest<SVGGElement>('[tabindex]')?.focus({ preventScroll: true });
    if (goto) this.host.postMessage({ type: 'goto', source });
  }

  // What is said where nothing is drawn

  private sayWhetherEmpty(sheet: Sheet): void {
    if (sheet.placements.length > 0) return this.say('', '');
    const broken = sheet.problems.some(({ severity }) => severity === 'error');
    const how = broken
      ? 'They are drawn here as soon as the text can be read. The list of problems says where it can’t.'
      : 'Write a piece with its outline, such as “piece front of skirt { … }”, and it is drawn here.';
    this.say('No pieces yet', how);
  }

  private say(heading: string, words: string): void {
    this.empty.hidden = heading === '';
    this.empty.replaceChildren(html('h1', {}, heading), html('p', {}, words));
  }

  // What is remembered over hiding and reloading

  private recall(state: ViewState | undefined): void {
    if (state?.schema !== 1) return;
    this.tools.isPinned = state.pinned ?? true;
    if (state.uri !== this.place.uri) return;
    const { zoom, left, top } = state;
    if ([zoom, left, top].every(Number.isFinite)) this.camera = { zoom, left, top, fit: zoom === 0 };
    this.selection.select(state.selected);
    this.show.set(state.shown ?? shownAtFirst);
    if (state.trial) this.choices.trial = state.trial;
  }

  private state(): ViewState {
    const { zoom, left, top, fit } = this.camera;
    return {
      schema: 1,
      ...this.place,
      pinned: this.tools.isPinned,
      zoom: fit ? 0 : zoom,
      left,
      top,
      selected: this.selection.selected,
      shown: this.show.shown,
      trial: this.choices.trial,
    };
  }
}

const frameAt = ({ x, y }: Spot): Frame => ({ left: x, right: x, top: y, bottom: y });

/** The innermost thing that a pixel belongs to. */
function thingAt(target: Element): SVGGElement | undefined {
  return target.closest<SVGGElement>('[data-source]') ?? undefined;
}

/** Brings the parts of the preview together: what arrives is drawn, what the person does is told to the extension. */
import { say } from '../../../grammar/say';
import type { Frame, Source } from '../../../server/drawing/model';
import type { FromView, PreviewProblem, Sheet, ToView, Trial, ViewState, Want } from '../protocol';
import { PROTOCOL_VERSION } from '../protocol';
import { Bar } from './bar';
import type { Camera, Size } from './camera';
import { Bench, layings } from './bench';
import { Contents } from './contents';
import { Empty, EMPTY_FRAME } from './empty';
import { Eye } from './eye';
import { Choices } from './choices';
import { html } from './dom';
import { listenToPointers, type Hold } from './gestures';
import { Find } from './find';
import { Flags } from './flags';
import { Handling } from './handling';
import { Key } from './key';
import { listenToKeys, rest } from './keyboard';
import { Measure } from './measure';
import { Memory } from './memory';
import { Problems } from './problems';
import { Questions } from './questions';
import { Rulers } from './ruler';
import { Selection } from './selection';
import { applySheet, type Held } from './sheet';
import { Show, shownAtFirst } from './show';
import { movedBy, type Spread } from './snap';
import { Stage, thingAt } from './stage';
import { Tip } from './tip';
import { TakeAway } from './take-away';
import { Tools } from './tools';

/** What the editor gives a webview: one channel, and a little memory that outlives the page. */
export interface Host {
  postMessage(message: FromView): void;
  getState(): ViewState | undefined;
  setState(state: ViewState): void;
}

export class Viewer {
  private readonly stage = new Stage();
  private readonly selection = new Selection(this.stage);
  private readonly tip = new Tip();
  private readonly rulers = new Rulers();
  private readonly empty = new Empty();
  private readonly flags = new Flags();
  private readonly key = new Key();
  private readonly room = html(
    'div',
    { class: 'room' },
    this.stage.element,
    this.empty.element,
    this.tip.element,
  );
  private readonly problems = new Problems((problem) => this.showProblem(problem, true));
  private readonly choices = new Choices({
    tryOut: (trial) => this.tryOut(trial),
    write: (trial) => this.host.postMessage({ type: 'write', trial }),
  });
  private readonly hand = new Handling(this.tip, {
    post: (message) => this.host.postMessage(message),
    zoom: () => this.eye.camera.zoom,
    dotOf: (source, piece) => this.stage.dotOf(source, piece),
    placeOf: (node) => this.stage.placeOf(node),
  });
  private readonly questions = new Questions((message) => this.host.postMessage(message));
  private readonly measure = new Measure(
    {
      spreads: () => this.spreads(),
      camera: () => this.eye.camera,
      quiet: () => !this.show.shown.includes('construction'),
      reveal: (at) => this.eye.revealSpot(at),
      changed: (on) => this.measuring(on),
    },
    this.questions,
  );
  private readonly bench = new Bench({
    want: () => this.want(),
    layable: (then) => this.questions.ask('layable', {}, then),
    turned: () => this.turnedToBench(),
    changed: () => this.measure.draw(),
    zoom: () => this.eye.camera.zoom,
    say: (words) => this.tip.show(words, this.room.clientWidth, 0),
  });
  private readonly eye = new Eye({
    frame: () => this.frame,
    size: () => this.size,
    paint: (seen) => this.paint(seen),
    changed: () => this.memory.touch(),
  });
  private readonly find = new Find({
    pieces: () => this.held?.pieces.values() ?? [],
    show: ({ source, piece }, goto) => this.showThing(source, piece, goto, true),
  });
  private readonly contents = new Contents({
    pieces: () => this.held?.pieces.values() ?? [],
    problems: () => this.held?.sheet.problems ?? [],
    show: (source, piece, goto) => this.showThing(source, piece, goto, false),
    showProblem: (problem, goto) => this.showProblem(problem, goto),
  });
  private readonly tools = new Tools(
    [
      { name: 'measure', words: say`Measure`, choose: () => this.measure.turn(!this.measure.on) },
      { name: 'contents', words: say`List everything`, choose: () => this.contents.open() },
      ...(['walk', 'together', 'darts', 'sides'] as const).map((kind) => ({
        ...{ name: kind, words: layings()[kind] },
        choose: () => this.bench.begin(kind, this.selection.selected),
      })),
    ],
    (pinned) => {
      this.host.postMessage({ type: 'pin', pinned });
      this.memory.touch();
    },
  );
  private readonly takeAway = new TakeAway((message) => this.host.postMessage(message));
  private readonly memory = new Memory(
    (state) => this.host.setState(state),
    () => this.state(),
  );
  private readonly show: Show;
  private readonly bar: Bar;

  private held: Held | undefined;
  /** How the sheet was seen before something was laid out. */
  private seenBefore: Camera | undefined;

  constructor(
    private readonly root: HTMLElement,
    private readonly host: Host,
    private readonly place: { readonly uri: string; readonly seat: string },
  ) {
    this.show = new Show(root, { changed: () => this.memory.touch(), want: () => this.want() });
    this.bar = new Bar(this.eye, [
      this.problems.element,
      html('span', { class: 'break' }),
      this.choices.element,
      this.show.element,
      this.find.element,
      this.tools.element,
      this.contents.element,
      this.takeAway.element,
    ]);
    root.append(this.bar.element, this.room, ...this.rulers.elements);
    this.stage.over.append(this.flags.element, this.measure.element);
    this.stage.bench.append(this.bench.group);
    this.room.append(this.key.element, this.measure.words, this.measure.status, this.hand.status);
    this.room.append(this.bench.element);
    this.recall(host.getState());
    this.listen();
    this.empty.say(say`Drawing …`, '');
  }

  /** Tells the extension that the view can be sent a full sheet. */
  ready(): void {
    this.host.postMessage({
      type: 'ready',
      protocol: PROTOCOL_VERSION,
      trial: this.choices.trial,
      pinned: this.tools.isPinned,
      want: this.wanted,
    });
  }

  receive(message: ToView): void {
    if (message.type === 'sheet') this.receiveSheet(message);
    else if (message.type === 'marked') this.selection.mark(message.sources);
    else if (message.type === 'written') this.written();
    else if (message.type === 'gripped') this.hand.gripped(message);
    else if (message.type === 'answered') this.questions.answered(message.id, message.answer);
    else if (message.type === 'picture') this.takeAway.take(message);
    else if (message.type === 'do' && message.tool === 'find') this.find.open();
    else if (message.type === 'do') this.tools.choose(message.tool);
    else if (message.type === 'laid') this.bench.receive(message);
  }

  private receiveSheet(sheet: Sheet): void {
    const outcome = applySheet(this.held, sheet);
    if (outcome.kind === 'stranger')
      return this.empty.say(say`This preview is out of date`, say`Close it and open it again.`);
    if (outcome.kind === 'ask')
      return this.host.postMessage({ type: 'ask', have: this.held?.sheet.version ?? 0 });
    const first = this.held === undefined;
    this.held = outcome.held;
    this.selection.paintPieces(this.stage.apply(outcome));
    if (!this.stage.sheet.querySelector('[tabindex="0"]')) rest(this.stage);
    this.bar.name(sheet);
    this.problems.update(sheet.problems);
    const { choices, show, empty, flags, key, contents } = this;
    for (const part of [choices, show, empty, flags, key, contents]) part.update(sheet);
    this.eye.follow(first);
    this.hand.follow();
    this.bench.refresh();
    // a server that begins anew has forgotten what is laid out
    if (sheet.full && this.bench.on) this.want();
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

  // What is seen

  private get frame(): Frame {
    const sheet = this.held?.sheet;
    if (this.bench.on) return this.bench.frame ?? EMPTY_FRAME;
    return sheet && sheet.placements.length > 0 ? sheet.frame : EMPTY_FRAME;
  }

  private paint(seen: Camera): void {
    this.stage.show(seen);
    if (this.bench.on) this.bench.letter();
    this.rulers.draw(this.held?.sheet.unit ?? 'cm', seen, this.room);
    this.bar.size(seen.zoom);
    if (this.measure.on) this.measure.draw();
  }

  /** The strip of the bench covers the foot of the room. */
  private get size(): Size {
    const strip = this.bench.element.offsetHeight;
    return { width: this.room.clientWidth, height: Math.max(this.room.clientHeight - strip, 40) };
  }

  private reveal(node: SVGGElement): void {
    this.eye.reveal(this.stage.frameOf(node, this.eye.camera));
  }

  // What the person does

  private listen(): void {
    new ResizeObserver(() => this.eye.resized()).observe(this.room);
    this.listenToPointer();
    this.listenToKeyboard();
  }

  private listenToPointer(): void {
    listenToPointers(this.stage.element, {
      pan: (dx, dy) => this.eye.pan(dx, dy),
      zoom: (factor, x, y) => this.eye.zoom(factor, x, y),
      click: (target, goto, at) => {
        if (this.measure.on) this.measure.click(this.eye.under(at.x, at.y));
        else this.click(thingAt(target), goto);
      },
      hover: (target, x, y) => this.hover(target, x, y),
      hold: (target) => this.hold(target),
    });
  }

  private listenToKeyboard(): void {
    listenToKeys(this.stage, {
      zoom: (factor) => this.eye.zoom(factor),
      fit: () => this.eye.fit(),
      fullSize: () => this.eye.fullSize(),
      pan: (dx, dy) => this.eye.pan(dx, dy),
      reach: (stop) => this.reveal(stop),
      select: (stop) => this.select(stop.dataset.source ?? ''),
      goto: (stop) => this.click(stop, true),
      escape: () => this.select(''),
      history: (way) => this.host.postMessage({ type: 'history', way }),
      save: () => this.host.postMessage({ type: 'save' }),
      take: (dot) => this.hand.take(dot),
      tool: (event) =>
        (this.measure.on && this.measure.key(event.key)) ||
        (this.bench.on && this.bench.key(event.key)) ||
        this.hand.key(event),
    });
  }

  /** A dot that is dragged moves its point, in the text as well. */
  private hold(target: Element): Hold | undefined {
    if (this.bench.on) return this.bench.hold(target);
    return this.measure.on ? undefined : this.hand.hold(target);
  }

  /** The pieces as they lie in front of the person. */
  private spreads(): Spread[] {
    const { held } = this;
    if (this.bench.on) return this.bench.spreads();
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

  private get wanted(): Want {
    const { laying } = this.bench;
    return { ...this.show.want, ...(laying && { laying }) };
  }

  private want(): void {
    this.host.postMessage({ type: 'want', want: this.wanted });
    this.memory.touch();
  }

  /** Something is laid out instead of the sheet, or the sheet is there again, as it was seen before. */
  private turnedToBench(): void {
    const { on } = this.bench;
    this.tip.show('', 0, 0);
    this.root.classList.toggle('laying', on);
    for (const kind of ['walk', 'together', 'darts', 'sides'] as const)
      this.tools.mark(kind, this.bench.laying?.kind === kind);
    if (on) {
      this.seenBefore ??= this.eye.camera;
      return this.eye.fit();
    }
    const before = this.seenBefore;
    this.seenBefore = undefined;
    if (before) this.eye.look(before);
  }

  private click(thing: SVGGElement | undefined, goto: boolean): void {
    const source = thing?.dataset.source ?? '';
    this.select(source);
    const stop = thing?.closest<SVGGElement>('[tabindex]');
    if (stop && stop !== document.activeElement) stop.focus({ preventScroll: true });
    const problem = thing?.matches('.flag') ? this.flags.problemOf(thing) : undefined;
    if (problem) this.goToProblem(problem);
    else if (goto && source) this.host.postMessage({ type: 'goto', source });
  }

  /** To the words that are underlined, not only to the thing that they are said of; from a sign as from a row. */
  private goToProblem({ source, code, message }: PreviewProblem): void {
    this.host.postMessage({ type: 'goto', source, problem: { code, message } });
  }

  /** A problem in both: its place in the drawing comes into sight, and the text goes there. */
  private showProblem(problem: PreviewProblem, goto: boolean): void {
    this.showThing(problem.source, problem.piece ?? '', false, false);
    const sign = this.flags.placeOf(problem);
    if (sign && !this.bench.on) this.eye.revealSpot(sign);
    if (goto) this.goToProblem(problem);
  }

  private hover(target: Element | undefined, x: number, y: number): void {
    if (this.measure.on && target) this.measure.move(this.eye.under(x, y));
    else this.tip.show((target && thingAt(target)?.dataset.tip) ?? '', x, y);
    this.rulers.point(target && { x, y });
  }

  private select(source: Source | ''): void {
    if (source === this.selection.selected) return;
    this.selection.select(source);
    this.host.postMessage({ type: 'select', source });
    this.memory.touch();
  }

  /** @param take the keyboard goes to it */
  private showThing(source: Source, piece: string, goto: boolean, take: boolean): void {
    this.select(source);
    const node = this.stage.shownThing(source, piece);
    if (node) this.reveal(node);
    if (take) node?.closest<SVGGElement>('[tabindex]')?.focus({ preventScroll: true });
    if (goto) this.host.postMessage({ type: 'goto', source });
  }

  // What is remembered over hiding and reloading

  private recall(state: ViewState | undefined): void {
    if (state?.schema !== 1) return;
    this.tools.isPinned = state.pinned ?? true;
    if (state.uri !== this.place.uri) return;
    const { zoom, left, top } = state;
    if ([zoom, left, top].every(Number.isFinite)) this.eye.camera = { zoom, left, top, fit: zoom === 0 };
    this.selection.select(state.selected);
    this.show.set(state.shown ?? shownAtFirst);
    if (state.trial) this.choices.trial = state.trial;
    if (state.laying) this.bench.recall(state.laying);
  }

  private state(): ViewState {
    const { zoom, left, top, fit } = this.seenBefore ?? this.eye.camera;
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
      ...(this.bench.laying && { laying: this.bench.laying }),
    };
  }
}

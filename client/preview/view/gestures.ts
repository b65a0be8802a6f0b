/** Mouse, pen, fingers and wheel on the stage, told as what they mean. */

export interface Gestures {
  pan(dx: number, dy: number): void;
  /** About a pixel of the stage. */
  zoom(factor: number, x: number, y: number): void;
  click(target: Element, goto: boolean, at: Spot): void;
  hover(target: Element | undefined, x: number, y: number): void;
  /** A drag that began on a thing which may be moved itself; undefined: the sheet moves. */
  hold(target: Element): Hold | undefined;
}

/** A thing in the hand, and how far in pixels it was moved since it was taken. */
export interface Hold {
  move(dx: number, dy: number, at: Spot): void;
  end(): void;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** A pointer that moved less is a click, not a drag. */
const DRAG_PX = 4;
/** How much one pixel of the wheel zooms: a notch of 100 px about 1.28 times, a pinch of a few pixels gently. */
const WHEEL_ZOOM = 0.0025;
const LINE_PX = 16;

export function listenToPointers(stage: SVGSVGElement, gestures: Gestures): void {
  const pointers = new Pointers(stage, gestures);
  stage.addEventListener('pointerdown', (event) => pointers.begin(event));
  stage.addEventListener('pointermove', (event) => pointers.move(event));
  stage.addEventListener('pointerup', (event) => pointers.end(event));
  stage.addEventListener('pointercancel', (event) => pointers.end(event));
  stage.addEventListener('pointerleave', () => gestures.hover(undefined, 0, 0));
  stage.addEventListener('dblclick', (event) =>
    gestures.click(event.target as Element, true, spotOf(stage, event)),
  );
  stage.addEventListener('wheel', (event) => wheel(event, spotOf(stage, event), gestures), {
    passive: false,
  });
}

/** On the stage, in pixels. */
function spotOf(stage: SVGSVGElement, event: MouseEvent): Spot {
  const box = stage.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
}

/** The pointers that are down, and what the first of them does: a click, a drag of the sheet, or of a thing. */
class Pointers {
  private readonly down = new Map<number, Spot>();
  private dragging = false;
  private began: { readonly at: Spot; readonly target: Element } | undefined;
  private held: Hold | undefined;

  constructor(
    private readonly stage: SVGSVGElement,
    private readonly gestures: Gestures,
  ) {}

  begin(event: PointerEvent): void {
    if (event.button > 1) return;
    const at = spotOf(this.stage, event);
    this.down.set(event.pointerId, at);
    this.dragging = this.down.size > 1;
    this.began = this.dragging || event.button !== 0 ? undefined : { at, target: event.target as Element };
  }

  move(event: PointerEvent): void {
    const now = spotOf(this.stage, event);
    const before = this.down.get(event.pointerId);
    if (!before) return this.gestures.hover(event.target as Element, now.x, now.y);
    if (!this.dragging && Math.hypot(now.x - before.x, now.y - before.y) < DRAG_PX) return;
    if (!this.dragging) this.beginDrag(event.pointerId);
    if (this.held && this.began) return this.held.move(now.x - this.began.at.x, now.y - this.began.at.y, now);
    if (this.down.size === 1) this.gestures.pan(before.x - now.x, before.y - now.y);
    else pinch(this.gestures, event.pointerId, before, now, this.down);
    this.down.set(event.pointerId, now);
  }

  end(event: PointerEvent): void {
    const wasDown = this.down.delete(event.pointerId);
    const clicked = wasDown && !this.dragging && event.type === 'pointerup' && event.button === 0;
    if (this.down.size === 0) this.endDrag();
    if (!clicked) return;
    const goto = event.ctrlKey || event.metaKey;
    this.gestures.click(event.target as Element, goto, spotOf(this.stage, event));
  }

  private beginDrag(pointer: number): void {
    this.dragging = true;
    this.stage.setPointerCapture(pointer);
    this.gestures.hover(undefined, 0, 0);
    this.held = this.began && this.gestures.hold(this.began.target);
    this.stage.classList.add(this.held ? 'holding' : 'dragged');
  }

  private endDrag(): void {
    this.dragging = false;
    this.held?.end();
    this.held = undefined;
    this.stage.classList.remove('dragged', 'holding');
  }
}

/** Two fingers: zoom by how their distance changes, about the finger that rests. */
function pinch(
  gestures: Gestures,
  id: number,
  before: Spot,
  now: Spot,
  down: ReadonlyMap<number, Spot>,
): void {
  const other = [...down].find(([pointer]) => pointer !== id)![1];
  const span = (spot: Spot) => Math.max(Math.hypot(spot.x - other.x, spot.y - other.y), 1);
  gestures.zoom(span(now) / span(before), other.x, other.y);
}

/** The wheel scrolls; with Ctrl (which is also how a pinch on a touch pad arrives) it zooms. */
function wheel(event: WheelEvent, at: Spot, gestures: Gestures): void {
  event.preventDefault();
  const scale = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? LINE_PX : 1;
  const [dx, dy] = [event.deltaX * scale, event.deltaY * scale];
  if (event.ctrlKey || event.metaKey) return gestures.zoom(Math.exp(-dy * WHEEL_ZOOM), at.x, at.y);
  if (event.shiftKey && dx === 0) return gestures.pan(dy, 0);
  gestures.pan(dx, dy);
}

/** Mouse, pen, fingers and wheel on the stage, told as what they mean. */

export interface Gestures {
  pan(dx: number, dy: number): void;
  /** About a pixel of the stage. */
  zoom(factor: number, x: number, y: number): void;
  click(target: Element, goto: boolean): void;
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
  const down = new Map<number, Spot>();
  let dragging = false;
  let began: { readonly at: Spot; readonly target: Element } | undefined;
  let held: Hold | undefined;

  const at = (event: MouseEvent): Spot => {
    const box = stage.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };

  const begin = (event: PointerEvent) => {
    if (event.button > 1) return;
    down.set(event.pointerId, at(event));
    dragging = down.size > 1;
    began = dragging || event.button !== 0 ? undefined : { at: at(event), target: event.target as Element };
  };

  const move = (event: PointerEvent) => {
    const now = at(event);
    const before = down.get(event.pointerId);
    if (!before) return gestures.hover(event.target as Element, now.x, now.y);
    if (!dragging && Math.hypot(now.x - before.x, now.y - before.y) < DRAG_PX) return;
    if (!dragging) {
      stage.setPointerCapture(event.pointerId);
      gestures.hover(undefined, 0, 0);
      held = began && gestures.hold(began.target);
    }
    dragging = true;
    stage.classList.add(held ? 'holding' : 'dragged');
    if (held && began) return held.move(now.x - began.at.x, now.y - began.at.y, now);
    gestures.hover(undefined, 0, 0);
    if (down.size === 1) gestures.pan(before.x - now.x, before.y - now.y);
    else pinch(gestures, event.pointerId, before, now, down);
    down.set(event.pointerId, now);
  };

  const end = (event: PointerEvent) => {
    const wasDown = down.delete(event.pointerId);
    const clicked = wasDown && !dragging && event.type === 'pointerup' && event.button === 0;
    if (down.size === 0) {
      dragging = false;
      held?.end();
      held = undefined;
      stage.classList.remove('dragged', 'holding');
    }
    if (clicked) gestures.click(event.target as Element, event.ctrlKey || event.metaKey);
  };

  stage.addEventListener('pointerdown', begin);
  stage.addEventListener('pointermove', move);
  stage.addEventListener('pointerup', end);
  stage.addEventListener('pointercancel', end);
  stage.addEventListener('pointerleave', () => gestures.hover(undefined, 0, 0));
  stage.addEventListener('dblclick', (event) => gestures.click(event.target as Element, true));
  stage.addEventListener('wheel', (event) => wheel(event, at(event), gestures), { passive: false });
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

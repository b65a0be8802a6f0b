/** The keyboard: `+ - 0 1` and arrows anywhere in the preview; Tab, Enter, Space and Escape on the drawing. */
import type { Stage } from './stage';

export interface KeyActions {
  zoom(factor: number): void;
  fit(): void;
  fullSize(): void;
  pan(dx: number, dy: number): void;
  /** The keyboard came to a piece or a thing. */
  reach(stop: SVGGElement): void;
  select(stop: SVGGElement): void;
  goto(stop: SVGGElement): void;
  /** Space on a point: arrows move it from now on. */
  take(dot: SVGGElement): void;
  escape(): void;
  history(way: 'undo' | 'redo'): void;
  save(): void;
  /** True for a key that belongs to the tool in use. */
  tool(event: KeyboardEvent): boolean;
}

export const ZOOM_STEP = 1.25;
const PAN_PX = 60;

export function listenToKeys(stage: Stage, actions: KeyActions): void {
  document.addEventListener('keydown', (event) => {
    const way = historyOf(event);
    if (way) actions.history(way);
    if (isSave(event)) actions.save();
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const onDrawing = event.target instanceof Node && stage.element.contains(event.target);
    const action =
      (!onControl(event.target) && actions.tool(event)) ||
      (onDrawing && drawingKey(event, stage, actions)) ||
      (!inList(event.target) && viewKey(event.key, actions));
    if (action) event.preventDefault();
  });
  stage.element.addEventListener('focusin', (event) => {
    const stop = event.target as SVGGElement;
    rest(stage, stop);
    if (stop.matches(':focus-visible')) actions.reach(stop);
  });
}

/** Exactly one stop takes part in the page's own tab order; from there Tab walks on by itself. */
export function rest(stage: Stage, stop: SVGGElement | undefined = stage.stops()[0]): void {
  for (const other of stage.sheet.querySelectorAll('[tabindex="0"]')) other.setAttribute('tabindex', '-1');
  stop?.setAttribute('tabindex', '0');
}

/** The keys by which the editor takes changes back; in a box of text they are the box's own. */
function historyOf(event: KeyboardEvent): 'undo' | 'redo' | undefined {
  const box = event.target instanceof HTMLInputElement && event.target.matches(':not([type]), [type="text"]');
  if (box || event.altKey || event.ctrlKey === event.metaKey) return undefined;
  const key = event.key.toLowerCase();
  if (key === 'z') return event.shiftKey ? 'redo' : 'undo';
  return key === 'y' && !event.shiftKey ? 'redo' : undefined;
}

/** The key by which the editor saves, in a box of text as well. */
const isSave = ({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): boolean =>
  key.toLowerCase() === 's' && ctrlKey !== metaKey && !shiftKey && !altKey;

/** Keys in a list or a menu belong to it. */
function inList(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('.popover, .strip') !== null;
}

/** A button is pressed by Enter and Space, whatever tool is in use. */
function onControl(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest('button, input, select, .popover') !== null;
}

function viewKey(key: string, actions: KeyActions): boolean {
  const table: Readonly<Record<string, () => void>> = {
    '+': () => actions.zoom(ZOOM_STEP),
    '=': () => actions.zoom(ZOOM_STEP), // the same key without Shift
    '-': () => actions.zoom(1 / ZOOM_STEP),
    '0': actions.fit,
    '1': actions.fullSize,
    ArrowLeft: () => actions.pan(-PAN_PX, 0),
    ArrowRight: () => actions.pan(PAN_PX, 0),
    ArrowUp: () => actions.pan(0, -PAN_PX),
    ArrowDown: () => actions.pan(0, PAN_PX),
    Escape: actions.escape,
  };
  const action = Object.hasOwn(table, key) ? table[key] : undefined;
  action?.();
  return action !== undefined;
}

function drawingKey(event: KeyboardEvent, stage: Stage, actions: KeyActions): boolean {
  const stop = event.target as SVGGElement;
  switch (event.key) {
    case 'Tab':
      return walk(stage, stop, event.shiftKey ? -1 : 1, () => true);
    case 'PageDown':
    case 'PageUp':
      return walk(stage, stop, event.key === 'PageUp' ? -1 : 1, (node) => node.dataset.piece !== undefined);
    case 'Enter':
      actions.goto(stop);
      return true;
    case ' ':
      actions.select(stop);
      if (stop.matches('.dot')) actions.take(stop);
      return true;
    default:
      return false;
  }
}

/** Goes to the next stop of a kind; at either end Tab leaves the drawing as in any page. */
function walk(stage: Stage, from: SVGGElement, by: 1 | -1, wanted: (stop: SVGGElement) => boolean): boolean {
  const stops = stage.stops();
  for (let i = stops.indexOf(from) + by; i >= 0 && i < stops.length; i += by) {
    if (!wanted(stops[i]!)) continue;
    stops[i]!.focus({ preventScroll: true });
    return true;
  }
  return false;
}

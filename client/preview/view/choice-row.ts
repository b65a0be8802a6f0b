/** One decision of the pattern: its name, its value with a step down and up, its ruled range, and what the file says. */
import { say } from '../../../grammar/say';
import type { TriedChoice } from '../protocol';
import { amountOf, stepOf, stepped, written } from './amounts';
import { html } from './dom';

/** Told the value that is tried, as it would be written. */
export type Try = (path: string, value: string) => void;

export interface ChoiceRow {
  readonly element: HTMLElement;
  update(choice: TriedChoice, tried: string | undefined): void;
}

/** What decides how a row is built; while it stays the same, only its values change. */
export const shapeOf = ({ path, low, high, among }: TriedChoice): string =>
  JSON.stringify([path, low, high, among]);

export function choiceRow(choice: TriedChoice, attempt: Try): ChoiceRow {
  const control = choice.among.length > 0 ? oneOf(choice, attempt) : amount(choice, attempt);
  const note = html('span', { class: 'in-the-file' });
  const name = html('span', { class: 'choice-name', title: choice.doc || undefined }, choice.path);
  const element = html('div', { class: 'choice', role: 'group', 'aria-label': choice.path });
  element.dataset.path = choice.path;
  element.append(name, ...control.parts, note);
  return {
    element,
    update: (now, tried) => {
      control.show(tried ?? now.value, now);
      element.classList.toggle('tried', tried !== undefined);
      note.textContent = tried === undefined ? '' : say`in the file: ${now.written}`;
    },
  };
}

interface Control {
  readonly parts: readonly HTMLElement[];
  show(value: string, choice: TriedChoice): void;
}

function oneOf({ path, among }: TriedChoice, attempt: Try): Control {
  const select = html('select', { 'aria-label': path }, ...among.map((word) => html('option', {}, word)));
  select.addEventListener('change', () => attempt(path, select.value));
  return { parts: [select], show: (value) => void (select.value = value) };
}

function amount(choice: TriedChoice, attempt: Try): Control {
  const { path } = choice;
  const box = html('input', { type: 'text', class: 'value', 'aria-label': path, spellcheck: 'false' });
  const [low, high] = [amountOf(choice.low ?? ''), amountOf(choice.high ?? '')];
  let typing = false;
  const step = (way: 1 | -1) => {
    typing = false;
    const now = amountOf(box.value);
    if (now !== undefined) attempt(path, written(stepped(now, way, low, high)));
  };
  box.addEventListener('input', () => (typing = true));
  box.addEventListener('change', () => {
    typing = false;
    attempt(path, box.value.trim());
  });
  box.addEventListener('keydown', (event) => {
    if (event.key !== 'ArrowUp' && event.key !== 'ArrowDown') return;
    event.preventDefault();
    step(event.key === 'ArrowUp' ? 1 : -1);
  });
  const down = stepButton('−', say`${path} smaller`, () => step(-1));
  const up = stepButton('+', say`${path} larger`, () => step(1));
  const range = ruledRange(choice, attempt);
  return {
    parts: [html('span', { class: 'amount' }, down, box, up), ...(range?.parts ?? [])],
    show: (value, now) => {
      if (!typing) box.value = value;
      range?.show(value, now);
    },
  };
}

function stepButton(words: string, label: string, action: () => void): HTMLElement {
  const made = html('button', { type: 'button', 'aria-label': label }, words);
  made.addEventListener('click', action);
  return made;
}

/** A slider between the ends that the file gives, where both are plain amounts in one unit. */
function ruledRange({ path, low, high }: TriedChoice, attempt: Try): Control | undefined {
  const [least, most] = [amountOf(low ?? ''), amountOf(high ?? '')];
  if (least === undefined || most === undefined || least.unit !== most.unit) return undefined;
  const slider = html('input', {
    ...{ type: 'range', 'aria-label': say`${path}, from ${low!} to ${high!}` },
    ...{ min: least.number, max: most.number, step: stepOf(least) / 5 },
  });
  slider.addEventListener('input', () =>
    attempt(path, written({ number: slider.valueAsNumber, unit: least.unit })),
  );
  const ends = [low!, high!].map((words) => html('span', { class: 'end' }, words));
  return {
    parts: [html('span', { class: 'range' }, ends[0]!, slider, ends[1]!)],
    show: (value) => {
      const now = amountOf(value);
      if (now?.unit !== least.unit) return;
      slider.value = String(now.number);
      slider.setAttribute('aria-valuetext', value);
    },
  };
}

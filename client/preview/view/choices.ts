/** The *Choices* list: for whom the pattern is drawn and what it leaves to choose, tried without touching the text. */
import { say } from '../../../grammar/say';
import type { Sheet, Trial } from '../protocol';
import { choiceRow, shapeOf, type ChoiceRow } from './choice-row';
import { html } from './dom';
import { Popover } from './popover';

const NOTHING: Trial = { set: {} };

export interface ChoicesActions {
  /** Draws the pattern so from now on. */
  tryOut(trial: Trial): void;
  /** Writes what is tried into the text. */
  write(trial: Trial): void;
}

export class Choices {
  private readonly popover = new Popover('choices', say`Choices`);
  readonly element = this.popover.element;
  private readonly body = html('select', { 'aria-label': say`Drawn for` });
  private readonly forWhom = html(
    'label',
    { class: 'choice for-whom' },
    html('span', { class: 'choice-name' }, say`drawn for`),
    this.body,
  );
  private readonly rows = html('div', { class: 'choice-rows' });
  private readonly writeButton = html('button', { type: 'button', class: 'write' }, say`Write to the file`);
  private readonly backButton = html('button', { type: 'button', class: 'back' }, say`Back to the file`);
  private built = new Map<string, ChoiceRow>();
  private shape = '';
  trial: Trial = NOTHING;
  private sheet: Sheet | undefined;

  constructor(private readonly actions: ChoicesActions) {
    this.popover.panel.append(
      this.forWhom,
      this.rows,
      html('div', { class: 'choices-end' }, this.writeButton, this.backButton),
    );
    this.body.addEventListener('change', () => this.tryBody(this.body.value));
    this.writeButton.addEventListener('click', () => this.actions.write(this.trial));
    this.backButton.addEventListener('click', () => this.change(NOTHING));
    this.show();
  }

  /** Takes what a sheet says of the pattern; what is being tried stays. */
  update(sheet: Sheet): void {
    this.sheet = sheet;
    this.build(sheet);
    this.show();
  }

  /** Back to what the text says, without asking for it: the text says now what was tried. */
  clear(): void {
    this.trial = NOTHING;
    this.show();
  }

  private build({ everybody, choices }: Sheet): void {
    const shape = JSON.stringify([everybody, choices.map(shapeOf)]);
    if (shape === this.shape) return;
    this.shape = shape;
    this.body.replaceChildren(...everybody.map((words) => html('option', {}, words)));
    this.forWhom.hidden = everybody.length === 0;
    const attempt = (path: string, value: string) => this.tryValue(path, value);
    this.built = new Map(choices.map((choice) => [choice.path, choiceRow(choice, attempt)]));
    this.rows.replaceChildren(...[...this.built.values()].map(({ element }) => element));
  }

  private show(): void {
    const { sheet, trial } = this;
    for (const choice of sheet?.choices ?? [])
      this.built.get(choice.path)?.update(choice, trial.set[choice.path]);
    const count = Object.keys(trial.set).length + (trial.for === undefined ? 0 : 1);
    this.body.value = trial.for === undefined ? (sheet?.body ?? '') : wordsOf(trial.for);
    this.forWhom.classList.toggle('tried', trial.for !== undefined);
    this.writeButton.disabled = this.backButton.disabled = count === 0;
    this.popover.button.textContent = count === 0 ? say`Choices` : say`Choices: ${count} tried`;
    this.popover.button.disabled = (sheet?.choices.length ?? 0) + (sheet?.everybody.length ?? 0) === 0;
  }

  private tryValue(path: string, value: string): void {
    const { [path]: _, ...others } = this.trial.set;
    const inFile = this.sheet?.choices.find((choice) => choice.path === path)?.written;
    const set = value === '' || value === inFile ? others : { ...others, [path]: value };
    this.change({ ...this.trial, set });
  }

  private tryBody(words: string): void {
    const [name = '', ...size] = words.split(' ');
    this.change({ ...this.trial, for: { name, ...(size.length > 0 && { size: size.join(' ') }) } });
  }

  private change(trial: Trial): void {
    this.trial = trial;
    this.show();
    this.actions.tryOut(trial);
  }
}

const wordsOf = ({ name, size }: NonNullable<Trial['for']>): string => [name, size ?? ''].join(' ').trim();

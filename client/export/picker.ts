/**
 * One list that stays open while a person answers question after question. A list for each would hand the keyboard back to
 * the preview between two of them, which then takes it from the next.
 */
import * as vscode from 'vscode';

export interface Choice<T> extends vscode.QuickPickItem {
  readonly value: T;
}

export interface Asked {
  readonly title: string;
  readonly placeholder: string;
  /** Several may be chosen. */
  readonly many?: boolean;
}

type Row = Choice<unknown>;

export class Picker implements vscode.Disposable {
  private readonly box = vscode.window.createQuickPick<Row>();
  private answer: ((rows: readonly Row[] | undefined) => void) | undefined;
  /** Out of sight for a moment, behind a line to write in. */
  private aside = false;
  /** Left before the first question. */
  private left = false;

  constructor(title: string) {
    Object.assign(this.box, { title, busy: true, ignoreFocusOut: true, matchOnDetail: true });
    this.box.onDidAccept(() =>
      this.end(this.box.canSelectMany ? this.box.selectedItems : this.box.activeItems),
    );
    this.box.onDidHide(() => this.hidden());
    this.box.show();
  }

  /** @returns undefined where the person left the list */
  async pick<T>(choices: readonly Choice<T>[], asked: Asked): Promise<readonly T[] | undefined> {
    if (this.left) return undefined;
    const { title, placeholder, many = false } = asked;
    const { box } = this;
    Object.assign(box, { title, placeholder, canSelectMany: many, value: '', items: choices, busy: false });
    const [first] = choices;
    if (many) box.selectedItems = choices.filter(({ picked }) => picked);
    else if (first !== undefined) box.activeItems = [first];
    box.show();
    const rows = await new Promise<readonly Row[] | undefined>((done) => (this.answer = done));
    return rows?.map(({ value }) => value as T);
  }

  /** Words of one's own, in a line by itself. */
  async write(title: string, prompt: string, value: string): Promise<string | undefined> {
    this.aside = true;
    const words = await vscode.window.showInputBox({ title, prompt, value, ignoreFocusOut: true });
    this.aside = false;
    return words;
  }

  dispose(): void {
    this.box.dispose();
  }

  private hidden(): void {
    if (this.aside) return;
    if (this.box.busy) this.left = true;
    this.end(undefined);
  }

  private end(rows: readonly Row[] | undefined): void {
    const { answer } = this;
    this.answer = undefined;
    answer?.(rows);
  }
}

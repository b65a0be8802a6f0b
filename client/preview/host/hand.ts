/** A point that is moved by hand: what the view asks for is written into the text while the hand moves. */
import * as vscode from 'vscode';
import type { Source } from '../../../server/drawing/model';
import { methods, type Grip, type Gripped } from '../protocol';
import type { LanguageClientLike } from './client';
import { editInOneStep, workspaceEdit, type Changes } from './edits';
import { newestWins } from './newest';

export class Hand {
  /** The next edit is the first of its movement. */
  private first = true;
  private held = false;
  /** What could not be written while the hand moved, because the text is not seen. */
  private waiting: Changes | undefined;
  private readonly ask = newestWins((source: Source, amounts: readonly number[]) =>
    this.write(source, amounts),
  );

  constructor(
    private readonly client: LanguageClientLike,
    private readonly uri: string,
  ) {}

  async grip(source: Source, piece: string): Promise<Gripped | undefined> {
    const params = { uri: this.uri, source, piece };
    const grip = await this.client.sendRequest<Grip | null>(methods.grip, params);
    this.first = this.held = true;
    return grip ? { type: 'gripped', source, grip } : undefined;
  }

  pull(source: Source, amounts: readonly number[]): void {
    this.ask(source, amounts);
  }

  /** A text that is not seen is written once, when the hand lets go. */
  release(): void {
    this.held = false;
    if (this.waiting !== undefined) void vscode.workspace.applyEdit(workspaceEdit(this.waiting));
    this.waiting = undefined;
  }

  private async write(source: Source, amounts: readonly number[]): Promise<void> {
    const changes = await this.client.sendRequest<Changes | null>(methods.pull, {
      ...{ uri: this.uri, source, amounts },
    });
    if (!changes) return;
    if (await editInOneStep(changes, this.first)) {
      this.first = false;
      return;
    }
    if (this.held) this.waiting = changes;
    else await vscode.workspace.applyEdit(workspaceEdit(changes));
  }
}

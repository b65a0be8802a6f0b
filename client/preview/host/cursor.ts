/** Follows the cursor in the text, so that a preview can show what it stands on. */
import * as vscode from 'vscode';
import type { Source } from '../../../server/drawing/model';
import { methods } from '../protocol';
import type { LanguageClientLike } from './client';
import { newestWins } from './newest';
import type { PreviewPanel } from './panel';

/** The cursor is asked for when it has rested so long: a held arrow key asks once. */
const RESTED_MS = 60;

export class Cursor implements vscode.Disposable {
  private readonly listening = vscode.window.onDidChangeTextEditorSelection(() => this.moved());
  private timer: ReturnType<typeof setTimeout> | undefined;
  private readonly ask = newestWins(() => this.mark());

  constructor(
    private readonly client: LanguageClientLike,
    private readonly previewsOf: (uri: string) => readonly PreviewPanel[],
  ) {}

  moved(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(this.ask, RESTED_MS);
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.listening.dispose();
  }

  private async mark(): Promise<void> {
    const editor = vscode.window.activeTextEditor;
    const uri = editor?.document.uri.toString();
    const previews = uri === undefined ? [] : this.previewsOf(uri);
    if (!editor || previews.length === 0) return;
    const { line, character } = editor.selection.active;
    const sources = await this.client.sendRequest<Source[] | null>(methods.sourcesAt, {
      uri,
      position: { line, character },
    });
    for (const preview of previews) preview.mark({ type: 'marked', sources: sources ?? [] });
  }
}

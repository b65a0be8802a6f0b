/** The preview in the editor: its commands, one panel a file, and bringing the panels back after a reload. */
import * as vscode from 'vscode';
import { methods, type Sheet, type ViewState } from '../protocol';
import { RUNNING, type LanguageClientLike } from './client';
import { Cursor } from './cursor';
import { PreviewPanel, VIEW_TYPE, type Shared } from './panel';
import { Highlight } from './source';

export type { LanguageClientLike } from './client';

export const previewCommands = ['draftwright.openPreviewToSide', 'draftwright.openPreview'] as const;

/** Registers everything of the preview; disposing of the answer takes it away again. */
export function activatePreview(
  context: vscode.ExtensionContext,
  client: LanguageClientLike,
): vscode.Disposable {
  const previews = new Previews(context.extensionUri, client);
  const [toSide, here] = previewCommands;
  return vscode.Disposable.from(
    previews,
    vscode.commands.registerCommand(toSide, (uri?: vscode.Uri) =>
      previews.open(uri, vscode.ViewColumn.Beside),
    ),
    vscode.commands.registerCommand(here, (uri?: vscode.Uri) => previews.open(uri, vscode.ViewColumn.Active)),
    vscode.window.registerWebviewPanelSerializer(VIEW_TYPE, previews),
    client.onNotification(methods.sheet, (sheet: Sheet) => previews.forward(sheet)),
    client.onDidChangeState(({ newState }) => newState === RUNNING && previews.beginAgain()),
  );
}

class Previews implements vscode.Disposable, vscode.WebviewPanelSerializer<ViewState> {
  private readonly panels = new Map<string, PreviewPanel>();
  private readonly cursor: Cursor;
  private readonly shared: Shared;

  constructor(extensionUri: vscode.Uri, client: LanguageClientLike) {
    this.cursor = new Cursor(client, (uri) => this.panels.get(uri));
    this.shared = { client, extensionUri, highlight: new Highlight(client) };
  }

  /** Opens the preview of a file, or brings the one it has to the front. */
  open(asked: vscode.Uri | undefined, viewColumn: vscode.ViewColumn): void {
    const uri = (asked ?? vscode.window.activeTextEditor?.document.uri)?.toString();
    if (!uri)
      return void vscode.window.showInformationMessage(
        'Open a .draft file first: the preview draws its pieces.',
      );
    const open = this.panels.get(uri);
    if (open) return open.panel.reveal(undefined, true);
    const place = { viewColumn, preserveFocus: viewColumn === vscode.ViewColumn.Beside };
    this.adopt(vscode.window.createWebviewPanel(VIEW_TYPE, 'Preview', place), uri);
  }

  /** A panel that the editor brings back after a reload; its state says which file it shows. */
  async deserializeWebviewPanel(panel: vscode.WebviewPanel, state: ViewState | undefined): Promise<void> {
    if (state?.schema !== 1 || this.panels.has(state.uri)) return panel.dispose();
    this.adopt(panel, state.uri);
  }

  forward(sheet: Sheet): void {
    this.panels.get(sheet.uri)?.forward(sheet);
  }

  beginAgain(): void {
    for (const preview of this.panels.values()) preview.begin();
  }

  /** The panels stay: when the window is reloaded the editor keeps them and hands them back. */
  dispose(): void {
    this.cursor.dispose();
    this.shared.highlight.dispose();
  }

  private adopt(panel: vscode.WebviewPanel, uri: string): void {
    this.panels.set(uri, new PreviewPanel(panel, uri, this.shared, () => this.cursor.moved()));
    panel.onDidDispose(() => this.panels.delete(uri));
  }
}

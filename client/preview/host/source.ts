/** Leads from a drawn thing to the text it comes from. */
import * as vscode from 'vscode';
import type { Source } from '../../../server/drawing/model';
import { methods, type ToldProblem } from '../protocol';
import type { LanguageClientLike } from './client';

interface Located {
  readonly uri: string;
  readonly range: { readonly start: Place; readonly end: Place };
}

interface Place {
  readonly line: number;
  readonly character: number;
}

/** What is looked for in the text: a thing of a preview, or what is wrong with it. */
export interface Sought {
  readonly uri: string;
  readonly seat?: string;
  readonly source: Source;
  readonly problem?: ToldProblem;
}

async function locate(client: LanguageClientLike, sought: Sought): Promise<vscode.Location | undefined> {
  const found = await client.sendRequest<Located | null>(methods.locate, sought);
  if (!found) return undefined;
  const { start, end } = found.range;
  const range = new vscode.Range(start.line, start.character, end.line, end.character);
  return new vscode.Location(vscode.Uri.parse(found.uri), range);
}

/** Puts the cursor on what is sought: in the editor that shows its file already, else in one beside the preview. */
export async function goTo(
  client: LanguageClientLike,
  sought: Sought,
  preview: vscode.WebviewPanel,
): Promise<void> {
  const location = await locate(client, sought);
  if (!location) {
    vscode.window.setStatusBarMessage(vscode.l10n.t('The text no longer says where this comes from.'), 4000);
    return;
  }
  await showText(location.uri, preview, location.range);
}

/** Gives a text the keyboard: where it is shown already, else beside the preview. */
export async function showText(
  uri: vscode.Uri,
  preview: vscode.WebviewPanel,
  selection?: vscode.Range,
): Promise<void> {
  const document = await vscode.workspace.openTextDocument(uri);
  const viewColumn = columnFor(uri, preview);
  await vscode.window.showTextDocument(document, { viewColumn, ...(selection && { selection }) });
}

function columnFor(uri: vscode.Uri, preview: vscode.WebviewPanel): vscode.ViewColumn {
  const shown = editorOf(uri)?.viewColumn;
  if (shown) return shown;
  return preview.viewColumn === vscode.ViewColumn.One ? vscode.ViewColumn.Beside : vscode.ViewColumn.One;
}

function editorOf(uri: vscode.Uri): vscode.TextEditor | undefined {
  return vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
}

/** Tints the text of what is selected in a preview, without moving the cursor or the focus. */
export class Highlight implements vscode.Disposable {
  private readonly tint = vscode.window.createTextEditorDecorationType({
    backgroundColor: new vscode.ThemeColor('editor.rangeHighlightBackground'),
    borderColor: new vscode.ThemeColor('contrastActiveBorder'),
  });

  constructor(private readonly client: LanguageClientLike) {}

  async show(uri: string, source: Source | ''): Promise<void> {
    const location = source ? await locate(this.client, { uri, source }) : undefined;
    for (const editor of vscode.window.visibleTextEditors) {
      const here = location?.uri.toString() === editor.document.uri.toString();
      editor.setDecorations(this.tint, here ? [location!.range] : []);
      if (here) editor.revealRange(location!.range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
    }
  }

  dispose(): void {
    this.tint.dispose();
  }
}

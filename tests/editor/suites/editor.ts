/** Words for what the suites do in the editor: files, texts, and waiting for what the language server says of them. */
import assert from 'node:assert/strict';
import * as vscode from 'vscode';

/** Milliseconds that something may take on a busy machine before it counts as missing. */
const PATIENCE_MS = 15_000;

export const folder = (index = 0): vscode.Uri => vscode.workspace.workspaceFolders![index]!.uri;

export const fileUri = (name: string, index = 0): vscode.Uri => vscode.Uri.joinPath(folder(index), name);

/** Waits until `find` answers something, and answers it. */
export async function until<T>(what: string, find: () => T | undefined | false): Promise<T> {
  for (const end = Date.now() + PATIENCE_MS; Date.now() < end;) {
    const found = find();
    if (found !== undefined && found !== false) return found;
    await new Promise((done) => setTimeout(done, 25));
  }
  assert.fail(`waited in vain for ${what}`);
}

export const write = (uri: vscode.Uri, text: string) =>
  vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));

/** Writes a file of the workspace and shows it in the first column. */
export async function show(uri: vscode.Uri, text?: string): Promise<vscode.TextDocument> {
  if (text !== undefined) await write(uri, text);
  const editor = await vscode.window.showTextDocument(uri, { viewColumn: vscode.ViewColumn.One });
  return editor.document;
}

/** The range of the first place where the text stands. */
export function rangeOf(document: vscode.TextDocument, text: string): vscode.Range {
  const at = document.getText().indexOf(text);
  assert.notEqual(at, -1, `the text holds no ${JSON.stringify(text)}`);
  return new vscode.Range(document.positionAt(at), document.positionAt(at + text.length));
}

/** Replaces the first place of a text, as typing would: nothing is saved. */
export async function replace(document: vscode.TextDocument, text: string, by: string): Promise<void> {
  const edit = new vscode.WorkspaceEdit();
  edit.replace(document.uri, rangeOf(document, text), by);
  assert.ok(await vscode.workspace.applyEdit(edit));
}

export const problemsOf = (uri: vscode.Uri): vscode.Diagnostic[] =>
  vscode.languages.getDiagnostics(uri).filter(({ source }) => source === 'draftwright');

/** The code of a problem, which the editor wraps together with the address of its page. */
export function codeOf({ code }: vscode.Diagnostic): unknown {
  return typeof code === 'object' ? code.value : code;
}

export const problem = (uri: vscode.Uri, code: string): Promise<vscode.Diagnostic> =>
  until(`the problem ${code}`, () => problemsOf(uri).find((found) => codeOf(found) === code));

export const problemGone = (uri: vscode.Uri, code: string): Promise<boolean> =>
  until(`the end of the problem ${code}`, () => !problemsOf(uri).some((found) => codeOf(found) === code));

/** Applies the quick fix of that title at a range, as a person's choice from the list does. */
export async function fix(uri: vscode.Uri, range: vscode.Range, title: string): Promise<void> {
  const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
    'vscode.executeCodeActionProvider',
    uri,
    range,
    vscode.CodeActionKind.QuickFix.value,
  );
  const action = actions.find((offered) => offered.title === title);
  assert.ok(action?.edit, `offered: ${actions.map((offered) => offered.title).join('; ')}`);
  assert.ok(await vscode.workspace.applyEdit(action.edit));
}

/** What hovering at the start of a text shows, as plain Markdown. */
export async function hoverAt(document: vscode.TextDocument, text: string): Promise<string> {
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    'vscode.executeHoverProvider',
    document.uri,
    rangeOf(document, text).start.translate(0, 1),
  );
  return hovers
    .flatMap(({ contents }) => contents)
    .map((content) => (typeof content === 'string' ? content : content.value))
    .join('\n');
}

export const closeAll = () => vscode.commands.executeCommand('workbench.action.closeAllEditors');

/** Closes every editor and throws away what was not saved. */
export async function forget(): Promise<void> {
  for (const document of vscode.workspace.textDocuments) {
    if (!document.isDirty) continue;
    await vscode.window.showTextDocument(document);
    await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  }
  await closeAll();
}

/** A small pattern of one piece: a patch pocket. */
export const pocket = [
  'pattern "Pocket"',
  '',
  'draft pocket {',
  '  let width = 16cm',
  '  point mouth-left = origin',
  '  point mouth-right = mouth-left right width',
  '  point foot-right = mouth-right down 18cm',
  '  point foot-left = mouth-left down 18cm',
  '}',
  '',
  'piece patch of pocket {',
  '  cut pair',
  '  outline from mouth-left {',
  '    mouth straight to mouth-right',
  '    right-side straight to foot-right',
  '    foot straight to foot-left',
  '    left-side straight to mouth-left',
  '  }',
  '  grain from foot-left to mouth-left',
  '  allow 1cm',
  '}',
  '',
  'finish mouth patch.mouth turned twice 2cm',
  'finish edges patch.right-side, patch.foot, patch.left-side turned up 1cm',
  '',
].join('\n');

/** The browser-only host: the server in a worker, files of a virtual folder, and the same answers as elsewhere. */
import * as vscode from 'vscode';

const uriOf = (name: string): vscode.Uri =>
  vscode.Uri.joinPath(vscode.workspace.workspaceFolders![0]!.uri, name);

function same(actual: unknown, expected: unknown): void {
  const [a, b] = [actual, expected].map((one) => JSON.stringify(one));
  if (a !== b) throw new Error(`${a} is not ${b}`);
}

/** Waits until `find` answers something, and answers it. */
async function until<T>(what: string, find: () => T | undefined | false): Promise<T> {
  for (const end = Date.now() + 20_000; Date.now() < end;) {
    const found = find();
    if (found !== undefined && found !== false) return found;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error(`waited in vain for ${what}`);
}

const show = async (name: string): Promise<vscode.TextDocument> =>
  (await vscode.window.showTextDocument(uriOf(name))).document;

const problemsOf = (uri: vscode.Uri): readonly string[] =>
  vscode.languages
    .getDiagnostics(uri)
    .map(({ code }) => String(typeof code === 'object' ? code.value : code));

function rangeOf(document: vscode.TextDocument, text: string): vscode.Range {
  const at = document.getText().indexOf(text);
  if (at < 0) throw new Error(`the text holds no ${text}`);
  return new vscode.Range(document.positionAt(at), document.positionAt(at + text.length));
}

describe('a host without a machine behind it', () => {
  it('is one: there is no Node, and the folder is no disk', () => {
    same(typeof process === 'undefined' || process.versions?.node === undefined, true);
    same(uriOf('').scheme === 'file', false);
  });

  it('wakes the extension for a draft, with every command of the manifest', async () => {
    await show('harbour-skirt.draft');
    const extension = vscode.extensions.getExtension('draftwright.draftwright')!;
    await extension.activate();
    const known = new Set(await vscode.commands.getCommands(true));
    const promised: { command: string }[] = extension.packageJSON.contributes.commands;
    same(
      promised.map(({ command }) => command).filter((command) => !known.has(command)),
      [],
    );
  });

  it('reports a broken line while it is typed, and forgets it when it is mended', async () => {
    const document = await show('harbour-skirt.draft');
    const replace = async (range: vscode.Range, text: string): Promise<void> => {
      const edit = new vscode.WorkspaceEdit();
      edit.replace(document.uri, range, text);
      same(await vscode.workspace.applyEdit(edit), true);
    };
    const broken = '\nlet broken = nowhere + 1cm\n';
    const end = document.positionAt(document.getText().length);
    await replace(new vscode.Range(end, end), broken);
    await until('the unknown name', () => problemsOf(document.uri).includes('unknown-name'));
    await replace(rangeOf(document, broken), '');
    await until('its end, and no other problem', () => problemsOf(document.uri).length === 0);
  });

  it('drafts from a file that is used and not open, and leads to it', async () => {
    const document = await show('princess-bodice.draft');
    const { start } = rangeOf(document, 'front {');
    const places = await until('an answer', () =>
      vscode.commands.executeCommand<vscode.Location[]>(
        'vscode.executeDefinitionProvider',
        document.uri,
        start,
      ),
    );
    same(
      places.map(({ uri }) => uri.path.split('/').pop()),
      ['bodice-block.draft'],
    );
    await until('a pattern without problems', () => problemsOf(document.uri).length === 0);
  });

  it('answers with values, and shows the page of a code', async () => {
    const document = await show('harbour-skirt.draft');
    const start = rangeOf(document, 'hip-ease').start;
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      start,
    );
    same(hovers.length > 0, true);
    const page = await vscode.workspace.openTextDocument(
      vscode.Uri.parse('draftwright-page:/mismatched-seam.md'),
    );
    same(page.getText().startsWith('# '), true);
  });

  it('begins a new pattern from a template, which is no file yet and has no problem', async () => {
    await vscode.commands.executeCommand('draftwright.newPattern', 'skirt');
    const { document } = vscode.window.activeTextEditor!;
    same([document.uri.scheme, document.languageId], ['untitled', 'draftwright']);
    const start = rangeOf(document, 'hip-ease').start;
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
      'vscode.executeHoverProvider',
      document.uri,
      start,
    );
    same(hovers.length > 0, true);
    same(problemsOf(document.uri), []);
  });
});

/** A folder that lies on no disk, in an editor with a machine behind it: the extension tells the server its files. */
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import {
  forget,
  hoverAt,
  pocket,
  problem,
  problemGone,
  rangeOf,
  replace,
  show,
  until,
  write,
} from './editor';

const SCHEME = 'attic';
const uriOf = (name: string) => vscode.Uri.parse(`${SCHEME}:/wardrobe/${name}`);

const BODIES = 'body porter {\n  waist 80cm\n  hip 100cm\n}\n';
const USING = 'pattern "Sash"\nuse "bodies/porter.draft"\ndrafted for porter\nlet half = waist / 2\n';

/** Files in the memory of this process, by their paths; a folder is whatever a path runs through. */
class Attic implements vscode.FileSystemProvider {
  private readonly files = new Map<string, Uint8Array>();
  private readonly changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  readonly onDidChangeFile = this.changed.event;

  watch(): vscode.Disposable {
    return { dispose: () => undefined };
  }

  stat({ path }: vscode.Uri): vscode.FileStat {
    const size = this.files.get(path)?.length;
    const isFolder = this.readDirectory(vscode.Uri.from({ scheme: SCHEME, path })).length > 0;
    if (size === undefined && !isFolder && path !== '/wardrobe') throw vscode.FileSystemError.FileNotFound();
    const type = size === undefined ? vscode.FileType.Directory : vscode.FileType.File;
    return { type, size: size ?? 0, ctime: 0, mtime: 0 };
  }

  readDirectory({ path }: vscode.Uri): [string, vscode.FileType][] {
    const below = [...this.files.keys()].filter((file) => file.startsWith(`${path}/`));
    const parts = below.map((file) => file.slice(path.length + 1).split('/'));
    const entries = parts.map(([name, ...rest]): [string, vscode.FileType] => [
      name!,
      rest.length > 0 ? vscode.FileType.Directory : vscode.FileType.File,
    ]);
    return [...new Map(entries)];
  }

  readFile({ path }: vscode.Uri): Uint8Array {
    const bytes = this.files.get(path);
    if (bytes === undefined) throw vscode.FileSystemError.FileNotFound();
    return bytes;
  }

  writeFile(uri: vscode.Uri, content: Uint8Array): void {
    const type = this.files.has(uri.path) ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created;
    this.files.set(uri.path, content);
    this.changed.fire([{ type, uri }]);
  }

  delete(uri: vscode.Uri): void {
    this.files.delete(uri.path);
    this.changed.fire([{ type: vscode.FileChangeType.Deleted, uri }]);
  }

  createDirectory(): void {}

  rename(): void {
    throw vscode.FileSystemError.NoPermissions();
  }
}

/** Waits until a name is told a value by hovering: the files of a folder are told a moment after it is added. */
async function told(document: vscode.TextDocument, name: string, value: RegExp): Promise<void> {
  for (let tries = 0; tries < 200 && !value.test(await hoverAt(document, name)); tries++)
    await new Promise((done) => setTimeout(done, 50));
  assert.match(await hoverAt(document, name), value);
}

const folders = () => vscode.workspace.workspaceFolders!;

describe('a folder that lies on no disk', () => {
  let provider: vscode.Disposable;

  before(async () => {
    provider = vscode.workspace.registerFileSystemProvider(SCHEME, new Attic());
    await write(uriOf('bodies/porter.draft'), BODIES);
    await write(uriOf('sash.draft'), USING);
    await write(uriOf('patch.draft'), pocket);
    const added = { uri: vscode.Uri.parse(`${SCHEME}:/wardrobe`), name: 'attic' };
    assert.ok(vscode.workspace.updateWorkspaceFolders(folders().length, 0, added));
    await until('the third folder', () => folders().length === 3);
  });

  after(async () => {
    await forget();
    vscode.workspace.updateWorkspaceFolders(2, 1);
    await until('two folders again', () => folders().length === 2);
    provider.dispose();
  });

  it('has files that use one another, as they are by now', async () => {
    const using = await show(uriOf('sash.draft'));
    await told(using, 'half =', /40cm/);
    await problemGone(using.uri, 'missing-file');
    await write(uriOf('bodies/porter.draft'), BODIES.replace('80cm', '90cm'));
    await told(using, 'half =', /45cm/);
  });

  it('has problems and repairs like any other', async () => {
    const document = await show(uriOf('patch.draft'));
    await replace(document, 'foot straight to foot-left', 'foot straight to foot-lift');
    const { range } = await problem(document.uri, 'unknown-name');
    assert.deepEqual(range, rangeOf(document, 'foot-lift'));
    await replace(document, 'foot-lift', 'foot-left');
    await problemGone(document.uri, 'unknown-name');
  });

  it('has a preview under the name of its file', async () => {
    await show(uriOf('patch.draft'));
    await vscode.commands.executeCommand('draftwright.openPreviewToSide');
    const labels = () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).map(({ label }) => label);
    await until('its preview', () => labels().includes('Preview: patch.draft'));
  });
});

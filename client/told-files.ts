/**
 * Tells the server the pattern files that it can't read by itself: all of them in a browser, and in an editor with a
 * machine behind it those of folders that lie elsewhere. They are read here and stay on this machine.
 */
import * as vscode from 'vscode';
import type { BaseLanguageClient, FileEvent } from 'vscode-languageclient';
import { methods } from './preview/protocol';

/** More folders than a wardrobe has: one opened by mistake is not walked whole. */
const MOST_FOLDERS = 500;

/** The pattern files below a folder, the nearest first; not every host can search, but all can list. */
async function patternsIn(top: vscode.Uri): Promise<readonly vscode.Uri[]> {
  const [found, folders] = [[] as vscode.Uri[], [top]];
  for (let i = 0; i < folders.length && i < MOST_FOLDERS; i++) {
    const folder = folders[i]!;
    const entries = await vscode.workspace.fs.readDirectory(folder).then(
      (all) => all,
      () => [],
    );
    for (const [name, type] of entries) {
      const uri = vscode.Uri.joinPath(folder, name);
      if (type === vscode.FileType.Directory) {
        if (!name.startsWith('.') && name !== 'node_modules') folders.push(uri);
      } else if (name.endsWith('.draft')) found.push(uri);
    }
  }
  return found;
}

interface ToldFile {
  readonly uri: string;
  readonly text: string | null;
}

/** Null for what is gone, or no text. */
async function read(uri: vscode.Uri): Promise<ToldFile> {
  try {
    const bytes = await vscode.workspace.fs.readFile(uri);
    return { uri: uri.toString(), text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { uri: uri.toString(), text: null };
  }
}

const isTold = (uri: vscode.Uri, readsDisk: boolean): boolean => !readsDisk || uri.scheme !== 'file';

let teller: BaseLanguageClient | undefined;

async function tell(uris: readonly vscode.Uri[]): Promise<void> {
  if (uris.length === 0) return;
  await teller?.sendNotification(methods.files, { files: await Promise.all(uris.map(read)) });
}

/** Tells the files of every folder of the workspace, now and when folders are added. */
export async function tellFiles(client: BaseLanguageClient, readsDisk: boolean): Promise<void> {
  teller = client;
  const all = async (): Promise<void> => {
    const folders = (vscode.workspace.workspaceFolders ?? []).filter(({ uri }) => isTold(uri, readsDisk));
    for (const { uri } of folders) await tell(await patternsIn(uri));
  };
  vscode.workspace.onDidChangeWorkspaceFolders(() => void all());
  await all();
}

/** Files that changed are told before the news that they did. */
export const filesFirst =
  (readsDisk: boolean) =>
  async (event: FileEvent, next: (event: FileEvent) => Promise<void>): Promise<void> => {
    const uri = vscode.Uri.parse(event.uri);
    if (isTold(uri, readsDisk)) await tell([uri]);
    await next(event);
  };

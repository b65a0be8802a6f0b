/** Asks what a draft is to be compared with: its last commit, a branch, an earlier commit, a saved file, another body. */
import * as vscode from 'vscode';
import { methods, type Against, type Versions } from '../preview/protocol';
import type { LanguageClientLike } from '../preview/host';

interface Row extends vscode.QuickPickItem {
  readonly against?: Against;
  readonly more?: 'file' | 'body' | 'revision';
}

const bodyWords = ({ name, size }: { readonly name: string; readonly size?: string }): string =>
  size === undefined ? name : `${name} ${size}`;

/** Answers undefined where the person turned away. */
export async function askAgainst(client: LanguageClientLike, uri: vscode.Uri): Promise<Against | undefined> {
  const nothing: Versions = { branches: [], commits: [], bodies: [] };
  const versions = await client
    .sendRequest<Versions | null>(methods.versions, { uri: uri.toString() })
    .then((answer) => answer ?? nothing)
    .catch(() => nothing);
  const row = await vscode.window.showQuickPick(rowsOf(versions), {
    title: vscode.l10n.t('Compare {0} with', uri.path.split('/').pop() ?? ''),
    placeHolder: vscode.l10n.t('an earlier state, a saved file, or another body'),
    matchOnDescription: true,
  });
  if (row?.against !== undefined) return row.against;
  switch (row?.more) {
    case 'file':
      return askFile(uri);
    case 'body':
      return askBody(versions);
    case 'revision':
      return askRevision();
    default:
      return undefined;
  }
}

function rowsOf({ branches, commits, bodies }: Versions): Row[] {
  const revision = (name: string, label: string, description: string): Row => ({
    ...{ label, description, against: { kind: 'revision', name } },
  });
  const separator = (label: string): Row => ({ label, kind: vscode.QuickPickItemKind.Separator });
  const inGit = branches.length + commits.length > 0;
  return [
    ...(inGit ? [revision('HEAD', vscode.l10n.t('Last commit'), 'HEAD')] : []),
    { label: vscode.l10n.t('Saved file …'), more: 'file' },
    ...(bodies.length > 1 ? [{ label: vscode.l10n.t('Another body or size …'), more: 'body' } as const] : []),
    ...(inGit ? [{ label: vscode.l10n.t('Another revision …'), more: 'revision' } as const] : []),
    ...(branches.length > 0 ? [separator(vscode.l10n.t('branches and tags'))] : []),
    ...branches.map((name) => revision(name, name, '')),
    ...(commits.length > 0 ? [separator(vscode.l10n.t('commits of this file'))] : []),
    ...commits.map(({ name, subject }) => revision(name, subject, name)),
  ];
}

async function askFile(uri: vscode.Uri): Promise<Against | undefined> {
  const files = await vscode.workspace.findFiles('**/*.draft', '**/node_modules/**');
  const others = files.filter((file) => file.toString() !== uri.toString());
  const rows = others.map((file) => ({ label: vscode.workspace.asRelativePath(file), file }));
  const row = await vscode.window.showQuickPick(
    rows.sort((a, b) => (a.label < b.label ? -1 : 1)),
    { title: vscode.l10n.t('Compare with the file') },
  );
  return row && { kind: 'file', uri: row.file.toString() };
}

async function askBody({ bodies }: Versions): Promise<Against | undefined> {
  const row = await vscode.window.showQuickPick(
    bodies.map((body) => ({ label: bodyWords(body), body })),
    { title: vscode.l10n.t('Compare with the same pattern for') },
  );
  return row && { kind: 'body', ...row.body };
}

async function askRevision(): Promise<Against | undefined> {
  const name = await vscode.window.showInputBox({
    title: vscode.l10n.t('Compare with the revision'),
    prompt: vscode.l10n.t('for example main~3'),
  });
  return name === undefined || name.trim() === '' ? undefined : { kind: 'revision', name: name.trim() };
}

/** Begins a new pattern from a template: an untitled text, which is nobody's file until it is saved. */
import * as vscode from 'vscode';

interface Template extends vscode.QuickPickItem {
  /** Of its file among the templates. */
  readonly name: string;
}

/** Asked for each time, so that they are said in the language of the editor. */
const templates = (): readonly Template[] => [
  {
    name: 'blank',
    label: vscode.l10n.t('Blank'),
    description: vscode.l10n.t('A body and a draft with one point'),
  },
  {
    name: 'skirt',
    label: vscode.l10n.t('Skirt'),
    description: vscode.l10n.t('Straight, with darts, a waistband and a zip; no problem in it'),
  },
  {
    name: 'bodice-block',
    label: vscode.l10n.t('Bodice block'),
    description: vscode.l10n.t('Close-fitting, with a bust dart, to work other garments from'),
  },
];

export function activateNewPattern({ extensionUri }: vscode.ExtensionContext): vscode.Disposable {
  // what the menu of new files hands over is no name of a template
  return vscode.commands.registerCommand('draftwright.newPattern', async (asked?: unknown) => {
    const all = templates();
    const placeHolder = vscode.l10n.t('What shall the pattern begin with?');
    const picked =
      all.find(({ name }) => name === asked) ?? (await vscode.window.showQuickPick(all, { placeHolder }));
    if (picked === undefined) return;
    const file = vscode.Uri.joinPath(extensionUri, 'client', 'templates', `${picked.name}.draft`);
    const content = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
    const document = await vscode.workspace.openTextDocument({ language: 'draftwright', content });
    await vscode.window.showTextDocument(document);
  });
}

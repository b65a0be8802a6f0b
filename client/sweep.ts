/** Checks the pattern for every size and both ends of every choice, and leads to what is found. */
import * as vscode from 'vscode';
import { WorkDoneProgress, type BaseLanguageClient } from 'vscode-languageclient';
import { SWEEP, type Swept } from './preview/protocol';

type Finding = Swept['findings'][number];

/** Marks of the sweeps that this window asked for. */
let sweeps = 0;

export function activateSweep(
  _context: vscode.ExtensionContext,
  client: BaseLanguageClient,
): vscode.Disposable {
  return vscode.commands.registerCommand('draftwright.checkEverySize', async () => {
    const uri = vscode.window.activeTextEditor?.document.uri;
    if (uri === undefined) return;
    const swept = await withProgress(client, client.code2ProtocolConverter.asUri(uri));
    if (swept !== undefined) await show(client, swept);
  });
}

/** Undefined where the person gave it up, or went on with the text meanwhile: the latter is said. */
async function withProgress(client: BaseLanguageClient, uri: string): Promise<Swept | undefined> {
  const workDoneToken = `sweep-${++sweeps}`;
  const title = 'Draftwright';
  const options = { location: vscode.ProgressLocation.Notification, title, cancellable: true };
  return vscode.window.withProgress(options, async (progress, token) => {
    let share = 0;
    const listening = client.onProgress(WorkDoneProgress.type, workDoneToken, (told) => {
      if (told.kind !== 'report') return;
      progress.report({
        increment: (told.percentage ?? 0) - share,
        message: vscode.l10n.t('checking {0}', told.message ?? ''),
      });
      share = told.percentage ?? share;
    });
    try {
      const params = { command: SWEEP, arguments: [uri], workDoneToken };
      const answer = await client.sendRequest<Swept | null>('workspace/executeCommand', params, token);
      return answer ?? undefined;
    } catch (fault) {
      if (!token.isCancellationRequested) void vscode.window.showWarningMessage((fault as Error).message);
      return undefined;
    } finally {
      listening.dispose();
    }
  });
}

async function show(client: BaseLanguageClient, { variants, findings }: Swept): Promise<void> {
  const tried =
    variants === 1
      ? vscode.l10n.t('as it stands')
      : vscode.l10n.t('for {0} sizes and ends of choices', variants);
  if (findings.length === 0) {
    void vscode.window.showInformationMessage(vscode.l10n.t('Checked {0}: no problems.', tried));
    return;
  }
  const items = findings.map((found) => ({ label: found.message, description: found.severity, found }));
  const placeHolder = vscode.l10n.t('Checked {0}: {1} found. Pick one to go to it.', tried, findings.length);
  const picked = await vscode.window.showQuickPick(items, { placeHolder, matchOnDescription: true });
  if (picked !== undefined) await goTo(client, picked.found);
}

async function goTo(client: BaseLanguageClient, { uri, range }: Finding): Promise<void> {
  const place = client.protocol2CodeConverter.asUri(uri);
  const { start, end } = range;
  const selection = new vscode.Range(start.line, start.character, end.line, end.character);
  await vscode.window.showTextDocument(place, { selection });
}

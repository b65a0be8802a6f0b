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
        message: `checking ${told.message ?? ''}`,
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
  const tried = variants === 1 ? 'as it stands' : `for ${variants} sizes and ends of choices`;
  if (findings.length === 0) {
    void vscode.window.showInformationMessage(`Checked ${tried}: no problems.`);
    return;
  }
  const items = findings.map((found) => ({ label: found.message, description: found.severity, found }));
  const placeHolder = `Checked ${tried}: ${findings.length} found. Pick one to go to it.`;
  const picked = await vscode.window.showQuickPick(items, { placeHolder, matchOnDescription: true });
  if (picked !== undefined) await goTo(client, picked.found);
}

async function goTo(client: BaseLanguageClient, { uri, range }: Finding): Promise<void> {
  const place = client.protocol2CodeConverter.asUri(uri);
  const { start, end } = range;
  const selection = new vscode.Range(start.line, start.character, end.line, end.character);
  await vscode.window.showTextDocument(place, { selection });
}

/** What happens when the language server dies: it is started anew with everything that is open, and the person is told. */
import * as vscode from 'vscode';
import { CloseAction, type BaseLanguageClient, type ErrorHandler } from 'vscode-languageclient';

/** As often as the client itself would have it; the words are ours. */
export function recovery(client: () => BaseLanguageClient): ErrorHandler {
  let usual: ErrorHandler | undefined;
  const handler = (): ErrorHandler => (usual ??= client().createDefaultErrorHandler());
  return {
    error: (...fault) => handler().error(...fault),
    async closed() {
      const found = await handler().closed();
      const again = found.action === CloseAction.Restart;
      void (again
        ? vscode.window.showWarningMessage(
            vscode.l10n.t(
              'Draftwright’s checks stopped and were started again. Your texts are as they were, and are checked anew.',
            ),
          )
        : vscode.window.showErrorMessage(
            vscode.l10n.t(
              'Draftwright’s checks stopped again and again and stay off now. Your texts are as they were: save them, then run “Developer: Reload Window”. The Output panel says under “Draftwright” what broke.',
            ),
          ));
      return { action: found.action, handled: true };
    },
  };
}

/** `draftwright lsp`: the language server on standard streams, for editors that start a program. */
import { createConnection } from 'vscode-languageserver/node';
import { diskBehind } from '../lsp/disk';
import { dropCancelled, serve } from '../lsp/server';

/** Serves until the client leaves; the connection ends the process then. */
export function runLsp(cwd: string): void {
  serve(
    createConnection(process.stdin, process.stdout, { connectionStrategy: dropCancelled }),
    diskBehind(cwd),
  );
}

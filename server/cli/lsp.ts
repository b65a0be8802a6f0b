/** `draftwright lsp`: the language server on standard streams, for editors that start a program. */
import { serveStreams } from '../lsp/streams';

/** Serves until the client leaves; the connection ends the process then. */
export const runLsp = (workingFolder: string): void =>
  serveStreams(process.stdin, process.stdout, workingFolder);

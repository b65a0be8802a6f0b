/** `draftwright lsp`: the language server on standard streams, for editors that start a program. */

/** Serves until the client leaves; the connection ends the process then. The server is a program of its own (client/build.mjs). */
export const runLsp = (): void => void import('../lsp/node');

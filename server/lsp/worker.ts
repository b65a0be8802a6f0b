/** The server's door in a browser: a worker, which no disk lies behind. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { nothingBehind } from './files';
import { dropCancelled, serve } from './server';

declare const self: ConstructorParameters<typeof BrowserMessageReader>[0] &
  ConstructorParameters<typeof BrowserMessageWriter>[0];

const connection = createConnection(new BrowserMessageReader(self), new BrowserMessageWriter(self), {
  connectionStrategy: dropCancelled,
});
serve(connection, { behind: nothingBehind });

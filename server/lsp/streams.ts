/** The server's door for a program that brings its own streams, as the command line does. */
import { createConnection } from 'vscode-languageserver/node';
import { compareServices } from './comparing';
import { diskBehind } from './disk';
import { dropCancelled, serve } from './server';

/** Serves the client at the other end of two streams until it leaves. */
export function serveStreams(
  input: NodeJS.ReadableStream,
  output: NodeJS.WritableStream,
  workingFolder: string,
): void {
  serve(
    createConnection(input, output, { connectionStrategy: dropCancelled }),
    diskBehind(workingFolder),
    compareServices,
  );
}

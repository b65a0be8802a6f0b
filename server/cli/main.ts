/** The command line's door: hands the process to the commands and ends it as they say. */
import { EXPORTER } from '../drawing/exporting';
import { processIo } from './io';

/** A reader that has seen enough (`| head`) closes the pipe; that is no fault. */
process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  if (fault.code === 'EPIPE') process.exit(0);
  throw fault;
});

const [command, ...rest] = process.argv.slice(2);

/** Each way loads what it needs: a server that stays all day carries no fonts and no printers. */
if (command === 'lsp' && rest.every((word) => word === '--stdio'))
  void import('./lsp').then(({ runLsp }) => runLsp());
else
  void import('./programs').then(async ({ run, serveEditor }) => {
    if (command === EXPORTER && process.send !== undefined) return serveEditor(process);
    const exit = await run(process.argv.slice(2), processIo());
    if (exit !== undefined) process.exitCode = exit;
  });

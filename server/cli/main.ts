/** The command line's door: hands the process to the commands and ends it as they say. */
import { EXPORTER } from '../drawing/exporting';
import { run } from './commands';
import { serveEditor } from './for-editors';
import { processIo } from './io';

/** A reader that has seen enough (`| head`) closes the pipe; that is no fault. */
process.stdout.on('error', (fault: NodeJS.ErrnoException) => {
  if (fault.code === 'EPIPE') process.exit(0);
  throw fault;
});

if (process.argv[2] === EXPORTER && process.send !== undefined) serveEditor(process);
else
  void run(process.argv.slice(2), processIo()).then((exit) => {
    if (exit !== undefined) process.exitCode = exit;
  });

/** The server's door on a machine with Node: standard streams or the parent's channel, as the command line says. */
import { createConnection } from 'vscode-languageserver/node';
import { compareServices } from './comparing';
import { diskBehind } from './disk';
import { dropCancelled, serve } from './server';

serve(createConnection({ connectionStrategy: dropCancelled }), diskBehind(process.cwd()), compareServices);

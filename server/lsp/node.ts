/** The server's door on a machine with Node: the channel that the command line names, else standard streams. */
import { createConnection } from 'vscode-languageserver/node';
import { machine } from './machine';
import { dropCancelled, serve } from './server';

const how = { connectionStrategy: dropCancelled };
const { argv, stdin, stdout } = process;
const channel = argv.some((word) => /^--(stdio|node-ipc|socket|pipe)\b/.test(word));

serve(channel ? createConnection(how) : createConnection(stdin, stdout, how), machine(process.cwd()));

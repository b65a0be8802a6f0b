/** What the command line's door hands the process to, apart from the language server: a bundle of its own. */
export { run } from './commands';
export { serveEditor } from './for-editors';

/** Runs the same suites in a desktop editor, where a network may fetch one: `npm run build`, then `npm run desktop`. */
import { defineConfig } from '@vscode/test-cli';
import { compileSuites, makeTwoFolders } from './tests/editor/compile.mjs';

await compileSuites();

export default defineConfig({
  files: 'out/suites/*.test.js',
  version: 'stable',
  workspaceFolder: makeTwoFolders('out').file,
  mocha: { ui: 'bdd', timeout: 30_000 },
});

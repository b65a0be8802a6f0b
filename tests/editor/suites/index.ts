/**
 * Runs the compiled suites beside it inside an extension host. It is the one door for every way to start an editor,
 * and knows none of them: to add a suite, add a file `NAME.test.ts` in this folder that uses mocha and `vscode`.
 * The workspace has two folders that a suite may change: a copy of samples/, and an empty annex.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import Mocha from 'mocha';
import Brief from '../../reporter.cjs';

/** Resolves when every test passed, rejects with the number that failed. */
export function run(): Promise<void> {
  const mocha = new Mocha({
    ui: 'bdd',
    timeout: 30_000,
    reporter: Brief as unknown as Mocha.ReporterConstructor,
  });
  const files = readdirSync(__dirname).filter((name) => name.endsWith('.test.js'));
  files.sort().forEach((name) => mocha.addFile(join(__dirname, name)));
  return new Promise((resolve, reject) => {
    mocha.run((failures) => (failures === 0 ? resolve() : reject(new Error(`${failures} tests failed`))));
  });
}

/** Runs the tests of the browser-only host inside its worker, where there is neither a disk nor Node. */
import 'mocha/mocha';
import { counted } from './report';

export function run(): Promise<void> {
  mocha.setup({ ui: 'bdd', timeout: 30_000, reporter: counted as unknown as Mocha.ReporterConstructor });
  return load().then(
    () =>
      new Promise((resolve, reject) => {
        mocha.run((failures) => (failures === 0 ? resolve() : reject(new Error(`${failures} tests failed`))));
      }),
  );
}

/** After the setup, which gives the tests their words. */
const load = () => import('./host.test');

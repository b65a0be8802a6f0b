/** A pattern that is edited for long: nothing of the texts it had is held on to. */
import assert from 'node:assert/strict';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { Workshop } from '../../server/drafting/workshop';
import { keystrokes } from '../bench/edits';
import { longDraft } from '../bench/generate';
import { doorTo, MAIN } from '../support/drafts';

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

function held(): number {
  for (let i = 0; i < 3; i++) collect();
  return process.memoryUsage().heapUsed;
}

describe('memory', () => {
  it('does not grow with the edits of one long draft', () => {
    const text = longDraft(400, 1893);
    const workshop = new Workshop(doorTo(text));
    const work = (count: number, seed: number): void => {
      for (const key of keystrokes(text, count, seed)) {
        workshop.edit(MAIN, [key]);
        workshop.pattern(MAIN);
      }
    };
    work(60, 3);
    const before = held();
    work(150, 5);
    // what holds on to a text adds all of it, edit after edit: ninety texts it was; the engine itself adds some
    const grown = (held() - before) / text.length;
    assert.ok(grown < 40, `${grown.toFixed(1)} texts are held on to after 150 edits`);
  }).timeout(30000);
});

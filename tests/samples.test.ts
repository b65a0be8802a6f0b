/** Every sample is clean; every planted fault is found exactly where the file says, in the words the file says. */
import assert from 'node:assert/strict';
import { format } from '../grammar';
import { catalogue } from '../server/checks/index';
import type { PlacedFix } from '../server/drafting/model';
import { annotated, withoutAnnotations } from './support/annotations';
import { company, drafts, findingsAllRound, findingsIn, sampleText, textOf, uriOf } from './support/faults';
import { madeHere } from './support/pages';

/** Bodies for whom a shift is cut. */
const womens: ReadonlySet<string> = new Set(['ferrywoman', 'widow', 'understudy', 'chorus']);

/** What no planted fault shows: parts of the language to come, what the sweep alone finds, and faults of ours. */
const unplanted: ReadonlySet<string> = new Set(['not-built-yet', ...madeHere]);

function mended(text: string, uri: string, fix: PlacedFix): string {
  const edits = fix.edits
    .filter(({ place }) => place.uri === uri)
    .sort((a, b) => b.place.from - a.place.from);
  return edits.reduce(
    (before, { place, text: put }) => before.slice(0, place.from) + put + before.slice(place.to),
    text,
  );
}

describe('the samples', () => {
  for (const path of [...drafts('.'), ...drafts('bodies')]) {
    it(`find no fault in ${path}`, () => {
      const found = findingsIn(path);
      assert.deepEqual(
        found.map(({ severity, code, message }) => `${severity} ${code}: ${message}`),
        [],
      );
    });
  }

  it('are in the canonical layout', () => {
    for (const path of [...drafts('.'), ...drafts('bodies')]) {
      assert.equal(format(sampleText(path)), sampleText(path), path);
    }
  });

  for (const path of ['circle-skirt', 'lantern-tabard', 'neckerchief', 'shift', 'straight-skirt-block']) {
    it(`can be made for the whole company, and at both ends of every choice: ${path}`, () => {
      const bodies = company.filter(({ name }) => path !== 'shift' || womens.has(name));
      assert.deepEqual(findingsAllRound(`${path}.draft`, bodies), []);
    });
  }

  it('can be made at both ends of every choice: chalk-bag', () => {
    assert.deepEqual(findingsAllRound('chalk-bag.draft', []), []);
  });
});

describe('the planted faults', () => {
  for (const path of drafts('faults')) {
    const text = sampleText(path);

    it(`are found in ${path} as its comments say, and nothing else`, () => {
      assert.equal(annotated(text, findingsIn(path), textOf), text);
    });

    it(`of ${path} go away when a repair is taken`, () => {
      for (const finding of findingsIn(path)) {
        for (const fix of finding.fixes) {
          const left = findingsIn(path, mended(text, uriOf(path), fix)).filter(
            ({ code }) => code === finding.code,
          );
          const before = findingsIn(path).filter(({ code }) => code === finding.code);
          assert.ok(left.length < before.length, fix.title);
        }
      }
    });
  }

  it('each come back word for word when the comments are taken off and written again', () => {
    for (const path of drafts('faults')) {
      const text = sampleText(path);
      const bare = withoutAnnotations(text);
      const now = (uri: string): string => (uri === uriOf(path) ? bare : textOf(uri));
      assert.equal(annotated(bare, findingsIn(path, bare), now), text);
    }
  });

  it('hold every code of the catalogue that drafting and checking can raise', () => {
    const planted = new Set(drafts('faults').flatMap((path) => findingsIn(path).map(({ code }) => code)));
    const raised = catalogue.filter(({ by, code }) => by !== 'syntax' && !unplanted.has(code));
    assert.deepEqual(
      raised.map(({ code }) => code).filter((code) => !planted.has(code)),
      [],
    );
  });

  it('are in the canonical layout but for their comments, whose carets need the margin', () => {
    for (const path of drafts('faults')) {
      const bare = withoutAnnotations(sampleText(path));
      assert.equal(format(bare), bare, path);
    }
  });

  it('each have something to be found', () => {
    for (const path of drafts('faults')) assert.notEqual(findingsIn(path).length, 0, path);
  });
});

/** Every sample is clean; every planted fault is found exactly where the file says, in the words the file says. */
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { check } from '../server/checks/index';
import type { Pattern, PlacedFinding, PlacedFix } from '../server/drafting/model';
import { Workshop } from '../server/drafting/workshop';
import { annotated, withoutAnnotations } from './support/annotations';
import { diskDoor } from './support/door';

const samples = join(process.cwd(), 'samples');
const door = diskDoor(samples);
const uriOf = (path: string): string => pathToFileURL(join(samples, path)).href;
const drafts = (folder: string): string[] =>
  readdirSync(join(samples, folder))
    .filter((name) => name.endsWith('.draft'))
    .map((name) => join(folder, name));

function patternOf(path: string, text?: string): Pattern {
  const workshop = new Workshop(door);
  if (text !== undefined) workshop.setText(uriOf(path), text);
  return workshop.pattern(uriOf(path));
}

const findingsIn = (path: string, text?: string): readonly PlacedFinding[] =>
  check(patternOf(path, text)).filter(({ place }) => place.uri === uriOf(path));

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
      const found = findingsIn(path).map(({ severity, code, message }) => `${severity} ${code}: ${message}`);
      assert.deepEqual(found, []);
    });
  }
});

describe('the planted faults', () => {
  for (const path of drafts('faults')) {
    const text = readFileSync(join(samples, path), 'utf8');

    it(`are found in ${path} as its comments say, and nothing else`, () => {
      const found = annotated(text, findingsIn(path), (uri) => door.read(uri) ?? '');
      assert.equal(found, text);
    });

    it(`of ${path} go away when a repair is taken`, () => {
      for (const finding of findingsIn(path)) {
        for (const fix of finding.fixes) {
          const after = findingsIn(path, mended(text, uriOf(path), fix));
          const again = after.filter(
            ({ code, message }) => code === finding.code && message === finding.message,
          );
          assert.deepEqual(again, [], fix.title);
        }
      }
    });
  }

  it('each come back word for word when the comments are taken off and written again', () => {
    for (const path of drafts('faults')) {
      const text = readFileSync(join(samples, path), 'utf8');
      const bare = withoutAnnotations(text);
      assert.equal(
        annotated(bare, findingsIn(path, bare), (uri) => door.read(uri) ?? ''),
        text,
      );
    }
  });
});

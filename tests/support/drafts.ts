/**
 * Patterns as tests write them, text in and text out: figures stand as `#=` readings beside the lines they belong to,
 * findings as annotations under them; what is not written must not be found.
 */
import assert from 'node:assert/strict';
import { check } from '../../server/checks/index';
import type { Door, Pattern, PlacedFinding } from '../../server/drafting/model';
import { Workshop, type Choice } from '../../server/drafting/workshop';
import { annotated, withoutAnnotations } from './annotations';
import { missed, readingsOf } from './readings';

/** Other files of the same folder, by name. */
export type Beside = Readonly<Record<string, string>>;

const FOLDER = 'file:///wardrobe/';
export const MAIN = `${FOLDER}pattern.draft`;

export function doorTo(text: string, beside: Beside = {}): Door {
  const files = new Map(
    Object.entries({ ...beside, 'pattern.draft': text }).map(([name, inside]) => [FOLDER + name, inside]),
  );
  return {
    read: (uri) => files.get(uri),
    resolve: (from, path) => (path.startsWith('../') ? { outside: true } : { uri: new URL(path, from).href }),
  };
}

/** The pattern of a text, drafted for a body and choices. */
export const patternIn = (text: string, beside: Beside = {}, choice: Choice = {}): Pattern =>
  new Workshop(doorTo(text, beside)).pattern(MAIN, choice);

/** The text without its annotations, with those of what is found now. */
export function markedDraft(text: string, beside: Beside = {}, choice: Choice = {}): string {
  const bare = withoutAnnotations(text);
  const door = doorTo(bare, beside);
  const findings = check(patternIn(bare, beside, choice)).filter(({ place }) => place.uri === MAIN);
  return annotated(bare, findings, (uri) => door.read(uri) ?? '');
}

/** Every figure comes out as written, and what is found is what is annotated. */
export function checkDraft(text: string, beside: Beside = {}, choice: Choice = {}): void {
  assert.equal(markedDraft(text, beside, choice), text);
  assert.deepEqual(
    missed(patternIn(withoutAnnotations(text), beside, choice), readingsOf(withoutAnnotations(text))),
    [],
  );
}

/** `code: message` of all that is found. */
export const saidOf = (text: string, beside: Beside = {}, choice: Choice = {}): readonly string[] =>
  check(patternIn(text, beside, choice)).map(({ code, message }: PlacedFinding) => `${code}: ${message}`);

/** What is found is these sentences, in this order. */
export function checkSaid(
  text: string,
  said: readonly string[],
  beside: Beside = {},
  choice: Choice = {},
): void {
  assert.deepEqual(saidOf(text, beside, choice), said);
}

/** The pieces that are cut for a choice, by name. */
export function checkPieces(text: string, names: readonly string[], choice: Choice = {}): void {
  assert.deepEqual(
    patternIn(text, {}, choice).pieces.map(({ name }) => name),
    names,
  );
}

/** `name = value` settings as the command line takes them. */
export const set = (settings: Readonly<Record<string, string>>): Choice => ({
  set: new Map(Object.entries(settings)),
});

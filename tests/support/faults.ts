/** The planted faults: where they lie, and what is found in each. */
import { readFileSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { check } from '../../server/checks/index';
import type { BodyChoice, Pattern, PlacedFinding } from '../../server/drafting/model';
import { Workshop } from '../../server/drafting/workshop';
import { diskDoor } from './door';

export const samples = join(process.cwd(), 'samples');
const door = diskDoor(samples);

export const uriOf = (path: string): string => pathToFileURL(join(samples, path)).href;
export const textOf = (uri: string): string => door.read(uri) ?? '';
export const sampleText = (path: string): string => readFileSync(join(samples, path), 'utf8');

/** Paths of the patterns of a folder of the samples, in order. */
export const drafts = (folder: string): string[] =>
  readdirSync(join(samples, folder))
    .filter((name) => name.endsWith('.draft'))
    .sort()
    .map((name) => join(folder, name));

/** The pattern of a sample; `text` may stand in its place, or in that of the sample `instead`. */
export function patternOf(path: string, text?: string, instead = path): Pattern {
  const workshop = new Workshop(door);
  if (text !== undefined) workshop.setText(uriOf(instead), text);
  return workshop.pattern(uriOf(path));
}

/** Files beside a sample that it uses by name, and that may use it in turn. */
const beside = (path: string): string[] =>
  [...sampleText(path).matchAll(/^use "([^/"]+)"/gm)].map(([, name = '']) => join(dirname(path), name));

/**
 * What is found in the lines of a sample, by itself or by a file beside it that uses it back: a circle of files is
 * reported where it closes, which lies in the other file.
 */
export function findingsIn(path: string, text?: string): readonly PlacedFinding[] {
  const uri = uriOf(path);
  const all = [path, ...beside(path)].flatMap((from) => check(patternOf(from, text, path)));
  const here = all.filter(({ place }) => place.uri === uri);
  const keyOf = ({ code, place }: PlacedFinding): string => `${code} ${place.from} ${place.to}`;
  return [...new Map(here.map((finding) => [keyOf(finding), finding])).values()];
}

/** Every body and size of the company. */
export const company: readonly BodyChoice[] = [
  ...['ferrywoman', 'bailiff', 'widow', 'pilot', 'lantern-child', 'understudy'].map((name) => ({ name })),
  ...['chorus', 'deckhand'].flatMap((name) => ['S', 'M', 'L', 'XL', 'XXL'].map((size) => ({ name, size }))),
];

/** Both ends of every choice of a sample, one at a time. */
const ends = (path: string): ReadonlyMap<string, string>[] =>
  [...sampleText(path).matchAll(/^choose (\S+) = .+ in (.+) \.\. (.+)$/gm)].flatMap(
    ([, name = '', low = '', high = '']) => [new Map([[name, low]]), new Map([[name, high]])],
  );

/** What is found in a sample for all those bodies, and for its own at both ends of every choice, in words. */
export function findingsAllRound(path: string, bodies: readonly BodyChoice[]): string[] {
  const workshop = new Workshop(door);
  const choices = [...bodies.map((body) => ({ for: body })), ...ends(path).map((set) => ({ set }))];
  return choices.flatMap((choice) => {
    const pattern = workshop.pattern(uriOf(path), choice);
    const words =
      'for' in choice ? Object.values(choice.for).join(' ') : [...choice.set].join(' ').replace(',', ' = ');
    return [...pattern.refused, ...check(pattern).map(({ message }) => message)].map(
      (said) => `${words}: ${said}`,
    );
  });
}

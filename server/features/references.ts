/** Everywhere that a thing is named, over the files that can speak of it. */
import type { FileRange } from '../drafting/model';
import type { Meaning } from './meaning';
import type { Names } from './names';
import { occurrenceAt, occurrencesOf, type Occurrence } from './occurrences';

export interface Reference extends FileRange {
  readonly defines: boolean;
}

/** What the name at an offset stands for; undefined where none of ours stands. */
export const meaningAt = (names: Names, offset: number): Meaning | undefined =>
  occurrenceAt(names, offset)?.meaning;

/**
 * The files that may name a thing: those that use its file, themselves or through others. A measurement belongs to all
 * of them.
 *
 * @param tied the files that `use` lines tie together with the one in which the thing was named
 */
export const speakingOf = ({ uri }: Meaning, tied: readonly Names[]): readonly Names[] =>
  uri === '' ? tied : tied.filter((names) => names.uris().includes(uri));

/** Every place where the thing is named, in the files tied together, in their order. */
export function references(meaning: Meaning, tied: readonly Names[]): readonly Reference[] {
  return speakingOf(meaning, tied).flatMap((names) =>
    occurrencesOf(names, meaning).map(({ from, to, defines }) => ({ uri: names.uri, from, to, defines })),
  );
}

/** The places in one file that name what the name at an offset names, for seeing them at a glance. */
export function highlights(names: Names, offset: number): readonly Occurrence[] {
  const meaning = meaningAt(names, offset);
  return meaning === undefined ? [] : occurrencesOf(names, meaning);
}

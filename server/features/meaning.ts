/** A thing that has a name, as one key that is the same wherever it is named. */
import type { Declaration } from '../drafting/names/declarations';
import type { FileNames } from '../drafting/names/files';

export type MeaningKind =
  | 'value'
  | 'shape'
  | 'draft'
  | 'piece'
  | 'part'
  | 'seam'
  | 'finish'
  | 'notch'
  | 'body'
  | 'measurement'
  | 'alias'
  | 'word';

/** A thing that has a name. */
export interface Meaning {
  /** The address of its file and its path there; the same from every file that names it. */
  readonly key: string;
  readonly kind: MeaningKind;
  readonly name: string;
  /** The file that defines it; '' for a measurement, which any file may speak of. */
  readonly uri: string;
}

export const measurementKey = (name: string): string => `measurement:${name}`;

export const measurementMeaning = (name: string): Meaning => ({
  key: measurementKey(name),
  kind: 'measurement',
  name,
  uri: '',
});

/** What a declaration gives a name to; a piece and a draft are one sort of thing, told apart for the words alone. */
export function declaredMeaning(file: FileNames, { id, space, name, statement }: Declaration): Meaning {
  if (space === 'measure') return measurementMeaning(name);
  const kind = space === 'block' ? (statement.node.kind === 'draft' ? 'draft' : 'piece') : space;
  return { key: `${file.uri}#${id}`, kind: kind as MeaningKind, name, uri: file.uri };
}

export function aliasMeaning(file: FileNames, name: string): Meaning | undefined {
  const known = file.uses.some(({ alias }) => alias === name);
  return known ? { key: `${file.uri}#as:${name}`, kind: 'alias', name, uri: file.uri } : undefined;
}

/** What is known of a thing that a name stands for, where no definition round the name tells of it. */
import type { DefinitionInfo, Pattern } from '../drafting/model';
import type { Meaning } from './meaning';
import type { Names } from './names';

export function infoOfMeaning(pattern: Pattern, names: Names, meaning: Meaning): DefinitionInfo | undefined {
  const { kind, name, key, uri } = meaning;
  if (kind === 'measurement') return measurement(pattern, names, name);
  const file = names.files.files().find((one) => one.uri === uri);
  if (file === undefined) return undefined;
  const id = key.slice(uri.length + 1);
  // a word is one of what its choice offers; a part is known by its piece
  const source = kind === 'word' ? id.slice(0, id.indexOf('~')) : id.replace('//', '/');
  return pattern.info(file.key + source);
}

/** One of the pattern's own says itself how it is taken. */
function measurement(pattern: Pattern, { files }: Names, name: string): DefinitionInfo | undefined {
  const info = pattern.info(`measurement:${name}`);
  if (info === undefined || info.doc !== '') return info;
  for (const file of files.files()) {
    const node = file.get(`measure:${name}`)?.statement.node;
    if (node?.kind === 'measure') return { ...info, doc: node.how.text };
  }
  return info;
}

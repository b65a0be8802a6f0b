/** Where a thing is defined, whatever file names it. */
import type { Meaning } from './meaning';
import type { Names } from './names';
import { occurrencesIn, occurrencesOf, type Occurrence } from './occurrences';

export interface Defined {
  readonly names: Names;
  readonly name: Occurrence;
}

/** The first place that defines a thing; `tied`: the names of the files that may do it. */
export function definedBy(meaning: Meaning, tied: readonly Names[]): Defined | undefined {
  for (const names of tied) {
    if (meaning.uri !== '' && names.uri !== meaning.uri) continue;
    const name = declared(names, meaning) ?? occurrencesOf(names, meaning).find(({ defines }) => defines);
    if (name !== undefined) return { names, name };
  }
  return undefined;
}

/** Where the names phase has it, or where the piece of a part does: most are found there without a walk through the file. */
function declared(names: Names, meaning: Meaning): Occurrence | undefined {
  const id = meaning.key.slice(meaning.uri.length + 1);
  const [owner] = id.split('//') as [string];
  const found = names.root.get(owner);
  if (found === undefined) return undefined;
  const { top, statement, nameAt } = found;
  const from = top.offset + statement.start + nameAt.from;
  if (owner === id) return { meaning, from, to: from + nameAt.to - nameAt.from, defines: true };
  const own = occurrencesIn(names, names.root, top, meaning.name);
  return own.find((one) => one.defines && one.meaning.key === meaning.key);
}

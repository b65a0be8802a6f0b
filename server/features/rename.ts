/** Gives a thing another name everywhere it is named, or says why that can't be. */
import { say } from '../../grammar/say';
import { tokensOf, type Statement } from '../../grammar';
import { GIVEN, isFunction, isReserved } from '../../grammar/words';
import type { FileRange } from '../drafting/model';
import { measurementNamed } from '../drafting/values/measurements';
import { clashWith } from './clashes';
import type { Meaning } from './meaning';
import type { Names } from './names';
import { occurrenceAt, occurrencesIn } from './occurrences';
import { readsTheSame } from './reading-again';
import { references, speakingOf } from './references';
import { wordAt } from './words';

export interface Refused {
  readonly refused: string;
}

export interface Renamable {
  readonly from: number;
  readonly to: number;
  readonly name: string;
}

export interface RenameEdit extends FileRange {
  readonly text: string;
}

/** The name at an offset that can be given another; why not, where it can't; undefined where no name stands. */
export function prepareRename(names: Names, text: string, offset: number): Renamable | Refused | undefined {
  const found = occurrenceAt(names, offset);
  if (found === undefined) {
    const word = wordAt(text, offset);
    return word && { refused: say`${word.text} is not a name that this pattern gives.` };
  }
  const { meaning, from, to } = found;
  const reason = fixedFor(meaning);
  return reason === undefined ? { from, to, name: meaning.name } : { refused: reason };
}

/** The edits that give the name at an offset another; `tied`: the files that `use` lines tie together with this one. */
export function rename(
  names: Names,
  text: string,
  offset: number,
  wanted: string,
  tied: readonly Names[],
): readonly RenameEdit[] | Refused | undefined {
  const ready = prepareRename(names, text, offset);
  const meaning = occurrenceAt(names, offset)?.meaning;
  if (ready === undefined || 'refused' in ready || meaning === undefined) return ready as Refused | undefined;
  const name = wanted.trim().normalize('NFC');
  if (name === meaning.name) return [];
  const speaking = speakingOf(meaning, tied);
  const reason = unfit(name) ?? clashWith(meaning, name, speaking) ?? unread(meaning, speaking);
  if (reason !== undefined) return { refused: reason };
  const edits = references(meaning, speaking).map(({ uri, from, to }) => ({
    uri,
    from,
    to,
    text: name,
  }));
  const broken = speaking.find((one) => !readsTheSame(one, edits));
  return broken === undefined ? edits : { refused: say`${name} means something else in one of these lines.` };
}

/** Names that are given by the language or the trade, not by a file. */
export const isFixed = ({ kind, name }: Meaning): boolean =>
  kind === 'measurement' && measurementNamed.has(name);

const fixedFor = (meaning: Meaning): string | undefined =>
  isFixed(meaning) ? say`${meaning.name} is a measurement that every pattern knows by this name.` : undefined;

/** Why a word can't be a name at all. */
function unfit(name: string): string | undefined {
  const [token, ...more] = tokensOf(name);
  if (name === '') return say`A name needs at least one letter.`;
  if (name.includes('_')) return say`Words of a name are joined by a hyphen: hip-line.`;
  if (isReserved(name)) return say`${name} is a word of the language and can't be a name.`;
  if (isFunction(name)) return say`${name} is a function and can't be a name.`;
  if ((GIVEN as readonly string[]).includes(name))
    return say`${name} means something already, in every pattern.`;
  const whole = more.length === 0 && token?.from === 0 && token.to === name.length;
  if (whole && (token.kind === 'name' || token.kind === 'word')) return undefined;
  return say`A name is made of letters and digits and begins with a letter; hyphens stand before letters: hip-line, b2.`;
}

/** A statement that can't be read may name it too, and would be left behind. */
export function unread({ name }: Meaning, speaking: readonly Names[]): string | undefined {
  const word = new RegExp(`(?<![\\p{L}\\p{Nd}-])${name}(?![\\p{L}\\p{Nd}]|-\\p{L})`, 'gu');
  for (const names of speaking) {
    for (const top of names.root.faulty()) {
      const written = [...words(top.statement)].flatMap((text) => [...text.matchAll(word)]).length;
      const known = written === 0 ? [] : occurrencesIn(names, names.root, top, name);
      if (written > known.filter(({ meaning }) => meaning.name === name).length)
        return say`A line that can't be read speaks of ${name} too: mend that line first.`;
    }
  }
  return undefined;
}

/** The texts of statements that something is wrong with, without comments and quoted words. */
function* words({ text, problems, node, block = [] }: Statement): Iterable<string> {
  if (problems.length > 0 || node.kind === 'broken') yield text.replace(/"[^"\n]*"|#.*/g, '');
  for (const inner of block) yield* words(inner);
}

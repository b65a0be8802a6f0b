/** Why a definition has no value, in words: circles of definitions. */
import { say } from '../../grammar/say';

/** @param unknowns where a circle leads through several `solve`s: their names */
export function circleWords(names: readonly string[], unknowns: readonly string[]): string {
  if (names.length === 1)
    return say`${names[0]!} needs itself, so it can't be computed. Define it by something else.`;
  if (unknowns.length > 0) {
    return say`${unknowns.slice(0, -1).join(', ')} and ${unknowns[unknowns.length - 1]!} can only be found through each other, and a circle holds one unknown. Take something measured or chosen into one of their equations instead.`;
  }
  return say`These need each other in a circle, so none can be computed: ${[...names, names[0]!].join(say` needs `)}. Give one of them a value of its own.`;
}

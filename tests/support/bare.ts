/** Words that stand in English where everything that is asked for is hushed, so that they were never asked for. */
import { FORMS } from '../../grammar/forms';
import { HEADS } from '../../grammar/words';
import { catalogue, ranges } from '../../server/checks';
import { measurements } from '../../server/drafting/values/measurements';

export const wordsIn = (text: string): readonly string[] => text.match(/[A-Za-z]{2,}/g) ?? [];

/** Words of the language, which every pattern shares: a message may tell how something is written. */
const language = new Set(
  [
    ...Object.values(FORMS).flatMap(({ form, example }) => [form, example]),
    ...Object.values(HEADS).flatMap((heads) => Object.keys(heads)),
    ...[...catalogue.map(({ code }) => code), ...ranges.map(({ name }) => name)],
    ...measurements.map(({ name }) => name),
    'raw edges easing within sin cos cm mm in deg',
  ].flatMap(wordsIn),
);

/** @param own the words of the author's texts */
export const bareWords = (text: string, own: ReadonlySet<string>): readonly string[] =>
  wordsIn(text).filter((word) => !own.has(word) && !language.has(word));

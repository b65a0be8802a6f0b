/** Says things in another language for as long as a test asks, and in English again afterwards. */
import { speak, type Words } from '../../grammar/say';
import { everythingSaid } from './said';
import { read } from './sources';
import { keptInTables } from './tables';

export const german: Words = JSON.parse(read('client/l10n/bundle.l10n.de.json'));

/** Every text in marks, so that whatever is shown without them was not asked for. */
export const marked = (): Words =>
  Object.fromEntries(everythingSaid().map(({ key }) => [key, `${OPEN}${key}${CLOSE}`]));

/** Dots for the letters of every text, so that whatever is left in letters was told or never asked for. */
export function hushed(): Words {
  if (dots !== undefined) return dots;
  const texts = [...everythingSaid().map(({ key }) => key), ...keptInTables()];
  return (dots = Object.fromEntries(texts.map((text) => [text, hush(text)])));
}
let dots: Words | undefined;

const hush = (text: string): string =>
  text
    .split(/(\{\d+\})/)
    .map((part) => (/^\{\d+\}$/.test(part) ? part : part.replace(/\p{L}/gu, '·')))
    .join('');

const [OPEN, CLOSE] = ['«', '»'];

export function inLanguage<T>(words: Words, work: () => T): T {
  speak(words);
  try {
    return work();
  } finally {
    speak(undefined);
  }
}

/** What a marked text holds beside what it was told: the words that no bundle was asked for. */
export function outsideMarks(text: string): string {
  let [depth, left] = [0, ''];
  for (const sign of text) {
    if (sign === OPEN) depth += 1;
    else if (sign === CLOSE) depth -= 1;
    else if (depth === 0) left += sign;
  }
  return left;
}

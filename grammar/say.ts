/** What is said to a person: written in English where it is said, shown in the person's language once that is known. */

/** Words of a language by the English text, `{0}` and so on for what is told: as editors keep them. */
export type Words = Readonly<Record<string, string>>;

/** One process speaks to one person, so the language is its own. */
let words: Words | undefined;

/** The texts of a place that says something, as they are looked up; a place is the same object each time it says it. */
const keys = new WeakMap<TemplateStringsArray, string>();

/** From now on everything is said in these words; without any, and where they lack a text, in English. */
export function speak(language: Words | undefined): void {
  words = language;
}

/** Whether English is spoken, which alone knows two dialects. */
export const isEnglish = (): boolean => words === undefined;

/** A text with what it tells, in the person's language. Never at the head of a file: nobody knows the language there. */
export function say(texts: TemplateStringsArray, ...told: readonly (string | number)[]): string {
  const found = words === undefined ? undefined : words[keyOf(texts)];
  if (found === undefined) return texts.reduce((said, text, i) => `${said}${told[i - 1]}${text}`);
  return found.replace(/\{(\d+)\}/g, (_, i: string) => String(told[Number(i)]));
}

function keyOf(texts: TemplateStringsArray): string {
  const known = keys.get(texts);
  if (known !== undefined) return known;
  const key = texts.reduce((whole, text, i) => `${whole}{${i - 1}}${text}`);
  keys.set(texts, key);
  return key;
}

/** The tag of what is spoken (BCP 47), for pages that name their language and for whole files in it. */
export const tongue = (): string => say`en`;

/** A text that is kept in a table, in English, for whoever shows it. */
export const inWords = (text: string): string =>
  words !== undefined && Object.hasOwn(words, text) ? words[text]! : text;

/** Whether a person reads German, the one language beside English. @param locale as editors have it: `de`, `de-AT` */
export const isGerman = (locale: string | undefined): boolean => /^de\b/i.test(locale ?? '');

/** The language in which a client's person is told everything: German where the client says so, else English. */
import german from '../../client/l10n/bundle.l10n.de.json';
import { isGerman, speak } from '../../grammar/say';

/** @param locale as the protocol has it: `de`, `de-AT` */
export function speakTo(locale: string | undefined): void {
  speak(isGerman(locale) ? german : undefined);
}

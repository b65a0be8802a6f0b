/** The marks that git leaves in a text where two versions of it could not be put together. */
import type { Repair } from './mending';
import { say } from './say';
import { Conflict, Token } from './tokens';

/** Seven signs of one kind in column 1, with a name behind them or nothing. */
const MARK = /([<>=|])\1{6}(?= |$)/my;

/** A line that is such a mark, as one token. */
export function markOfConflict(text: string, from: number, to: number): Token | undefined {
  const sign = text[from]!;
  if (sign !== '<' && sign !== '>' && sign !== '=' && sign !== '|') return undefined;
  MARK.lastIndex = from;
  if (!MARK.test(text)) return undefined;
  return new Token(Conflict, text.slice(from, to).trimEnd(), from, to - 1);
}

/** What is said of such a line. */
export function conflictAt({ image, startOffset: from, end: to }: Token): Repair {
  return { code: 'conflict-mark', message: words(image[0]!), from, to, title: '', edits: [] };
}

function words(sign: string): string {
  const advice = say`Keep what holds and take the marks out.`;
  switch (sign) {
    case '<':
      return say`Two versions of these lines were never put together: the one stands from here to \`=======\`, the other from there to \`>>>>>>>\`. ${advice}`;
    case '>':
      return say`The second of two versions ends here, and nobody has chosen between them. ${advice}`;
    case '|':
      return say`What both versions were made from begins here, and nobody has chosen between them. ${advice}`;
    default:
      return say`The second of two versions begins here, and nobody has chosen between them. ${advice}`;
  }
}

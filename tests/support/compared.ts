/** Two texts drafted and compared, and what was said of them. */
import type { SourceFile } from '../../grammar/syntax';
import { Workshop } from '../../server/drafting/workshop';
import { compare, take, type Review, type Taken } from '../../server/review';

export type Texts = Readonly<Record<string, string>>;

/** The first file is the pattern; the others are there to be used. */
export function taken(texts: string | Texts): Taken {
  const files = typeof texts === 'string' ? { 'test.draft': texts } : texts;
  const workshop = new Workshop({ read: (uri) => files[uri], resolve: (_, path) => ({ uri: path }) });
  const uri = Object.keys(files)[0]!;
  const pattern = workshop.pattern(uri);
  const source = (of: string): SourceFile | undefined => workshop.source(of);
  return take({ pattern, source, shown: (of) => of });
}

export const compared = (before: string | Texts, after: string | Texts): Review =>
  compare(taken(before), taken(after));

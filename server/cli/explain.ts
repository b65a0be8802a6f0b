/** `draftwright explain`: the page of a code, as a person reads it at a terminal. */
import { say } from '../../grammar/say';
import { pageInDialect } from '../../grammar/dialect';
import { catalogue, explain } from '../checks';
import { diskBehind } from '../lsp/disk';
import { nearest } from '../drafting/names/spelling';
import { CLEAN, Unable, type Exit, type Io } from './io';
import { dialectIn } from './language';

export interface ExplainOptions {
  readonly words: string;
}

export function runExplain(code: string, { words }: ExplainOptions, io: Io): Exit {
  const found = explain(code, diskBehind(io.cwd).page);
  const page = found && pageInDialect(dialectIn(words, io), found);
  if (page === undefined) throw new Unable(unknown(code));
  io.out(page.endsWith('\n') ? page : `${page}\n`);
  return CLEAN;
}

function unknown(code: string): string {
  const codes = catalogue.map((entry) => entry.code);
  const near = nearest(code, codes);
  const holding = codes.filter((name) => code !== '' && name.includes(code));
  const meant = holding.length > 0 && holding.length < 6 ? holding : near === undefined ? [] : [near];
  const hint = meant.length === 0 ? '' : say` Did you mean ${meant.join(say` or `)}?`;
  return `${say`No problem is called ${code}.`}${hint} ${say`All there are:`}\n${codes.map((name) => `  ${name}`).join('\n')}`;
}

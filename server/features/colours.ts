/** What each word of a text is, for colours: from the syntax where it tells, else from the word itself. */
import { tokensOf, type TokenKind } from '../../grammar';
import { keptFor } from '../../grammar/kept';
import type { Name, Ref, SourceFile, Statement, StatementNode, TopLevel } from '../../grammar/syntax';
import { ofNode } from '../drafting/names/mentions';
import type { RefSpace } from '../drafting/names/references';
import { measurementNamed } from '../drafting/values/measurements';

export type Colour =
  | 'keyword'
  | 'comment'
  | 'string'
  | 'number'
  | 'operator'
  | 'function'
  | 'value'
  | 'measurement'
  | 'shape'
  | 'part'
  | 'block'
  | 'seam'
  | 'body'
  | 'word';

export interface Coloured {
  readonly from: number;
  readonly to: number;
  readonly colour: Colour;
  readonly defines: boolean;
}

const LEXICAL: Readonly<Record<TokenKind, Colour | undefined>> = {
  keyword: 'keyword',
  word: 'keyword',
  name: 'shape',
  function: 'function',
  number: 'number',
  date: 'number',
  text: 'string',
  sign: 'operator',
  bracket: undefined,
  brace: undefined,
  comment: 'comment',
  unknown: undefined,
};

/** Words that stand together: offsets count from `offset`; the same list while a statement stays what it is. */
export interface ColouredPart {
  readonly offset: number;
  readonly words: readonly Coloured[];
}

/** The coloured words of a file, statement by statement, with what stands between them; no word crosses a line. */
export function* colouredParts(file: SourceFile, from = 0, to = Infinity): Iterable<ColouredPart> {
  let at = 0;
  // between statements stand comments, and what could not be read
  const between = (end: number): readonly Coloured[] =>
    end > at && end > from && at < to ? lexical(file.text.slice(at, end), 0) : [];
  for (const top of file.items) {
    yield { offset: at, words: between(top.offset) };
    at = top.offset + top.text.length;
    if (top.offset <= to && at >= from) yield { offset: top.offset, words: coloursIn(top) };
  }
  yield { offset: at, words: between(file.text.length) };
}

/** The coloured words of a file between two offsets, in order. */
export function colours(file: SourceFile, from = 0, to = Infinity): readonly Coloured[] {
  const found: Coloured[] = [];
  for (const { offset, words } of colouredParts(file, from, to))
    for (const one of words) found.push(moved(one, offset));
  return found.filter((one) => one.from < to && one.to > from);
}

// written out: a spread would cost more than all else
const moved = ({ from, to, colour, defines }: Coloured, by: number): Coloured => ({
  from: from + by,
  to: to + by,
  colour,
  defines,
});

/** The coloured words of one top-level statement, counted from its start; kept while it stays the same object. */
export const coloursIn = keptFor(named);

export const lexical = (text: string, offset: number): readonly Coloured[] =>
  tokensOf(text).flatMap(({ kind, from, to }) => {
    const colour = LEXICAL[kind];
    return colour === undefined ? [] : [{ from: from + offset, to: to + offset, colour, defines: false }];
  });

function named(top: TopLevel): readonly Coloured[] {
  // the words of a divide go on between the blocks of its shares
  if (top.statement.node.kind === 'divide') return wordsWithin(top.statement, top.text);
  const found: Coloured[] = [];
  let at = 0;
  const between = (to: number): void => {
    // nearly always there is nothing but space: comments begin with their sign, and a block ends with its brace
    if (to > at && /\S/.test(top.text.slice(at, to))) found.push(...lexical(top.text.slice(at, to), at));
  };
  const visit = (statement: Statement): void => {
    between(statement.start);
    for (const one of wordsOf(statement)) found.push(moved(one, statement.start));
    at = statement.start + statement.text.length;
    statement.block?.forEach(visit);
  };
  visit(top.statement);
  between(top.text.length);
  return found;
}

/** The words of a statement without its block, counted from its start; an edit beside it leaves them as they are. */
const wordsOf = keptFor((statement: Statement): readonly Coloured[] =>
  wordsWithin({ ...statement, start: 0, block: [] }, statement.text),
);

/** The words of a text in which a statement stands with its block. */
function wordsWithin(whole: Statement, text: string): readonly Coloured[] {
  const names = new Map<number, Pick<Coloured, 'colour' | 'defines'>>();
  const visit = (statement: Statement): void => {
    inStatement(statement, ({ at }, colour, defines) =>
      names.set(statement.start + at.from, { colour, defines }),
    );
    statement.block?.forEach(visit);
  };
  visit(whole);
  return lexical(text, 0).map((one) => ({ ...one, ...names.get(one.from) }));
}

type See = (name: Name, colour: Colour, defines: boolean) => void;

function inStatement({ node }: Statement, see: See): void {
  if ('name' in node && node.name !== undefined) see(node.name, colourOf(node), true);
  if (node.kind === 'drafted-for') see(node.body, 'body', false);
  if (node.kind === 'body' && node.from !== undefined) see(node.from.table, 'body', false);
  if (node.kind === 'divide') node.into.forEach(({ name }) => see(name, 'block', true));
  if (node.kind === 'join') see(node.into, 'block', true);
  ofNode(node, (ref, space) => inPath(ref, space, see));
}

function inPath({ path }: Ref, space: RefSpace, see: See): void {
  path.forEach((name, i) => {
    const last = i === path.length - 1;
    if (GIVEN.has(name.text)) return see(name, 'word', false);
    if (path.length > 1 && !last) return see(name, space === 'value' ? valueColour(name) : 'block', false);
    see(name, path.length > 1 && space === 'edge' ? 'part' : ofSpace(name, space), false);
  });
}

const GIVEN: ReadonlySet<string> = new Set(['origin', 'pi', 'nothing', 'halfway']);

const valueColour = ({ text }: Name): Colour => (measurementNamed.has(text) ? 'measurement' : 'block');

function ofSpace(name: Name, space: RefSpace): Colour {
  switch (space) {
    case 'value':
    case 'comparand':
      return measurementNamed.has(name.text) ? 'measurement' : 'value';
    case 'part':
      return 'part';
    case 'edge':
      return 'seam';
    case 'block':
      return 'block';
    case 'body':
      return 'body';
    case 'word':
      return 'word';
    default:
      return 'shape';
  }
}

function colourOf({ kind }: StatementNode): Colour {
  switch (kind) {
    case 'let':
    case 'choose':
    case 'solve':
      return 'value';
    case 'measure':
    case 'measured':
    case 'row':
      return 'measurement';
    case 'shape':
    case 'circle':
      return 'shape';
    case 'draft':
    case 'piece':
    case 'lining':
    case 'facing':
    case 'band':
    case 'strip':
    case 'share':
      return 'block';
    case 'seam':
    case 'finish':
      return 'seam';
    case 'body':
    case 'sizes':
      return 'body';
    default:
      return 'part';
  }
}

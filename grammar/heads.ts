/** What a line's first words say: whether it begins a statement, heads the file, or owns a block. */
import * as t from './tokens';
import { isMeasure, isName, isWord, W, type Token } from './tokens';
import { isReserved, ruleOf, type BlockKind } from './words';

type Tokens = readonly Token[];

function word(token: Token | undefined): string {
  return token && isWord(token) ? token.text : '';
}

/** Second words that make a reserved word after a head no continuation: `outline from`, `drafted for` … */
const PAIRS: Record<string, readonly string[]> = {
  outline: ['from'], grain: ['along', 'from', 'bias'], corner: ['at'], slash: ['from'], drafted: ['for'],
  drawn: ['as'], take: ['in'], let: ['out'], fold: ['out'], open: ['out'], units: ['in'], in: ['stock'],
}; // prettier-ignore

const RUNS = new Set(['along', 'straight', 'curve', 'dart']);
const DIRECTIONS = new Set(['up', 'down', 'left', 'right']);

/**
 * Whether the tokens from `at` on begin a statement of such a block: a head and a name, a text or a length. A line
 * that does is never the continuation of another.
 */
export function begins(kind: BlockKind, tokens: Tokens, at = 0): boolean {
  const first = tokens[at];
  const second = tokens[at + 1];
  if (first?.tokenType === t.Conflict) return true;
  if (!first || !isWord(first)) return false;
  const rule = ruleOf(kind, first.text);
  if (rule !== undefined && beginsWith(first.text, second)) return true;
  switch (kind) {
    case 'outline':
      return first.text !== 'then' && RUNS.has(word(second));
    case 'body':
      return isName(first) && (isMeasure(second) || word(second) === 'left');
    case 'sizes':
      return isName(first) && (isMeasure(second) || second?.tokenType === t.Minus);
    case 'grade':
      return isName(first) && DIRECTIONS.has(word(second));
    default:
      return false;
  }
}

function beginsWith(head: string, second: Token | undefined): boolean {
  if (second === undefined) return head === 'one-way';
  if (isName(second) || isMeasure(second)) return true;
  if (second.tokenType === t.Text || second.tokenType === t.Date || second.tokenType === t.Open) return true;
  return PAIRS[head]?.includes(second.text) ?? false;
}

/** Heads that stand at the file's own level only, with the look of what follows them. */
const TOP: Record<string, (second: Token | undefined, third: Token | undefined) => boolean> = {
  pattern: (second) => second?.tokenType === t.Text,
  use: (second) => second?.tokenType === t.Text,
  fitting: (second) => second?.tokenType === t.Text,
  drafted: (second) => word(second) === 'for',
  measure: (second, third) => isName(second) && third?.tokenType === t.Text,
  usual: (second, third) => isName(second) && word(third) === 'in',
  accept: (second, third) => isName(second) && (word(third) === 'at' || word(third) === 'because'),
  draft: opensBlock,
  sizes: opensBlock,
  cloth: opensBlock,
  body: (second, third) => opensBlock(second, third) || (isName(second) && word(third) === 'from'),
  trace: (second, third) => opensBlock(second, third) || (isName(second) && word(third) === 'from'),
  piece: (second, third) => isName(second) && PIECE_WORDS.has(word(third)),
  lining: (second, third) => isName(second) && word(third) === 'of',
  facing: (second, third) => isName(second) && word(third) === 'of',
  divide: (second, third) => isName(second) && word(third) === 'at',
  join: (second) => isName(second),
  band: (second, third) => isName(second) && word(third) === 'for',
  grade: (second, third) => isName(second) && word(third) === 'for',
  strip: (second, third) => isName(second) && isMeasure(third),
  seam: (second, third) => isName(second) && isName(third),
  finish: (second, third) => isName(second) && isName(third),
  notion: (second, third) => isName(second) && third?.tokenType === t.Equals,
};

const PIECE_WORDS = new Set(['of', 'worked', 'from']);

function opensBlock(second: Token | undefined, third: Token | undefined): boolean {
  return isName(second) && (third === undefined || third.tokenType === t.OpenBrace);
}

/** Whether a line in column 1 that begins so closes every block above it, whatever its braces say. */
export function headsFile(tokens: Tokens, at = 0): boolean {
  const first = tokens[at];
  if (!first || !isWord(first) || !Object.hasOwn(TOP, first.text)) return false;
  return TOP[first.text]!(tokens[at + 1], tokens[at + 2]);
}

/** Whether a statement begins in mid-line, where a line end was lost: a header, or a head with `NAME =` after it. */
export function splitsLine(kind: BlockKind, tokens: Tokens, at: number): boolean {
  const head = tokens[at]!.text;
  const [second, third] = [tokens[at + 1], tokens[at + 2]];
  if (third?.tokenType === t.Equals && isName(second) && ruleOf(kind, head) !== undefined)
    return endsValue(tokens[at - 1]!);
  if (tokens[tokens.length - 1]!.tokenType !== t.OpenBrace) return false;
  const afterStatement = at >= 2 && endsValue(tokens[at - 1]!);
  switch (head) {
    case 'outline':
      return word(second) === 'from' && afterStatement;
    case 'draft':
    case 'sizes':
    case 'cloth':
      return isName(second) && third?.tokenType === t.OpenBrace && afterStatement;
    case 'piece':
    case 'body':
    case 'lining':
      return third !== undefined && third.tokenType !== t.OpenBrace && headsFile(tokens, at);
    default:
      return false;
  }
}

const OWNED: Record<string, BlockKind> = {
  draft: 'draft', piece: 'piece', lining: 'work', body: 'body', sizes: 'sizes', trace: 'trace', grade: 'grade',
  fitting: 'fitting', cloth: 'cloth', divide: 'work', outline: 'outline', hole: 'outline',
}; // prettier-ignore

/** What the block of such a header holds; undefined for a statement that owns none. */
export function ownedKind(tokens: Tokens, parent: BlockKind): BlockKind | undefined {
  const head = tokens[0]?.text ?? '';
  if (ruleOf(parent, head) === undefined && !standsElsewhere(tokens, parent)) return undefined;
  if (head === 'piece') return worksFurther(tokens) ? 'work' : 'piece';
  return Object.hasOwn(OWNED, head) ? OWNED[head] : undefined;
}

/** A header in the wrong kind of block still owns its lines. */
function standsElsewhere(tokens: Tokens, parent: BlockKind): boolean {
  if (parent === 'outline' || parent === 'body' || parent === 'sizes' || parent === 'grade') return false;
  return headsFile(tokens) || (word(tokens[0]) === 'outline' && word(tokens[1]) === 'from');
}

function worksFurther(tokens: Tokens): boolean {
  const link = tokens.find((token, i) => i >= 2 && PIECE_WORDS.has(word(token)));
  return link !== undefined && word(link) !== 'of';
}

/** Whether a header without its block is unfinished. */
export function needsBlock(tokens: Tokens): boolean {
  const head = tokens[0]?.text;
  return head !== 'divide' && !(head === 'trace' && word(tokens[2]) === 'from');
}

const CONNECTING = new Set([
  t.Plus,
  t.Minus,
  t.Times,
  t.Over,
  t.Equals,
  t.Less,
  t.LessEqual,
  t.More,
  t.MoreEqual,
  t.Dots,
]);

/** Whether a line that ends so goes on with the next one. */
export function leavesOpen(last: Token | undefined): boolean {
  return last !== undefined && (last.tokenType === t.Comma || CONNECTING.has(last.tokenType));
}

/** Whether a line that begins so belongs to the one before. */
export function carriesOn(first: Token): boolean {
  return (
    CONNECTING.has(first.tokenType) ||
    first.tokenType === t.Close ||
    first.tokenType === t.Comma ||
    first.tokenType === W.then
  );
}

/** A reserved word where a name is being defined. */
export function isReservedWord(token: Token | undefined): boolean {
  return token !== undefined && isWord(token) && isReserved(token.text);
}

/** Whether a value or a name could end with this token. */
export function endsValue(token: Token): boolean {
  return isMeasure(token) || isName(token) || token.tokenType === t.Close || token.tokenType === t.Text;
}

/**
 * When a statement can't be read: small changes at the place where it failed, tried one after the other. The first
 * that makes the whole statement readable is what was meant, as far as anyone can tell.
 */
import { say } from './say';
import type { TokenType } from 'chevrotain';
import type { Refusal } from './refusals';
import type { Reading } from './parser';
import { substitution, type Repair } from './mending';
import * as t from './tokens';
import { isMeasure, isName, isWord, Token, typeOfWord, W } from './tokens';
import { allWords } from './words';

/** Reads the tokens by the statement's own rule. */
export type Read = (tokens: Token[]) => Reading;

export interface Attempt {
  readonly reading: Reading;
  readonly repair: Repair;
}

/** Attempts of one kind on one statement; each costs a parse, and statements are short. */
const MAX_TRIES = 60;

/** A repair that makes `tokens` readable, if there is one. */
export function attempt(tokens: Token[], refusal: Refusal, read: Read): Attempt | undefined {
  const open = brackets(tokens, read);
  if (open !== undefined) return open === 'none' ? undefined : open;
  const at = Math.min(tokens.length, Math.max(0, tokens.indexOf(refusal.token)));
  const index = tokens.includes(refusal.token) ? at : tokens.length;
  return (
    doubled(tokens, index, read) ??
    respelt(tokens, index, refusal, read) ??
    bracketed(tokens, index, read) ??
    inserted(tokens, index, refusal, read) ??
    replaced(tokens, index, refusal, read) ??
    odd(tokens, index, read)
  );
}

// ------------------------------------------------------------------------------------------------ brackets

/** Brackets that don't pair; 'none' where they can't be made to, undefined where they pair. */
function brackets(tokens: Token[], read: Read): Attempt | 'none' | undefined {
  const open: number[] = [];
  for (let i = 0; i < tokens.length; i++) {
    if (tokens[i]!.tokenType === t.Open) open.push(i);
    else if (tokens[i]!.tokenType === t.Close && open.pop() === undefined)
      return strayBracket(tokens, i, read);
  }
  const last = open.pop();
  if (last === undefined) return undefined;
  if (open.length > 0) return 'none';
  return closedBracket(tokens, last, read);
}

function strayBracket(tokens: Token[], at: number, read: Read): Attempt | 'none' {
  const token = tokens[at]!;
  const reading = read(tokens.filter((other) => other !== token));
  const message = say`This bracket closes nothing: no \`(\` stands before it.`;
  const repair = substitution('stray-bracket', message, { from: token.startOffset, to: token.end, text: '' });
  return reading.node ? { reading, repair } : 'none';
}

function closedBracket(tokens: Token[], open: number, read: Read): Attempt | 'none' {
  const lowest = Math.max(open + 2, tokens.length - MAX_TRIES);
  for (let at = tokens.length; at >= lowest; at--) {
    const before = tokens[at - 1]!;
    const close = new Token(t.Close, ')', before.end, before.endOffset);
    const reading = read([...tokens.slice(0, at), close, ...tokens.slice(at)]);
    if (!reading.node) continue;
    return { reading, repair: missingBracket(tokens[open]!, before.end) };
  }
  return 'none';
}

export function missingBracket(open: Token, closeAt: number): Repair {
  const message = say`This bracket is never closed: a \`)\` is missing.`;
  const edits = [{ from: closeAt, to: closeAt, text: ')' }];
  return {
    code: 'missing-bracket',
    message,
    from: open.startOffset,
    to: open.end,
    title: say`Close the bracket`,
    edits,
  };
}

/** `a to b down 2cm`: what follows `to`, `toward` and the like is a name or a bracket. */
function bracketed(tokens: Token[], at: number, read: Read): Attempt | undefined {
  const failed = tokens[at];
  if (!failed || at < 2 || !STEPS.has(failed.text)) return undefined;
  const start = operandStart(tokens, at - 1);
  if (start < 1) return undefined;
  const first = tokens[start]!;
  const openSign = new Token(t.Open, '(', first.startOffset, first.startOffset - 1);
  for (let end = tokens.length; end > at + 1 && end > tokens.length - MAX_TRIES; end--) {
    const before = tokens[end - 1]!;
    const closeSign = new Token(t.Close, ')', before.end, before.endOffset);
    const list = [
      ...tokens.slice(0, start),
      openSign,
      ...tokens.slice(start, end),
      closeSign,
      ...tokens.slice(end),
    ];
    const reading = read(list);
    if (!reading.node) continue;
    return { reading, repair: bracketRepair(tokens[start - 1]!, first, before, failed) };
  }
  return undefined;
}

function bracketRepair(before: Token, first: Token, last: Token, failed: Token): Repair {
  const message = say`After \`${before.text}\` stands a name, or a bracket round more than a name: put \`${first.image} ${failed.image} …\` in brackets.`;
  const edits = [
    { from: first.startOffset, to: first.startOffset, text: '(' },
    { from: last.end, to: last.end, text: ')' },
  ];
  return {
    code: 'bracket-needed',
    message,
    from: failed.startOffset,
    to: failed.end,
    title: say`Put brackets round it`,
    edits,
  };
}

const STEPS = new Set([
  'up',
  'down',
  'left',
  'right',
  'across',
  'at',
  'reach',
  'squared',
  'turned',
  'mirrored',
  'moved',
  '+',
  '-',
  '*',
  '/',
]);

/** Where the name or bracket that ends at `last` begins. */
function operandStart(tokens: Token[], last: number): number {
  if (tokens[last]!.tokenType === t.Close) {
    let depth = 0;
    for (let i = last; i >= 0; i--) {
      if (tokens[i]!.tokenType === t.Close) depth++;
      if (tokens[i]!.tokenType === t.Open && --depth === 0) return i;
    }
    return -1;
  }
  let start = last;
  while (start >= 2 && tokens[start - 1]!.tokenType === t.Dot) start -= 2;
  return isName(tokens[start]) ? start : -1;
}

// ------------------------------------------------------------------------------------------------ words

/** A word or sign that stands twice. */
function doubled(tokens: Token[], at: number, read: Read): Attempt | undefined {
  for (const i of [at, at - 1]) {
    const token = tokens[i];
    const before = tokens[i - 1];
    if (!token || !before || token.text !== before.text || token.tokenType === t.Measure) continue;
    const reading = read([...tokens.slice(0, i), ...tokens.slice(i + 1)]);
    if (!reading.node) continue;
    const edit = { from: before.end, to: token.end, text: '' };
    const repair = substitution('doubled-word', say`\`${token.image}\` stands here twice.`, edit);
    return { reading, repair: { ...repair, from: token.startOffset } };
  }
  return undefined;
}

/** A word of the language with a letter astray, at the place of failure or just before it. */
function respelt(tokens: Token[], at: number, refusal: Refusal, read: Read): Attempt | undefined {
  const expected = refusal.expected.map((type) => type.LABEL ?? type.name);
  for (const i of [at, at - 1]) {
    const token = tokens[i];
    if (i < 1 || !token || !isWord(token)) continue;
    const pool = i === at && expected.length > 0 ? expected : allWords();
    for (const word of nearest(token.text, pool)) {
      const reading = read(exchanged(tokens, i, token.as(typeOfWord(word), word)));
      if (reading.node) return { reading, repair: respelling(token, word) };
    }
  }
  return undefined;
}

/** The tokens with one of them exchanged. */
export function exchanged(tokens: readonly Token[], at: number, token: Token): Token[] {
  return tokens.map((other, i) => (i === at ? token : other));
}

export function respelling(token: Token, word: string): Repair {
  const edit = { from: token.startOffset, to: token.end, text: word };
  return substitution(
    'misspelt-word',
    say`\`${token.image}\` is no word that fits here; \`${word}\` would be.`,
    edit,
  );
}

/** Words within a letter or two of the written one, nearest first. */
export function nearest(written: string, words: readonly string[]): string[] {
  const text = written.toLowerCase();
  const limit = text.length > 6 ? 2 : 1;
  const found: { word: string; distance: number }[] = [];
  for (const word of words) {
    if (Math.abs(word.length - text.length) > limit || word.length < 3 || !/^[a-z]/.test(word)) continue;
    const distance = lettersApart(text, word, limit);
    if (distance <= limit) found.push({ word, distance });
  }
  return found.sort((a, b) => a.distance - b.distance).map(({ word }) => word);
}

/** Damerau's distance with neighbours exchanged counted once (optimal string alignment); above `limit` it stops. */
function lettersApart(a: string, b: string, limit: number): number {
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, before[j - 2]! + 1);
      row.push(best);
    }
    if (Math.min(...row) > limit) return limit + 1;
    before = above;
    above = row;
  }
  return above[b.length]!;
}

/** A word or sign that was left out: what the rule expected, or a comma between clauses. */
function inserted(tokens: Token[], at: number, refusal: Refusal, read: Read): Attempt | undefined {
  const before = tokens[at - 1];
  if (!before) return undefined;
  const angle = angleDue(tokens[at], refusal);
  const tried = angle ? [W.at] : refusal.expected.length === 0 ? [t.Comma] : wordsDue(refusal);
  const found = onlyOne(tried, (type) => {
    const sign = new Token(type, written(type), before.end, before.endOffset);
    return read([...tokens.slice(0, at), sign, ...tokens.slice(at)]);
  });
  if (!found) return undefined;
  const word = written(found.type);
  const text = found.type === t.Comma || found.type === t.Dot ? word : ` ${word}`;
  const failed = tokens[at];
  const [from, to] = failed ? [failed.startOffset, failed.end] : [before.startOffset, before.end];
  const message = say`\`${word}\` is missing ${failed ? say`before \`${failed.image}\`` : say`after \`${before.image}\``}.`;
  const edits = [{ from: before.end, to: before.end, text }];
  const repair: Repair = { code: 'missing-word', message, from, to, title: say`Put in \`${word}\``, edits };
  return { reading: found.reading, repair };
}

function written(type: TokenType): string {
  return type.LABEL ?? type.name;
}

/** The one type with which the statement can be read; with two there would be a choice, and that is not ours. */
function onlyOne(types: readonly TokenType[], read: (type: TokenType) => Reading) {
  let found: { type: TokenType; reading: Reading } | undefined;
  for (const type of types) {
    const reading = read(type);
    if (!reading.node) continue;
    if (found) return undefined;
    found = { type, reading };
  }
  return found;
}

/** `leaving 20deg below right`: an angle stands where only `at` leads to one. */
const angleDue = (token: Token | undefined, { expected }: Refusal): boolean =>
  token !== undefined &&
  (expected.includes(W.at) ? isName(token) || isMeasure(token) : /^[\d.]+deg$/.test(token.text));

/** The words and signs that were due, where nothing of the author's own could have stood there instead. */
function wordsDue({ expected }: Refusal): TokenType[] {
  if (expected.length > 6 || expected.includes(t.Name) || expected.includes(t.Measure)) return [];
  return expected.filter((type) => FIXED.has(type) || WORDS.has(type));
}

/** A word or sign of the language in the place of another. */
function replaced(tokens: Token[], at: number, refusal: Refusal, read: Read): Attempt | undefined {
  const token = tokens[at];
  if (!token || at === 0 || isMeasure(token) || token.tokenType === t.Name) return undefined;
  const found = onlyOne(wordsDue(refusal), (type) =>
    read(exchanged(tokens, at, token.as(type, written(type)))),
  );
  if (!found) return undefined;
  const word = written(found.type);
  const edit = { from: token.startOffset, to: token.end, text: word };
  const repair = substitution('wrong-word', say`\`${word}\` is due here, not \`${token.image}\`.`, edit);
  return { reading: found.reading, repair };
}

const WORDS: ReadonlySet<TokenType> = new Set(Object.values(W));
const FIXED = new Set([t.Equals, t.Comma, t.Dots, t.Dot]);

/** A sign without meaning, left out. */
function odd(tokens: Token[], at: number, read: Read): Attempt | undefined {
  const token = tokens[at];
  if (token?.tokenType !== t.Odd) return undefined;
  const reading = read([...tokens.slice(0, at), ...tokens.slice(at + 1)]);
  if (!reading.node) return undefined;
  return { reading, repair: unknownSign(token) };
}

export function unknownSign(token: Token): Repair {
  const shown = /^[\x20-\x7e\u00a1-\uffff]+$/.test(token.image)
    ? token.image.slice(0, 12)
    : say`this character`;
  const message = say`\`${shown}\` has no meaning in a pattern. Remove it, or write the word it stands for.`;
  return substitution('unknown-sign', message, { from: token.startOffset, to: token.end, text: '' });
}

/**
 * What people type, read as they meant it: units apart from their number, decimal commas, names with spaces, a range
 * with a dash. Each repair says what it changed, and the statement is then parsed as if it had been written so.
 */
import { substitution, type Repair } from './mending';
import { say } from './say';
import * as t from './tokens';
import { isWord, Token, typeOfWord, W } from './tokens';
import type { SyntaxProblemCode } from './problems';
import { commaWords, RANGED, signWords, units, unitWords } from './unit-repairs';
import { isReserved, ruleOf, type BlockKind } from './words';
import { isReservedWord } from './heads';

export interface Repaired {
  readonly tokens: Token[];
  readonly repairs: Repair[];
  /** A fault that leaves nothing to parse. */
  readonly fatal?: Repair;
}

/** Most brackets inside brackets that are read: far beyond need, and well inside the stack of the parser. */
export const MAX_BRACKETS = 100;
/** Most tokens of one statement: a curve through a thousand points still fits. */
export const MAX_TOKENS = 3000;

/** Reads the usual slips of a statement. */
export function repair(kind: BlockKind | 'share', given: readonly Token[]): Repaired {
  const repairs: Repair[] = [];
  const fatal = tooMuch(given) ?? unknown(given);
  if (fatal) return { tokens: [...given], repairs, fatal };
  let tokens = given.map((token) => slipped(token, repairs));
  tokens = commas(tokens, repairs);
  if (kind !== 'share') tokens = capitals(kind, tokens, repairs);
  tokens = units(tokens, given, repairs);
  if (kind !== 'share') tokens = definedName(kind, tokens, repairs);
  tokens = ranges(tokens, repairs);
  return { tokens: roundOfCircle(tokens), repairs };
}

/** A statement that is longer, or nested deeper, than is read. */
export function tooMuch(tokens: readonly Token[]): Repair | undefined {
  if (tokens.length > MAX_TOKENS) {
    const { startOffset: from, end: to } = tokens[0]!;
    const message = say`This statement has ${tokens.length} words; more than ${MAX_TOKENS} are not read. Give its parts names of their own.`;
    return { code: 'too-long', message, from, to, title: '', edits: [] };
  }
  let depth = 0;
  for (const token of tokens) {
    if (token.tokenType === t.Close) depth--;
    if (token.tokenType !== t.Open || ++depth <= MAX_BRACKETS) continue;
    const message = say`Brackets stand inside brackets here, more than ${MAX_BRACKETS} deep. Give an inner part a name of its own.`;
    return { code: 'too-deep', message, from: token.startOffset, to: token.end, title: '', edits: [] };
  }
  return undefined;
}

/** Units and signs that nothing can be made of. */
function unknown(tokens: readonly Token[]): Repair | undefined {
  for (const token of tokens) {
    const { startOffset: from, end: to } = token;
    if (token.slip?.code === 'unknown-unit' && token.slip.meant === '') {
      const message = say`\`${token.image}\` ends in no unit that is known here: lengths are written in cm, mm, m, in or yd, angles in deg, shares in %.`;
      return { code: 'unknown-unit', message, from, to, title: '', edits: [] };
    }
  }
  return undefined;
}

// ------------------------------------------------------------------------------------------ slips of the lexer

const SLIPS: Record<string, (written: string, meant: string) => string> = {
  'unusual-sign': signWords,
  'comma-in-number': commaWords,
  'number-without-zero': (written, meant) => say`\`${written}\` begins with its point; write \`${meant}\`.`,
  'name-with-underscore': (written, meant) =>
    say`\`${written}\` has an underscore; names are joined with hyphens: \`${meant}\`.`,
  'date-order': (written, meant) =>
    say`\`${written}\` is read as \`${meant}\`: dates are written year, month, day.`,
  'missing-quote': () => say`This text is never closed. Put a quote \`"\` where it ends.`,
  'unknown-unit': unitWords,
};

function slipped(token: Token, repairs: Repair[]): Token {
  const { slip } = token;
  if (!slip) return token;
  const message = SLIPS[slip.code]!(slip.written, slip.meant);
  const edit = { from: token.startOffset, to: token.end, text: slip.meant };
  if (slip.code === 'missing-quote') repairs.push(closedQuote(token, message));
  else repairs.push(substitution(slip.code as SyntaxProblemCode, message, edit));
  return token;
}

function closedQuote(token: Token, message: string): Repair {
  const edits = [{ from: token.startOffset, to: token.end, text: `"${token.text}"` }];
  return {
    code: 'missing-quote',
    message,
    from: token.startOffset,
    to: token.end,
    title: say`Close the text`,
    edits,
  };
}

/** A semicolon between clauses stands for a comma. */
function commas(tokens: Token[], repairs: Repair[]): Token[] {
  if (!tokens.some((token) => token.image === ';')) return tokens;
  return tokens.map((token) => {
    if (token.tokenType !== t.Odd || token.image !== ';') return token;
    const edit = { from: token.startOffset, to: token.end, text: ',' };
    repairs.push(
      substitution('semicolon', say`\`;\` has no meaning here; clauses are parted by commas.`, edit),
    );
    return token.as(t.Comma, ',');
  });
}

// ------------------------------------------------------------------------------------------------ words

/** `Point` for `point`, `To` for `to`. A head only counts where its block has it and the line is no plain name. */
function capitals(kind: BlockKind, tokens: Token[], repairs: Repair[]): Token[] {
  return tokens.map((token, i) => {
    if (token.tokenType !== t.Name) return token;
    const lower = token.text.toLowerCase();
    if (lower === token.text) return token;
    const head = i === 0 && ruleOf(kind, lower) !== undefined;
    const defined = i === 1 && tokens[2]?.tokenType === t.Equals;
    if (!head && (defined || !isReserved(lower))) return token;
    const edit = { from: token.startOffset, to: token.end, text: lower };
    repairs.push(
      substitution('capital-word', say`\`${token.text}\` is written small here: \`${lower}\`.`, edit),
    );
    return token.as(typeOfWord(lower), lower);
  });
}

// ------------------------------------------------------------------------------------------------ names

/** After which word a name is defined, and what stands behind it. */
const DEFINED: Record<string, (token: Token) => boolean> = {};
const isEquals = (token: Token): boolean => token.tokenType === t.Equals;
for (const head of [
  'let',
  'choose',
  'point',
  'line',
  'curve',
  'arc',
  'circle',
  'mark',
  'button',
  'buttonhole',
  'drill',
])
  DEFINED[head] = isEquals;
for (const head of [
  'eyelet',
  'bone',
  'tape',
  'topstitch',
  'crease',
  'marks',
  'buttons',
  'buttonholes',
  'drills',
])
  DEFINED[head] = isEquals;
for (const head of ['eyelets', 'bones', 'pleats', 'notion']) DEFINED[head] = isEquals;
DEFINED.solve = DEFINED.usual = (token) => token.tokenType === W.in;
DEFINED.measure = (token) => token.tokenType === t.Text;
DEFINED.piece = (token) => token.tokenType === W.of || token.tokenType === W.worked;
DEFINED.lining = DEFINED.facing = (token) => token.tokenType === W.of;
DEFINED.band = DEFINED.grade = (token) => token.tokenType === W.for;
DEFINED.notch = DEFINED.gathers = DEFINED.dart = (token) => token.tokenType === W.on;
DEFINED.hole = DEFINED.body = (token) => token.tokenType === W.from;

/** Heads whose name ends with the line, where the block begins. */
const NAMED_BLOCKS = new Set(['draft', 'sizes', 'cloth', 'body', 'trace']);

/** `point hip cf =`, `let dart-1 =`, `point end =`: the name that is being defined. */
function definedName(kind: BlockKind, tokens: Token[], repairs: Repair[]): Token[] {
  if (kind === 'outline') return reservedEdge(tokens, repairs);
  const head = tokens[0]!.text;
  if (ruleOf(kind, head) === undefined) return tokens;
  const ends = DEFINED[head];
  const stop = ends ? tokens.findIndex((token, i) => i > 1 && ends(token)) : -1;
  const end = stop > 0 ? stop : NAMED_BLOCKS.has(head) ? tokens.length : -1;
  if (end < 0) return tokens;
  const words = tokens.slice(1, end);
  if (words.length === 1) return isReservedWord(words[0]) ? reservedName(tokens, 1, repairs) : tokens;
  return words.length > 1 && words.length < 6 ? joinedName(tokens, words, repairs) : tokens;
}

function joinedName(tokens: Token[], words: Token[], repairs: Repair[]): Token[] {
  const parts = words.filter((token) => token.tokenType !== t.Minus);
  const usable = parts.every(
    (token) => isWord(token) || (token.tokenType === t.Number && /^\d+$/.test(token.image)),
  );
  if (!usable || !isWord(words[0])) return tokens;
  const text = parts.map((token, i) => (i > 0 && isWord(token) ? '-' : '') + token.text).join('');
  const from = words[0]!.startOffset;
  const last = words[words.length - 1]!;
  const minus = words.some((token) => token.tokenType === t.Minus);
  const written = minus
    ? words.map((token) => token.image).join('')
    : words.map((token) => token.image).join(' ');
  const code = minus ? 'name-with-minus' : 'name-with-space';
  const message = minus
    ? say`\`${written}\` would be a subtraction: a hyphen in a name stands before a letter. Call it \`${text}\`.`
    : say`\`${written}\` is one name, so it is joined with hyphens: \`${text}\`.`;
  repairs.push(substitution(code, message, { from, to: last.end, text }));
  const name = new Token(t.Name, text, from, last.endOffset);
  return [tokens[0]!, name, ...tokens.slice(1 + words.length)];
}

function reservedName(tokens: Token[], at: number, repairs: Repair[]): Token[] {
  const token = tokens[at]!;
  const text = `${token.text}-${tokens[0] === token ? 'edge' : suffix(tokens[0]!.text)}`;
  const message = say`\`${token.text}\` is a word of the language and can’t be a name. Call it \`${text}\`, say.`;
  repairs.push(substitution('reserved-name', message, { from: token.startOffset, to: token.end, text }));
  return tokens.map((other) => (other === token ? token.as(t.Name, token.text) : other));
}

function suffix(head: string): string {
  return ['point', 'line', 'curve', 'arc', 'circle', 'piece', 'dart', 'notch'].includes(head)
    ? head
    : 'value';
}

function reservedEdge(tokens: Token[], repairs: Repair[]): Token[] {
  return isReservedWord(tokens[0]) && tokens[0]!.tokenType !== W.then
    ? reservedName(tokens, 0, repairs)
    : tokens;
}

// ------------------------------------------------------------------------------------------------ ranges

/** `in 40cm - 95cm`, `in 40cm to 95cm`: the two ends of a range. */
function ranges(tokens: Token[], repairs: Repair[]): Token[] {
  if (!RANGED.has(tokens[0]!.text)) return tokens;
  const start = tokens.findIndex((token) => token.tokenType === W.in);
  const stop = tokens.findIndex((token) => token.tokenType === W.so);
  if (start < 0) return tokens;
  const range = tokens.slice(start + 1, stop < 0 ? undefined : stop);
  if (range.some((token) => token.tokenType === t.Dots)) return tokens;
  const sign = range.findIndex(
    (token, i) =>
      i > 0 && (token.tokenType === W.to || token.tokenType === t.Minus || token.tokenType === W.and),
  );
  if (sign < 0) return tokens;
  const token = range[sign]!;
  for (let i = repairs.length - 1; i >= 0; i--)
    if (repairs[i]!.from === token.startOffset) repairs.splice(i, 1);
  const edit = { from: token.startOffset, to: token.end, text: ' .. ' };
  const tight = { ...edit, text: spaced(range, sign) ? '..' : ' .. ' };
  repairs.push(
    substitution(
      'range-sign',
      say`The two ends of a range are joined by two dots: \`..\` for \`${token.image}\`.`,
      tight,
    ),
  );
  return tokens.map((other) => (other === token ? token.as(t.Dots, '..') : other));
}

function spaced(range: Token[], sign: number): boolean {
  return range[sign - 1]!.end < range[sign]!.startOffset;
}

/** In a circle `round` is never the function, even where a bracket touches it. */
function roundOfCircle(tokens: Token[]): Token[] {
  if (tokens[0]!.tokenType !== W.circle) return tokens;
  return tokens.map((token) =>
    token.tokenType === t.Func && token.text === 'round' ? token.as(W.round, 'round') : token,
  );
}

/**
 * What people type, read as they meant it: units apart from their number, decimal commas, names with spaces, a range
 * with a dash. Each repair says what it changed, and the statement is then parsed as if it had been written so.
 */
import { say } from './say';
import * as t from './tokens';
import { isMeasure, isName, isWord, Token, typeOfWord, W } from './tokens';
import type { SyntaxProblemCode } from './problems';
import { unitMeant } from './unit-names';
import { isReserved, isUnit, ruleOf, type BlockKind } from './words';
import { isReservedWord } from './heads';
import type { Unit } from './syntax';

export interface Edit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

export interface Repair {
  readonly code: SyntaxProblemCode;
  readonly message: string;
  readonly from: number;
  readonly to: number;
  readonly title: string;
  readonly edits: readonly Edit[];
}

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
  tokens = units(tokens, repairs);
  if (kind !== 'share') tokens = definedName(kind, tokens, repairs);
  tokens = ranges(tokens, repairs);
  return { tokens: roundOfCircle(tokens), repairs };
}

export function substitution(code: SyntaxProblemCode, message: string, at: Edit): Repair {
  const title = at.text === '' ? say`Remove it` : say`Write \`${at.text.trim()}\``;
  return { code, message, from: at.from, to: at.to, title, edits: [at] };
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
  'unusual-sign': (written, meant) =>
    say`\`${written}\` has a sign that only looks like the one meant: write \`${meant}\`.`,
  'comma-in-number': (written, meant) =>
    say`\`${written}\` has a decimal comma; numbers take a point: \`${meant}\`.`,
  'number-without-zero': (written, meant) => say`\`${written}\` begins with its point; write \`${meant}\`.`,
  'name-with-underscore': (written, meant) =>
    say`\`${written}\` has an underscore; names are joined with hyphens: \`${meant}\`.`,
  'date-order': (written, meant) =>
    say`\`${written}\` is read as \`${meant}\`: dates are written year, month, day.`,
  'missing-quote': () => say`This text is never closed. Put a quote \`"\` where it ends.`,
  'unknown-unit': unitWords,
};

const IN_FEET = /f(?:t|oot|eet)$/i;

function unitWords(written: string, meant: string): string {
  if (IN_FEET.test(written))
    return say`\`${written}\`: feet are no unit here; a foot is 12 inches, so \`${meant}\`.`;
  return say`\`${written}\`: the unit is written \`${meant.replace(/^[\d./ ]+/, '')}\`, so \`${meant}\`.`;
}

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

/** `4 cm`, and `4 in` where the range or the place that follows shows that inches are meant. */
function units(tokens: Token[], repairs: Repair[]): Token[] {
  const out: Token[] = [];
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i]!;
    const next = tokens[i + 1];
    const otherwise = writtenOtherwise(token, next);
    if (otherwise !== undefined) {
      out.push(otherwise.token);
      repairs.push(otherwise.repair);
      i++;
      continue;
    }
    if (!isUnitApart(tokens, i)) {
      out.push(token);
      continue;
    }
    const doubled = tokens[i + 1]!.tokenType === W.in && isLengthIn(tokens[i + 2]);
    const length = token.as(t.Length, token.image + next!.image);
    length.endOffset = next!.endOffset;
    length.unit = next!.text as Unit;
    out.push(length);
    if (doubled) out.push(next!);
    const text = token.image + next!.image + (doubled ? ' in' : '');
    const message = doubled
      ? say`\`${token.image} in\` before a range needs its unit as well: \`${text}\`.`
      : say`A unit touches its number: \`${text}\`.`;
    repairs.push(
      substitution('space-before-unit', message, { from: token.startOffset, to: next!.end, text }),
    );
    i++;
  }
  return out;
}

/** `4 inches`, `5 ft`: a unit apart from its number and written otherwise. */
function writtenOtherwise(
  token: Token,
  next: Token | undefined,
): { readonly token: Token; readonly repair: Repair } | undefined {
  // a foot, apart, is more likely a point or a measurement of that name
  if (!isBareNumber(token) || next?.tokenType !== t.Name || next.text === 'foot') return undefined;
  const meant = unitMeant(token.image, token.amount!, next.image);
  if (meant === undefined) return undefined;
  const length = token.as(t.Length, meant.text);
  length.endOffset = next.endOffset;
  length.unit = meant.unit;
  length.amount = meant.amount;
  const edit = { from: token.startOffset, to: next.end, text: meant.text };
  const words = unitWords(`${token.image} ${next.image}`, meant.text);
  return { token: length, repair: substitution('unknown-unit', words, edit) };
}

const isBareNumber = ({ tokenType, unit }: Token): boolean =>
  (tokenType === t.Number || tokenType === t.Fraction) && unit === undefined;

function isLengthIn(token: Token | undefined): boolean {
  return token?.tokenType === t.Length && token.unit === 'in';
}

const RANGED = new Set(['choose', 'measure', 'solve', 'usual']);

function isUnitApart(tokens: Token[], i: number): boolean {
  const token = tokens[i]!;
  const next = tokens[i + 1];
  if (!next || !isBareNumber(token)) return false;
  if (!isUnit(next.text)) return false;
  if (next.tokenType !== W.in) return true;
  const after = tokens[i + 2];
  if (RANGED.has(tokens[0]!.text)) return !isValueStart(after) || isLengthIn(after);
  return !isName(after);
}

function isValueStart(token: Token | undefined): boolean {
  if (!token) return false;
  return (
    isMeasure(token) ||
    isName(token) ||
    token.tokenType === t.Open ||
    token.tokenType === t.Minus ||
    token.tokenType === t.Func
  );
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

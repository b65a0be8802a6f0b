/** From a statement's tokens to its node and at most one problem. */
import { say } from './say';
import { attempt, exchanged, nearest, respelling } from './attempts';
import { conflictAt } from './conflict';
import { explain, explainHead } from './explain';
import { isDay } from './calendar';
import { begins, needsBlock, ownedKind } from './heads';
import { readStatement, type Reading } from './parser';
import { combined, type Repair } from './mending';
import { repair, tooMuch } from './repairs';
import { MOST_WEIGHT, PROBLEM_WEIGHT, type Mended, type Raw } from './raw';
import type * as s from './syntax';
import * as t from './tokens';
import { isMeasure, isName, isWord, type Token } from './tokens';
import { HEADS, ruleOf, type BlockKind } from './words';

export interface Read {
  readonly node: s.StatementNode;
  readonly problems: readonly s.SyntaxProblem[];
}

/** Reads one statement. Never throws; a statement that can't be read becomes a `BrokenNode`. */
export function readRaw(raw: Raw, text: string): Read {
  const rule = ruleFor(raw.kind, raw.tokens);
  if (rule !== undefined && raw.mended.length === 0 && !raw.tokens.some(slips) && !tooMuch(raw.tokens)) {
    const { node, notes } = readStatement(rule, raw.tokens, raw.from);
    if (node && notes.length === 0 && blockStands(raw)) return { node, problems: dates(node, raw) };
  }
  return readSlowly(raw, text);
}

function slips(token: Token): boolean {
  return token.slip !== undefined;
}

function blockStands(raw: Raw): boolean {
  if (raw.block !== undefined || raw.kind === 'share') return true;
  return ownedKind(raw.tokens, raw.kind) === undefined || !needsBlock(raw.tokens);
}

/** The rule for a statement, by its block's kind and its first words. */
export function ruleFor(kind: BlockKind | 'share', tokens: readonly Token[]): string | undefined {
  const head = tokens[0]?.text ?? '';
  switch (kind) {
    case 'share':
      return 'share';
    case 'outline':
      return 'edge';
    case 'grade':
      return 'graded';
    case 'body':
      if (head === 'taken' && !isMeasure(tokens[1]) && tokens[1]?.text !== 'left') return 'taken';
      return isName(tokens[0]) ? 'measured' : undefined;
    case 'sizes':
      if (head === 'size' && tokens[1]?.tokenType !== t.Length) return 'sizeRow';
      return isName(tokens[0]) ? 'row' : undefined;
    case 'file':
      return head === 'cut' && tokens[1]?.tokenType !== t.Date ? undefined : ruleOf(kind, head);
    default:
      return ruleOf(kind, head);
  }
}

/** With repairs and attempts; what is wrong is said once. */
function readSlowly(raw: Raw, text: string): Read {
  if (raw.tokens[0]!.tokenType === t.Conflict) return broken(raw, conflictAt(raw.tokens[0]!));
  const mended = raw.mended.map((one) => braceRepair(one, raw, text));
  const hopeless = isStray(raw) ? mended[0] : mended.find((one) => one.code === 'too-deep');
  if (hopeless) return broken(raw, hopeless);
  const repaired = repair(raw.kind, raw.tokens);
  if (repaired.fatal) return broken(raw, repaired.fatal);
  const rule = ruleFor(raw.kind, repaired.tokens);
  const found = rule === undefined ? headRespelt(raw, repaired.tokens) : readBy(rule, raw, repaired.tokens);
  if ('refused' in found)
    return broken(raw, mended.find((one) => one.code === 'stray-brace') ?? found.refused);
  const repairs = [...mended, ...repaired.repairs, ...found.repairs];
  const unblocked = repairs.length === 0 && !blockStands({ ...raw, tokens: repaired.tokens });
  if (unblocked) repairs.push(noBlock(raw));
  const problems = repairs.length > 0 ? [problemOf(repairs, raw.from)] : dates(found.node, raw);
  return { node: found.node, problems };
}

type Found = { node: s.StatementNode; repairs: Repair[] } | { refused: Repair };

function readBy(rule: string, raw: Raw, tokens: Token[]): Found {
  const read = (list: Token[]): Reading => readStatement(rule, list, raw.from);
  const reading = read(tokens);
  if (reading.node) return { node: placed(reading.node, raw), repairs: notesOf(reading) };
  const better = tokens.length < 400 ? attempt(tokens, reading.refusal!, read) : undefined;
  if (better) return { node: placed(better.reading.node!, raw), repairs: [better.repair] };
  const elsewhere = raw.kind !== 'share' && misplaced(raw.kind, rule, tokens);
  return {
    refused: elsewhere ? explainHead(raw.kind as BlockKind, tokens) : explain(rule, tokens, reading.refusal),
  };
}

/** In a block of name-led lines: whether the line is a statement of another kind of block. */
function misplaced(kind: BlockKind, rule: string, tokens: Token[]): boolean {
  if (!['edge', 'measured', 'row', 'graded'].includes(rule)) return false;
  return (Object.keys(HEADS) as BlockKind[]).some(
    (other) => other !== kind && ruleOf(other, tokens[0]!.text) !== undefined && begins(other, tokens),
  );
}

/** A head with a letter astray. */
function headRespelt(raw: Raw, tokens: Token[]): Found {
  const kind = raw.kind as BlockKind;
  const [head] = tokens;
  for (const word of isWord(head) ? nearest(head!.text, Object.keys(HEADS[kind])) : []) {
    const list = exchanged(tokens, 0, head!.as(t.W[word as keyof typeof t.W], word));
    const reading = readStatement(ruleOf(kind, word)!, list, raw.from);
    if (reading.node) return { node: placed(reading.node, raw), repairs: [respelling(head!, word)] };
  }
  return headless(raw, tokens) ?? { refused: explainHead(kind, tokens) };
}

/** `front of skirt {`: a header that lost its first word, or has another in its place. */
function headless(raw: Raw, tokens: Token[]): Found | undefined {
  if (raw.kind !== 'file' || !raw.block) return undefined;
  const first = tokens[0]!;
  const head = new t.Token(t.W.piece, 'piece', first.startOffset, first.startOffset - 1);
  for (const list of [[head, ...tokens], exchanged(tokens, 0, first.as(t.W.piece, 'piece'))]) {
    const reading = readStatement('piece', list, raw.from);
    if (!reading.node) continue;
    const put = list.length > tokens.length;
    const edits = [
      { from: first.startOffset, to: put ? first.startOffset : first.end, text: put ? 'piece ' : 'piece' },
    ];
    const message = say`No statement of the file begins so; with \`piece\` before it, it would be a piece.`;
    const { startOffset: from, end: to } = first;
    return {
      node: placed(reading.node, raw),
      repairs: [{ code: 'missing-word', message, from, to, title: say`Write \`piece\``, edits }],
    };
  }
  return undefined;
}

/** A node's own place ends where the statement's words do, whatever was put in to read it. */
function placed(node: s.StatementNode, raw: Raw): s.StatementNode {
  const to = raw.tokens[raw.tokens.length - 1]!.end - raw.from;
  return node.at.to === to ? node : { ...node, at: { from: 0, to } };
}

function notesOf(reading: Reading): Repair[] {
  return reading.notes.map(({ from, to }) => ({
    code: 'fraction-after-sign',
    message: say`A fraction straight after \`*\` or \`/\` can be read two ways: put it in brackets.`,
    from,
    to,
    title: say`Put it in brackets`,
    edits: [
      { from, to: from, text: '(' },
      { from: to, to, text: ')' },
    ],
  }));
}

// ------------------------------------------------------------------------------------------------ problems

function isStray(raw: Raw): boolean {
  return (
    raw.mended.length > 0 &&
    raw.tokens.length === 1 &&
    (raw.tokens[0]!.tokenType === t.CloseBrace || raw.tokens[0]!.tokenType === t.OpenBrace)
  );
}

function braceRepair(mended: Mended, raw: Raw, text: string): Repair {
  const { code, from, to, edit } = mended;
  const header = headerOf(raw, text);
  const messages: Record<Mended['code'], string> = {
    'missing-brace': edit?.text.includes('}')
      ? say`The block of \`${header}\` is opened here and never closed: a \`}\` is missing.`
      : say`\`${header}\` has a block, and the \`{\` that opens it is missing at the end of this line.`,
    'stray-brace':
      text[from] === '{'
        ? say`This \`{\` opens a block where none belongs.`
        : say`This \`}\` closes nothing: no block is open here.`,
    semicolon: edit?.text
      ? say`A statement ends with its line: what follows \`;\` belongs on a line of its own.`
      : say`A statement ends with its line; \`;\` is not needed.`,
    'shared-line': say`\`${text.slice(from, to)}\` begins a statement, and every statement has a line of its own.`,
    'too-deep': say`Blocks stand inside blocks here, deeper than any pattern needs. The line is left unread.`,
  };
  const titles = {
    'missing-brace': say`Put it in`,
    'stray-brace': say`Remove it`,
    semicolon: edit?.text ? say`Begin a new line` : say`Remove it`,
    'shared-line': say`Begin a new line`,
    'too-deep': '',
  };
  return { code, message: messages[code], from, to, title: titles[code], edits: edit ? [edit] : [] };
}

/** A header's first line, as much of it as a message shows. */
function headerOf(raw: Raw, text: string): string {
  const end = Math.min(raw.tokens[raw.tokens.length - 1]!.end, raw.from + 80);
  return text.slice(raw.from, end).split(/[\r\n]/)[0]!;
}

/** A statement beyond what is read of one file. */
export function leftUnread(raw: Raw, says: boolean): Read {
  const [first] = raw.tokens as [Token];
  const { startOffset: from, end: to } = first;
  const message = say`From here on this file is left unread: no more than ${MOST_WEIGHT} statements are read of one, or ${MOST_WEIGHT / PROBLEM_WEIGHT} with a problem. Mend what is said above, or spread it over several files.`;
  const read = broken(raw, { code: 'too-long', message, from, to, title: '', edits: [] });
  return says ? read : { ...read, problems: [] };
}

function noBlock(raw: Raw): Repair {
  const last = raw.tokens[raw.tokens.length - 1]!;
  const message = say`\`${raw.tokens[0]!.text}\` is followed by its block, and none follows here: \`{\` and \`}\` are missing.`;
  const edits = [{ from: last.end, to: last.end, text: ' {\n}' }];
  return {
    code: 'missing-brace',
    message,
    from: raw.from,
    to: last.end,
    title: say`Put in an empty block`,
    edits,
  };
}

/** One problem for everything that had to be mended: the first is told, all are mended by its fix. */
function problemOf(repairs: readonly Repair[], base: number): s.SyntaxProblem {
  const { told, edits } = combined(repairs);
  const moved = edits.map(({ from, to, text }) => ({ at: { from: from - base, to: to - base }, text }));
  const fixes = moved.length > 0 ? [{ title: told.title, edits: moved }] : [];
  return {
    code: told.code,
    message: told.message,
    at: { from: told.from - base, to: told.to - base },
    fixes,
  };
}

function broken(raw: Raw, why: Repair): Read {
  const [head, second] = raw.tokens;
  const at = { from: 0, to: raw.tokens[raw.tokens.length - 1]!.end - raw.from };
  const word = isWord(head) && raw.kind !== 'outline' ? head!.text : undefined;
  const named = raw.kind === 'outline' || raw.kind === 'share' ? head : second;
  const name = named && isName(named) ? nameOf(named, raw.from) : undefined;
  const node: s.BrokenNode = { kind: 'broken', ...(word && { word }), ...(name && { name }), at };
  return { node, problems: [problemOf([why], raw.from)] };
}

function nameOf(token: Token, base: number): s.Name {
  return { text: token.text, at: { from: token.startOffset - base, to: token.end - base } };
}

/** Kinds of statement whose line holds a date: of measuring, of the pattern's state, of a fitting. */
const DATED: ReadonlySet<s.StatementNode['kind']> = new Set(['taken', 'pattern', 'later']);

/** A date that the calendar lacks. */
function dates(node: s.StatementNode, raw: Raw): s.SyntaxProblem[] {
  const token =
    DATED.has(node.kind) && raw.tokens.find(({ tokenType, text }) => tokenType === t.Date && !isDay(text));
  if (!token) return [];
  const message = say`The calendar has no ${token.text}. A date is written year, month, day: \`2026-09-14\`.`;
  const why: Repair = {
    code: 'no-such-date',
    message,
    from: token.startOffset,
    to: token.end,
    title: '',
    edits: [],
  };
  return [problemOf([why], raw.from)];
}

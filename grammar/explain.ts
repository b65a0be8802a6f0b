/** A refusal in words: what stands there, what was expected, and one next step. */
import { inWords, say } from './say';
import type { TokenType } from 'chevrotain';
import { missingBracket, unknownSign } from './attempts';
import type { Refusal } from './refusals';
import { blockWords, FORMS } from './forms';
import { endsValue } from './heads';
import type { SyntaxProblemCode } from './problems';
import type { Repair } from './mending';
import * as t from './tokens';
import { isMeasure, isName, type Token } from './tokens';
import { HEADS, ruleOf, type BlockKind } from './words';

function said(code: SyntaxProblemCode, message: string, from: number, to: number): Repair {
  return { code, message, from, to, title: '', edits: [] };
}

/** Why the rule refused the tokens. */
export function explain(rule: string, tokens: readonly Token[], refusal: Refusal | undefined): Repair {
  const last = tokens[tokens.length - 1]!;
  const unpaired = unpairedBracket(tokens);
  if (unpaired) return unpaired;
  const token = refusal && tokens.includes(refusal.token) ? refusal.token : undefined;
  if (token?.tokenType === t.Odd) return { ...unknownSign(token), edits: [], title: '' };
  const next = ` ${nextStep(rule)}`;
  const expected = refusal ? expectation(refusal.expected) : '';
  if (!token) {
    const wanted = expected ? say`${expected} should follow.` : say`more should follow.`;
    return said(
      'unfinished',
      say`The line stops after \`${shown(last)}\`, where ${wanted}${next}`,
      last.startOffset,
      last.end,
    );
  }
  const before = tokens[tokens.indexOf(token) - 1];
  const after = before ? say`After \`${shown(before)}\` ` : say`Here `;
  if (rule === 'share' && token.text === 'when') {
    const message = say`What a divide depends on stands before \`into\`, not after a part of it: \`divide front at style-line when closure = zip into yoke { … }, lower { … }\`.`;
    return said('out-of-place', message, token.startOffset, token.end);
  }
  if (!expected && before && endsValue(before) && beginsValue(token)) {
    const message = say`\`${shown(before)}\` and \`${shown(token)}\` touch: a word, a sign or a comma should stand between them.${next}`;
    return said('words-touch', message, token.startOffset, token.end);
  }
  if (rule === 'band' && token.tokenType === t.Comma && before && isName(before)) {
    // a finish takes its edges with commas: whoever has just written one does the same here
    const message = say`The edges of a band follow one another round the body and are strung with \`+\`, not with a comma.${next}`;
    return said('not-understood', message, token.startOffset, token.end);
  }
  const wanted = expected
    ? say`${after}${expected} should stand, not \`${shown(token)}\`.`
    : say`${after}\`${shown(token)}\` can’t follow.`;
  return said('not-understood', wanted + next, token.startOffset, token.end);
}

function unpairedBracket(tokens: readonly Token[]): Repair | undefined {
  const open: Token[] = [];
  for (const token of tokens) {
    if (token.tokenType === t.Open) open.push(token);
    if (token.tokenType === t.Close && open.pop() === undefined) {
      return said(
        'stray-bracket',
        say`This bracket closes nothing: no \`(\` stands before it.`,
        token.startOffset,
        token.end,
      );
    }
  }
  const last = open.pop();
  return last && { ...missingBracket(last, last.end), title: '', edits: [] };
}

function shown(token: Token): string {
  return token.image.length > 30 ? `${token.image.slice(0, 28)}…` : token.image;
}

function beginsValue(token: Token): boolean {
  return (
    isMeasure(token) ||
    isName(token) ||
    token.tokenType === t.Open ||
    token.tokenType === t.Func ||
    token.tokenType === t.Text
  );
}

/** The form of the statement, and one example of it. */
function nextStep(rule: string): string {
  const form = FORMS[rule];
  if (form === undefined) return '';
  const ways = form.form.split(' or ').join(say`\` or \``);
  return say`${inWords(form.what)} is written \`${ways}\`, such as \`${form.example}\`.`;
}

const VALUE = new Set(['Measure', 'Func', 'Open', 'Name', 'Minus']);

/** What could have stood there, in a few words; '' where too much could have. */
function expectation(types: readonly TokenType[]): string {
  const names = new Set(types.map((type) => type.name));
  const value = names.has('Measure') && names.has('Open');
  const point = !value && names.has('Name') && names.has('Open');
  const words = types
    .filter(
      (type) =>
        !((value && VALUE.has(type.name)) || (point && (type.name === 'Name' || type.name === 'Open'))),
    )
    .map((type) =>
      /^[a-z]/.test(type.LABEL ?? '') && !type.name.startsWith('Word_')
        ? inWords(type.LABEL!)
        : `\`${type.LABEL}\``,
    );
  const list = value ? [say`a value`, say`a name`] : point ? [say`a name`, say`a bracket`] : [];
  if (words.length + list.length > 7) return either(list);
  return either([...list, ...words]);
}

function either(words: string[]): string {
  if (words.length < 2) return words[0] ?? '';
  return say`${words.slice(0, -1).join(', ')} or ${words[words.length - 1]!}`;
}

/** A line whose head its block does not know. */
export function explainHead(kind: BlockKind, tokens: readonly Token[]): Repair {
  const head = tokens[0]!;
  const [from, to] = [head.startOffset, head.end];
  const homes = (Object.keys(HEADS) as BlockKind[]).filter(
    (other) => other !== kind && ruleOf(other, head.text) !== undefined,
  );
  if (homes.length > 0) {
    const places = either(homes.slice(0, 3).map((home) => blockWords(home)));
    const here = kind === 'file' ? say`outside every block` : say`in ${blockWords(kind)}`;
    const message = say`\`${head.text}\` belongs in ${places}; this line stands ${here}. Move it there, or look for a brace too many above.`;
    return said('out-of-place', message, from, to);
  }
  if (head.tokenType === t.Odd) return { ...unknownSign(head), edits: [], title: '' };
  const where =
    kind === 'file' ? say`Outside the blocks no statement` : say`No statement of ${blockWords(kind)}`;
  const message = say`${where} begins with \`${shown(head)}\`. Its lines begin with ${firstHeads(kind)}.`;
  return said('unknown-statement', message, from, to);
}

function firstHeads(kind: BlockKind): string {
  const heads = Object.keys(HEADS[kind]);
  if (kind === 'outline') return say`the name of an edge, such as \`side along hip-curve to hip-side\``;
  if (heads.length < 2) return say`a name`;
  return either([...heads.slice(0, 5).map((head) => `\`${head}\``), say`another word of the reference`]);
}

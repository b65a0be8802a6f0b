/** What a function takes, and how a statement is written, while it is being written. */
import { inWords, say } from '../../grammar/say';
import { FORMS, ruleOf, type SourceFile } from '../../grammar';
import { inCommentOrText, lineBefore, scopeAt } from './scope';

export interface Signature {
  readonly label: string;
  readonly doc: string;
  /** Stretches of the label, one a parameter. */
  readonly parameters: readonly (readonly [number, number])[];
  /** The parameter that the cursor stands in. */
  readonly active?: number;
}

interface FunctionForm {
  readonly takes: readonly string[];
  readonly doc: string;
  /** The last parameter may come again and again. */
  readonly more?: boolean;
}

const takes = (words: string, doc: string, more = false): FunctionForm => ({
  takes: words.split(', '),
  doc,
  more,
});

/** Every function of the language; a test compares the list. */
export const SIGNATURES: Readonly<Record<string, FunctionForm>> = {
  length: takes('LINE', 'The length of a line, a curve or an edge. Of an edge: as it is sewn, darts closed.'),
  drawn: takes('EDGE', 'The length of an edge on paper, with the mouths of its darts.'),
  distance: takes('POINT, POINT', 'The straight distance between two points.'),
  slope: takes('LINE', 'The angle of a line against the level.'),
  angle: takes('LINE, LINE', 'The angle between two lines.'),
  area: takes('PIECE', 'The area that a piece or a closed curve encloses.'),
  round: takes('VALUE, STEP', 'The value to the nearest whole step.'),
  min: takes('VALUE, VALUE', 'The smallest of its values.', true),
  max: takes('VALUE, VALUE', 'The largest of its values.', true),
  abs: takes('VALUE', 'The value without its sign.'),
  sqrt: takes('VALUE', 'The square root; of an area, the side of a square as large.'),
  sin: takes('ANGLE', 'The sine of an angle.'),
  cos: takes('ANGLE', 'The cosine of an angle.'),
  tan: takes('ANGLE', 'The tangent of an angle.'),
  asin: takes('RATIO', 'The angle of a sine.'),
  acos: takes('RATIO', 'The angle of a cosine.'),
  atan: takes('RATIO', 'The angle of a tangent.'),
  if: takes('CONDITION, THEN, ELSE', 'One value where the condition holds, another where it does not.'),
};

/** The function whose brackets the cursor stands in; undefined where there is none. */
export function functionAt(text: string, offset: number): Signature | undefined {
  const before = lineBefore(text, offset);
  if (inCommentOrText(before)) return undefined;
  let depth = 0;
  let commas = 0;
  for (let i = before.length - 1; i >= 0; i--) {
    if (before[i] === ')') depth++;
    else if (before[i] === ',' && depth === 0) commas++;
    else if (before[i] === '(' && depth > 0) depth--;
    else if (before[i] === '(') {
      const name = /[\p{L}-]+$/u.exec(before.slice(0, i))?.[0];
      if (name !== undefined && Object.hasOwn(SIGNATURES, name)) return ofFunction(name, commas);
      commas = 0; // a bracket of its own, within a call perhaps
    }
  }
  return undefined;
}

function ofFunction(name: string, commas: number): Signature {
  const form = SIGNATURES[name]!;
  const label = `${name}(${form.takes.join(', ')}${form.more === true ? ', …' : ''})`;
  let at = name.length + 1;
  const parameters = form.takes.map((word): readonly [number, number] => {
    const span = [at, at + word.length] as const;
    at += word.length + 2;
    return span;
  });
  const last = form.more === true ? form.takes.length - 1 : Infinity;
  return { label, doc: inWords(form.doc), parameters, active: Math.min(commas, last) };
}

/** How the statement under the cursor is written, by its first word. */
export function formAt(file: SourceFile | undefined, text: string, offset: number): Signature | undefined {
  const before = lineBefore(text, offset);
  if (inCommentOrText(before)) return undefined;
  const [, head = ''] = /^\s*([\p{L}-]+)\s/u.exec(before) ?? [];
  const { kind } = scopeAt(file, offset);
  const rule = kind === 'outline' && head !== '' ? 'edge' : ruleOf(kind, head);
  const form = rule === undefined ? undefined : FORMS[rule];
  if (form === undefined) return undefined;
  const label = form.form.replace(/^WORD /, `${head} `);
  return { label, doc: say`${inWords(form.what)}. For example: ${form.example}`, parameters: slots(label) };
}

/** The words in capitals are what an author puts in. */
const slots = (label: string): readonly (readonly [number, number])[] =>
  [...label.matchAll(/\b[A-Z]{2,}(?:\.[A-Z]+)?\b/g)].map((found) => [
    found.index,
    found.index + found[0].length,
  ]);

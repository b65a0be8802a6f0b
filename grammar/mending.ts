/** A repair: what it says of a statement, and the edits by which the text becomes what was meant. */
import { say } from './say';
import type { SyntaxProblemCode } from './problems';

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

export function substitution(code: SyntaxProblemCode, message: string, at: Edit): Repair {
  const title = at.text === '' ? say`Remove it` : say`Write \`${at.text.trim()}\``;
  return { code, message, from: at.from, to: at.to, title, edits: [at] };
}

/**
 * The repairs of one statement as edits that nowhere overlap, in the order of the text: a later repair rests on the
 * earlier ones, so that its words already hold theirs, and a repair that is swallowed whole need not be told.
 */
export function combined(repairs: readonly Repair[]): { readonly told: Repair; readonly edits: Edit[] } {
  const all = repairs.flatMap((repair, order) => repair.edits.map((edit) => ({ edit, repair, order })));
  all.sort((a, b) => a.edit.from - b.edit.from || a.edit.to - b.edit.to);
  const kept: typeof all = [];
  for (const one of all) {
    let before = kept.at(-1);
    while (before && overlap(before.edit, one.edit) && before.order < one.order) {
      kept.pop();
      before = kept.at(-1);
    }
    if (!before || !overlap(before.edit, one.edit)) kept.push(one);
  }
  const left = new Set(kept.map(({ repair }) => repair));
  const told = repairs.find((repair) => repair.edits.length === 0 || left.has(repair))!;
  return { told, edits: joined(kept.map(({ edit }) => edit)) };
}

/** What is put in where another edit begins is one edit with it: which of the two comes first would be anyone's guess. */
function joined(edits: readonly Edit[]): Edit[] {
  const out: Edit[] = [];
  for (const { from, to, text } of edits) {
    const before = out.at(-1);
    if (before?.to === from && before.from === from)
      out[out.length - 1] = { from, to, text: before.text + text };
    else out.push({ from, to, text });
  }
  return out;
}

const overlap = (a: Edit, b: Edit): boolean => a.from < b.to && b.from < a.to;

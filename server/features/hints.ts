/** Figures shown between the words of a text: lengths of edges, both lengths of seams, what a `let` comes to. */
import { say } from '../../grammar/say';
import type { SourceFile, Statement, TopLevel } from '../../grammar/syntax';
import type { Pattern, Piece } from '../drafting/model';
import { print, printLength } from '../drafting/values/quantity';

export interface Hint {
  readonly offset: number;
  readonly words: string;
}

/** Which hints are wanted; none at all where `enabled` is false. */
export interface HintKinds {
  readonly enabled: boolean;
  readonly edges: boolean;
  readonly seams: boolean;
  readonly values: boolean;
}

export const ALL_HINTS: HintKinds = { enabled: true, edges: true, seams: true, values: true };

/** The hints between two offsets of the pattern's own file, in order of place. */
export function hints(
  pattern: Pattern,
  file: SourceFile,
  { from, to }: { readonly from: number; readonly to: number },
  kinds: HintKinds,
): readonly Hint[] {
  if (!kinds.enabled) return [];
  const tops = file.items.filter(({ offset, text }) => offset <= to && from <= offset + text.length);
  const found = tops.flatMap((top) => hintsIn(pattern, top, kinds));
  return found.filter(({ offset }) => from <= offset && offset <= to).sort((a, b) => a.offset - b.offset);
}

function hintsIn(pattern: Pattern, top: TopLevel, kinds: HintKinds): readonly Hint[] {
  const { statement } = top;
  const { node } = statement;
  switch (node.kind) {
    case 'seam':
      return kinds.seams ? seamHint(pattern, top, node.name.text) : [];
    case 'let':
      return kinds.values ? valueHint(pattern, top, statement, '') : [];
    case 'draft':
    case 'piece':
    case 'lining': {
      const { text } = node.name;
      const inner = statement.block ?? [];
      const values = kinds.values ? inner.flatMap((line) => valueHint(pattern, top, line, `${text}/`)) : [];
      return kinds.edges ? [...values, ...edgeHints(pattern, top, text)] : values;
    }
    default:
      return [];
  }
}

/** After the whole statement, with the sign that begins what was worked out; a plain figure says itself. */
function valueHint(pattern: Pattern, top: TopLevel, statement: Statement, scope: string): readonly Hint[] {
  const { node } = statement;
  if (node.kind !== 'let' || node.value.kind === 'quantity') return [];
  const value = pattern.info(`${scope}=${node.name.text}`)?.value;
  if (value === undefined) return [];
  const words = value.kind === 'text' ? value.text : print(value, pattern.unit);
  return [{ offset: top.offset + statement.start + node.at.to, words: `= ${words}` }];
}

function edgeHints(pattern: Pattern, top: TopLevel, name: string): readonly Hint[] {
  const drawn = pattern.pieces.filter(({ source }) => source === name);
  const lines = (top.statement.block ?? []).flatMap(({ node, block = [] }) =>
    node.kind === 'outline' ? block : [],
  );
  return lines.flatMap((line) => {
    const { node } = line;
    if (node.kind !== 'edge') return [];
    const words = [...new Set(drawn.flatMap((piece) => edgeWords(pattern, piece, node.name.text)))];
    if (words.length === 0) return [];
    return [{ offset: top.offset + line.start + node.name.at.to, words: words.join(say` and `) }];
  });
}

function edgeWords({ unit }: Pattern, { edges, side, ...piece }: Piece, name: string): readonly string[] {
  const edge = edges.find((one) => one.name === name);
  if (edge === undefined) return [];
  const of = side !== undefined && piece.base !== piece.name ? ` ${side}` : '';
  return [`${printLength(edge.sewn, unit)}${of}`];
}

function seamHint(pattern: Pattern, { offset, statement }: TopLevel, name: string): readonly Hint[] {
  const { unit } = pattern;
  const seams = pattern.seams.filter(({ source }) => source === `seam:${name}`);
  const words = seams.map(({ leftLength, rightLength, itsPair, side }) => {
    const lengths = itsPair
      ? printLength(leftLength, unit)
      : say`${printLength(leftLength, unit)} to ${printLength(rightLength, unit)}`;
    return seams.length > 1 && side !== undefined ? `${lengths} ${side}` : lengths;
  });
  if (words.length === 0) return [];
  return [{ offset: offset + statement.start + statement.node.at.to, words: words.join(', ') }];
}

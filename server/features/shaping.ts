/** Reshapes a text without changing what it comes to: names an expression, or writes a value where its name stood. */
import { say } from '../../grammar/say';
import type { Expr, Span, Statement, TopLevel } from '../../grammar/syntax';
import type { FileRange, Pattern } from '../drafting/model';
import type { Meaning } from './meaning';
import { occurrenceAt, occurrencesOf, topAt } from './occurrences';
import type { Names } from './names';

export interface Shaping {
  readonly title: string;
  /** `write` adds to the pattern or changes what it comes to; the others leave that as it is. */
  readonly kind: 'extract' | 'inline' | 'write';
  readonly edits: readonly (FileRange & { readonly text: string })[];
}

/**
 * What can be done with the words between two offsets.
 *
 * @param elsewhere whether another file speaks of a thing; asked only where it matters
 */
export function shapings(
  pattern: Pattern,
  names: Names,
  text: string,
  { from, to }: Span,
  elsewhere: (meaning: Meaning) => boolean = () => false,
): readonly Shaping[] {
  return [
    ...named(pattern, names, text, { from, to }),
    ...(from === to ? inlined(names, text, from, elsewhere) : []),
  ];
}

// ------------------------------------------------------------------------------------------ naming an expression

/** Kinds of expressions that are worked out to one value. */
const WORKED: ReadonlySet<Expr['kind']> = new Set([
  'sum',
  'product',
  'call',
  'bracket',
  'negative',
  'quantity',
]);

function named({ uri }: Pattern, names: Names, text: string, span: Span): readonly Shaping[] {
  const top = topAt(names.root.topLevels, span.from);
  const line = top && lineIn(top, span.from - top.offset);
  if (top === undefined || line === undefined || span.from === span.to) return [];
  const start = top.offset + line.start;
  const expr = exprAt(line.node, { from: span.from - start, to: span.to - start });
  if (expr === undefined || !standsAlone(line, expr)) return [];
  const indent = /[ \t]*$/.exec(text.slice(0, start))![0];
  const name = freeName(names);
  const written = text.slice(span.from, span.to);
  const value = /^\((.*)\)$/s.test(written) && expr.kind === 'bracket' ? written.slice(1, -1) : written;
  return [
    {
      title: say`Name this value (let ${name} = …)`,
      kind: 'extract',
      edits: [
        { uri, from: start, to: start, text: `let ${name} = ${value}\n${indent}` },
        { uri, ...span, text: name },
      ],
    },
  ];
}

/** The line of a draft or of the file that holds a place; lines of a piece stand in an order that is theirs. */
function lineIn({ statement }: TopLevel, at: number): Statement | undefined {
  if (statement.node.kind !== 'draft') return statement.block === undefined ? statement : undefined;
  return statement.block?.find(({ start, text }) => start <= at && at <= start + text.length);
}

/** A `let` may stand before the definitions of the file and of a draft. */
const standsAlone = ({ node }: Statement, expr: Expr): boolean =>
  ['let', 'expect', 'shape', 'circle'].includes(node.kind) && !('value' in node && node.value === expr);

/** The expression that is written exactly between two places of its statement. */
function exprAt(node: object, span: Span): Expr | undefined {
  const { at, kind } = node as { at?: Span; kind?: Expr['kind'] };
  if (at !== undefined && (span.from < at.from || span.to > at.to)) return undefined;
  if (at?.from === span.from && at.to === span.to && kind !== undefined && WORKED.has(kind))
    return node as Expr;
  for (const value of Object.values(node)) {
    const found = typeof value === 'object' && value !== null ? exprAt(value as object, span) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

/** A name that nothing in the file bears; the person gives it a better one at once. */
function freeName({ root }: Names): string {
  const taken = new Set(root.all().map(({ name }) => name));
  for (let i = 1; ; i++) {
    const name = i === 1 ? 'new-value' : `new-value${i}`;
    if (!taken.has(name)) return name;
  }
}

// ------------------------------------------------------------------------------------------------ inlining a let

/** Every place of a `let` that its own file alone speaks of takes what stands behind its equals sign. */
function inlined(
  names: Names,
  text: string,
  offset: number,
  elsewhere: (meaning: Meaning) => boolean,
): readonly Shaping[] {
  const found = occurrenceAt(names, offset);
  const { key, uri, kind, name } = found?.meaning ?? {};
  if (found === undefined || kind !== 'value' || uri !== names.uri) return [];
  const id = key!.slice(uri.length + 1);
  const declaration = names.root.get(id);
  const node = declaration?.statement.node;
  const uses = occurrencesOf(names, found.meaning).filter(({ defines }) => !defines);
  if (declaration === undefined || node?.kind !== 'let' || uses.length === 0) return [];
  // from outside its draft a value is called by two names, which stand for one thing
  if (uses.some(({ from }) => text[from - 1] === '.')) return [];
  if (id.includes('/') && !within(declaration.top, uses)) return [];
  if (elsewhere(found.meaning)) return [];
  const start = declaration.top.offset + declaration.statement.start;
  const value = text.slice(start + node.value.at.from, start + node.value.at.to);
  const simple = node.value.kind === 'quantity' || node.value.kind === 'ref' || node.value.kind === 'call';
  const put = simple || node.value.kind === 'bracket' ? value : `(${value})`;
  return [
    {
      title: say`Write what ${name!} is wherever it stands`,
      kind: 'inline',
      edits: [
        wholeLine(names.uri, text, start, start + node.at.to),
        ...uses.map(({ from, to }) => ({ uri: names.uri, from, to, text: put })),
      ],
    },
  ];
}

/** A value of a draft means the same only inside that draft. */
const within = ({ offset, text }: TopLevel, places: readonly Span[]): boolean =>
  places.every(({ from }) => offset <= from && from <= offset + text.length);

/** The line of a statement with its line end, taken out. */
function wholeLine(uri: string, text: string, from: number, to: number): FileRange & { text: string } {
  const start = Math.max(text.lastIndexOf('\n', from - 1), text.lastIndexOf('\r', from - 1)) + 1;
  const end = /[^\r\n]*(?:\r\n|\r|\n)?/y;
  end.lastIndex = to;
  return { uri, from: start, to: to + (end.exec(text)?.[0].length ?? 0), text: '' };
}

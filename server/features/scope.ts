/** Where in the text a cursor stands: the blocks round it, and the words before it on its line. */
import { lineStart } from '../../grammar/text-tokens';
import type { BlockKind } from '../../grammar/words';
import type { SourceFile, Statement, StatementNode } from '../../grammar/syntax';

export interface Scope {
  /** What the innermost block round the cursor holds. */
  readonly kind: BlockKind;
  /** The statement that owns the outermost block: a draft or a piece; undefined at top level. */
  readonly owner: StatementNode | undefined;
}

/** The block kind that each owner opens; shapes and values of a worked piece stand in a `work` block. */
function blockOf(node: StatementNode): BlockKind | undefined {
  switch (node.kind) {
    case 'draft':
    case 'body':
    case 'sizes':
      return node.kind;
    case 'piece':
      return node.workedFrom === undefined ? 'piece' : 'work';
    case 'lining':
    case 'divide':
      return 'work';
    case 'outline':
    case 'hole':
      return 'outline';
    default:
      return undefined;
  }
}

/** The scope at an offset of a file. */
export function scopeAt(file: SourceFile | undefined, offset: number): Scope {
  const top = file?.items.find((item) => holds(item.statement, item.offset, offset));
  if (top === undefined) return { kind: 'file', owner: undefined };
  let kind: BlockKind = blockOf(top.statement.node) ?? 'file';
  let inner = innerBlock(top.statement, top.offset, offset);
  while (inner !== undefined) {
    kind = blockOf(inner.node) ?? kind;
    inner = innerBlock(inner, top.offset, offset);
  }
  return { kind, owner: top.statement.node };
}

/** True inside a statement's block: after its own text, before its closing brace. */
function holds(statement: Statement, topOffset: number, offset: number): boolean {
  if (statement.block === undefined) return false;
  const start = topOffset + statement.start;
  return start + statement.text.trimEnd().length < offset && offset < topOffset + statement.end;
}

const innerBlock = (statement: Statement, topOffset: number, offset: number) =>
  statement.block?.find((line) => holds(line, topOffset, offset));

/** The text of the line before an offset. */
export function lineBefore(text: string, offset: number): string {
  return text.slice(lineStart(text, offset), offset);
}

/** The words of a statement before an offset: its line, and those before that go on in it. */
export function statementBefore(text: string, offset: number): string {
  let start = offset - lineBefore(text, offset).length;
  for (let lines = 0; lines < MOST_LINES && start > 0; lines++) {
    const end = start - (text.slice(Math.max(0, start - 2), start) === '\r\n' ? 2 : 1);
    const previous = lineBefore(text, end);
    const goesOn =
      /^\s*then\b/.test(text.slice(start, offset)) || /[,=+*/-]\s*$/.test(withoutRemark(previous));
    if (!goesOn) break;
    start = end - previous.length;
  }
  return text.slice(start, offset);
}

/** The nearest line above that holds more than a remark, without its remark. */
export function lineAbove(text: string, offset: number): string {
  let start = offset - lineBefore(text, offset).length;
  while (start > 0) {
    const end = start - (text.slice(Math.max(0, start - 2), start) === '\r\n' ? 2 : 1);
    const line = lineBefore(text, end);
    const words = withoutRemark(line).trimEnd();
    if (words !== '') return words;
    start = end - line.length;
  }
  return '';
}

/** No statement that a person writes on has more. */
const MOST_LINES = 30;

/** True where the line so far has opened a comment or a text that it has not closed. */
export function inCommentOrText(before: string): boolean {
  const { remark, open } = readThrough(before);
  return remark !== undefined || open;
}

/** A line up to its remark: what a remark ends in says nothing of whether the statement goes on. */
const withoutRemark = (line: string): string => line.slice(0, readThrough(line).remark);

/** Where a remark begins on a line, and whether a text is left open at its end. */
function readThrough(line: string): { readonly remark: number | undefined; readonly open: boolean } {
  let open = false;
  for (let i = 0; i < line.length; i++) {
    if (line[i] === '"' && line[i - 1] !== '\\') open = !open;
    if (line[i] === '#' && !open) return { remark: i, open };
  }
  return { remark: undefined, open };
}

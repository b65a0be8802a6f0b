/** Where the thing under the cursor is defined. */
import type { SourceFile, Span, Statement } from '../../grammar/syntax';
import type { FileRange, Pattern } from '../drafting/model';
import { definedBy } from './defining';
import { namedAt } from './hover';
import type { Names } from './names';
import { occurrenceAt } from './occurrences';

/** A file of the pattern, read. */
export interface ReadFile {
  readonly uri: string;
  readonly file: SourceFile;
}

/** Whose names are followed: those of the file, and of all that it is tied to once another has to be looked into. */
export interface Following {
  readonly names: Names;
  readonly tied: () => readonly Names[];
}

/** The place of the definition that the name at the offset stands for; a measurement is where the body has it. */
export function definition(
  pattern: Pattern,
  uri: string,
  text: string,
  offset: number,
  files: readonly ReadFile[],
  following: Following,
): FileRange | undefined {
  const { names, tied } = following;
  const found = occurrenceAt(names, offset);
  if (found !== undefined && found.meaning.kind !== 'measurement') {
    const one = definedBy(found.meaning, [names]) ?? definedBy(found.meaning, tied());
    if (one !== undefined) return { uri: one.names.uri, from: one.name.from, to: one.name.to };
  }
  const info = namedAt(pattern, uri, text, offset);
  const name = found?.meaning.kind === 'measurement' ? found.meaning.name : undefined;
  if (info === undefined && name === undefined) return byWord(uri, offset, files);
  const place = info && pattern.locate(info.source);
  if (place !== undefined || (name === undefined && info?.kind !== 'measurement')) return place;
  const inBody = pattern.body && rowOf(pattern.body.name, name ?? info!.name, files);
  // a body's own line leads to itself where nobody is drafted for
  return inBody ?? (found?.defines === true ? { uri, from: found.from, to: found.to } : undefined);
}

/** Names that stand for no value and no shape: the body of `drafted for`, the table of a body, the file of a `use`. */
function byWord(uri: string, offset: number, files: readonly ReadFile[]): FileRange | undefined {
  const own = files.find((file) => file.uri === uri)?.file;
  const top = own?.items.find((item) => item.offset <= offset && offset <= item.offset + item.text.length);
  if (top === undefined) return undefined;
  const { node, start } = top.statement;
  const over = ({ at }: { at: Span }) => within(at, offset - top.offset - start);
  if (node.kind === 'drafted-for' && over(node.body)) return bodyPlace(node.body.text, files);
  if (node.kind === 'body' && node.from && over(node.from.table))
    return bodyPlace(node.from.table.text, files);
  return node.kind === 'use' && over(node.path) ? fileNamed(node.path.text, files) : undefined;
}

const within = ({ from, to }: Span, at: number) => from <= at && at <= to;

function bodyPlace(name: string, files: readonly ReadFile[]): FileRange | undefined {
  for (const { uri, file } of files) {
    for (const { offset, statement } of file.items) {
      const { node } = statement;
      if ((node.kind !== 'body' && node.kind !== 'sizes') || node.name.text !== name) continue;
      const start = offset + statement.start;
      return { uri, from: start + node.name.at.from, to: start + node.name.at.to };
    }
  }
  return undefined;
}

/** The start of the file that a `use` brings in: the one whose address ends as the path does. */
function fileNamed(path: string, files: readonly ReadFile[]): FileRange | undefined {
  const end = encodeURI(path.replace(/^(\.{1,2}\/)+/, ''));
  const found = files.find(({ uri }) => uri.endsWith(`/${end}`));
  return found && { uri: found.uri, from: 0, to: 0 };
}

/** The line of a measurement in a body or table, or in the one it is taken from. */
function rowOf(
  body: string,
  measurement: string,
  files: readonly ReadFile[],
  depth = 0,
): FileRange | undefined {
  for (const { uri, file } of files) {
    for (const { offset, statement } of file.items) {
      const { node } = statement;
      if ((node.kind !== 'body' && node.kind !== 'sizes') || node.name.text !== body) continue;
      const row = (statement.block ?? []).find((line) => nameOf(line) === measurement);
      if (row !== undefined) return placeOf(uri, offset, row);
      const parent = node.kind === 'body' ? node.from?.table.text : undefined;
      return parent === undefined || depth > 20 ? undefined : rowOf(parent, measurement, files, depth + 1);
    }
  }
  return undefined;
}

const nameOf = ({ node }: Statement) =>
  node.kind === 'measured' || node.kind === 'row' ? node.name.text : undefined;

function placeOf(uri: string, offset: number, { node, start }: Statement): FileRange | undefined {
  if (node.kind !== 'measured' && node.kind !== 'row') return undefined;
  const { at } = node.name;
  return { uri, from: offset + start + at.from, to: offset + start + at.to };
}

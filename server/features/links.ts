/** The files that a text names and that a click may open: the paths of its `use` lines. */
import type { SourceFile } from '../../grammar/syntax';

export interface PathLink {
  readonly from: number;
  readonly to: number;
  /** As written between the quotes. */
  readonly path: string;
}

export function links(file: SourceFile): readonly PathLink[] {
  return file.items.flatMap(({ offset, statement }) => {
    const { node, start } = statement;
    if (node.kind !== 'use' || node.path.text === '') return [];
    const { at, text } = node.path;
    // the quotes are no part of the path
    const from = offset + start + at.from + 1;
    return [{ from, to: Math.max(from, offset + start + at.to - 1), path: text }];
  });
}

/** The findings of a pattern as one file shows them: its own, and what it rests on in the files that it uses. */
import { say } from '../../grammar/say';
import type { SourceFile, UseNode } from '../../grammar/syntax';
import type { Pattern, PlacedFinding } from '../drafting/model';

/**
 * The findings to show in the pattern's own file. An error of a used file is shown at the `use` line that brings it
 * in, and leads to its true place; warnings and notes about a used file are that file's own.
 */
export function problemsOf(
  pattern: Pattern,
  findings: readonly PlacedFinding[],
  file: SourceFile | undefined,
): readonly PlacedFinding[] {
  return findings
    .filter(({ place, severity }) => place.uri === pattern.uri || severity === 'error')
    .map((finding) => (finding.place.uri === pattern.uri ? finding : atUse(pattern, finding, file)));
}

function atUse(pattern: Pattern, finding: PlacedFinding, file: SourceFile | undefined): PlacedFinding {
  const { from, to } = useLine(file, finding.place.uri);
  return {
    ...finding,
    message: say`In a file that this pattern uses: ${finding.message}`,
    place: { uri: pattern.uri, from, to },
    related: [{ place: finding.place, message: finding.message }, ...finding.related],
    fixes: [],
  };
}

/** The path of the `use` that most likely brought a file in: the same file name, else the first `use` there is. */
function useLine(file: SourceFile | undefined, uri: string): { from: number; to: number } {
  const uses = (file?.items ?? []).flatMap(({ offset, statement }) =>
    statement.node.kind === 'use' ? [{ node: statement.node, start: offset + statement.start }] : [],
  );
  const found = uses.find(({ node }) => lastName(node.path.text) === lastName(uri)) ?? uses[0];
  if (found === undefined) return { from: 0, to: 0 };
  const { at }: UseNode['path'] = found.node.path;
  return { from: found.start + at.from, to: found.start + at.to };
}

function lastName(path: string): string {
  const last = path.split('/').at(-1) ?? '';
  try {
    return decodeURIComponent(last);
  } catch {
    return last; // a percent sign that encodes nothing
  }
}

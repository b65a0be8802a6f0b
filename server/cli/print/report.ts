/** What a check found, with its places in lines and characters: one record behind every way of printing it. */
import type { FileRange, PlacedFinding } from '../../drafting/model';
import type { Severity } from '../../drafting/finding';
import { Lines, type PositionRange } from '../../features/lines';

export interface Place {
  readonly file: string;
  readonly range: PositionRange;
}

export interface Problem extends Place {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  /** Why the pattern lets it stand, where it does. */
  readonly accepted?: string;
  /** The whole line that the problem begins on. */
  readonly line: string;
  readonly related: readonly (Place & { readonly message: string })[];
  /** Titles of the repairs that are known. */
  readonly steps: readonly string[];
}

export interface Report {
  /** The checked files, as they were named. */
  readonly files: readonly string[];
  readonly problems: readonly Problem[];
}

/** Looks up a file of a pattern: how it is printed, and its text. */
export interface Library {
  shown(uri: string): string;
  text(uri: string): string | undefined;
}

/** Gathers findings of several patterns; what two of them find at the same place of a used file is said once. */
export function gather(
  files: readonly string[],
  findings: readonly PlacedFinding[],
  library: Library,
): Report {
  const lines = new Map<string, Lines>();
  const linesOf = (uri: string) => {
    if (!lines.has(uri)) lines.set(uri, new Lines(library.text(uri) ?? ''));
    return lines.get(uri)!;
  };
  const place = ({ uri, from, to }: FileRange): Place => ({
    file: library.shown(uri),
    range: linesOf(uri).range(from, to),
  });
  const once = new Map<string, Problem>();
  for (const finding of findings) {
    const found = problem(finding, place, linesOf(finding.place.uri));
    once.set(JSON.stringify([found.file, found.range, found.code, found.message]), found);
  }
  return { files, problems: [...once.values()] };
}

function problem(finding: PlacedFinding, place: (at: FileRange) => Place, lines: Lines): Problem {
  const { code, severity, message, related, fixes, accepted } = finding;
  const at = place(finding.place);
  return {
    ...at,
    code,
    severity,
    message,
    ...(accepted !== undefined && { accepted }),
    line: lines.line(at.range.start.line),
    related: related.map((other) => ({ ...place(other.place), message: other.message })),
    steps: accepted === undefined ? fixes.map(({ title }) => title) : [],
  };
}

export const countOf = ({ problems }: Report, severity: Severity): number =>
  problems.filter((found) => found.severity === severity).length;

/** Runs the checks over a pattern, each thing once while it stays the same. */
import type { Finding, Severity, SourcedFinding } from '../drafting/finding';
import type { Pattern, PlacedFinding } from '../drafting/model';
import type { Judged } from './check';
import { catalogue, severityOf } from './catalogue';

const judged = catalogue.filter((entry): entry is Judged => entry.by === 'judgement');

/** Findings of a piece or seam in a unit, kept while it stays the same object. */
const kept = new WeakMap<object, { readonly unit: string; readonly findings: readonly Finding[] }>();

function remembered(thing: object, pattern: Pattern, judge: (check: Judged) => readonly Finding[]): readonly Finding[] {
  const before = kept.get(thing);
  if (before?.unit === pattern.unit) return before.findings;
  const findings = judged.flatMap((check) => guarded(check, () => judge(check), []));
  kept.set(thing, { unit: pattern.unit, findings });
  return findings;
}

/** A check that breaks becomes a notice that names it, and the others still report. */
const broken = new Set<string>();

function guarded<T>(check: Judged, run: () => T, otherwise: T): T {
  try {
    return run();
  } catch {
    broken.add(check.code);
    return otherwise;
  }
}

/** What the checks find, before severity and place. */
function judgements(pattern: Pattern): readonly SourcedFinding[] {
  const found: SourcedFinding[] = [];
  const add = (source: string, findings: readonly Finding[]): void => {
    for (const finding of findings) found.push({ source, finding });
  };
  for (const piece of pattern.pieces) {
    add(piece.source, remembered(piece, pattern, (check) => check.ofPiece?.(piece, pattern) ?? []));
  }
  for (const seam of pattern.seams) {
    add(seam.source, remembered(seam, pattern, (check) => check.ofSeam?.(seam, pattern) ?? []));
  }
  for (const check of judged) found.push(...guarded(check, () => check.ofPattern?.(pattern) ?? [], []));
  return found;
}

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

const placedKept = new WeakMap<Pattern, readonly PlacedFinding[]>();

/** Everything found of a pattern: syntax, names, geometry, checks; in order of place. */
export function check(pattern: Pattern): readonly PlacedFinding[] {
  const before = placedKept.get(pattern);
  if (before !== undefined) return before;
  broken.clear();
  const all = [...pattern.findings, ...judgements(pattern)].map((one) => pattern.place(one, severityOf(one.finding.code)));
  all.push(...[...broken].map((code) => internalFault(pattern, code)));
  const order = new Map(pattern.files.map((uri, i) => [uri, i]));
  all.sort(
    (a, b) =>
      (order.get(a.place.uri) ?? 0) - (order.get(b.place.uri) ?? 0) ||
      a.place.from - b.place.from ||
      RANK[a.severity] - RANK[b.severity] ||
      (a.code < b.code ? -1 : a.code > b.code ? 1 : 0),
  );
  placedKept.set(pattern, all);
  return all;
}

const internalFault = (pattern: Pattern, code: string): PlacedFinding => ({
  code: 'internal-fault',
  severity: 'note',
  message: `The check ${code} broke on this pattern, so it says nothing; the others still do. This is a fault of ours: please report it with the file, if you may share it.`,
  place: { uri: pattern.uri, from: 0, to: 0 },
  source: '',
  related: [],
  fixes: [],
});

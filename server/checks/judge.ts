/** Runs the checks over a pattern, each thing once while it stays the same. */
import type { Finding, Severity, SourcedFinding } from '../drafting/finding';
import type { Pattern, PlacedFinding } from '../drafting/model';
import type { Judged } from './check';
import { settled } from './acceptance';
import { catalogue, isFirm, severityOf } from './catalogue';
import { RISE_AND_FALL } from './rise-and-fall';

const judged = catalogue.filter((entry): entry is Judged => entry.by === 'judgement');

/** What was found of a piece or seam in a unit, and which checks broke on it; kept while it stays the same object. */
interface Judgement {
  readonly unit: string;
  readonly usual: Pattern['usual'];
  readonly findings: readonly Finding[];
  readonly broken: readonly string[];
}

const kept = new WeakMap<object, Judgement>();

function remembered(
  thing: object,
  pattern: Pattern,
  judge: (check: Judged) => readonly Finding[],
): Judgement {
  const before = kept.get(thing);
  const { unit, usual } = pattern;
  if (before !== undefined && before.unit === unit && before.usual === usual) return before;
  const broken: string[] = [];
  const findings = judged.flatMap((check) => guarded(check, () => judge(check), broken));
  const judgement = { unit, usual, findings, broken };
  kept.set(thing, judgement);
  return judgement;
}

/** A check that breaks becomes a notice that names it, and the others still report. */
function guarded<T>(check: Judged, run: () => readonly T[], broken: string[]): readonly T[] {
  try {
    return run();
  } catch {
    broken.push(check.code);
    return [];
  }
}

/** What the checks find, before severity and place; and those that broke. */
function judgements(pattern: Pattern): {
  readonly found: readonly SourcedFinding[];
  readonly broken: ReadonlySet<string>;
} {
  const found: SourcedFinding[] = [];
  const broken: string[] = [];
  const add = (source: string, judgement: Judgement): void => {
    for (const finding of judgement.findings) found.push({ source, finding });
    broken.push(...judgement.broken);
  };
  for (const piece of pattern.pieces) {
    add(
      piece.source,
      remembered(piece, pattern, (check) => check.ofPiece?.(piece, pattern) ?? []),
    );
  }
  for (const seam of pattern.seams) {
    add(
      seam.source,
      remembered(seam, pattern, (check) => check.ofSeam?.(seam, pattern) ?? []),
    );
  }
  for (const check of judged) found.push(...guarded(check, () => check.ofPattern?.(pattern) ?? [], broken));
  return { found, broken: new Set(broken) };
}

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

const inOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const CODES = {
  all: catalogue.map(({ code }) => code),
  acceptable: (code: string) => !isFirm(code) && code !== 'stale-acceptance',
  swept: (code: string) => code === RISE_AND_FALL,
};

/** Findings beside those of one drafting, as the pattern's own lines accept them. */
export const accepted = (pattern: Pattern, findings: readonly PlacedFinding[]): readonly PlacedFinding[] =>
  settled(pattern, findings, CODES).findings;

const placedKept = new WeakMap<Pattern, readonly PlacedFinding[]>();

/** Everything found of a pattern: syntax, names, geometry, checks; in order of place. */
export function check(pattern: Pattern): readonly PlacedFinding[] {
  const before = placedKept.get(pattern);
  if (before !== undefined) return before;
  const { found, broken } = judgements(pattern);
  const place = (one: SourcedFinding & { severity?: Severity }): PlacedFinding =>
    pattern.place(one, one.severity ?? severityOf(one.finding.code));
  const { findings, more } = settled(pattern, [...pattern.findings, ...found].map(place), CODES);
  const all = [...findings, ...more.map(place)];
  all.push(...[...broken].map((code) => internalFault(pattern, code)));
  const order = new Map(pattern.files.map((uri, i) => [uri, i]));
  all.sort(
    (a, b) =>
      (order.get(a.place.uri) ?? 0) - (order.get(b.place.uri) ?? 0) ||
      a.place.from - b.place.from ||
      RANK[a.severity] - RANK[b.severity] ||
      inOrder(a.code, b.code) ||
      inOrder(a.message, b.message),
  );
  const once = all.filter((one, i) => i === 0 || !sameWords(one, all[i - 1]!));
  placedKept.set(pattern, once);
  return once;
}

/** A line that makes two pieces may find its fault twice; it is told once. */
const sameWords = (a: PlacedFinding, b: PlacedFinding): boolean =>
  a.code === b.code &&
  a.message === b.message &&
  a.place.uri === b.place.uri &&
  a.place.from === b.place.from &&
  a.place.to === b.place.to;

const internalFault = (pattern: Pattern, code: string): PlacedFinding => ({
  code: 'internal-fault',
  severity: 'note',
  message: `The check ${code} broke on this pattern, so it says nothing; the others still do. This is a fault of ours: please report it with the file, if you may share it.`,
  place: { uri: pattern.uri, from: 0, to: 0 },
  source: '',
  related: [],
  fixes: [],
});

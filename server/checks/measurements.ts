/** What the checks of measurements share: every sheet that a pattern knows, judged one by one. */
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { BodySheet, Pattern } from '../drafting/model';
import { sameList } from './around';

/** Judges every body sheet of a pattern. */
export const ofSheets =
  (judge: (sheet: BodySheet, pattern: Pattern) => readonly Finding[]) =>
  (pattern: Pattern): readonly SourcedFinding[] =>
    pattern.bodies.flatMap((sheet) =>
      judge(sheet, pattern).map((finding) => ({ source: sheet.source, finding })),
    );

/** Who a sheet is of, as a person says it. */
export const whose = ({ name, size }: BodySheet): string => (size === undefined ? name : `${name} ${size}`);

/** A measurement in mm; the mean of both sides where it was taken on both. Undefined when it was not taken, or is no length. */
export function taken(sheet: BodySheet, name: string): number | undefined {
  const measure = sheet.measures.get(name);
  return measure?.left.kind === 'length' ? (measure.left.amount + measure.right.amount) / 2 : undefined;
}

/**
 * Judges the whole garment against the body that it is drafted for: anew only where its pieces, seams or finishes, the
 * ranges, or one of these measurements changed.
 */
export function ofBodyDraftedFor(
  measures: readonly string[],
  judge: (pattern: Pattern, sheet: BodySheet) => readonly SourcedFinding[],
): (pattern: Pattern) => readonly SourcedFinding[] {
  const kept = new WeakMap<
    Pattern['pieces'],
    { readonly around: readonly unknown[]; readonly found: readonly SourcedFinding[] }
  >();
  return (pattern) => {
    const { body, bodies, pieces, seams, finishes, usual, unit } = pattern;
    const sheet = body && bodies.find(({ name, size }) => name === body.name && size === body.size);
    if (sheet === undefined) return [];
    const around = [
      seams,
      finishes,
      usual,
      unit,
      whose(sheet),
      ...measures.map((name) => taken(sheet, name)),
    ];
    const before = kept.get(pieces);
    if (before !== undefined && sameList(before.around, around)) return before.found;
    const found = judge(pattern, sheet);
    kept.set(pieces, { around, found });
    return found;
  };
}

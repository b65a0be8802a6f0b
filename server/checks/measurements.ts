/** What the checks of measurements share: every sheet that a pattern knows, judged one by one. */
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { BodySheet, Pattern } from '../drafting/model';

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

/** The repairs that can be offered at a place: every finding there that knows one. */
import type { PlacedFinding, PlacedFix } from '../drafting/model';

export interface OfferedFix {
  readonly finding: PlacedFinding;
  readonly fix: PlacedFix;
  /** True where it is the only repair that its finding knows. */
  readonly preferred: boolean;
}

/** The fixes of findings that touch a stretch of a file, in the order of the findings. */
export function fixesAt(
  findings: readonly PlacedFinding[],
  uri: string,
  from: number,
  to: number,
): readonly OfferedFix[] {
  return findings
    .filter(({ place }) => place.uri === uri && place.from <= to && from <= place.to)
    .flatMap((finding) =>
      finding.fixes.map((fix) => ({ finding, fix, preferred: finding.fixes.length === 1 })),
    );
}

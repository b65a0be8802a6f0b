/** The repairs that can be offered at a place: every finding there that knows one. */
import { say } from '../../grammar/say';
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

/** The preferred fixes of every finding of one code in a file, as one; undefined where there are fewer than two. */
export function fixAll(
  findings: readonly PlacedFinding[],
  uri: string,
  code: string,
): { readonly fix: PlacedFix; readonly count: number } | undefined {
  const edits: PlacedFix['edits'][number][] = [];
  let count = 0;
  for (const finding of findings) {
    if (finding.code !== code || finding.place.uri !== uri || finding.fixes.length !== 1) continue;
    const own = finding.fixes[0]!.edits;
    // where two repairs touch the same words the first is made, and the other is offered again afterwards
    if (own.some(({ place }) => edits.some((other) => overlaps(other.place, place)))) continue;
    edits.push(...own);
    count++;
  }
  return count < 2
    ? undefined
    : { fix: { title: say`Mend all ${count} of this kind (${code})`, edits }, count };
}

type Place = PlacedFinding['place'];

const overlaps = (a: Place, b: Place): boolean => a.uri === b.uri && a.from <= b.to && b.from <= a.to;

/** A finding said otherwise: the same place and repairs, other words or another severity. */
import type { PlacedFinding } from '../drafting/model';

/** The repairs stay to be worked out when they are asked for. */
export function restated(
  finding: PlacedFinding,
  changes: Partial<Omit<PlacedFinding, 'fixes'>>,
  fixes: () => PlacedFinding['fixes'] = () => finding.fixes,
): PlacedFinding {
  const { code, severity, message, place, source, piece, accepted, related } = finding;
  return {
    ...{ code, severity, message, place, source, related },
    ...(piece !== undefined && { piece }),
    ...(accepted !== undefined && { accepted }),
    ...changes,
    get fixes() {
      return fixes();
    },
  };
}

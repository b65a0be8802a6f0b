/** Findings in a dialect of the trade, for whoever shows them. */
import { inDialect, type Dialect } from '../../grammar/dialect';
import type { PlacedFinding } from '../drafting/model';
import { restated } from './restated';

/** @param own the author's texts, whose words are left */
export function findingsInDialect(
  dialect: Dialect,
  findings: readonly PlacedFinding[],
  own: () => readonly string[],
): readonly PlacedFinding[] {
  if (dialect === 'British') return findings;
  const said = (words: string): string => inDialect(dialect, words, own);
  return findings.map((finding) => {
    const related = finding.related.map((other) => ({ ...other, message: said(other.message) }));
    // some repairs are worked out only when somebody asks for them
    const fixes = () => finding.fixes.map((fix) => ({ ...fix, title: said(fix.title) }));
    return restated(finding, { message: said(finding.message), related }, fixes);
  });
}

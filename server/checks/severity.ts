/** What a person wants to hear of, and how gravely: severities that settings put in place of the catalogue's. */
import { say } from '../../grammar/say';
import type { Severity } from '../drafting/finding';
import type { PlacedFinding } from '../drafting/model';
import { nearest } from '../drafting/names/spelling';
import { catalogue, isFirm } from './catalogue';
import { restated } from './restated';

export const SETTINGS = ['off', 'note', 'warning', 'error'] as const;
export type SeveritySetting = (typeof SETTINGS)[number];

/** By code. */
export type Severities = ReadonlyMap<string, SeveritySetting>;

export const NO_SEVERITIES: Severities = new Map();

/** What is wrong with a setting, as a sentence; undefined where it can be followed. */
export function settingRefusal(code: string, word: unknown): string | undefined {
  const codes = catalogue.map((entry) => entry.code);
  if (!codes.includes(code)) {
    const near = nearest(code, codes);
    return near === undefined
      ? say`No problem is called ${code}.`
      : say`No problem is called ${code}. Did you mean ${near}?`;
  }
  if (isFirm(code))
    return say`${code} can't be set: where it is found, something can't be read or drawn, and what rests on it is not checked.`;
  if (SETTINGS.includes(word as SeveritySetting)) return undefined;
  return say`${code} can be set to ${SETTINGS.slice(0, -1).join(', ')} or ${SETTINGS[SETTINGS.length - 1]!}, not to ${String(word)}.`;
}

/** Settings that can be followed, and what is wrong with the others. */
export function readSettings(entries: Iterable<readonly [string, unknown]>): {
  readonly severities: Severities;
  readonly refusals: readonly string[];
} {
  const severities = new Map<string, SeveritySetting>();
  const refusals: string[] = [];
  for (const [code, word] of entries) {
    const refusal = settingRefusal(code, word);
    if (refusal === undefined) severities.set(code, word as SeveritySetting);
    else refusals.push(refusal);
  }
  return { severities, refusals };
}

/** The findings as the settings want them; what the pattern accepts stays a note unless it is off. */
export function withSeverities(
  findings: readonly PlacedFinding[],
  severities: Severities,
): readonly PlacedFinding[] {
  if (severities.size === 0) return findings;
  return findings.flatMap((one) => {
    const setting = isFirm(one.code) ? undefined : severities.get(one.code);
    if (setting === undefined) return [one];
    if (setting === 'off') return [];
    const severity: Severity = one.accepted === undefined ? setting : 'note';
    return severity === one.severity ? [one] : [restated(one, { severity })];
  });
}

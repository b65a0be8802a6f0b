/** Writes patterns of any length, the same text for the same seed: costumes in many drafts, or one long draft. */
import { random } from '../support/random';
import { COSTUME, HEAD, RIBBON, STEP } from './costumes';

const lineCount = (text: string): number => text.split('\n').length - 1;

/** Each `~` length a little longer, by up to two millimetres in tenths. */
function varied(text: string, below: (limit: number) => number): string {
  return text.replace(/~([\d.]+)(cm|mm)/g, (_, amount: string, unit: string) => {
    const more = below(21) * (unit === 'cm' ? 0.01 : 0.1);
    return `${Number((Number(amount) + more).toFixed(2))}${unit}`;
  });
}

/** Costumes, one draft after another with its pieces and seams, until there are about so many lines. */
export function manyDrafts(lines: number, seed: number): string {
  const below = random(seed);
  const parts = [HEAD];
  let count = lineCount(HEAD);
  for (let i = 0; count < lines; i++) {
    const number = String(Math.floor(i / COSTUME.length) + 1);
    const part = varied(COSTUME[i % COSTUME.length]!.replaceAll('@', number), below);
    if (count + lineCount(part) / 2 > lines && i > 0) break;
    parts.push(part);
    count += lineCount(part);
  }
  return parts.join('');
}

/** A garment of costumes with so many pieces, for the budgets that count pieces. */
export function garment(costumes: number, seed: number): string {
  const below = random(seed);
  const parts = [HEAD];
  for (let i = 1; i <= costumes; i++) {
    parts.push(...COSTUME.map((costume) => varied(costume.replaceAll('@', String(i)), below)));
  }
  return parts.join('');
}

/** One draft of about so many lines, each step of which rests on the step before. */
export function longDraft(lines: number, seed: number): string {
  const below = random(seed);
  const steps: string[] = [];
  let count = lineCount(HEAD) + lineCount(RIBBON);
  for (let i = 1; count < lines; i++) {
    const before = i === 1 ? '' : String(i - 1);
    const step = STEP.replaceAll('@', String(i)).replaceAll('&', before).trimEnd();
    steps.push(varied(step, below));
    count += lineCount(step);
  }
  return HEAD + varied(RIBBON, below).replace('%', steps.join(''));
}

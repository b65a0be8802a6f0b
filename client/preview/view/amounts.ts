/** Amounts as they are written in a pattern, `68cm` or `2/3`, as numbers that a slider and a pair of buttons can move. */

export interface Amount {
  readonly number: number;
  readonly unit: string;
}

const WRITTEN = /^(-?)(?:(\d+) )?(\d+(?:\.\d+)?)(?:\/(\d+))?(cm|mm|m|in|yd|deg|%)?$/;

/** @returns undefined for what is not one plain amount: a word, an expression */
export function amountOf(text: string): Amount | undefined {
  const parts = WRITTEN.exec(text.trim());
  if (parts === null) return undefined;
  const [, sign, whole = '0', upper, lower = '1', unit = ''] = parts;
  const number = Number(whole) + Number(upper) / Number(lower);
  return Number.isFinite(number) ? { number: sign === '-' ? -number : number, unit } : undefined;
}

/** What one press of a button moves: about what a cutter would try next. */
const STEPS: Readonly<Record<string, number>> = {
  cm: 0.5,
  mm: 1,
  m: 0.01,
  in: 0.25,
  yd: 0.25,
  deg: 1,
  '%': 1,
};
const STEP_OF_SHARES = 0.05;

export const stepOf = ({ unit }: Amount): number => STEPS[unit] ?? STEP_OF_SHARES;

export const written = ({ number, unit }: Amount): string => `${Number(number.toFixed(4))}${unit}`;

/** One step up or down, on whole steps, inside the ends where they are plain amounts in the same unit. */
export function stepped(from: Amount, way: 1 | -1, low?: Amount, high?: Amount): Amount {
  const step = stepOf(from);
  const on = way * Math.floor((way * from.number) / step + 1 + 1e-9) * step;
  const least = low?.unit === from.unit ? low.number : -Infinity;
  const most = high?.unit === from.unit ? high.number : Infinity;
  return { number: Math.min(Math.max(on, least), most), unit: from.unit };
}

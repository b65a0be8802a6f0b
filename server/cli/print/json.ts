/** The reports as JSON for other programs. FORMATS.md beside this folder describes every field; `version` tells a change. */
import type { PositionRange } from '../../features/lines';
import type { Place, Report } from './report';

const VERSION = 1;

/** Two spaces a level and a last line end, so that a difference between two reports reads line by line. */
export const jsonText = (value: unknown): string => `${JSON.stringify(value, undefined, 2)}\n`;

export function checkJson({ files, problems }: Report): unknown {
  return {
    version: VERSION,
    files,
    problems: problems.map(({ code, severity, message, accepted, file, range, related }) => ({
      code,
      severity,
      message,
      ...(accepted !== undefined && { accepted }),
      ...place({ file, range }),
      related: related.map((other) => ({ message: other.message, ...place(other) })),
    })),
  };
}

function place({ file, range }: Place): { file: string; range: PositionRange } {
  const { start, end } = range;
  return {
    file,
    range: {
      start: { line: start.line, character: start.character },
      end: { line: end.line, character: end.character },
    },
  };
}

/**
 * Digits after the point of every number. A millionth of a millimetre is a thousand times finer than two machines may
 * differ in the last digit of a sine, and a hundred thousand times finer than anybody cuts.
 */
const DIGITS = 6;

/** A number as it is written out; what is not a number at all is null. */
export function rounded(amount: number): number | null {
  if (!Number.isFinite(amount)) return null;
  const short = Number(amount.toFixed(DIGITS));
  return short === 0 ? 0 : short; // never -0
}

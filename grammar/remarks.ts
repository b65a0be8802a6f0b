/** The comments between two statements, and how they stand there. */

/** A comment with what stood before it. */
interface Remark {
  readonly text: string;
  /** On the line of what came before. */
  readonly trails: boolean;
  readonly blankBefore: boolean;
}

/** The remarks of a stretch, and whether it holds other signs than space. */
export function remarksOf(text: string, from: number, to: number) {
  const remarks: Remark[] = [];
  let lineEnds = 0;
  let others = false;
  for (let at = from; at < to; at++) {
    const char = text[at]!;
    if (char === '#') {
      const stop = lineStop(text, at, to);
      const first = remarks.length === 0 && lineEnds === 0 && from > 0;
      remarks.push({ text: text.slice(at, stop).trimEnd(), trails: first, blankBefore: lineEnds > 1 });
      lineEnds = 0;
      at = stop - 1;
    } else if (char === '\n' || (char === '\r' && text[at + 1] !== '\n')) lineEnds++;
    else if (char !== ' ' && char !== '\t' && char !== '\r') others = true;
  }
  return { remarks, blankAfter: lineEnds > 1, others };
}

function lineStop(text: string, at: number, to: number): number {
  let stop = at;
  while (stop < to && text[stop] !== '\n' && text[stop] !== '\r') stop++;
  return stop;
}

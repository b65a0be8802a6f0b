/** Times and what is made of them: quantiles, a baseline of this machine, a checksum of results. */

/**
 * Milliseconds of processor time that some work takes (this process alone, so that the figure holds on a machine that
 * others use too), and what it answers.
 */
export function timed<T>(work: () => T): { readonly ms: number; readonly result: T } {
  const since = process.cpuUsage();
  const result = work();
  const { user, system } = process.cpuUsage(since);
  return { ms: (user + system) / 1000, result };
}

/** The value below which a share of the times lies (nearest rank). */
export function quantile(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? NaN;
}

/** The fastest of several runs: what the work costs when nothing else runs on the machine. */
export function fastest<T>(runs: number, work: () => T): { readonly ms: number; readonly result: T } {
  let best = timed(work);
  for (let i = 1; i < runs; i++) {
    const next = timed(work);
    if (next.ms < best.ms) best = next;
  }
  return best;
}

/** A fixed piece of arithmetic and of small objects; its time is the unit that machines are compared by. */
export function baseline(): number {
  const run = (): number => {
    let sum = 0;
    const kept = new Map<number, { readonly x: number }>();
    for (let i = 1; i <= 200_000; i++) {
      const x = Math.sqrt(i) * Math.sin(i);
      if (i % 8 === 0) kept.set(i % 4096, { x });
      sum += x + (kept.get(i % 4096)?.x ?? 0);
    }
    return sum;
  };
  return fastest(7, run).ms;
}

/** FNV-1a over the characters of a text (G. Fowler, L. C. Noll, K.-P. Vo; 32 bits), eight hexadecimal digits. */
export function checksum(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}

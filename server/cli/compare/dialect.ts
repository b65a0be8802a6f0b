/** One side of a comparison in a dialect of the trade: what was found and what could not be drafted, said otherwise. */
import { inDialect, type Dialect } from '../../../grammar/dialect';
import { findingsInDialect } from '../../checks';
import type { Taken, TakenSize } from '../../review';

export function takenIn(dialect: Dialect, taken: Taken): Taken {
  if (dialect === 'British') return taken;
  const own = (): readonly string[] => taken.files.map(({ source }) => source.text);
  const said = <T extends TakenSize>(one: T): T => ({
    ...one,
    findings: findingsInDialect(dialect, one.findings, own),
  });
  return {
    ...said(taken),
    sizes: taken.sizes.map(said),
    undrafted: taken.undrafted.map(({ name, why }) => ({ name, why: inDialect(dialect, why, own) })),
  };
}

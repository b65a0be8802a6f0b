/** The drawings of a comparison: what changed of each pattern, as plates. */
import { platesOf, type Plate } from '../../review';
import type { Compared, Comparison } from './run';

export const platesIn = ({ was, now, review }: Compared): readonly Plate[] =>
  was && now && review ? platesOf(review, was, now) : [];

/** All plates of all patterns; where there are several, each says of which it is. */
export function allPlates({ patterns }: Comparison): readonly Plate[] {
  const several = patterns.filter((one) => platesIn(one).length > 0).length > 1;
  return patterns.flatMap((one) =>
    platesIn(one).map((plate) =>
      several ? { ...plate, title: `${one.file.now ?? ''}: ${plate.title}` } : plate,
    ),
  );
}

/** Papers that hold together: what bears a piece is taped side to side, without a jump over a paper that stays empty. */

interface Grid {
  readonly rows: number;
  readonly columns: number;
}

/**
 * @param needed numbers of papers, row by row
 * @param piecesOf the papers of each piece: asked where not all papers hold together anyway
 * @returns the papers, and those that are printed besides, so that each piece's hold together
 */
export function connected(
  { rows, columns }: Grid,
  needed: ReadonlySet<number>,
  piecesOf: () => readonly ReadonlySet<number>[],
): ReadonlySet<number> {
  const all = new Set(needed);
  const besides = (one: number): readonly number[] => {
    const [row, column] = [Math.floor(one / columns), one % columns];
    return [
      ...(row > 0 ? [one - columns] : []),
      ...(column > 0 ? [one - 1] : []),
      ...(column < columns - 1 ? [one + 1] : []),
      ...(row < rows - 1 ? [one + columns] : []),
    ];
  };
  const [any] = all;
  if (any === undefined || heldBy(any, all, besides).size === all.size) return all;
  for (const own of piecesOf()) {
    const [first] = own;
    if (first === undefined) continue;
    for (let held = heldBy(first, all, besides); ; held = heldBy(first, all, besides)) {
      const apart = [...own].find((one) => all.has(one) && !held.has(one));
      if (apart === undefined) break;
      bridge(held, (one) => all.has(one) && !held.has(one), besides).forEach((one) => all.add(one));
    }
  }
  return all;
}

type Besides = (one: number) => readonly number[];

/** All that can be reached from one paper without a jump. */
function heldBy(first: number, all: ReadonlySet<number>, besides: Besides): ReadonlySet<number> {
  const held = new Set([first]);
  for (const one of held) for (const other of besides(one)) if (all.has(other)) held.add(other);
  return held;
}

/** The fewest papers that lead from some to others. */
function bridge(
  from: ReadonlySet<number>,
  isThere: (one: number) => boolean,
  besides: Besides,
): readonly number[] {
  const before = new Map<number, number | undefined>([...from].map((one) => [one, undefined]));
  for (const one of before.keys()) {
    if (isThere(one)) return wayBack(one, before);
    for (const other of besides(one)) if (!before.has(other)) before.set(other, one);
  }
  return [];
}

function wayBack(end: number, before: ReadonlyMap<number, number | undefined>): readonly number[] {
  const way: number[] = [];
  for (let at: number | undefined = end; at !== undefined; at = before.get(at)) way.push(at);
  return way;
}

/** Numbers that look random and are the same in every run. */

/** A generator of whole numbers below a limit, from a seed (Park and Miller, *Communications of the ACM* 31, 1988). */
export function random(seed: number): (limit: number) => number {
  let state = seed % 2147483647 || 1;
  return (limit) => {
    state = (state * 48271) % 2147483647;
    return state % limit;
  };
}

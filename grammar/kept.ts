/** What is worked out of an object once, and let go together with it. */
export function keptFor<K extends object, V extends object>(work: (of: K) => V): (of: K) => V {
  const kept = new WeakMap<K, V>();
  return (of) => {
    const before = kept.get(of);
    if (before !== undefined) return before;
    const found = work(of);
    kept.set(of, found);
    return found;
  };
}

/** The order of evaluation, and the circles that have none. */

export interface Group {
  /** In the order of evaluation; for a circle in the order in which one leads to the next. */
  readonly members: readonly string[];
  /** A circle: no member can be computed. */
  readonly circle: boolean;
  /** A circle round exactly one unknown: the `solve` that breaks it; it stands first among the members. */
  readonly unknown?: string;
  /** A circle through several unknowns: those its members lead through. */
  readonly unknowns?: readonly string[];
}

/**
 * Strongly connected components in order of evaluation, inputs first. Tarjan's algorithm (*SIAM Journal on Computing* 1,
 * 1972) with a stack of its own, because a long draft is a long chain.
 *
 * @param roots what is to be evaluated; only what these reach is ordered
 * @param inputs what a definition takes
 * @param isUnknown whether a definition is a `solve`, which may close a circle
 */
export function inOrder(
  roots: readonly string[],
  inputs: (id: string) => Iterable<string>,
  isUnknown: (id: string) => boolean,
): readonly Group[] {
  return components(roots, inputs).map((members) => group(members, inputs, isUnknown));
}

function components(roots: readonly string[], inputs: (id: string) => Iterable<string>): string[][] {
  const found: string[][] = [];
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const onStack = new Set<string>();
  const stack: string[] = [];
  for (const root of roots) {
    if (index.has(root)) continue;
    const work: { id: string; todo: Iterator<string> }[] = [];
    const enter = (id: string): void => {
      index.set(id, index.size);
      low.set(id, index.get(id)!);
      stack.push(id);
      onStack.add(id);
      work.push({ id, todo: inputs(id)[Symbol.iterator]() });
    };
    enter(root);
    while (work.length > 0) {
      const top = work[work.length - 1]!;
      const next = top.todo.next();
      if (!next.done) {
        if (!index.has(next.value)) enter(next.value);
        else if (onStack.has(next.value)) low.set(top.id, Math.min(low.get(top.id)!, index.get(next.value)!));
        continue;
      }
      work.pop();
      const parent = work[work.length - 1];
      if (parent !== undefined) low.set(parent.id, Math.min(low.get(parent.id)!, low.get(top.id)!));
      if (low.get(top.id) === index.get(top.id)) found.push(unwind(stack, onStack, top.id));
    }
  }
  return found;
}

function unwind(stack: string[], onStack: Set<string>, last: string): string[] {
  const members: string[] = [];
  for (;;) {
    const id = stack.pop()!;
    onStack.delete(id);
    members.push(id);
    if (id === last) return members.reverse();
  }
}

function group(
  members: readonly string[],
  inputs: (id: string) => Iterable<string>,
  isUnknown: (id: string) => boolean,
): Group {
  const only = members[0]!;
  if (members.length === 1) {
    if (![...inputs(only)].includes(only)) return { members, circle: false };
    return isUnknown(only) ? { members, circle: false, unknown: only } : { members, circle: true };
  }
  const unknowns = members.filter(isUnknown);
  // an unknown may read itself: that is no part of the way round
  const onward = (id: string): Iterable<string> => [...inputs(id)].filter((input) => input !== id || !isUnknown(id));
  if (unknowns.length > 1) return throughUnknowns(members, unknowns, onward);
  if (unknowns.length === 0) return { members: round(members, onward), circle: true };
  const unknown = unknowns[0]!;
  const others = new Set(members.filter((id) => id !== unknown));
  const open = components([...others], (id) => [...inputs(id)].filter((input) => others.has(input)));
  const stillRound = open.some((part) => part.length > 1 || [...inputs(part[0]!)].includes(part[0]!));
  if (stillRound) return { members: round(members, onward), circle: true };
  return { members: [unknown, ...open.flat()], circle: false, unknown };
}

/** Two unknowns that need each other: the way from one to the other and back, each definition said once, then the rest. */
function throughUnknowns(
  members: readonly string[],
  unknowns: readonly string[],
  inputs: (id: string) => Iterable<string>,
): Group {
  const inside = new Set(members);
  const [one, other] = unknowns as [string, string];
  const there = wayTo(one, other, inside, inputs);
  const back = wayTo(other, one, inside, inputs);
  const shown = [...new Set([...there, ...back])];
  return { members: [...shown, ...members.filter((id) => !shown.includes(id))], circle: true, unknowns };
}

/** Definitions from one to another along inputs, the shortest way, without the last. */
function wayTo(from: string, to: string, inside: ReadonlySet<string>, inputs: (id: string) => Iterable<string>): readonly string[] {
  const cameFrom = new Map<string, string>([[from, from]]);
  for (const id of cameFrom.keys()) {
    for (const input of inputs(id)) if (inside.has(input) && !cameFrom.has(input)) cameFrom.set(input, id);
  }
  const way: string[] = [];
  for (let id = cameFrom.get(to) ?? from; ; id = cameFrom.get(id)!) {
    way.unshift(id);
    if (id === from) return way;
  }
}

/** One way round: from the first member along inputs back to it, shortest first (breadth-first). */
function round(members: readonly string[], inputs: (id: string) => Iterable<string>): readonly string[] {
  const inside = new Set(members);
  const start = members[0]!;
  const cameFrom = new Map<string, string>();
  let edge = [start];
  while (edge.length > 0) {
    const next: string[] = [];
    for (const id of edge) {
      for (const input of inputs(id)) {
        if (input === start) return trace(id, start, cameFrom);
        if (!inside.has(input) || cameFrom.has(input)) continue;
        cameFrom.set(input, id);
        next.push(input);
      }
    }
    edge = next;
  }
  return members;
}

function trace(last: string, start: string, cameFrom: ReadonlyMap<string, string>): readonly string[] {
  const way = [last];
  while (way[way.length - 1] !== start) way.push(cameFrom.get(way[way.length - 1]!)!);
  return way.reverse();
}

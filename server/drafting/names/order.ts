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
  /** Groups of lower rank are evaluated before. */
  rank: number;
}

/** What the order has to know of definitions. */
export interface Definitions {
  /** What a definition takes. */
  inputs(id: string): ReadonlySet<string>;
  /** Whether a definition is a `solve`, which may close a circle. */
  isUnknown(id: string): boolean;
  /** In the order of the text. */
  asWritten(ids: readonly string[]): readonly string[];
}

/**
 * Strongly connected components in order of evaluation, inputs first. Tarjan's algorithm (*SIAM Journal on Computing* 1,
 * 1972) with a stack of its own, because a long draft is a long chain.
 *
 * @param roots what is to be evaluated; only what these reach is ordered
 */
export function inOrder(roots: Iterable<string>, definitions: Definitions): readonly Group[] {
  const found = components(roots, (id) => definitions.inputs(id));
  return found.map((members, rank) => {
    const only = members[0]!;
    const alone = members.length === 1 && !definitions.inputs(only).has(only);
    return alone ? { members, circle: false, rank } : { ...round(members, definitions), rank };
  });
}

/** One definition on the way down, and those of its inputs that were not looked at yet. */
interface Step {
  readonly number: number;
  readonly todo: Iterator<string>;
}

function components(roots: Iterable<string>, inputs: (id: string) => Iterable<string>): string[][] {
  const found: string[][] = [];
  const numbers = new Map<string, number>();
  const low: number[] = [];
  const open: boolean[] = [];
  const stack: string[] = [];
  const work: Step[] = [];
  const enter = (id: string): void => {
    const number = numbers.size;
    numbers.set(id, number);
    low.push(number);
    open.push(true);
    stack.push(id);
    work.push({ number, todo: inputs(id)[Symbol.iterator]() });
  };
  const close = (number: number): void => {
    let from = stack.length - 1;
    while (numbers.get(stack[from]!) !== number) from--;
    const members = stack.splice(from);
    for (const id of members) open[numbers.get(id)!] = false;
    found.push(members);
  };
  for (const root of roots) {
    if (!numbers.has(root)) enter(root);
    for (let top = work.at(-1); top !== undefined; top = work.at(-1)) {
      const next = top.todo.next();
      if (!next.done) {
        const known = numbers.get(next.value);
        if (known === undefined) enter(next.value);
        else if (open[known]!) low[top.number] = Math.min(low[top.number]!, known);
        continue;
      }
      work.pop();
      const parent = work.at(-1);
      if (parent !== undefined) low[parent.number] = Math.min(low[parent.number]!, low[top.number]!);
      if (low[top.number] === top.number) close(top.number);
    }
  }
  return found;
}

type Unranked = Omit<Group, 'rank'>;

/** What goes round: several definitions, or one that takes itself. */
function round(members: readonly string[], definitions: Definitions): Unranked {
  const { inputs, isUnknown } = definitions;
  const only = members[0]!;
  if (members.length === 1)
    return isUnknown(only) ? { members, circle: false, unknown: only } : { members, circle: true };
  const unknowns = members.filter(isUnknown);
  if (unknowns.length !== 1) return circle(members, definitions);
  const unknown = unknowns[0]!;
  const others = new Set(members.filter((id) => id !== unknown));
  const open = components(others, (id) => [...inputs(id)].filter((input) => others.has(input)));
  const stillRound = open.some((part) => part.length > 1 || inputs(part[0]!).has(part[0]!));
  return stillRound
    ? circle(members, definitions)
    : { members: [unknown, ...open.flat()], circle: false, unknown };
}

function circle(members: readonly string[], { inputs, isUnknown, asWritten }: Definitions): Unranked {
  // an unknown may read itself: that is no part of the way round
  const onward = (id: string): Iterable<string> =>
    [...inputs(id)].filter((input) => input !== id || !isUnknown(id));
  const written = asWritten(members);
  const unknowns = written.filter(isUnknown);
  if (unknowns.length > 1) return throughUnknowns(written, unknowns, onward);
  return { members: wayRound(written, onward), circle: true };
}

/** Two unknowns that need each other: the way from one to the other and back, each definition said once, then the rest. */
function throughUnknowns(
  members: readonly string[],
  unknowns: readonly string[],
  inputs: (id: string) => Iterable<string>,
): Unranked {
  const inside = new Set(members);
  const [one, other] = unknowns as [string, string];
  const there = wayTo(one, other, inside, inputs);
  const back = wayTo(other, one, inside, inputs);
  const shown = [...new Set([...there, ...back])];
  return { members: [...shown, ...members.filter((id) => !shown.includes(id))], circle: true, unknowns };
}

/** Definitions from one to another along inputs, the shortest way, without the last. */
function wayTo(
  from: string,
  to: string,
  inside: ReadonlySet<string>,
  inputs: (id: string) => Iterable<string>,
): readonly string[] {
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
function wayRound(members: readonly string[], inputs: (id: string) => Iterable<string>): readonly string[] {
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

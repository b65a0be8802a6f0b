/** What was decided otherwise: statements that changed, were added or taken away, and what is asked for from outside. */
import type { Value } from '../drafting/model';
import { print } from '../drafting/values/quantity';
import { placeOf, topLines, written, type Line, type Placed } from './lines';
import type { Both, Cause, CauseKind, Followed } from './model';
import { pairLines, sameWords, type Pair, type Paired, type Renamed } from './pairs';
import type { Taken } from './take';

export interface Decided {
  readonly causes: readonly Cause[];
  readonly followed: readonly Followed[];
  readonly renamed: readonly Renamed[];
  readonly textChanged: boolean;
}

export function decided(before: Taken, after: Taken): Decided {
  const [was, now] = [topLines(before.files), topLines(after.files)];
  const paired = pairLines(was, now);
  const { renamed } = paired;
  const said = [...paired.pairs.flatMap((pair) => causeOf(pair, renamed)), ...reordered(paired)];
  const causes = [...outside(before, after, said), ...said.sort(inOrder)];
  return {
    causes,
    followed: followed(before, after, causes, renamed),
    renamed,
    textChanged: looksOther(before, after),
  };
}

const KINDS: Readonly<Record<string, CauseKind>> = {
  'drafted-for': 'body',
  choose: 'choice',
  measured: 'measurement',
  row: 'measurement',
  let: 'let',
  solve: 'let',
};

function causeOf({ was, now, scope }: Pair, renamed: readonly Renamed[]): Cause[] {
  const place = both(was && placeOf(was), now && placeOf(now));
  if (was === undefined || now === undefined) {
    const { line } = (was ?? now)!;
    const text = both(was && written(was.line.words), now && written(now.line.words));
    return [{ kind: now === undefined ? 'removed' : 'added', name: nameIn(scope, line), text, place }];
  }
  if (sameWords(was.line.words, now.line.words, [])) return [];
  const name = nameIn(scope, now.line);
  const own = renamed.some(
    (one) => one.was === was.line.name && one.now === now.line.name && one.scope === scope,
  );
  if (own) return [{ kind: 'renamed', name, text: { was: was.line.name, now: now.line.name }, place }];
  if (sameWords(was.line.words, now.line.words, renamed)) return [];
  const kind = KINDS[now.line.kind] ?? 'line';
  return [
    {
      kind,
      name,
      text:
        kind === 'choice'
          ? shortened(valueOf(was.line), valueOf(now.line))
          : { was: valueOf(was.line), now: valueOf(now.line) },
      place,
    },
  ];
}

const nameIn = (scope: string, { name }: Line): string =>
  name === '' ? scope : scope === '' ? name : `${scope}.${name}`;

/** The range of a choice is told where it changed. */
function shortened(was: string, now: string): Both<string> {
  const range = (text: string): string => / (?:in|among) .*$/.exec(text)?.[0] ?? '';
  const same = range(now) === range(was) ? range(now).length : 0;
  return { was: was.slice(0, was.length - same), now: now.slice(0, now.length - same) };
}

/** Without the name where the name is told beside it: `4cm in 2cm .. 10cm`, `74.5cm`. */
function valueOf(line: Line): string {
  const { name, words } = line;
  if (name === '') return written(words);
  const equals = words.indexOf('=');
  if (equals > 0 && words[equals - 1] === name) return written(words.slice(equals + 1));
  return written(words[0] === name ? words.slice(1) : words);
}

function reordered({ reordered: blocks }: Paired): Cause[] {
  return blocks.map(({ was, now, scope }) => ({
    kind: 'order',
    name: scope,
    text: { was: namesIn(was!), now: namesIn(now!) },
    place: both(placeOf(was!), placeOf(now!)),
  }));
}

const namesIn = ({ line }: Placed): string =>
  line.children.map(({ name, words }) => name || written(words)).join(', ');

/** Decisions of the file first, then measurements, then what was drawn, each in the order of the text. */
const ORDER: readonly CauseKind[] = [
  'body',
  'choice',
  'measurement',
  'renamed',
  'let',
  'line',
  'order',
  'added',
  'removed',
];

const rank = ({ kind }: Cause): number => {
  const at = ORDER.indexOf(kind);
  return at < ORDER.indexOf('let') ? at : ORDER.length;
};

const start = ({ place }: Cause): number => (place.now ?? place.was)?.from ?? 0;

const inOrder = (a: Cause, b: Cause): number => rank(a) - rank(b) || start(a) - start(b);

/** What is asked for on the command line or in the editor, not in the text. */
function outside(before: Taken, after: Taken, said: readonly Cause[]): Cause[] {
  const told = new Set(said.filter(({ kind }) => kind !== 'line').map(({ name }) => name));
  const causes: Cause[] = [];
  const add = (kind: CauseKind, name: string, was: string, now: string) =>
    causes.push({ kind, name, text: { was, now }, place: {} });
  const others = before.body !== after.body;
  if (others && !said.some(({ kind }) => kind === 'body')) add('body', '', before.body, after.body);
  for (const [path, now] of after.choices) {
    const was = before.choices.get(path);
    if (was !== undefined && !sameValue(was, now) && !told.has(path))
      add('choice', path, printed(was, before), printed(now, after));
  }
  for (const [name, now] of others ? after.measures : []) {
    const was = before.measures.get(name);
    if (was === undefined || (was.left === now.left && was.right === now.right)) continue;
    const words = ({ left, right }: typeof now, side: Taken): string => {
      const of = (mm: number) => print({ kind: 'length', amount: mm }, side.unit);
      // as a body's sheet writes it, in every language
      return left === right ? of(left) : ['left', of(left), 'right', of(right)].join(' ');
    };
    add('measurement', name, words(was, before), words(now, after));
  }
  return causes;
}

const printed = (value: Value, { unit }: Taken): string =>
  value.kind === 'text' ? value.text : print(value, unit);

function sameValue(a: Value, b: Value): boolean {
  if (a.kind === 'text' || b.kind === 'text')
    return a.kind === b.kind && 'text' in a && 'text' in b && a.text === b.text;
  return (
    a.kind === b.kind &&
    (a.amount === b.amount || Math.abs(a.amount - b.amount) < 1e-9 * (1 + Math.abs(a.amount)))
  );
}

/** Values that came out otherwise although nobody touched their line. */
function followed(
  before: Taken,
  after: Taken,
  causes: readonly Cause[],
  renamed: readonly Renamed[],
): Followed[] {
  const told = new Set(causes.map(({ name }) => name));
  const old = (path: string): string => {
    const name = path.split('.').at(-1)!;
    const one = renamed.find(({ now }) => now === name);
    return one === undefined ? path : path.slice(0, path.length - name.length) + one.was;
  };
  return [...after.values].flatMap(([name, now]) => {
    const was = before.values.get(name) ?? before.values.get(old(name));
    if (was === undefined || sameValue(was, now) || told.has(name) || after.choices.has(name)) return [];
    return [{ name, text: { was: printed(was, before), now: printed(now, after) } }];
  });
}

function looksOther(before: Taken, after: Taken): boolean {
  const texts = ({ files }: Taken) => files.map(({ source }) => source.text).join('\n');
  return texts(before) !== texts(after);
}

export const both = <T>(was: T | undefined, now: T | undefined): Both<T> => ({
  ...(was !== undefined && { was }),
  ...(now !== undefined && { now }),
});

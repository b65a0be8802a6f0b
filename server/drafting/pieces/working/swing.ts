/** Swings a dart to another place: the paper turns about the pivot, closing one mouth and opening the other. */
import { add, distance, inverse, midpoint, normalised, Path, scale, subtract } from '../../../geometry';
import type { Dart } from '../../model';
import { asLaid } from '../darts';
import { swing } from '../truing';
import {
  bridge,
  cutAt,
  edgesOf,
  itemsOf,
  lengthOfStretch,
  moveStretch,
  stretchOf,
  type Item,
  type Worked,
} from './ring';

export interface SwingTo {
  readonly dart: Dart;
  /** 1: all of it. */
  readonly share: number;
  /** The edge it goes to, by number, and the sewn distance along it. */
  readonly edge: number;
  readonly s: number;
  /** Number of the edge that stays where it is: the fold, when there is one. */
  readonly centre?: number;
  /** What opens: a dart, or (for `close … into`) a wedge that becomes part of the edge. */
  readonly opens: 'dart' | 'wedge';
  /** Names that are taken, so that the half of a dart gets one of its own. */
  readonly taken: ReadonlySet<string>;
}

/** Edges either side of the cuts keep their lengths; the intake, as an angle, is kept. */
export function swingDart(worked: Worked, to: SwingTo): Worked {
  const { dart, share } = to;
  const cut = cutAt(itemsOf(worked.edges), to.edge, to.s);
  const mouth = cut.items.findIndex((item) => item.dart === dart.name);
  if (mouth < 0) return worked;
  const behind = stretchOf(cut.items, mouth + 1, cut.joint);
  const before = stretchOf(cut.items, cut.joint, mouth);
  const movesBehind = behindMoves(cut.items, behind, before, to);
  const turn = swing(dart, share);
  const m = movesBehind ? turn : inverse(turn)!;
  const moved = moveStretch(worked, cut.items, movesBehind ? behind : before, m, [dart.pivot]);
  const [from, end] = movesBehind
    ? [dart.from, moved.items[(mouth + 1) % moved.items.length]!.path.start]
    : [moved.items[(mouth - 1 + moved.items.length) % moved.items.length]!.path.end, dart.to];
  const left = share < 1 - 1e-9 ? [legsOf({ ...dart, from, to: end })] : [];
  const name = left.length > 0 ? freeName(dart.name, to.taken) : dart.name;
  const others = moved.worked.darts.filter((other) => other.name !== dart.name);
  return opened(
    { ...moved.worked, darts: [...others, ...left] },
    moved.items,
    { mouth, joint: cut.joint, left: left[0], name, movesBehind },
    to,
  );
}

interface Opening {
  readonly mouth: number;
  readonly joint: number;
  readonly left: Dart | undefined;
  readonly name: string;
  readonly movesBehind: boolean;
}

/** Puts the new mouth in, and closes or narrows the old one. */
function opened(worked: Worked, items: readonly Item[], at: Opening, to: SwingTo): Worked {
  const mouth = at.left === undefined ? [] : [{ ...items[at.mouth]!, path: pathOf(at.left) }];
  const count = items.length;
  const [before, after] = [
    items[(at.joint - 1 + count) % count]!.path.end,
    items[at.joint % count]!.path.start,
  ];
  const gaped = bridge(items, at.joint, to.edge, to.opens === 'dart' ? at.name : undefined);
  const old = at.joint <= at.mouth && gaped.length > count ? at.mouth + 1 : at.mouth;
  const ring = [...gaped.slice(0, old), ...mouth, ...gaped.slice(old + 1)];
  const edges = edgesOf(worked.edges, ring);
  if (to.opens === 'wedge') return { ...worked, edges };
  const dart = legsOf({
    ...to.dart,
    name: at.name,
    source: to.dart.source.slice(0, to.dart.source.length - to.dart.name.length) + at.name,
    edge: worked.edges[to.edge]!.name,
    from: before,
    to: after,
    // pressed toward the leg that stayed, as it was before
    pressed:
      to.dart.pressed === 'from' || to.dart.pressed === 'to'
        ? at.movesBehind
          ? 'to'
          : 'from'
        : to.dart.pressed,
  });
  return { ...worked, edges, darts: [...worked.darts, dart] };
}

const pathOf = (dart: Dart): Path => Path.line(dart.from, dart.to);

/** The leg nearer the centre stays; else the longer stretch of the outline. */
function behindMoves(
  items: readonly Item[],
  behind: ReadonlySet<number>,
  before: ReadonlySet<number>,
  to: SwingTo,
): boolean {
  if (to.centre !== undefined) {
    const holds = (stretch: ReadonlySet<number>): boolean =>
      [...stretch].some((i) => items[i]!.edge === to.centre);
    if (holds(before) !== holds(behind)) return holds(before);
  }
  if (to.dart.pressed === 'from') return true;
  if (to.dart.pressed === 'to') return false;
  return lengthOfStretch(items, behind) <= lengthOfStretch(items, before);
}

/** A dart with its measures worked out anew from its points. */
export function legsOf(dart: Dart): Dart {
  const { from, to, pivot } = dart;
  const [a, b] = [subtract(from, pivot), subtract(to, pivot)];
  const angle = Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y)) * (180 / Math.PI);
  const short = distance(dart.pivot, dart.tip);
  const toward = normalised(subtract(midpoint(from, to), pivot));
  const tip = toward === undefined || short === 0 ? pivot : add(pivot, scale(toward, short));
  return { ...dart, width: distance(from, to), angle, tip, asLaid: asLaid(from, to, tip) };
}

function freeName(name: string, taken: ReadonlySet<string>): string {
  for (let i = 2; ; i++) if (!taken.has(`${name}${i}`)) return `${name}${i}`;
}

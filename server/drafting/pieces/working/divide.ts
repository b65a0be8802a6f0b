/** Cuts a piece in two: along a line from edge to edge, through darts, or from a dart along a line. */
import { say } from '../../../../grammar/say';
import { distance, Path, type Point } from '../../../geometry';
import type { Dart, Edge, Piece } from '../../model';
import { partOf } from './part';
import { fromEdgeToEdge, MEETS } from './reaching';
import { cutAt, itemsOf, stretchOf, type Item, type Joint } from './ring';

/** What a piece is cut through, in order: darts by name, lines drawn from one end to the other. */
export type Through =
  { readonly dart: Dart } | { readonly line: Path; readonly name: string; readonly straight: boolean };

/** Why a piece can't be cut so. */
export interface Refusal {
  readonly why: string;
}

interface Cut {
  /** The whole way of the cut inside the piece, from the outline to the outline. */
  readonly way: Path;
  readonly begins: End;
  readonly ends: End;
}

/** Where the cut meets the outline: at the mouth of a dart, or at a point. */
type End = { readonly dart: Dart } | { readonly point: Point };

/**
 * Both parts, that of the outline's first stretch after the cut's beginning first.
 *
 * @param name of the new edge, the same on both parts
 */
export function divided(
  piece: Piece,
  through: readonly Through[],
  name: string,
  source: string,
): readonly [Piece, Piece] | Refusal {
  const cut = wayOf(piece.edges, through);
  if ('why' in cut) return cut;
  const begun = joinAt(itemsOf(piece.edges), piece, cut.begins);
  if ('why' in begun) return begun;
  const ended = joinAt(begun.items, piece, cut.ends);
  if ('why' in ended) return ended;
  const begins = joinAt(ended.items, piece, cut.begins);
  if ('why' in begins) return begins;
  const { items } = begins;
  // cutting at the beginning may have moved the end on by one
  const ends = joinAt(items, piece, cut.ends);
  if ('why' in ends) return ends;
  const first = stretchOf(items, begins.after, ends.before);
  const second = stretchOf(items, ends.after, begins.before);
  const there = legs(cut, 'first');
  const back = legs(cut, 'second');
  const ownOf = (stretch: ReadonlySet<number>): Item[] => [...stretch].map((i) => items[i]!);
  return [partOf(piece, ownOf(first), there, name, source), partOf(piece, ownOf(second), back, name, source)];
}

interface Joined {
  readonly items: Item[];
  /** Joints before and after the mouth; one and the same where there is no dart. */
  readonly before: Joint;
  readonly after: Joint;
}

/** Cuts the ring where the cut meets it. */
function joinAt(items: readonly Item[], piece: Piece, end: End): Joined | Refusal {
  if ('dart' in end) {
    const mouth = items.findIndex((item) => item.dart === end.dart.name);
    return mouth < 0
      ? { why: say`${end.dart.name} opens on no edge of the piece any more.` }
      : { items: [...items], before: mouth, after: mouth + 1 };
  }
  const existing = items.findIndex((item) => distance(item.path.start, end.point) < 1e-6);
  if (existing >= 0) return { items: [...items], before: existing, after: existing };
  for (const [index, edge] of piece.edges.entries()) {
    const sewn = Path.of(edge.parts.flatMap((part) => (part.dart === undefined ? part.path.segments : [])));
    const { s, distance: away } = sewn.locate(end.point);
    if (away > MEETS) continue;
    const cut = cutAt(items, index, s);
    return { items: cut.items, before: cut.joint, after: cut.joint };
  }
  const away = Math.min(...piece.edges.map(({ path }) => path.locate(end.point).distance));
  return {
    why: say`An end of the cut lies ${centimetres(away)} from the outline of ${piece.name}: draw its line from one edge to another, or to the pivot of a dart.`,
  };
}

const centimetres = (mm: number): string => `${(mm / 10).toFixed(2).replace(/\.?0+$/, '')}cm`;

/** Strings darts and lines together; their pivots and ends must meet. */
function wayOf(edges: readonly Edge[], through: readonly Through[]): Cut | Refusal {
  const lines: Path[] = [];
  const [first, last] = [through[0], through[through.length - 1]];
  if (first === undefined || last === undefined)
    return { why: say`Say what the piece is divided at: a line, or darts.` };
  if (through.length === 1 && 'dart' in first)
    return {
      why: say`${first.dart.name} ends inside the piece: a second dart or a line must lead on to another edge.`,
    };
  let at: Point | undefined = 'dart' in first ? first.dart.pivot : undefined;
  for (const [i, one] of through.entries()) {
    if ('dart' in one) {
      if (at !== undefined && distance(at, one.dart.pivot) > MEETS)
        return apart(at, one.dart.pivot, one.dart.name);
      at = one.dart.pivot;
      continue;
    }
    const drawn = oriented(one.line, at, through[i + 1]);
    if (at !== undefined && distance(at, drawn.start) > MEETS) return apart(at, drawn.start, one.name);
    const path = fromEdgeToEdge(edges, drawn, one.straight, { start: i === 0, end: one === last });
    lines.push(path);
    at = path.end;
  }
  const pivot = at!;
  const way = lines.length > 0 ? lines.reduce((a, b) => a.joinedTo(b)) : Path.line(pivot, pivot);
  return {
    way,
    begins: 'dart' in first ? { dart: first.dart } : { point: way.start },
    ends: 'dart' in last ? { dart: last.dart } : { point: way.end },
  };
}

const apart = (a: Point, b: Point, name: string): Refusal => ({
  why: say`The cut is broken: ${name} begins ${centimetres(distance(a, b))} from where the one before it ends. A dart's pivot and a line's end must meet.`,
});

/** A line turned about so that it begins where the cut stands, or ends where it goes on. */
function oriented(line: Path, at: Point | undefined, next: Through | undefined): Path {
  if (at !== undefined) return distance(at, line.end) < distance(at, line.start) ? line.reversed() : line;
  const goal = next !== undefined && 'dart' in next ? next.dart.pivot : undefined;
  return goal !== undefined && distance(goal, line.start) < distance(goal, line.end) ? line.reversed() : line;
}

/** The new edge of one part: from where its stretch of the outline ends, back to where it begins. */
function legs(cut: Cut, part: 'first' | 'second'): Path {
  const { way, begins, ends } = cut;
  const [from, to] = part === 'first' ? [ends, begins] : [begins, ends];
  const inner = part === 'first' ? way.reversed() : way;
  const segments = [
    ...('dart' in from ? Path.line(from.dart.from, from.dart.pivot).segments : []),
    ...(inner.length > 1e-9 ? inner.segments : []),
    ...('dart' in to ? Path.line(to.dart.pivot, to.dart.to).segments : []),
  ];
  return Path.of(segments);
}

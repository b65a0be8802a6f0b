/** Lays a new piece on the old one by what did not change: its fold, its grain, an edge or a point; never by its box. */
import { say } from '../../grammar/say';
import type { Edge, Piece } from '../drafting/model';
import { apply, distance, identity, layOn, translation, type Point, type Rigid } from '../geometry';
import { subtract } from '../geometry';
import { TOLERANCE, type Anchor } from './model';

/** What of the two pieces answers to each other. */
export interface Matched {
  readonly was: Piece;
  readonly now: Piece;
  readonly edges: readonly { readonly was: Edge; readonly now: Edge }[];
  /** By the name that each has now; `key` is the same whichever of the two sides is told first. */
  readonly corners: readonly {
    readonly name: string;
    readonly key: string;
    readonly was: Point;
    readonly now: Point;
  }[];
}

interface Candidate {
  readonly move: Rigid;
  readonly held: string;
}

/**
 * Of all ways to lay one on the other the one by which most edges and corners agree; of several the one that leaves the
 * piece where it is, else by its fold, its grain, an edge, a corner.
 */
export function anchorOf(matched: Matched): Anchor {
  const candidates = waysToLay(matched);
  let best = candidates[0]!;
  let most = -1;
  for (const one of candidates) {
    const score = agreeing(matched, one.move);
    if (score > most) [best, most] = [one, score];
  }
  if (most === 0) best = candidates[1] ?? best;
  const moved = [
    ...matched.corners.map(({ now }) => now),
    ...matched.edges.map(({ now }) => now.path.start),
  ].some((p) => distance(apply(best.move, p), p) > TOLERANCE);
  return { move: best.move, held: best.held || heldBy(matched, best.move), moved };
}

function waysToLay({ was, now, edges, corners }: Matched): Candidate[] {
  const found: Candidate[] = [{ move: identity, held: '' }];
  const fold = edges.find((edge) => edge.was.name === was.fold?.edge && edge.now.name === now.fold?.edge);
  if (fold !== undefined) found.push(...alongBoth(ends(fold.now), ends(fold.was), say`the fold`));
  if (was.grain !== undefined && now.grain !== undefined)
    found.push(...alongBoth(now.grain, was.grain, say`the grain`));
  for (const edge of byName(edges, (one) => [one.was.name, one.now.name].sort().join(' '))) {
    if (Math.abs(edge.was.path.length - edge.now.path.length) < TOLERANCE)
      found.push({ move: laid(ends(edge.now), ends(edge.was)), held: edge.now.name });
  }
  for (const corner of byName(corners, ({ key }) => key))
    found.push({ move: translation(subtract(corner.was, corner.now)), held: corner.name });
  return found;
}

interface Stroke {
  readonly from: Point;
  readonly to: Point;
}

const ends = ({ path }: Edge): Stroke => ({ from: path.start, to: path.end });
const laid = (now: Stroke, was: Stroke): Rigid => layOn(now.from, now.to, was.from, was.to);

/** Held at either end, since one of them may have moved. */
const alongBoth = (now: Stroke, was: Stroke, held: string): Candidate[] => [
  { move: laid(now, was), held },
  { move: laid({ from: now.to, to: now.from }, { from: was.to, to: was.from }), held },
];

const byName = <T>(things: readonly T[], name: (one: T) => string): T[] =>
  [...things].sort((a, b) => (name(a) < name(b) ? -1 : name(a) > name(b) ? 1 : 0));

/** How much agrees: an edge counts twice, by its ends and its middle; a corner once. */
function agreeing({ edges, corners }: Matched, move: Rigid): number {
  const near = (was: Point, now: Point): boolean => distance(was, apply(move, now)) < TOLERANCE;
  const same = edges.filter(
    ({ was: { path: a }, now: { path: b } }) =>
      near(a.start, b.start) && near(a.end, b.end) && near(a.pointAt(a.length / 2), b.pointAt(b.length / 2)),
  );
  return 2 * same.length + corners.filter(({ was, now }) => near(was, now)).length;
}

/** What a piece is held by that stays where it is. */
function heldBy({ was, now, edges, corners }: Matched, move: Rigid): string {
  const fold = edges.find((edge) => edge.was.name === was.fold?.edge && edge.now.name === now.fold?.edge);
  const along = fold && { a: fold.was.path, b: fold.now.path };
  if (
    along &&
    [along.b.start, along.b.end].every((p) => offLine(along.a.start, along.a.end, apply(move, p)) < TOLERANCE)
  )
    return say`the fold`;
  const corner = byName(corners, ({ key }) => key).find(
    (one) => distance(one.was, apply(move, one.now)) < TOLERANCE,
  );
  return corner?.name ?? say`its place on the paper`;
}

function offLine(a: Point, b: Point, p: Point): number {
  const size = distance(a, b);
  return size > 0 ? Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / size : distance(a, p);
}

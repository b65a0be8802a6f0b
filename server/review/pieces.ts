/** What changed of each piece: its outline, its place, its marks, its allowances, its words. */
import { say } from '../../grammar/say';
import type { Edge, Piece } from '../drafting/model';
import {
  apply,
  difference,
  distance,
  identity,
  type Path,
  type Point,
  type Rigid,
  type Rings,
} from '../geometry';
import { anchorOf, type Matched } from './anchor';
import { both } from './causes';
import { detailsOf } from './details';
import { deviationOf, type EdgePair } from './deviation';
import {
  TOLERANCE,
  type Anchor,
  type Both,
  type Detail,
  type MovedPoint,
  type PieceChange,
  type PieceWord,
} from './model';
import type { Renamed } from './pairs';
import type { Taken, TakenSize } from './take';

/** The names that stand for each other, where some were changed. */
export class Naming {
  constructor(private readonly renamed: readonly Renamed[]) {}

  /** How a thing of the old side is called now, among the names that there are. */
  readonly now = (was: string, names: ReadonlySet<string>): string | undefined => {
    if (names.has(was)) return was;
    return this.renamed.find((one) => one.was === was && names.has(one.now))?.now;
  };
}

type Measured = Pick<Taken, 'places' | 'unit'> & TakenSize;

/** Every piece that changed, in the order of the new side, those that are gone at the end. */
export function pieceChanges(before: Measured, after: Measured, renamed: readonly Renamed[]): PieceChange[] {
  const naming = new Naming(renamed);
  const pairs = pairPieces(before.pieces, after.pieces, naming);
  return pairs
    .flatMap((pair) => changeOf(pair, naming, before, after))
    .map((change, i) => ({ ...change, number: i + 1 }));
}

function pairPieces(before: readonly Piece[], after: readonly Piece[], naming: Naming): Both<Piece>[] {
  const names = new Set(after.map(({ name }) => name));
  const old = new Map<string, Piece>();
  const gone: Piece[] = [];
  for (const piece of before) {
    const now = naming.now(piece.name, names);
    if (now === undefined || old.has(now)) gone.push(piece);
    else old.set(now, piece);
  }
  const pairs = after.map((now): Both<Piece> => {
    const was = old.get(now.name) ?? takeAlike(gone, now);
    return was === undefined ? { now } : { was, now };
  });
  return [...pairs, ...gone.map((was) => ({ was }))];
}

/** A piece under another name, edge for edge the same: it was renamed. */
function takeAlike(gone: Piece[], now: Piece): Piece | undefined {
  const at = gone.findIndex(
    (was) =>
      was.edges.length === now.edges.length &&
      was.edges.every((edge, i) => samePath(edge.path, now.edges[i]!.path)),
  );
  return at < 0 ? undefined : gone.splice(at, 1)[0];
}

const NOTHING = {
  number: 0,
  edges: [],
  lost: [],
  gained: [],
  lostArea: 0,
  gainedArea: 0,
  points: [],
  details: [],
};

function changeOf(
  { was, now }: Both<Piece>,
  naming: Naming,
  before: Measured,
  after: Measured,
): PieceChange[] {
  if (was === now) return [];
  const place = both(was && before.places.get(was.source), now && after.places.get(now.source));
  const ends = { name: both(was?.name, now?.name), place, piece: both(was, now) };
  if (was === undefined || now === undefined)
    return [{ ...NOTHING, ...ends, words: [], area: both(was?.area, now?.area) }];
  const change = compared(was, now, naming, after.unit);
  return change.words.length === 0 ? [] : [{ ...NOTHING, ...ends, ...change }];
}

function compared(was: Piece, now: Piece, naming: Naming, unit: Measured['unit']) {
  const pairs = pairEdges(was, now, naming);
  const matched = matchedOf(was, now, pairs, naming);
  const same = pairs.every(({ was: a, now: b }) => a && b && samePath(a.path, b.path));
  const anchor: Anchor = same ? { move: identity, held: '', moved: false } : anchorOf(matched);
  const deviation = same ? undefined : deviationOf(pairs, anchor.move);
  const holes = holesDiffer(was, now, anchor.move);
  const reshaped = (deviation?.by ?? 0) > TOLERANCE || holes;
  const edgeName = (name: string): string => pairs.find((pair) => pair.was?.name === name)?.now?.name ?? name;
  const details = [...detailsOf(was, now, anchor.move, { edge: edgeName }, unit), ...renamedEdges(pairs)];
  const words: PieceWord[] = [
    ...(was.name === now.name ? [] : (['renamed'] as const)),
    ...(reshaped ? (['reshaped'] as const) : anchor.moved ? (['moved'] as const) : []),
    ...(['marks', 'allowance', 'wording'] as const).filter((word) =>
      details.some((one) => one.word === word),
    ),
  ];
  const areas = reshaped ? difference(ringsOf(was, identity), ringsOf(now, anchor.move)) : undefined;
  return {
    ...{ words, details, anchor, area: { was: was.area, now: now.area } },
    ...(reshaped && deviation && { deviation }),
    edges: edgeLengths(pairs),
    points: reshaped ? movedPoints(matched, anchor.move) : [],
    ...(areas && {
      lost: areas.lost,
      gained: areas.gained,
      lostArea: areas.lostArea,
      gainedArea: areas.gainedArea,
    }),
  };
}

function pairEdges(was: Piece, now: Piece, naming: Naming): EdgePair[] {
  const names = new Set(now.edges.map(({ name }) => name));
  const old = new Map<string, Edge>();
  const gone: Edge[] = [];
  for (const edge of was.edges) {
    const name = naming.now(edge.name, names);
    if (name === undefined || old.has(name)) gone.push(edge);
    else old.set(name, edge);
  }
  return [...now.edges.map((edge) => both(old.get(edge.name), edge)), ...gone.map((edge) => ({ was: edge }))];
}

function matchedOf(was: Piece, now: Piece, pairs: readonly EdgePair[], naming: Naming): Matched {
  const names = new Map(now.corners.map(({ name, point }) => [name, point]));
  const known = new Set(names.keys());
  return {
    was,
    now,
    edges: pairs.flatMap((pair) => (pair.was && pair.now ? [{ was: pair.was, now: pair.now }] : [])),
    corners: was.corners.flatMap(({ name, point }) => {
      const other = naming.now(name, known);
      return other === undefined
        ? []
        : [{ name: other, key: [name, other].sort().join(' '), was: point, now: names.get(other)! }];
    }),
  };
}

/** Segment for segment in one place, to a millionth of a millimetre. */
function samePath(a: Path, b: Path): boolean {
  if (a === b) return true;
  if (a.segments.length !== b.segments.length) return false;
  const near = (p: Point, q: Point): boolean => Math.abs(p.x - q.x) < 1e-6 && Math.abs(p.y - q.y) < 1e-6;
  return a.segments.every((one, i) => {
    const other = b.segments[i]!;
    if (one.kind !== other.kind || !near(one.p0, other.p0) || !near(one.p3, other.p3)) return false;
    return one.kind === 'line' || other.kind === 'line' || (near(one.p1, other.p1) && near(one.p2, other.p2));
  });
}

/** A hole that came, went or grew shapes the piece; one that only moved is a mark that moved. */
function holesDiffer(was: Piece, now: Piece, move: Rigid): boolean {
  if (was.holes.length !== now.holes.length) return true;
  return was.holes.some((hole, i) => {
    const other = now.holes[i]!;
    const near = (p: Point, q: Point): boolean => distance(p, apply(move, q)) <= TOLERANCE;
    return (
      hole.edges.length !== other.edges.length ||
      hole.edges.some(({ path }, k) => !near(path.start, other.edges[k]!.path.start)) ||
      Math.abs(hole.area - other.area) > TOLERANCE * Math.sqrt(hole.area)
    );
  });
}

const renamedEdges = (pairs: readonly EdgePair[]): Detail[] =>
  pairs.flatMap(({ was, now }) =>
    was && now && was.name !== now.name
      ? [
          {
            word: 'wording',
            thing: say`edge`,
            text: { was: was.name, now: now.name },
            at: { was: was.path.pointAt(was.path.length / 2), now: now.path.pointAt(now.path.length / 2) },
          } as const,
        ]
      : [],
  );

const edgeLengths = (pairs: readonly EdgePair[]): PieceChange['edges'] =>
  pairs
    .filter(
      ({ was, now }) => was === undefined || now === undefined || Math.abs(was.sewn - now.sewn) > TOLERANCE,
    )
    .map(({ was, now }) => ({ edge: both(was?.name, now?.name), length: both(was?.sewn, now?.sewn) }));

function movedPoints({ corners }: Matched, move: Rigid): MovedPoint[] {
  return corners.flatMap(({ name, was, now }) => {
    const to = apply(move, now);
    const by = distance(was, to);
    return by <= TOLERANCE ? [] : [{ name: { was: name, now: name }, point: { was, now: to }, by }];
  });
}

/** Chords no further than this from their curve, mm. */
const CHORD = 0.005;

/** The sewing line and its holes as rings of chords. */
export function ringsOf({ edges, holes }: Piece, move: Rigid): Rings {
  const ring = (of: readonly Edge[]): Point[] =>
    of.flatMap(({ path }) => path.transformed(move).polyline(CHORD).slice(0, -1));
  return [ring(edges), ...holes.map((hole) => ring(hole.edges))];
}

/**
 * Notches of a band: where the edges that it goes round join, at the middle across from its opening, at the end of its
 * underlap, and where a notch on their seam comes to lie. The order round the body is taken from the seams alone: from
 * the centre that opens to the other one. Where they do not tell it, the band gets none.
 */
import type { Edge, Notch, Piece, Seam, SewnEdge } from '../model';
import { edgeNamed, pointOn } from './course';
import type { PlacedNotch } from './notch';
import { timesRound } from './ring';

/** Half of the ring, from the centre that opens to the other. */
interface Half {
  readonly runs: readonly RoundRun[];
  readonly length: number;
  /** The seam or the fold at the other centre. */
  readonly across: { readonly name: string; readonly source: string };
}

interface RoundRun {
  readonly taken: SewnEdge & { readonly of: Piece };
  /** Sewn distance from the opening to where the edge is come to, and whether it is passed against its outline. */
  readonly start: number;
  readonly turned: boolean;
  /** The seam over which one comes to it; none at the opening. */
  readonly over?: Seam;
}

/** What the gathered pattern says of a ring. */
export interface Round {
  readonly seams: readonly Seam[];
  readonly placed: readonly PlacedNotch[];
  /** Whether a piece differs from side to side: its two halves are then not each other's mirror image. */
  readonly sided: (piece: string) => boolean;
}

/** How far the ring and the band may be apart, mm: the band is cut for another ring where they are further. */
const SAME = 0.05;

export function bandNotches(band: Piece, { seams, placed, sided }: Round): readonly PlacedNotch[] {
  for (const seam of seams) {
    const round = roundOf(band, seam);
    if (round?.some(({ piece }) => sided(piece)) === true) continue;
    const half = round && halfRound(round, seams);
    const bare = (band.edges.find(({ name }) => name === 'lower')?.sewn ?? 0) - (band.underlap ?? 0);
    if (half === undefined || Math.abs(2 * half.length - bare) > SAME) continue;
    return cutInto(band, placesOn(half, seam, placed), bare);
  }
  return [];
}

/** The whole edges that a seam joins to the band, each of which goes round on both sides of the wearer. */
function roundOf(band: Piece, { left, right, side }: Seam): readonly RoundRun['taken'][] | undefined {
  const isBand = (edges: readonly SewnEdge[]): boolean => edges.length === 1 && edges[0]!.piece === band.base;
  const other = isBand(right) ? left : isBand(left) ? right : undefined;
  if (other === undefined || side !== undefined) return undefined;
  const edges = other.flatMap((edge) => (edge.of === undefined ? [] : [{ ...edge, of: edge.of }]));
  const whole = edges.every(({ of, stretch }) => stretch === undefined && timesRound(of) === 2);
  return whole && edges.length === other.length && edges.length > 0 ? edges : undefined;
}

/** What is at one end of an edge: the middle of the body, or a seam to the next edge. */
interface End {
  readonly neighbour: string;
  readonly centre?: { readonly name: string; readonly source: string; readonly seam?: Seam };
}

function endOf({ of, edge }: RoundRun['taken'], step: 1 | -1, seams: readonly Seam[]): End {
  const index = of.edges.findIndex(({ name }) => name === edge);
  const neighbour = of.edges[(index + step + of.edges.length) % of.edges.length]!.name;
  if (of.fold?.edge === neighbour) return { neighbour, centre: { name: neighbour, source: of.fold.source } };
  const seam = seams.find(({ itsPair, left }) => itsPair && left.some(isEdge(of, neighbour)));
  return { neighbour, ...(seam && { centre: { name: seam.name, source: seam.source, seam } }) };
}

const isEdge =
  (of: Piece, name: string) =>
  ({ piece, edge }: SewnEdge): boolean =>
    piece === of.base && edge === name;

const fastens = (seam: Seam | undefined): boolean => opens(seam).some((how) => how !== 'left-open');

function opens(seam: Seam | undefined): readonly string[] {
  const node = seam?.statement.node;
  return node?.kind === 'seam' ? node.openings.map(({ how }) => how) : [];
}

/** From the only centre that opens, over the seams, to the other; undefined where this can't be followed. */
function halfRound(round: readonly RoundRun['taken'][], seams: readonly Seam[]): Half | undefined {
  const starts = round.flatMap((taken) =>
    ([-1, 1] as const).flatMap((step) => {
      const { centre } = endOf(taken, step, seams);
      return centre === undefined ? [] : [{ taken, step, centre }];
    }),
  );
  if (starts.length !== 2) return undefined;
  const [opening, ...others] = starts.filter(({ centre }) => fastens(centre.seam));
  if (opening === undefined || others.length > 0) return undefined;
  const half = followed(opening.taken, opening.step, round, seams);
  // a band that is fastened at a side as well has its ends nobody knows where
  return half?.runs.some(({ over }) => fastens(over)) === true ? undefined : half;
}

function followed(
  first: RoundRun['taken'],
  step: 1 | -1,
  round: readonly RoundRun['taken'][],
  seams: readonly Seam[],
): Half | undefined {
  const runs: RoundRun[] = [];
  let [taken, turned, start] = [first, step === 1, 0];
  let over: Seam | undefined;
  for (;;) {
    if (runs.some((run) => run.taken === taken)) return undefined;
    runs.push({ taken, start, turned, ...(over && { over }) });
    start += taken.length;
    const { neighbour, centre } = endOf(taken, turned ? -1 : 1, seams);
    if (centre !== undefined)
      return runs.length === round.length ? { runs, length: start, across: centre } : undefined;
    const next = nextOver(taken.of, neighbour, round, seams);
    if (next === undefined) return undefined;
    [taken, turned, over] = [next.taken, next.turned, next.seam];
  }
}

/** The edge of the ring that begins or ends at the seam of an edge beside it; only one may. */
function nextOver(
  of: Piece,
  neighbour: string,
  round: readonly RoundRun['taken'][],
  seams: readonly Seam[],
): { readonly taken: RoundRun['taken']; readonly turned: boolean; readonly seam: Seam } | undefined {
  const found = seams.flatMap((seam) => {
    const sides = [seam.left, seam.right];
    const at = sides.findIndex((side) => side.some(isEdge(of, neighbour)));
    const others = at < 0 || seam.itsPair ? [] : sides[1 - at]!;
    return round.flatMap((taken) =>
      ([-1, 1] as const).flatMap((step) => {
        const there = endOf(taken, step, seams).neighbour;
        return others.some(isEdge(taken.of, there)) ? [{ taken, turned: step === 1, seam }] : [];
      }),
    );
  });
  return found.length === 1 ? found[0] : undefined;
}

/** Something to be marked, at a sewn distance from the opening. */
type Place = Pick<Notch, 'name' | 'source' | 'count'> & { readonly at: number };

function placesOn({ runs, length, across }: Half, seam: Seam, placed: readonly PlacedNotch[]): Place[] {
  const joins = runs.flatMap(({ over, start }) =>
    over === undefined ? [] : [{ name: over.name, source: over.source, count: 1 as const, at: start }],
  );
  const own = placed.flatMap((notch) => {
    const run = runs.find(({ taken }) => taken.piece === notch.piece && taken.edge === notch.edge);
    if (run === undefined || notch.seam !== seam.source) return [];
    const { name, source, count, distance } = notch;
    return [{ name, source, count, at: run.start + (run.turned ? run.taken.length - distance : distance) }];
  });
  const fresh = own.filter(({ at }) => joins.every((join) => Math.abs(join.at - at) > SAME));
  const halves = [...joins, ...fresh].filter(({ at }) => at > SAME && at < length - SAME);
  const middle: Place = { name: across.name, source: across.source, count: 1, at: length };
  const others = halves.map((place) => ({ ...place, at: 2 * length - place.at }));
  return [...halves, middle, ...others].sort((a, b) => a.at - b.at);
}

/** Into both long edges, which lie on each other when the band is folded. */
function cutInto(band: Piece, places: readonly Place[], bare: number): PlacedNotch[] {
  const lap = band.underlap ?? 0;
  const { node } = band.statement;
  const first = node.kind === 'band' && node.underlap?.at === 'left' ? 0 : lap;
  const end = { name: 'underlap', source: band.source, count: 1 as const, at: first === 0 ? bare : 0 };
  return ['lower', 'upper'].flatMap((name) => {
    const edge = edgeNamed(band, name);
    if (edge === undefined) return [];
    return [...places, ...(lap > 0 ? [end] : [])].map(({ at, ...notch }) => {
      const distance = alongEdge(edge, first + at);
      return { ...notch, edge: name, distance, point: pointOn(edge, distance), piece: band.base };
    });
  });
}

/** The long edges lie level, from the wearer's right end on the left of the paper or against it. */
const alongEdge = (edge: Edge, x: number): number =>
  edge.path.pointAt(0).x < edge.path.pointAt(edge.path.length).x ? x : edge.sewn - x;

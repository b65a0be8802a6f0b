/**
 * Rings of named edges that close round the body or a limb: a hem, a waist, a neck. From an edge the walk crosses each seam
 * that ends at its corner, and goes on along the edge on the other side, until it comes back or meets a fold or the seam to
 * a pair. What can't be followed with certainty is no ring.
 */
import type { Edge, Pattern, Piece, Seam, SewnEdge } from '../../drafting/model';
import { timesRound } from '../../drafting/sewing/ring';

export interface EdgeRing {
  /** The edges' common name, or their names one by one. */
  readonly name: string;
  readonly pieces: readonly string[];
  readonly round: 'body' | 'limb';
  /** All round the body, or round the limb of each side, mm. */
  readonly left: number;
  readonly right: number;
}

interface At {
  readonly piece: Piece;
  readonly edge: Edge;
}

/** Every ring of the pieces that are cut, facings left out: they lie on the edges that they face. */
export function edgeRings(pattern: Pattern): readonly EdgeRing[] {
  const [left, right] = (['left', 'right'] as const).map((side) => ringsOf(pattern, side)) as [
    Found[],
    Found[],
  ];
  return left.flatMap((one) => {
    const other = right.find(({ key }) => key === one.key);
    return other === undefined ? [] : (joined(one, other) ?? []);
  });
}

interface Found {
  readonly key: string;
  readonly edges: readonly At[];
  readonly halved: boolean;
}

function joined(one: Found, other: Found): EdgeRing | undefined {
  const [left, right] = [one, other].map(({ edges }) =>
    edges.reduce((sum, { edge }) => sum + edge.sewn, 0),
  ) as [number, number];
  const [copies = 1] = one.edges.map(({ piece }) => piece.copies ?? 1).sort((a, b) => b - a);
  const pairs = one.edges.map(
    ({ piece }) => piece.side !== undefined || (copies === 1 && timesRound(piece) === 2),
  );
  const round = one.halved || !pairs.some(Boolean) ? 'body' : pairs.every(Boolean) ? 'limb' : undefined;
  if (round === undefined) return undefined;
  const whole = copies * (one.halved ? left + right : left);
  return {
    ...{ name: nameOf(one.edges), round },
    pieces: [...new Set(one.edges.map(({ piece }) => piece.base))],
    left: round === 'body' ? whole : left,
    right: round === 'body' ? whole : right,
  };
}

function nameOf(edges: readonly At[]): string {
  const names = new Set(edges.map(({ edge }) => edge.name));
  return names.size === 1
    ? [...names][0]!
    : edges.map(({ piece, edge }) => `${piece.base} ${edge.name}`).join(' + ');
}

/** The rings of one side of the wearer. */
function ringsOf(pattern: Pattern, side: 'left' | 'right'): Found[] {
  const pieces = pattern.pieces.filter(
    (piece) =>
      piece.cut !== undefined &&
      piece.facing === undefined &&
      piece.unbuilt.length === 0 &&
      piece.gaps.length === 0 &&
      (piece.side === undefined || piece.side === side),
  );
  const house = new House(
    pieces,
    pattern.seams.filter((seam) => seam.side === undefined || seam.side === side),
  );
  const seen = new Set<Edge>();
  return pieces.flatMap((piece) =>
    piece.edges.flatMap((edge): Found[] => {
      // a fold ends rings and is none: a bag folded at its foot has no foot to go round
      if (seen.has(edge) || edge.name === piece.fold?.edge) return [];
      const ring = house.ring({ piece, edge });
      if (ring === undefined) return [];
      ring.edges.forEach((one) => seen.add(one.edge));
      return [
        {
          ...ring,
          key: ring.edges
            .map((one) => `${one.piece.base}.${one.edge.name}`)
            .sort()
            .join(' '),
        },
      ];
    }),
  );
}

/** How far apart two places may be counted and be the same, mm. */
const SAME = 1;

class House {
  constructor(
    private readonly pieces: readonly Piece[],
    private readonly seams: readonly Seam[],
  ) {}

  ring(first: At): Omit<Found, 'key'> | undefined {
    const on = this.walk(first, 'end');
    if (on === undefined || on.back) return on && { edges: [first, ...on.edges], halved: false };
    const back = this.walk(first, 'start');
    if (back === undefined || back.back) return undefined;
    return { edges: [...[...back.edges].reverse(), first, ...on.edges], halved: true };
  }

  /** Edges after the first one, up to a middle (`back` is false) or round to the first again. */
  private walk(first: At, leave: 'start' | 'end'): { edges: At[]; back: boolean } | undefined {
    const edges: At[] = [];
    let here = { at: first, leave };
    while (edges.length <= this.pieces.length * 4) {
      const next = this.across(here.at, here.leave);
      if (next === undefined || next === 'middle') return next && { edges, back: false };
      if (next.at.edge === first.edge) return { edges, back: true };
      edges.push(next.at);
      here = next;
    }
    return undefined;
  }

  /** Over the seam at one end of an edge to the edge that goes on there, and the end by which that one is left. */
  private across({ piece, edge }: At, leave: 'start' | 'end') {
    const beside = neighbour(piece, edge, leave);
    if (beside.name === piece.fold?.edge) return 'middle' as const;
    const mine = this.seams.filter((seam) =>
      [seam.left, seam.right].some((one) => takes(one, piece, beside)),
    );
    const [seam] = mine;
    if (mine.length !== 1 || seam === undefined || !oneToOne(seam)) return undefined;
    const onLeft = takes(seam.left, piece, beside);
    // the edge that is left at its end meets the start of the next one
    const first = this.isBeginning(seam, onLeft, leave === 'end' ? 'start' : 'end', beside);
    if (first === undefined || opensAt(seam, first)) return undefined;
    if (seam.itsPair) return 'middle' as const;
    const [other] = onLeft ? seam.right : seam.left;
    const there = this.pieces.find(({ base }) => base === other!.piece);
    const partner = there?.edges.find(({ name }) => name === other!.edge);
    if (there === undefined || partner === undefined) return undefined;
    const end = this.endOf(seam, !onLeft, first, partner);
    if (end === undefined) return undefined;
    const at = { piece: there, edge: neighbour(there, partner, end) };
    return { at, leave: end === 'end' ? ('end' as const) : ('start' as const) };
  }

  /** Whether an end of an edge lies at the beginning of its side of the seam. */
  private isBeginning(seam: Seam, onLeft: boolean, end: 'start' | 'end', edge: Edge): boolean | undefined {
    const run = runOf(seam, onLeft, edge);
    if (run === undefined) return undefined;
    const at = end === 'start' ? 0 : edge.sewn;
    if (Math.abs(run.from - at) <= SAME) return true;
    return Math.abs(run.to - at) <= SAME ? false : undefined;
  }

  private endOf(seam: Seam, onLeft: boolean, first: boolean, edge: Edge): 'start' | 'end' | undefined {
    const run = runOf(seam, onLeft, edge);
    if (run === undefined) return undefined;
    const at = first ? run.from : run.to;
    if (Math.abs(at) <= SAME) return 'start';
    return Math.abs(at - edge.sewn) <= SAME ? 'end' : undefined;
  }
}

/** A cut that a division makes is sewn up as it was cut: the two edges run against each other. */
function runOf(seam: Seam, onLeft: boolean, edge: Edge): { from: number; to: number } | undefined {
  if (seam.course !== undefined) return (onLeft ? seam.course.left : seam.course.right)[0];
  if (seam.statement.node.kind === 'seam') return undefined;
  return onLeft ? { from: 0, to: edge.sewn } : { from: edge.sewn, to: 0 };
}

function neighbour({ edges }: Piece, edge: Edge, end: 'start' | 'end'): Edge {
  const i = edges.indexOf(edge) + (end === 'end' ? 1 : -1);
  return edges[(i + edges.length) % edges.length]!;
}

const takes = (side: readonly SewnEdge[], piece: Piece, edge: Edge): boolean =>
  side.some((one) => one.piece === piece.base && one.edge === edge.name);

const oneToOne = ({ left, right, itsPair }: Seam): boolean =>
  left.length === 1 &&
  (itsPair || right.length === 1) &&
  [...left, ...right].every(({ stretch }) => stretch === undefined);

/** Laces and slits leave the ring open; a zip, buttons and hooks close it. */
const opensAt = ({ openings = [], leftLength }: Seam, beginning: boolean): boolean =>
  openings.some(
    ({ how, from, to }) =>
      (how === 'left-open' || how === 'laced') && (beginning ? from <= SAME : to >= leftLength - SAME),
  );

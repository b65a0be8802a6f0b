/** What lies on a piece besides its outline: carried along when the paper is moved, parted where the paper is cut. */
import { apply, contains, distance, intersections, Path, type Affine, type Point } from '../../geometry';
import type { Edge, Hole, Mark, Piece } from '../model';

export type Carried = Pick<Piece, 'balance' | 'labels' | 'marks' | 'holes'>;

/** What becomes of a point, of a line, and of a hole; a thing of which nothing is left is gone. */
interface Fate {
  readonly point: (p: Point) => Point | undefined;
  readonly path: (path: Path) => Path | undefined;
  readonly hole: (hole: Hole) => Hole | undefined;
}

/** All of it carried by one movement. */
export const carriedBy = (of: Carried, m: Affine): Carried =>
  fated(of, {
    point: (p) => apply(m, p),
    path: (path) => path.transformed(m),
    hole: (hole) => movedHole(hole, m),
  });

/** A movement of one part of the paper. */
export interface Moving {
  /** The part of the outline that moves, in its order. */
  readonly stretch: readonly Path[];
  /** From the end of that stretch back to its start. */
  readonly cut: Path;
  readonly by: Affine;
  /** A strip that is taken out beside the cut, end to end, its other side last. */
  readonly gone?: readonly Path[];
}

const movesWith = ({ stretch, cut, gone }: Moving): ((p: Point) => boolean) => {
  const region = [...stretch, cut];
  // what lies at the far side of a strip that is taken out comes to lie where the strip began
  const onFarSide = (p: Point): boolean => gone !== undefined && cut.locate(p).distance < ON_LINE;
  return (p) => onFarSide(p) || liesIn(region, stretch, cut, p);
};

/**
 * Carried by a movement where it lies on the part of the paper that moves. A line that crosses the cut is drawn on
 * straight over what opens there, and loses what is taken out; what lies on the cut itself stays.
 */
export function carriedPartly(of: Carried, moving: Moving): Carried {
  if (isEmpty(of)) return NOTHING;
  const moves = movesWith(moving);
  const { by } = moving;
  return fated(of, {
    point: (p) => (moves(p) ? apply(by, p) : p),
    path: pathPartly(moving),
    hole: (hole) => (moves(inner(hole)) ? movedHole(hole, by) : hole),
  });
}

/** What becomes of a line under a movement of a part of the paper. */
export function pathPartly(moving: Moving): (path: Path) => Path {
  const moves = movesWith(moving);
  const { cut, by, gone } = moving;
  return (path) => {
    const parts = gone === undefined ? parted(path, cut) : parted(path, cut, gone[gone.length - 1]!);
    const left = gone === undefined ? parts : parts.filter((part) => !contains(gone, middle(part)));
    return joined(
      (left.length === 0 ? parts : left).map((part) => (moves(middle(part)) ? part.transformed(by) : part)),
    );
  };
}

/** What is left of a line within a part of the piece. */
export const pathWithin =
  (outline: readonly Path[], cut: Path) =>
  (path: Path): Path | undefined =>
    longest(parted(path, cut).filter((part) => liesIn(outline, outline, cut, middle(part))));

/** What of it lies within a part of the piece; of a line that leaves it, the longest stretch. */
export function carriedWithin(of: Carried, outline: readonly Path[], cut: Path): Carried {
  if (isEmpty(of)) return NOTHING;
  const within = (p: Point): boolean => liesIn(outline, outline, cut, p);
  return fated(of, {
    point: (p) => (within(p) ? p : undefined),
    path: pathWithin(outline, cut),
    hole: (hole) => (within(inner(hole)) ? hole : undefined),
  });
}

/** Of both halves of a piece, each thing that has no place of its own once. */
export const carriedTogether = (one: Carried, other: Carried): Carried => ({
  balance: [...one.balance, ...other.balance],
  labels: [...one.labels, ...other.labels.filter(({ at }) => at !== undefined)],
  marks: [...one.marks, ...other.marks],
  holes: [...one.holes, ...other.holes.map(otherHole)],
});

/** Its edges are told from those of the half that is drawn as those of the outline are. */
const otherHole = (hole: Hole): Hole => ({
  ...hole,
  edges: hole.edges.map((edge) => ({ ...edge, name: `${edge.name}-other` })),
});

/** Never the piece itself: what is taken over is spread over another. */
const NOTHING: Carried = { balance: [], labels: [], marks: [], holes: [] };

const isEmpty = ({ balance, labels, marks, holes }: Carried): boolean =>
  balance.length + labels.length + marks.length + holes.length === 0;

function fated({ balance, labels, marks, holes }: Carried, fate: Fate): Carried {
  return {
    balance: balance.flatMap((line) => {
      const path = fate.path(line.path);
      return path === undefined ? [] : [{ ...line, path }];
    }),
    labels: labels.flatMap((label) => {
      if (label.at === undefined) return [label];
      const at = fate.point(label.at);
      return at === undefined ? [] : [{ ...label, at }];
    }),
    marks: marks.flatMap((mark) => fatedMark(mark, fate)),
    holes: holes.flatMap((hole) => fate.hole(hole) ?? []),
  };
}

function fatedMark(mark: Mark, fate: Fate): readonly Mark[] {
  // the bars of buttonholes go with the points that they stand at, bones and lines by themselves
  const points = mark.points.flatMap((p) => fate.point(p) ?? []);
  const paths = mark.paths.flatMap((path) => fate.path(path) ?? []);
  return points.length + paths.length === 0 ? [] : [{ ...mark, points, paths }];
}

/** An edge carried by a rigid movement. */
export const movedEdge = (edge: Edge, m: Affine): Edge => ({
  ...edge,
  path: edge.path.transformed(m),
  parts: edge.parts.map((part) => ({ ...part, path: part.path.transformed(m) })),
});

const movedHole = (hole: Hole, m: Affine): Hole => ({
  ...hole,
  edges: hole.edges.map((edge) => movedEdge(edge, m)),
  ...(hole.cutting && { cutting: hole.cutting.map((path) => path.transformed(m)) }),
});

/** Nearer to a line than this a point lies on it: what a sharp pencil can tell, mm. */
const ON_LINE = 0.05;

function liesIn(region: readonly Path[], own: readonly Path[], cut: Path, p: Point): boolean {
  if (cut.locate(p).distance < ON_LINE) return region === own;
  return own.some((path) => path.locate(p).distance < ON_LINE) || contains(region, p);
}

const inner = ({ edges }: Hole): Point => middle(edges[0]!.path);

const middle = (path: Path): Point => path.pointAt(path.length / 2);

/** A line in the parts that cuts make of it. */
function parted(path: Path, ...cuts: readonly Path[]): readonly Path[] {
  const crossed = cuts.flatMap((cut) => intersections(path, cut).map(({ sA }) => sA));
  const at = [0, ...crossed.sort((a, b) => a - b), path.length];
  const parts = at.slice(1).flatMap((s, i) => (s - at[i]! > 1e-6 ? [path.part(at[i]!, s)] : []));
  return parts.length === 0 ? [path] : parts;
}

/** Whether a line has something on both sides of a cut. */
export const leadsOver = (path: Path, cut: Path): boolean => parted(path, cut).length > 1;

/** Parts that the paper has taken apart, joined straight. */
function joined(parts: readonly Path[]): Path {
  return parts.reduce((before, after) => {
    const gapes = distance(before.end, after.start) > 1e-9;
    const so = gapes ? before.joinedTo(Path.line(before.end, after.start)) : before;
    return so.joinedTo(after);
  });
}

const longest = (parts: readonly Path[]): Path | undefined =>
  parts.length === 0 ? undefined : parts.reduce((a, b) => (b.length > a.length + 1e-9 ? b : a));

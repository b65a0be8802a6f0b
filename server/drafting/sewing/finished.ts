/** The last step of making a piece: allowances that finishes take, notches, corners, and the cutting line. */
import {
  add,
  cuttingLine,
  intersections,
  Path,
  ringOf,
  scale,
  type CornerRule,
  type CutEdge,
  type CuttingLine,
  type Point,
} from '../../geometry';
import type {
  Edge,
  Finish,
  Notch,
  Piece,
  RuledCorner,
  RunningAllowance,
  Seam,
  TightAllowance,
} from '../model';
import { equal } from '../equal';
import { cutPath } from '../pieces/roof';
import { allowanceAt } from '../pieces/widths';
import { ruledCorners } from './corner-rules';
import { hemAtEnd, hemsOf, takenByFinishes, withFinishes, withStretches } from './finish-widths';
import { cutHoles } from './hole-cutting';
import type { PlacedNotch } from './notch';

/** What a piece gets from the lines that stand outside its block. */
export interface Finishing {
  readonly allowances: ReadonlyMap<string, number>;
  readonly running: Piece['running'];
  readonly hems: ReadonlyMap<string, 1 | 2>;
  readonly ruledCorners: readonly RuledCorner[];
}

/**
 * @param finishes those that take an edge of this piece, in file order
 * @param seams those that take one
 */
export function finishing(piece: Piece, finishes: readonly Finish[], seams: readonly Seam[]): Finishing {
  const taken = takenByFinishes(piece, finishes);
  const allowed = { allowances: withFinishes(piece, taken), running: withStretches(piece, taken) };
  const hems = hemsOf(taken);
  const hemAt = (edge: Edge, end: 'start' | 'end') => hemAtEnd(taken, edge, end);
  const wide = { ...piece, ...allowed };
  const widthAt = ({ name, path }: Edge, end: 'start' | 'end'): number =>
    allowanceAt(wide, name, end === 'start' ? 0 : path.length);
  return { ...allowed, hems, ruledCorners: ruledCorners(piece, { seams, finishes, hemAt, widthAt }) };
}

/** Whether two come to the same, so that a piece need not be cut anew. */
export const sameFinishing = (a: Finishing, b: Finishing): boolean =>
  sameMap(a.allowances, b.allowances) &&
  sameMap(a.hems, b.hems) &&
  equal(a.running, b.running) &&
  a.ruledCorners.length === b.ruledCorners.length &&
  a.ruledCorners.every((corner, i) => sameCorner(corner, b.ruledCorners[i]!));

const sameMap = <T>(a: ReadonlyMap<string, T>, b: ReadonlyMap<string, T>): boolean =>
  a.size === b.size && [...a].every(([key, value]) => b.get(key) === value);

const sameCorner = (a: RuledCorner, b: RuledCorner): boolean =>
  a.before === b.before && a.after === b.after && a.why === b.why && sameRule(a.rule, b.rule);

function sameRule(a: CornerRule, b: CornerRule): boolean {
  const words = (rule: CornerRule): string =>
    `${rule.how} ${'edge' in rule ? rule.edge : ''} ${'folds' in rule ? rule.folds : ''}`;
  return words(a) === words(b);
}

/**
 * A piece ready to be cut.
 *
 * @param notches those cut into this piece
 */
export function finished(piece: Piece, by: Finishing, notches: readonly PlacedNotch[]): Piece {
  const cut = notches.map(({ piece: _, ...notch }): Notch => notch);
  return withCutting({ ...piece, ...by, notches: cut });
}

/** The piece with its cutting line drawn anew from its allowances. */
export const withCutting = (piece: Piece): Piece => {
  const { cutting: _, cutShape: __, ...rest } = piece;
  return { ...rest, ...(rest.holes.length > 0 && { holes: cutHoles(rest) }), ...cutting(rest) };
};

type Uncut = Omit<Piece, 'cutting' | 'cutShape'>;

/** None for an outline with a gap, or where no allowance is stated at all: such a piece is shown by its sewing line. */
function cutting(piece: Uncut): Pick<Piece, 'cutting' | 'cutShape'> {
  const { allowances, inlays, running } = piece;
  const stated =
    running.length > 0 ||
    [...allowances.values()].some((width) => width > 0) ||
    allowances.size >= piece.edges.length;
  if (piece.gaps.length > 0 || !stated) return {};
  const runs = piece.edges.map((edge) => cutEdges(piece, edge));
  const bare = cuttingLine(withCorners(piece, runs).flat());
  const tight = tightIn(piece, runs, bare);
  if (inlays === undefined || inlays.size === 0)
    return {
      cutting: byEdge(runs, bare),
      cutShape: { corners: cornersOf(runs, bare), tight, inlayLines: [] },
    };
  const wide = runs.map((of, i) => of.map((one) => widened(one, inlays.get(piece.edges[i]!.name) ?? 0)));
  const whole = cuttingLine(withCorners(piece, wide).flat());
  const endsAt = cornersOf(runs, bare);
  const inlayLines = byEdge(runs, bare).flatMap((path, i) => {
    const edge = piece.edges[i]!.name;
    if (!inlays.has(edge)) return [];
    const before = (i + runs.length - 1) % runs.length;
    // what leads from one corner's tip to the edge is kept with the edge before
    const lead = partFrom(byEdge(runs, bare)[before]!, endsAt[before]!.tip);
    const own = path.part(0, path.locate(endsAt[i]!.tip).s);
    return [{ edge, path: runToCut(runs.length > 1 ? lead.joinedTo(own) : own, whole) }];
  });
  return {
    cutting: byEdge(runs, whole),
    cutShape: { corners: cornersOf(runs, whole), tight, inlayLines },
  };
}

/** Corners between edges, without those between the runs of one edge. */
function cornersOf(runs: readonly (readonly unknown[])[], { corners }: CuttingLine): CuttingLine['corners'] {
  let end = -1;
  return runs.map((of) => corners[(end += of.length)]!);
}

const partFrom = (path: Path, from: Point): Path => path.part(path.locate(from).s, path.length);

/** The end of the allowance, run on straight at both ends to the cutting line. */
function runToCut(path: Path, { outline }: CuttingLine): Path {
  const ring = ringOf(outline);
  const onward = (from: Point, along: Point): readonly Point[] => {
    const there = add(from, scale(along, path.length));
    const [met] = intersections(Path.line(from, there), ring);
    return met === undefined ? [] : [met.point];
  };
  const ahead = onward(path.end, path.tangentAt(path.length, 'before'));
  const before = onward(path.start, scale(path.tangentAt(0), -1));
  return Path.of([
    ...Path.polyline([...before, path.start]).segments,
    ...path.segments,
    ...Path.polyline([path.end, ...ahead]).segments,
  ]);
}

const widened = (edge: CutEdge, by: number): CutEdge => ({
  ...edge,
  allowance: edge.allowance + by,
  ...(edge.allowanceAtEnd !== undefined && { allowanceAtEnd: edge.allowanceAtEnd + by }),
});

/** The paths of a cutting line, those of one edge together. */
function byEdge(runs: readonly (readonly unknown[])[], { outline }: CuttingLine): readonly Path[] {
  let next = 0;
  return runs.map((of) => Path.joined(outline.slice(next, (next += of.length))));
}

/** The rule of a corner goes with the last run of the edge that ends there. */
function withCorners(piece: Uncut, runs: readonly (readonly CutEdge[])[]): readonly (readonly CutEdge[])[] {
  return runs.map((of, i) => {
    const [before, after] = [piece.edges[i]!, piece.edges[(i + 1) % runs.length]!];
    const corner = ruleBetween(piece.ruledCorners ?? [], before.name, after.name);
    if (corner === undefined) return of;
    return of.map((one, k) => (k === of.length - 1 ? { ...one, corner } : one));
  });
}

/** On the other half of an open piece the corner is passed the other way about. */
function ruleBetween(corners: readonly RuledCorner[], before: string, after: string): CornerRule | undefined {
  const found = corners.find((corner) => corner.before === before && corner.after === after);
  if (found !== undefined) return found.rule;
  const [a, b] = [ofHalf(before), ofHalf(after)];
  if (a === undefined || b === undefined) return undefined;
  const rule = corners.find((corner) => corner.before === b && corner.after === a)?.rule;
  if (rule === undefined || !('edge' in rule)) return rule;
  return { ...rule, edge: rule.edge === 'before' ? 'after' : 'before' };
}

const ofHalf = (name: string): string | undefined =>
  name.endsWith('-other') ? name.slice(0, -6) : undefined;

/** An edge as it is cut: one run of one width, or several where the allowance runs from one width to another. */
function cutEdges(piece: Uncut, edge: Edge): readonly CutEdge[] {
  const path = cutPath(edge, piece.darts);
  const allowance = piece.allowances.get(edge.name) ?? 0;
  const running = piece.running.filter((one) => one.edge === edge.name).sort((a, b) => a.from - b.from);
  if (running.length === 0) return [{ path, allowance }];
  const found: CutEdge[] = [];
  let at = 0;
  // beyond a running stretch the edge keeps the width that was run to, without a step
  let width = firstWidth(running[0]!, allowance);
  for (const one of running) {
    const [from, to] = [Math.max(at, one.from), Math.min(one.to, path.length)];
    if (to - from <= SHORTEST) continue;
    if (from > at + SHORTEST) found.push({ path: path.part(at, from), allowance: width });
    found.push({ path: path.part(from, to), allowance: one.widthFrom, allowanceAtEnd: one.widthTo });
    [at, width] = [to, one.stepped === true ? allowance : one.widthTo];
  }
  if (path.length > at + SHORTEST) found.push({ path: path.part(at, path.length), allowance: width });
  return found;
}

const firstWidth = ({ stepped, widthFrom }: RunningAllowance, allowance: number): number =>
  stepped === true ? allowance : widthFrom;

/** Stretches shorter than this, mm, are rounding. */
const SHORTEST = 0.01;

/** Stretches that bend too tightly, counted along their edges. */
function tightIn(
  piece: Uncut,
  runs: readonly (readonly CutEdge[])[],
  { tight }: CuttingLine,
): readonly TightAllowance[] {
  const starts = runs.flatMap((of, i) => {
    let s = 0;
    return of.map(({ path }) => ({ edge: piece.edges[i]!.name, start: (s += path.length) - path.length }));
  });
  return tight.map(({ edge, s0, s1 }) => {
    const { edge: name, start } = starts[edge]!;
    return { edge: name, from: start + s0, to: start + s1 };
  });
}

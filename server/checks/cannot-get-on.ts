/** Finds openings of a garment that the body can't get through: a neck smaller than the head, a waist smaller than the hip. */
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { BodySheet, Finish, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';
import { edgeNamed, loopOf } from '../drafting/sewing/course';
import { timesRound } from '../drafting/sewing/ring';
import { printLength, printLengthFine } from '../drafting/values/quantity';
import { byBase } from './around';
import { finding, type Judged } from './check';
import { ofBodyDraftedFor, taken, whose } from './measurements';
import { called, fateOf, isBandOf } from './seam-ends';
import { rangeInWords, usualRange, type Usual } from './usual';

const room = (name: string, low: number): Usual => ({
  ...{ name, low, high: Infinity },
  kind: 'length',
  standing: 'common practice, for cloth that does not stretch',
});

interface Way {
  /** What the edges of the ring are called. */
  readonly words: readonly string[];
  /** What has to get through: the smallest of these. */
  readonly over: readonly string[];
  /** What one of them comes to at least where it was not taken, mm, by the others. */
  readonly atLeast?: { readonly name: string; by(taken: ReadonlyMap<string, number>): number | undefined };
  /** Cut once for each limb, so that a pair is two rings. */
  readonly limb: boolean;
  readonly usual: Usual;
}

/**
 * How far a bust may stay behind the hip, mm. Size tables have it 4 to 8cm behind, and a waist some 25cm: twice the first leaves
 * room for most bodies, and a closed waist is found all the same. *From memory.*
 */
const BUST_BEHIND_HIP = 160;

/** A skirt comes over the hips or over the head; who measured nothing but the hips is judged by a small bust. */
const SMALL_BUST: Way['atLeast'] = {
  name: 'bust',
  by: (taken) => {
    const hip = taken.get('hip');
    return hip === undefined ? undefined : hip - BUST_BEHIND_HIP;
  },
};

const WAYS: readonly Way[] = [
  { words: ['neck', 'neckline'], over: ['head'], limb: false, usual: room('neck-over-head', 10) },
  {
    ...{ words: ['waist', 'waistline'], over: ['hip', 'bust'], atLeast: SMALL_BUST },
    ...{ limb: false, usual: room('waist-over-hip', 0) },
  },
  { words: ['wrist', 'cuff'], over: ['hand'], limb: true, usual: room('wrist-over-hand', 0) },
  { words: ['foot', 'ankle'], over: ['heel-round'], limb: true, usual: room('foot-over-heel', 10) },
];

export const cannotGetOn: Judged = {
  code: 'cannot-get-on',
  severity: 'error',
  title: 'A garment that can’t be got on',
  by: 'judgement',
  usual: WAYS.map(({ usual }) => usual),
  ofPattern: ofBodyDraftedFor(
    WAYS.flatMap(({ over }) => over),
    (pattern, sheet) => judged(pattern, sheet),
  ),
};

function judged(pattern: Pattern, sheet: BodySheet): readonly SourcedFinding[] {
  const asked = { pattern, sheet, groups: allGroups(pattern) };
  return WAYS.flatMap((way) => tooSmall(asked, way));
}

/** Edges that one seam or one finish takes together, and how far they go round. */
interface Together {
  readonly source: string;
  readonly of: Seam | Finish;
  readonly edges: readonly SewnEdge[];
}

interface Asked {
  readonly pattern: Pattern;
  readonly sheet: BodySheet;
  readonly groups: readonly ReadonlyMap<Way, readonly Together[]>[];
}

/** A hair, mm. */
const ROUNDING = 0.05;

function tooSmall(asked: Asked, way: Way): readonly SourcedFinding[] {
  const { pattern, sheet } = asked;
  const least = leastThrough(sheet, way);
  if (least === undefined) return [];
  const range = usualRange(pattern, way.usual);
  return rings(asked, way).flatMap(({ together, length }) => {
    if (length >= least.size + range.low - ROUNDING) return [];
    const { unit } = pattern;
    const names = together.edges.map(({ piece, edge }) => `${piece}.${edge}`).join(' + ');
    const [ring, size] = [printLengthFine(length, unit), printLengthFine(least.size, unit)];
    const wanting = printLength(least.size + range.low - length, unit);
    const usual = rangeInWords(range, unit);
    const message = least.taken
      ? say`${names} is ${ring} all round and nothing opens it, but ${whose(sheet)} has to get through with ${size} (${least.name}): ${wanting} are wanting; ${usual} more than the body. Widen it, or let a seam that meets it open (zip 20cm from …).`
      : say`${names} is ${ring} all round and nothing opens it, but ${whose(sheet)} has to get through with ${size} or more (${least.name} was not measured; seldom is it less): ${wanting} are wanting; ${usual} more than the body. Widen it, let a seam that meets it open (zip 20cm from …), or measure the ${least.name} if it goes over the head.`;
    const place = { statement: together.of.statement, at: together.edges[0]!.at };
    const piece = together.edges[0]!.piece;
    return [{ source: together.source, finding: finding('cannot-get-on', place, message, { piece }) }];
  });
}

/** The smallest of what may get through. Undefined where a measurement is wanting that could be smaller still. */
function leastThrough(
  sheet: BodySheet,
  way: Way,
): { readonly name: string; readonly size: number; readonly taken: boolean } | undefined {
  const known = new Map<string, number>();
  for (const name of way.over) {
    const size = taken(sheet, name);
    if (size !== undefined) known.set(name, size);
  }
  const sizes = way.over.flatMap((name) => {
    const size = known.get(name) ?? (way.atLeast?.name === name ? way.atLeast.by(known) : undefined);
    return size === undefined ? [] : [{ name, size, taken: known.has(name) }];
  });
  return sizes.length < way.over.length ? undefined : sizes.reduce((a, b) => (b.size < a.size ? b : a));
}

/** Closed rings of edges of the names that a way asks for. */
function rings(
  { pattern, groups }: Asked,
  way: Way,
): readonly { readonly together: Together; readonly length: number }[] {
  return groups.flatMap((byWay) =>
    (byWay.get(way) ?? []).flatMap((together) => {
      const length = closedLength(pattern, together.edges, way);
      return length === undefined ? [] : [{ together, length }];
    }),
  );
}

const groupsKept = new WeakMap<Seam | Finish, ReadonlyMap<Way, readonly Together[]>>();

/** What a seam or a finish takes of the edges that each way asks for; asked once for each. */
function groupsOf(
  of: Seam | Finish,
  sides: () => readonly (readonly SewnEdge[])[],
): ReadonlyMap<Way, readonly Together[]> {
  const before = groupsKept.get(of);
  if (before !== undefined) return before;
  const made = new Map<Way, readonly Together[]>();
  const all = sides();
  for (const way of WAYS) {
    const found = all.flatMap((side): readonly Together[] => {
      const edges = side.filter(({ edge }) => called(edge, ...way.words));
      const some = edges.length > 0 && (!('left' in of) || edges.length === side.length);
      return some ? [{ source: of.source, of, edges }] : [];
    });
    if (found.length > 0) made.set(way, found);
  }
  groupsKept.set(of, made);
  return made;
}

const allGroups = ({ seams, finishes }: Pattern): readonly ReadonlyMap<Way, readonly Together[]>[] =>
  [
    ...seams.map((seam) => groupsOf(seam, () => sidesOf(seam))),
    // a raw edge is a block's: not yet a garment that somebody gets into
    ...finishes.map((finish) => groupsOf(finish, () => (finish.how === 'raw' ? [] : [finish.edges]))),
  ].filter(({ size }) => size > 0);

/** Of a seam with a band the pieces speak, as long as they are. */
const sidesOf = ({ side, comparable, itsPair, left, right }: Seam): readonly (readonly SewnEdge[])[] =>
  side === 'left' || !comparable || itsPair ? [] : [left, right].filter((edges) => !isBandOf(edges));

/** Undefined where something opens the ring, or may. */
function closedLength(pattern: Pattern, edges: readonly SewnEdge[], way: Way): number | undefined {
  let length = 0;
  for (const taken of edges) {
    const piece = byBase(pattern.pieces)
      .get(taken.piece)
      ?.find(({ side }) => side !== 'left');
    const edge = piece && edgeNamed(piece, taken.edge);
    const plain = piece?.cut !== undefined && piece.side === undefined && piece.unbuilt.length === 0;
    if (piece === undefined || edge === undefined || !plain || taken.stretch !== undefined) return undefined;
    const next = beside(piece, edge.name);
    if (!next.every((name) => staysClosed(pattern, piece, name))) return undefined;
    if (next.some((name) => leadsOut(pattern, piece, name, edges))) return undefined;
    length += taken.length * (way.limb ? (piece.fold === undefined ? 1 : 2) : timesRound(piece));
  }
  return length;
}

/** Whether the ring goes on, over a seam, to a piece none of whose edges are taken: a front that is faced alone. */
function leadsOut(pattern: Pattern, piece: Piece, name: string, edges: readonly SewnEdge[]): boolean {
  if (piece.fold?.edge === name) return false;
  const { seam } = fateOf(pattern, piece, name, undefined);
  return [...(seam?.left ?? []), ...(seam?.right ?? [])].some(
    (sewn) => !edges.some((taken) => taken.piece === sewn.piece),
  );
}

/** The edges before and after an edge. */
function beside(piece: Piece, name: string): readonly string[] {
  const edge = edgeNamed(piece, name)!;
  const loop = loopOf(piece, edge);
  const index = loop.indexOf(edge);
  return [-1, 1].map((step) => loop[(index + step + loop.length) % loop.length]!.name);
}

/** On a fold, or sewn from end to end; one finished edge is an opening. */
function staysClosed(pattern: Pattern, piece: Piece, edge: string): boolean {
  if (piece.fold?.edge === edge) return true;
  const { seam } = fateOf(pattern, piece, edge, undefined);
  if (seam === undefined) return false;
  const {
    statement: { node },
    openings,
  } = seam;
  // what opens, where it is known; else what is written
  return openings === undefined ? !(node.kind === 'seam' && node.openings.length > 0) : openings.length === 0;
}

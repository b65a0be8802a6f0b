/**
 * Which end of an edge meets which end of another when a seam is sewn. The text says it (two ends, `reversed`), or the
 * pieces show it: by corners of one name or place, by neighbours of one name, by lying right side up. Where nothing of
 * this tells, the ends stay unpaired: a guess would put every notch wrong that is placed by it.
 */
import { distance, dot, signedArea, subtract, type Point } from '../../geometry';
import type { Piece } from '../model';
import type { SeamRun } from '../sewing-model';
import { edgeNamed, loopOf, pointOn, sizeOf } from './course';
import type { TakenEdge } from './edges';

/** One end of a taken edge, with what it can be known by. */
interface End {
  readonly piece: Piece;
  readonly name: string;
  readonly point: Point;
  /** The edge that goes on from here, unless the piece is folded along it or it is sewn to its pair. */
  readonly neighbour: string;
  /** Whether it lies at the middle of the body: on a fold, or where the piece is sewn to its pair. */
  readonly centre: 'fold' | 'pair' | '';
}

interface Strand {
  readonly taken: TakenEdge;
  /** At the beginning and the end of its stretch, walked as `taken.run` is. */
  readonly ends: readonly [End, End];
}

/** The edge of a piece that is sewn to its own pair. */
export type PairedEdge = (piece: string) => string | undefined;

/** Points count as one within what a sharp pencil can tell, mm. */
const SAME = 0.05;

/** More edges than this are not tried in every order: 2 to the power of it walks. */
const MOST_EDGES = 10;

export interface Runs {
  readonly left: readonly SeamRun[];
  readonly right: readonly SeamRun[];
}

/** Both sides walked from one end of the seam to the other; undefined where the ends can't be told. */
export function paired(
  left: readonly TakenEdge[],
  right: readonly TakenEdge[],
  pairedEdge: PairedEdge,
): Runs | undefined {
  const strands = [left, right].map((side) => side.map((taken) => strandOf(taken, pairedEdge)));
  if (left.length + right.length > MOST_EDGES) return undefined;
  const [best, ...others] = walks(strands[0]!, strands[1]!);
  if (best === undefined) return undefined;
  const rivals = others.filter(({ score }) => score > best.score - CLEARLY);
  const chosen = rivals.length === 0 || meetsAllRound(best) ? best : upright([best, ...rivals]);
  return chosen && { left: runsOf(chosen.left), right: runsOf(chosen.right) };
}

/** A ring of which every join meets a join of the other side (an armhole and its lining): it is the same wherever it is opened. */
const meetsAllRound = ({ left, right }: Walk): boolean =>
  left.length > 1 &&
  left.length === right.length &&
  left.every((step, i) => meeting(last(step), last(right[i]!)) === CORNER) &&
  meeting(first(left[0]!), first(right[0]!)) === CORNER;

function strandOf(taken: TakenEdge, pairedEdge: PairedEdge): Strand {
  const { of: piece, run } = taken;
  const edge = edgeNamed(piece, taken.edge)!;
  const loop = loopOf(piece, edge);
  const index = loop.indexOf(edge);
  const pair = pairedEdge(piece.base);
  const beside = (step: number): Pick<End, 'neighbour' | 'centre'> => {
    const { name } = loop[(index + step + loop.length) % loop.length]!;
    const centre = name === piece.fold?.edge ? 'fold' : name === pair ? 'pair' : '';
    return { neighbour: centre === '' ? name : '', centre };
  };
  const endAt = (s: number): End => {
    const [atStart, atEnd] = [s < SAME, s > edge.sewn - SAME];
    return {
      piece,
      name: atStart ? edge.fromName : atEnd ? edge.toName : '',
      point: pointOn(edge, s),
      ...(atStart || atEnd ? beside(atStart ? -1 : 1) : { neighbour: '', centre: '' }),
    };
  };
  return { taken, ends: [endAt(run.from), endAt(run.to)] };
}

/** A strand walked as it is written, or turned about. */
interface Step {
  readonly strand: Strand;
  readonly turned: boolean;
}
interface Walk {
  readonly left: readonly Step[];
  readonly right: readonly Step[];
  readonly score: number;
}

const first = ({ strand, turned }: Step): End => strand.ends[turned ? 1 : 0];
const last = ({ strand, turned }: Step): End => strand.ends[turned ? 0 : 1];

/** How much a sign weighs against others; a walk must be ahead of every other by CLEARLY. */
const CORNER = 8;
const NEIGHBOUR = 3;
const ALIKE = 1;
const ONE_PIECE = 4;
const RIGHT_SIDE_UP = 1;
const CLEARLY = 0.5;

/**
 * Every way to walk the two sides from end to end, the likeliest first. Where nothing is said of directions, the first
 * edge is walked along its outline: the seam may as well be told from its other end.
 */
function walks(left: readonly Strand[], right: readonly Strand[]): readonly Walk[] {
  const all = [...left, ...right];
  const reversed = all.some(({ taken }) => taken.directed === 'reversed');
  const byEnds = all.some(({ taken }) => taken.directed === 'by-ends');
  const either = (side: readonly Strand[]): readonly (readonly Strand[])[] =>
    side.length < 2 || reversed || side.every(({ taken }) => taken.directed === 'by-ends')
      ? [side]
      : [side, [...side].reverse()];
  const found: Walk[] = [];
  for (const l of either(left)) {
    for (const r of either(right)) {
      const rights = turnings(r, reversed);
      for (const one of turnings(l, reversed, byEnds ? undefined : left[0]))
        for (const other of rights) found.push({ left: one, right: other, score: score(one, other) });
    }
  }
  return found.sort((a, b) => b.score - a.score);
}

/** Each strand either way, but as written where the text says its direction. */
function turnings(strands: readonly Strand[], said: boolean, leader?: Strand): readonly Step[][] {
  let found: Step[][] = [[]];
  strands.forEach((strand) => {
    const fixed = said || strand.taken.directed === 'by-ends' || strand === leader;
    const ways = fixed ? [false] : [false, true];
    found = found.flatMap((steps) => ways.map((turned) => [...steps, { strand, turned }]));
  });
  return found;
}

function score(left: readonly Step[], right: readonly Step[]): number {
  let sum = links(left) + links(right);
  if (right.length > 0) {
    sum += ending(first(left[0]!), first(right[0]!));
    sum += ending(last(left[left.length - 1]!), last(right[right.length - 1]!));
  }
  for (const step of left.slice(1)) sum += sense(left[0]!, step, 1);
  for (const step of right) sum += sense(left[0]!, step, -1);
  return sum;
}

/** Each join of a side counts alike, however plain: a ring has two, and may be opened at either. */
const links = (steps: readonly Step[]): number =>
  steps
    .slice(1)
    .reduce((sum, step, i) => sum + Math.min(meeting(last(steps[i]!), first(step)), NEIGHBOUR), 0);

/** How plainly two ends belong together. */
function meeting(a: End, b: End): number {
  if (a.name !== '' && a.name === b.name) return CORNER;
  if (a.piece.draft === b.piece.draft && distance(a.point, b.point) <= SAME) return CORNER;
  if (a.neighbour !== '' && a.neighbour === b.neighbour) return NEIGHBOUR;
  return shareWord(a.neighbour, b.neighbour) ? ALIKE : 0;
}

/** How plainly the ends of two sides belong together: two centres do as well, which never follow each other on one side. */
const ending = (a: End, b: End): number =>
  Math.max(meeting(a, b), a.centre !== '' && a.centre === b.centre ? NEIGHBOUR : 0);

/** Words that say where an edge lies, not what it is. */
const WHERE: ReadonlySet<string> = new Set(
  'front back left right upper lower inner outer top bottom seam edge line'.split(' '),
);

/** `front-underarm` and `underarm` are likely sewn to one and the same. */
const shareWord = (a: string, b: string): boolean =>
  a.split('-').some((word) => word !== '' && !WHERE.has(word) && b.split('-').includes(word));

/** How often a half stands for the whole: it is drawn for one side of the wearer, but may as well lie turned over. */
const symmetric = ({ fold, cut }: Piece): boolean =>
  fold !== undefined || cut?.layers.some(({ as }) => as === 'open') === true;

/**
 * Right sides up, two outlines walked the same way round pass their common seam in opposite directions. Of two edges of
 * one piece that is certain; of two pieces it is the rule of the sheet, unless one of them is a half that may be turned.
 */
function sense(lead: Step, step: Step, expected: 1 | -1): number {
  const [a, b] = [lead.strand.taken, step.strand.taken];
  const same = a.of === b.of;
  if (!same && (symmetric(a.of) || symmetric(b.of))) return 0;
  const found = heading(lead) * heading(step) * (turn(a.of) === turn(b.of) ? 1 : -1);
  return found === expected ? (same ? ONE_PIECE : RIGHT_SIDE_UP) : 0;
}

/** Along the outline (1) or against it. */
const heading = ({ strand, turned }: Step): number =>
  (strand.taken.run.to >= strand.taken.run.from ? 1 : -1) * (turned ? -1 : 1);

const turn = (piece: Piece): number => Math.sign(signedArea(piece.edges.map(({ path }) => path)));

/**
 * A ring (an armhole) can be opened at either of its joins. The pieces of a garment lie the same way up, so it is opened
 * where the outer ends of both sides point the same way.
 */
function upright(rivals: readonly Walk[]): Walk | undefined {
  const along = rivals.map((walk) => ({ walk, cos: alike(outward(walk.left), outward(walk.right)) }));
  along.sort((a, b) => b.cos - a.cos);
  const [best, second] = along;
  return best!.cos > PLAINLY && second!.cos < -PLAINLY ? best!.walk : undefined;
}

/** Two directions count as the same within 60 degrees. */
const PLAINLY = 0.5;

function alike(a: Point, b: Point): number {
  const size = Math.hypot(a.x, a.y) * Math.hypot(b.x, b.y);
  return size > 0 ? dot(a, b) / size : 0;
}

/** From the middle of a side to its ends, together. */
function outward(steps: readonly Step[]): Point {
  if (steps.length === 0) return { x: 0, y: 0 };
  if (steps.length === 1) {
    const { strand } = steps[0]!;
    const { of, edge, run } = strand.taken;
    const middle = pointOn(edgeNamed(of, edge)!, (run.from + run.to) / 2);
    return sum(strand.ends.map(({ point }) => subtract(point, middle)));
  }
  const [head, tail] = [steps[0]!, steps[steps.length - 1]!];
  return sum([subtract(first(head).point, last(head).point), subtract(last(tail).point, first(tail).point)]);
}

const sum = (points: readonly Point[]): Point =>
  points.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y }), { x: 0, y: 0 });

function runsOf(steps: readonly Step[]): readonly SeamRun[] {
  let start = 0;
  return steps.map(({ strand: { taken }, turned }) => {
    const { from, to } = taken.run;
    const run = {
      piece: taken.piece,
      edge: taken.edge,
      from: turned ? to : from,
      to: turned ? from : to,
      start,
    };
    start += sizeOf(run);
    return run;
  });
}

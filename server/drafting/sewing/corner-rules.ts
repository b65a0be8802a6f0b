/**
 * How the corners of an allowance are cut: what the text says of a corner, else what the trade does, decided from the seams
 * and finishes of the two edges that meet there. Everything else is mitred.
 */
import { distance, type CornerRule, type Point, type Which } from '../../geometry';
import type { Edge, Finish, Piece, RuledCorner, Seam, SewnEdge } from '../model';
import { ON_CORNER } from '../pieces/allowing';

/** What surrounds a piece. */
export interface Surroundings {
  readonly seams: readonly Seam[];
  readonly finishes: readonly Finish[];
  /** How often an edge is folded where it ends; undefined where it is not turned up there. */
  readonly hemAt: (edge: Edge, end: 'start' | 'end') => 1 | 2 | undefined;
  /** How wide its allowance is there, mm. */
  readonly widthAt: (edge: Edge, end: 'start' | 'end') => number;
}

/** Two edges that follow each other, with the corner between them. */
interface Pair {
  readonly before: Edge;
  readonly after: Edge;
  readonly at: Point;
}

export function ruledCorners(piece: Piece, around: Surroundings): readonly RuledCorner[] {
  const { edges } = piece;
  return edges.flatMap((before, i): RuledCorner[] => {
    const after = edges[(i + 1) % edges.length]!;
    const pair = { before, after, at: before.path.end };
    if ([before.name, after.name].includes(piece.fold?.edge ?? '')) return [];
    const said = cutSaid(piece, pair.at);
    const found = said === undefined ? usual(piece, pair, around) : asSaid(said, piece, pair, around);
    return found === undefined ? [] : [{ before: before.name, after: after.name, ...found }];
  });
}

type Rule = Pick<RuledCorner, 'rule' | 'why'>;
type How = Piece['cornerCuts'][number]['how'];

function cutSaid(piece: Piece, at: Point): How | undefined {
  const place = ({ name, point }: Piece['cornerCuts'][number]): Point =>
    piece.corners.find((corner) => name !== undefined && corner.name === name)?.point ?? point;
  return piece.cornerCuts.find((cut) => distance(place(cut), at) < ON_CORNER)?.how;
}

function usual(piece: Piece, pair: Pair, around: Surroundings): Rule | undefined {
  const hem = hemOf(pair, around);
  if (hem !== undefined) return { rule: turnedBack(pair, hem, around), why: 'hem' };
  const seam = crossedSeam(piece, pair, around);
  if (seam !== undefined) {
    const panel = isPanel(piece, pair, seam, around);
    return { rule: { how: panel ? 'squared' : 'folded', edge: seam }, why: panel ? 'panel' : 'pressed-open' };
  }
  const faced = facedOf(piece, pair, around);
  return faced && { rule: { how: 'squared', edge: faced }, why: 'faced' };
}

function asSaid(how: How, piece: Piece, pair: Pair, around: Surroundings): Rule {
  const of = (rule: CornerRule): Rule => ({ rule, why: 'said' });
  switch (how) {
    case 'mitred':
    case 'stepped':
      return of({ how });
    case 'turned-back':
      return of(turnedBack(pair, hemOf(pair, around) ?? wider(pair, around), around));
    case 'squared':
      return of({ how: 'squared', edge: endingAt(piece, pair, around) });
    case 'as-the-seam-folds':
      return of({ how: 'folded', edge: endingAt(piece, pair, around) });
  }
}

/** The one of the two that is turned up; of two hems the second lies over the first. */
const hemOf = ({ before, after }: Pair, { hemAt }: Surroundings): Which | undefined =>
  hemAt(after, 'start') !== undefined ? 'after' : hemAt(before, 'end') !== undefined ? 'before' : undefined;

const turnedBack = ({ before, after }: Pair, edge: Which, { hemAt }: Surroundings): CornerRule => ({
  how: 'turned-back',
  edge,
  folds: (edge === 'before' ? hemAt(before, 'end') : hemAt(after, 'start')) ?? 1,
});

const wider = ({ before, after }: Pair, { widthAt }: Surroundings): Which =>
  widthAt(before, 'end') > widthAt(after, 'start') ? 'before' : 'after';

/** The edge whose allowance a corner's word speaks of: the seam that is crossed there, a faced edge, the only one sewn, the wider. */
function endingAt(piece: Piece, pair: Pair, around: Surroundings): Which {
  const sewn = (edge: Edge): boolean => takenBy(around.seams, piece, edge.name).length > 0;
  const [one, other] = [sewn(pair.before), sewn(pair.after)];
  return (
    crossedSeam(piece, pair, around) ??
    facedOf(piece, pair, around) ??
    (one === other ? wider(pair, around) : one ? 'before' : 'after')
  );
}

/**
 * The edge of the two whose seam ends here at something that runs on across it: the neighbour and a neighbour of the edge it
 * is sewn to are sewn, or finished, as one.
 */
function crossedSeam(piece: Piece, { before, after }: Pair, around: Surroundings): Which | undefined {
  const one = isCrossed(piece, before, after, around);
  const other = isCrossed(piece, after, before, around);
  return one === other ? undefined : one ? 'before' : 'after';
}

function isCrossed(piece: Piece, seam: Edge, across: Edge, around: Surroundings): boolean {
  if (seam.divided !== undefined) return across.divided === undefined;
  return takenBy(around.seams, piece, seam.name).some(({ itsPair, partners }) => {
    if (itsPair) return true;
    return partners.some((partner) =>
      (partner.beside ?? []).some((name) => areOne(around, piece, across.name, partner.piece, name)),
    );
  });
}

interface Taken {
  readonly itsPair: boolean;
  readonly partners: readonly SewnEdge[];
}

/** Seams that take an edge, with what they sew it to. */
function takenBy(seams: readonly Seam[], { base }: Piece, edge: string): readonly Taken[] {
  const isOwn = (one: SewnEdge): boolean => one.piece === base && one.edge === edge;
  const found: Taken[] = [];
  for (const { left, right, itsPair } of seams) {
    if (left.some(isOwn)) found.push({ itsPair, partners: right });
    if (right.some(isOwn)) found.push({ itsPair, partners: left });
  }
  return found;
}

/** Whether two edges are sewn as one side of a seam, or finished in one line: what crosses the seam between them. */
function areOne(
  around: Surroundings,
  { base }: Piece,
  edge: string,
  other: string,
  otherEdge: string,
): boolean {
  if (base === other && edge === otherEdge) return true;
  const has = (edges: readonly SewnEdge[], piece: string, name: string): boolean =>
    edges.some((one) => one.piece === piece && one.edge === name);
  const both = (edges: readonly SewnEdge[]): boolean =>
    has(edges, base, edge) && has(edges, other, otherEdge);
  return (
    around.seams.some(({ left, right }) => both(left) || both(right)) ||
    around.finishes.some(({ edges }) => both(edges))
  );
}

/** By these names a panel's edge is known where no division made it. */
const PANEL_EDGES: ReadonlySet<string> = new Set(['princess', 'panel']);

/**
 * Seams of panels and of sleeves in two pieces: made by a division, called `princess` or `panel`, or ending at an edge called
 * `head` of two pieces.
 */
function isPanel(piece: Piece, pair: Pair, which: Which, around: Surroundings): boolean {
  const [seam, across] = which === 'before' ? [pair.before, pair.after] : [pair.after, pair.before];
  if (seam.divided !== undefined || PANEL_EDGES.has(seam.name)) return true;
  if (across.name !== 'head') return false;
  return takenBy(around.seams, piece, seam.name).some(({ partners }) =>
    partners.some(
      (partner) => partner.piece !== piece.base && partner.beside?.some((name) => name === 'head') === true,
    ),
  );
}

/** The one of the two that is faced, where the other is not. */
function facedOf({ base }: Piece, { before, after }: Pair, { finishes }: Surroundings): Which | undefined {
  const faced = ({ name }: Edge): boolean =>
    finishes.some(
      ({ how, edges }) => how === 'faced' && edges.some(({ piece, edge }) => piece === base && edge === name),
    );
  const [one, other] = [faced(before), faced(after)];
  return one === other ? undefined : one ? 'before' : 'after';
}

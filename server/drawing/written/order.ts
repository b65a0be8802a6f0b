/**
 * The order of sewing, worked out from the seams. The rules are *common practice*, and each step says which one put it
 * there: darts, pleats and gathers before any seam; a patch by itself, before the rest; panels that were one piece are
 * joined again; a seam before another that crosses it; a sleeve without ease flat, before the side is closed, one that is
 * eased in the round, after it; small seams before large; then facings and bound edges; hems last, buttons after them.
 * What no rule tells apart stays in the order of the file.
 */
import { say } from '../../../grammar/say';
import type { Finish, Pattern, Piece, Seam, SewnEdge } from '../../drafting/model';
import { finishedLength } from './measured';

export interface SeamStep {
  readonly kind: 'seam';
  /** The seam, twice where the wearer's sides differ. */
  readonly seams: readonly Seam[];
  readonly why: string;
}
export interface FinishStep {
  readonly kind: 'finish';
  readonly finish: Finish;
  readonly why: string;
}
export type Step = SeamStep | FinishStep;

export function sewingOrder(pattern: Pattern): readonly Step[] {
  const nodes = seamNodes(pattern);
  const links = linksOf(nodes, new Map(pattern.pieces.map((piece) => [piece.base, piece])));
  const seams = inOrder(nodes, links).map((node): SeamStep => ({
    kind: 'seam',
    seams: node.seams,
    why: whyOf(node, links),
  }));
  const all = [...new Map(pattern.finishes.map((one) => [one.source, one])).values()];
  const patches = all.filter((finish) => isPutOn(finish, pattern) && WORKED.has(finish.how));
  const finishes = all.filter((finish) => !patches.includes(finish));
  const of = (...hows: readonly Finish['how'][]) =>
    finishes.filter(({ how }) => hows.includes(how)).map((finish) => ({ kind: 'finish' as const, finish }));
  return [
    ...patches.map((finish) => ({
      ...{ kind: 'finish' as const, finish },
      why: say`by itself, before it is put on the others`,
    })),
    ...seams,
    ...of('faced', 'bound').map((one) => ({ ...one, why: say`edges after the seams that end at them` })),
    ...of('rolled', 'turned-up', 'turned-twice').map((one) => ({
      ...one,
      why: say`hems last, once the length was tried on`,
    })),
  ];
}

/** Finishes that are sewn. */
const WORKED: ReadonlySet<Finish['how']> = new Set<Finish['how']>([
  'faced',
  'bound',
  'rolled',
  'turned-up',
  'turned-twice',
]);

/** Whether a finish is of pieces that no seam takes while others are sewn: a patch pocket is made before it is put on. */
export const isPutOn = ({ edges }: Finish, pattern: Pattern): boolean =>
  pattern.seams.length > 0 && edges.every(({ piece }) => pattern.seamsOf(piece).length === 0);

interface Node {
  readonly seams: readonly Seam[];
  readonly first: Seam;
  /** Millimetres when sewn. */
  readonly length: number;
  readonly index: number;
}

function seamNodes({ seams }: Pattern): readonly Node[] {
  const bySource = new Map<string, Seam[]>();
  for (const seam of seams)
    bySource.set(seam.source + seam.name, [...(bySource.get(seam.source + seam.name) ?? []), seam]);
  return [...bySource.values()].map((all, index) => ({
    ...{ seams: all, first: all[0]!, index },
    length: Math.max(...all.map(finishedLength)),
  }));
}

type Reason = 'crossed' | 'ring' | 'flat' | 'round';

interface Link {
  readonly before: Node;
  readonly after: Node;
  readonly reason: Reason;
}

function linksOf(nodes: readonly Node[], pieces: ReadonlyMap<string, Piece>): readonly Link[] {
  return nodes.flatMap((later) =>
    nodes.flatMap((earlier): Link[] => {
      if (earlier === later) return [];
      const reason = relation(earlier.first, later.first, pieces);
      if (reason === undefined) return [];
      return reason === 'flat'
        ? [{ before: later, after: earlier, reason }]
        : [{ before: earlier, after: later, reason }];
    }),
  );
}

/** Up to so much ease, mm, a sleeve is sewn in flat; more is eased in the round (*common practice*). */
const FLAT_EASE = 10;

/** How one seam stands to another that is sewn along edges which the first joins. */
function relation(one: Seam, along: Seam, pieces: ReadonlyMap<string, Piece>): Reason | undefined {
  const sides = [along.left, along.right].filter((side) => side.length > 0);
  if (sides.some((side) => side.some((part, i) => i > 0 && joins(one, side[i - 1]!, part, pieces))))
    return 'crossed';
  const closes = sides.some((side) => closesRing(one, side, pieces));
  if (!closes) return undefined;
  if (!isSetIn(along, pieces)) return 'ring';
  return Math.abs(along.leftLength - along.rightLength) > FLAT_EASE ? 'round' : 'flat';
}

/** Whether a seam joins the edges that lie beside two others: sewn, these two run on into each other. */
function joins(seam: Seam, a: SewnEdge, b: SewnEdge, pieces: ReadonlyMap<string, Piece>): boolean {
  const holds = (side: readonly SewnEdge[], { piece, edge }: SewnEdge): boolean =>
    side.some((one) => one.piece === piece && beside(pieces.get(piece), edge).includes(one.edge));
  return (holds(seam.left, a) && holds(seam.right, b)) || (holds(seam.left, b) && holds(seam.right, a));
}

const beside = (piece: Piece | undefined, name: string): readonly string[] => {
  const edges = piece?.edges ?? [];
  const i = edges.findIndex((edge) => edge.name === name);
  if (i < 0) return [];
  return [edges[(i + 1) % edges.length]!.name, edges[(i - 1 + edges.length) % edges.length]!.name];
};

/** Both ends of a side are joined by it, to each other or to their pair. */
function closesRing(seam: Seam, side: readonly SewnEdge[], pieces: ReadonlyMap<string, Piece>): boolean {
  const ends = [side[0]!, side.at(-1)!];
  if (!seam.itsPair) return joins(seam, ends[0]!, ends[1]!, pieces);
  return ends.some(({ piece, edge }) =>
    seam.left.some((one) => one.piece === piece && beside(pieces.get(piece), edge).includes(one.edge)),
  );
}

/** A sleeve: one edge of a piece cut in pairs, between two edges, set into edges of other pieces. */
function isSetIn({ left, right }: Seam, pieces: ReadonlyMap<string, Piece>): boolean {
  const [one, other] = left.length === 1 ? [left, right] : [right, left];
  if (one.length !== 1 || other.length < 2) return false;
  const piece = pieces.get(one[0]!.piece);
  const paired = piece?.side !== undefined || piece?.cut?.layers[0]?.as === 'pairs';
  return paired && other.every((part) => part.piece !== one[0]!.piece) && piece?.fold === undefined;
}

/** The next is the shortest of those whose forerunners are done; a circle is cut where the file begins. */
function inOrder(nodes: readonly Node[], links: readonly Link[]): readonly Node[] {
  const left = new Set(nodes);
  const order: Node[] = [];
  const free = (node: Node): boolean =>
    !links.some(({ before, after }) => after === node && left.has(before));
  while (left.size > 0) {
    const ready = [...left].filter(free);
    const next = (ready.length > 0 ? ready : [...left]).reduce((best, one) =>
      sooner(one, best) ? one : best,
    );
    left.delete(next);
    order.push(next);
  }
  return order;
}

/** Nearer than this two seams are equally long, mm, and the file decides: rounding must not. */
const SAME = 0.5;

/** A piece that was divided lies flat again before it is joined to others. */
const isPanel = ({ first }: Node): boolean => first.statement.node.kind !== 'seam';

const sooner = (a: Node, b: Node): boolean => {
  if (isPanel(a) !== isPanel(b)) return isPanel(a);
  return Math.abs(a.length - b.length) > SAME ? a.length < b.length : a.index < b.index;
};

function whyOf(node: Node, links: readonly Link[]): string {
  const names = (reason: Reason, of: 'before' | 'after'): string =>
    links
      .filter((link) => link.reason === reason && link[of === 'before' ? 'after' : 'before'] === node)
      .map((link) => link[of].first.name)
      .join(say` and `);
  const [flat, round, crossed, ring] = [
    names('flat', 'after'),
    names('round', 'before'),
    names('crossed', 'after'),
    names('ring', 'after'),
  ];
  if (flat !== '') return say`flat, before ${flat}`;
  if (round !== '') return say`in the round, after ${round}: it is eased in`;
  if (crossed !== '') return say`crossed by ${crossed}`;
  if (ring !== '') return say`before ${ring}, which runs on over it`;
  const done = [names('crossed', 'before'), names('ring', 'before')].filter(Boolean);
  if (done.length > 0) return say`after ${done.join(say` and `)}`;
  return isPanel(node) ? say`panels first` : say`small seams before large`;
}

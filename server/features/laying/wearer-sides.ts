/** The piece for the wearer's left laid on that for the right, turned over, so that it is seen where they differ. */
import type { LaidLine } from '../../../client/preview/protocol';
import type { Pattern, Piece } from '../../drafting/model';
import { printLength } from '../../drafting/values/quantity';
import {
  apply,
  distance,
  identity,
  mirror,
  compose,
  orientation,
  Path,
  type Affine,
  type Point,
} from '../../geometry';
import { laidPieces, overLine, type LaidOut } from './paper';
import { NOTHING } from './walk';

/** Shown as apart from here on, mm: what a pair is allowed to differ by (language reference, sides). */
const SHOWN = 0.5;

export function sidesLaid(pattern: Pattern, source: string): LaidOut | undefined {
  const pair = sidesOf(pattern, source);
  if (pair === undefined) return undefined;
  const [right, left] = pair;
  const by = fitted(left, right);
  const { pieces, frame } = laidPieces(pattern, [
    { piece: right, by: identity },
    { piece: left, by },
  ]);
  const apart = cornersApart(left, right, by);
  return {
    words: [...areasWords(pattern, right, left), ...apartWords(pattern, apart)],
    pieces: pieces.map((one, i) => (i === 0 ? one : { ...one, faint: true })),
    lines: apart
      .filter(({ size }) => size >= SHOWN)
      .map(({ name, from, to }): LaidLine =>
        overLine('apart', Path.line(from, to), identity, { name, source: right.source, tip: name }),
      ),
    ...{ dots: [], texts: [], frame },
  };
}

/** The two pieces of one definition, right before left. */
function sidesOf({ pieces }: Pattern, source: string): readonly [Piece, Piece] | undefined {
  const own = pieces.filter((piece) => piece.source === source);
  const [right, left] = (['right', 'left'] as const).map((side) => own.find((piece) => piece.side === side));
  return right && left ? [right, left] : undefined;
}

/**
 * Laid so that corners of one name come as near to each other as they can: the rigid movement of least squares
 * (Procrustes; its closed form in the plane, *from memory*).
 */
export function fitted(moved: Piece, onto: Piece): Affine {
  const turned = loopTurn(moved) !== loopTurn(onto);
  const over = turned ? mirror({ x: 0, y: 0 }, { x: 0, y: 1 }) : identity;
  const pairs = pairsOf(moved, onto).map(({ from, to }) => ({ from: apply(over, from), to }));
  const middle = (points: readonly Point[]): Point => ({
    x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
    y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
  });
  const [a, b] = [middle(pairs.map(({ from }) => from)), middle(pairs.map(({ to }) => to))];
  let [cos, sin] = [0, 0];
  for (const { from, to } of pairs) {
    const [p, q] = [
      { x: from.x - a.x, y: from.y - a.y },
      { x: to.x - b.x, y: to.y - b.y },
    ];
    cos += p.x * q.x + p.y * q.y;
    sin += p.x * q.y - p.y * q.x;
  }
  const size = Math.hypot(cos, sin) || 1;
  const [c, s] = [cos / size, sin / size];
  const turn = { a: c, b: s, c: -s, d: c, e: b.x - c * a.x + s * a.y, f: b.y - s * a.x - c * a.y };
  return compose(over, turn);
}

const loopTurn = ({ edges }: Piece): number => orientation(edges.map(({ path }) => path));

const pairsOf = (moved: Piece, onto: Piece) =>
  moved.corners.flatMap(({ name, point }) => {
    const twin = onto.corners.find((corner) => corner.name === name);
    return twin === undefined ? [] : [{ name, from: point, to: twin.point }];
  });

interface Apart {
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
  readonly size: number;
}

const cornersApart = (left: Piece, right: Piece, by: Affine): readonly Apart[] =>
  pairsOf(left, right)
    .map(({ name, from, to }) => ({ name, from: apply(by, from), to, size: distance(apply(by, from), to) }))
    .sort((a, b) => b.size - a.size);

function areasWords({ unit }: Pattern, right: Piece, left: Piece): readonly string[] {
  const differing = right.edges.flatMap(({ name, sewn }) => {
    const other = left.edges.find((edge) => edge.name === name);
    if (other === undefined || Math.abs(other.sewn - sewn) < NOTHING) return [];
    return [
      `${name} is ${printLength(sewn, unit)} on the right and ${printLength(other.sewn, unit)} on the left`,
    ];
  });
  return differing.length === 0 ? [] : [`${differing.join('; ')}.`];
}

const apartWords = ({ unit }: Pattern, [most]: readonly Apart[]): readonly string[] =>
  most === undefined || most.size < NOTHING
    ? ['Every corner lies on its fellow.']
    : [`The corners lie furthest apart at ${most.name}: by ${printLength(most.size, unit)}.`];

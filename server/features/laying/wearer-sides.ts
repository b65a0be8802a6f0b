/** The piece for the wearer's left laid on that for the right, turned over, so that it is seen where they differ. */
import { say } from '../../../grammar/say';
import type { LaidLine } from '../../../client/preview/protocol';
import type { Pattern, Piece } from '../../drafting/model';
import { printLength } from '../../drafting/values/quantity';
import {
  angleOf,
  apply,
  applyVector,
  compose,
  distance,
  identity,
  mirror,
  orientation,
  Path,
  rotation,
  subtract,
  translation,
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
 * Turned until the grain lines are parallel, then moved as most of the corners ask for: what is the same on both sides
 * lies on itself, and what differs stands out.
 */
export function fitted(moved: Piece, onto: Piece): Affine {
  const turned = loopTurn(moved) !== loopTurn(onto);
  const over = turned ? mirror({ x: 0, y: 0 }, { x: 0, y: 1 }) : identity;
  const turn = compose(over, rotation({ x: 0, y: 0 }, angleOnto(moved, onto, over)));
  const ways = pairsOf(moved, onto).map(({ from, to }) => subtract(to, apply(turn, from)));
  return compose(turn, translation({ x: median(ways.map(({ x }) => x)), y: median(ways.map(({ y }) => y)) }));
}

function angleOnto(moved: Piece, onto: Piece, over: Affine): number {
  if (moved.grain === undefined || onto.grain === undefined) return 0;
  const from = applyVector(over, subtract(moved.grain.to, moved.grain.from));
  return angleOf(subtract(onto.grain.to, onto.grain.from)) - angleOf(from);
}

function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
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
      say`${name} is ${printLength(sewn, unit)} on the right and ${printLength(other.sewn, unit)} on the left`,
    ];
  });
  return differing.length === 0 ? [] : [`${differing.join('; ')}.`];
}

const apartWords = ({ unit }: Pattern, [most]: readonly Apart[]): readonly string[] =>
  most === undefined || most.size < NOTHING
    ? [say`Every corner lies on its fellow.`]
    : [say`The corners lie furthest apart at ${most.name}: by ${printLength(most.size, unit)}.`];

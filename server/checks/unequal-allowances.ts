/** Finds seams whose two edges are allowed different widths: laid edge to edge, they are then sewn beside their lines. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Finish, Piece, Seam, SewnEdge } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { evenWidth, isJudged, SAME_WIDTH } from './allowed';
import type { AroundSeam } from './around';
import { finding, type Judged } from './check';

export const unequalAllowances: Judged = {
  code: 'unequal-allowances',
  severity: 'warning',
  title: 'A seam whose two edges are allowed different widths',
  by: 'judgement',
  ofSewnSeam: (seam, around) => (seam.itsPair || seam.side === 'left' ? [] : judged(seam, around)),
};

/** An edge of a seam with what is allowed there. */
interface Allowed {
  readonly sewn: SewnEdge;
  readonly piece: Piece;
  readonly finishes: readonly Finish[];
}

function judged(seam: Seam, around: AroundSeam): readonly Finding[] {
  const [left, right] = [seam.left, seam.right].map((side) =>
    side.map((sewn) => widthAt(allowedAt(sewn, around))),
  );
  return apart(left!, right!).map((pair) => unequal(seam, pair, around));
}

/** Where the wearer's sides differ the right one speaks for both. */
function allowedAt(sewn: SewnEdge, around: AroundSeam): Allowed | undefined {
  const piece = around.piecesNamed(sewn.piece).find(({ side }) => side !== 'left');
  // a strip is cut to measure: what is sewn of it is within its width
  const judged = isJudged(piece) && piece.statement.node.kind !== 'strip';
  return judged ? { sewn, piece, finishes: around.finishesOf(sewn.piece) } : undefined;
}

interface Wide {
  readonly sewn: SewnEdge;
  readonly width: number;
}

function widthAt(one: Allowed | undefined): Wide | undefined {
  if (one === undefined) return undefined;
  const width = evenWidth(one.piece, one.sewn.edge, one.finishes);
  return width === undefined ? undefined : { sewn: one.sewn, width };
}

/**
 * The first edge of either side that has no match on the other; none where the width of some edge is not known, for it may
 * be the match.
 */
function apart(
  left: readonly (Wide | undefined)[],
  right: readonly (Wide | undefined)[],
): readonly (readonly [Wide, Wide])[] {
  const [ones, others] = [left.filter(isKnown), right.filter(isKnown)];
  if (ones.length < left.length || others.length < right.length) return [];
  const alone = (one: Wide, all: readonly Wide[]): boolean =>
    all.every(({ width }) => Math.abs(width - one.width) > SAME_WIDTH);
  const one = ones.find((wide) => alone(wide, others));
  if (one !== undefined && others[0] !== undefined) return [[one, others[0]]];
  const other = others.find((wide) => alone(wide, ones));
  return other !== undefined && ones[0] !== undefined ? [[ones[0], other]] : [];
}

const isKnown = (wide: Wide | undefined): wide is Wide => wide !== undefined;

function unequal(seam: Seam, [one, other]: readonly [Wide, Wide], { unit }: AroundSeam): Finding {
  const words = ({ sewn, width }: Wide): string =>
    say`${sewn.piece}.${sewn.edge} is allowed ${printLength(width, unit)}`;
  const message = say`${words(one)} and ${words(other)}. The two are laid edge to edge and sewn together, so one of them is sewn ${printLength(Math.abs(one.width - other.width), unit)} beside its line. Allow both the same.`;
  return finding('unequal-allowances', { statement: seam.statement, at: placeOf(seam, one) }, message, {
    related: [one, other].map(({ sewn, width }) => ({
      source: sewn.source,
      message: say`${sewn.piece}.${sewn.edge} is allowed ${printLength(width, unit)}.`,
    })),
  });
}

/** The seam of a division stands in no line of its own. */
const placeOf = ({ statement: { node } }: Seam, { sewn }: Wide): Finding['at'] =>
  node.kind === 'seam' ? sewn.at : 'name' in node && node.name !== undefined ? node.name.at : node.at;

/** Finds seams whose two edges are allowed different widths: laid edge to edge, they are then sewn beside their lines. */
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { Finish, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { evenWidth, isJudged, piecesByBase, SAME_WIDTH } from './allowed';
import { finding, type Judged } from './check';

export const unequalAllowances: Judged = {
  code: 'unequal-allowances',
  severity: 'warning',
  title: 'A seam whose two edges are allowed different widths',
  by: 'judgement',
  ofPattern: (pattern) => pattern.seams.flatMap((seam) => ofSeam(seam, pattern)),
};

/** An edge of a seam with what is allowed there. */
interface Allowed {
  readonly sewn: SewnEdge;
  readonly piece: Piece;
  readonly finishes: readonly Finish[];
}

interface Kept {
  readonly unit: Pattern['unit'];
  readonly around: readonly unknown[];
  readonly findings: readonly SourcedFinding[];
}

const kept = new WeakMap<Seam, Kept>();

function ofSeam(seam: Seam, pattern: Pattern): readonly SourcedFinding[] {
  if (seam.itsPair || seam.side === 'left') return [];
  const sides = [seam.left, seam.right].map((side) => allowedAt(side, pattern));
  const around = sides.flat().flatMap((one) => [one?.piece, one?.finishes]);
  const before = kept.get(seam);
  if (before?.unit === pattern.unit && sameList(before.around, around)) return before.findings;
  const [left, right] = sides.map((side) => side.flatMap((one) => widthAt(one)));
  const findings = apart(left!, right!).map((pair): SourcedFinding => ({
    source: seam.source,
    finding: unequal(seam, pair, pattern),
  }));
  kept.set(seam, { unit: pattern.unit, around, findings });
  return findings;
}

const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);

function allowedAt(side: readonly SewnEdge[], pattern: Pattern): readonly (Allowed | undefined)[] {
  return side.map((sewn) => {
    const piece = piecesByBase(pattern).get(sewn.piece);
    return isJudged(piece) ? { sewn, piece, finishes: pattern.finishesOf(sewn.piece) } : undefined;
  });
}

interface Wide {
  readonly sewn: SewnEdge;
  readonly width: number;
}

function widthAt(one: Allowed | undefined): readonly (Wide | undefined)[] {
  if (one === undefined) return [undefined];
  const width = evenWidth(one.piece, one.sewn.edge, one.finishes);
  return [width === undefined ? undefined : { sewn: one.sewn, width }];
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

function unequal(seam: Seam, [one, other]: readonly [Wide, Wide], { unit }: Pattern): Finding {
  const words = ({ sewn, width }: Wide): string =>
    `${sewn.piece}.${sewn.edge} is allowed ${printLength(width, unit)}`;
  const message =
    `${words(one)} and ${words(other)}. The two are laid edge to edge and sewn together, so one of them is sewn ` +
    `${printLength(Math.abs(one.width - other.width), unit)} beside its line. Allow both the same.`;
  return finding('unequal-allowances', { statement: seam.statement, at: placeOf(seam, one) }, message, {
    related: [one, other].map(({ sewn, width }) => ({
      source: sewn.source,
      message: `${sewn.piece}.${sewn.edge} is allowed ${printLength(width, unit)}.`,
    })),
  });
}

/** The seam of a division stands in no line of its own. */
const placeOf = ({ statement: { node } }: Seam, { sewn }: Wide): Finding['at'] =>
  node.kind === 'seam' ? sewn.at : 'name' in node && node.name !== undefined ? node.name.at : node.at;

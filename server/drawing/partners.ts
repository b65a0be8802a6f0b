/** What an edge is sewn to, in words: its partner, what is eased, how it opens. */
import { say } from '../../grammar/say';
import type { DisplayUnit, Piece, Seam } from '../drafting/model';
import type { SeamOpening } from '../drafting/sewing-model';
import { printLength } from '../drafting/values/quantity';
import { sideWord } from './told';

/** A seam that takes an edge, and what is sewn to the edge there: "sewn to back side, eased by 4mm". */
export interface Partner {
  readonly seam: Seam;
  readonly words: string;
  /** The same without how much is eased, which is not alike in all sizes. */
  readonly plain: string;
}

/** Whether a seam is one of a piece: of its side, or of either where the piece serves both. */
export const isSeamOf = ({ side }: Seam, piece: Piece): boolean =>
  piece.side === undefined || side === undefined || side === piece.side;

export const partnersOf = (
  piece: Piece,
  edge: string,
  seams: readonly Seam[],
  unit: DisplayUnit,
): readonly Partner[] =>
  seams.flatMap((seam) => {
    const words = partnerIn(piece, edge, seam, unit);
    return words === undefined ? [] : [{ seam, ...words }];
  });

/** Undefined where the seam does not take the edge. */
function partnerIn(
  { base }: Piece,
  edge: string,
  seam: Seam,
  unit: DisplayUnit,
): Omit<Partner, 'seam'> | undefined {
  const { left, right, itsPair } = seam;
  const onLeft = takes(left, base, edge);
  if (!onLeft && !takes(right, base, edge)) return undefined;
  const other = onLeft ? right : left;
  const to = itsPair ? say`its pair` : other.map((one) => `${one.piece} ${one.edge}`).join(say` and `);
  const opens = openingWords(seam, unit);
  const sewn = (ease: string): string =>
    isOpenThroughout(seam) ? say`meets ${to}${opens}` : say`sewn to ${to}${ease}${opens}`;
  return { words: sewn(easeWords(seam, onLeft, unit)), plain: sewn('') };
}

/** Nothing of the seam is sewn: laces or buttons take all of it, mm. */
const isOpenThroughout = ({ openings = [], leftLength }: Seam): boolean =>
  openings.reduce((sum, { from, to }) => sum + to - from, 0) > leftLength - 1;

const takes = (edges: Seam['left'], base: string, edge: string): boolean =>
  edges.some((one) => one.piece === base && one.edge === edge);

/** Of the first seam that takes the edge; begins with a comma, empty where none does. */
export function partnerOf(piece: Piece, edge: string, seams: readonly Seam[], unit: DisplayUnit): string {
  for (const seam of seams) {
    const found = partnerIn(piece, edge, seam, unit);
    if (found !== undefined) return say`, seam ${seam.name}, ${found.words}`;
  }
  return '';
}

/** Less than this is no ease but rounding, mm. */
const LEAST = 0.5;

/** Cloth is eased or gathered on the longer edge; where it is stretched, that is done to the shorter one. */
function easeWords(
  { statement, leftLength, rightLength, itsPair }: Seam,
  onLeft: boolean,
  unit: DisplayUnit,
): string {
  const { node } = statement;
  const kinds = node.kind === 'seam' ? node.eases.map(({ kind }) => kind) : [];
  const surplus = onLeft ? leftLength - rightLength : rightLength - leftLength;
  if (!kinds.some((kind) => kind !== 'within') || itsPair || Math.abs(surplus) < LEAST) return '';
  const isStretched = kinds.includes('stretched');
  const done = isStretched ? say`stretched` : kinds.includes('gathered') ? say`gathered` : say`eased`;
  const by = printLength(Math.abs(surplus), unit);
  const isOwn = isStretched ? surplus < 0 : surplus > 0;
  return isOwn ? say`, ${done} by ${by}` : say`, which is ${done} by ${by}`;
}

const howInWords = (how: SeamOpening['how']): string =>
  ({
    zip: say`a zip`,
    buttoned: say`buttons`,
    laced: say`laces`,
    hooked: say`hooks`,
    'left-open': say`left open`,
  })[how];

function openingWords({ openings = [] }: Seam, unit: DisplayUnit): string {
  return openings
    .map(({ how, from, to, side }) => {
      const long = printLength(to - from, unit);
      return say`, ${howInWords(how)} over ${long}${side === undefined ? '' : say` at the ${sideWord(side)}`}`;
    })
    .join('');
}

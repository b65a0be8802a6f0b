/** What an edge is sewn to, in words: its partner, what is eased, how it opens. */
import type { DisplayUnit, Piece, Seam } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';

/** A seam that takes an edge, and what is sewn to the edge there: "sewn to back side, eased by 4mm". */
export interface Partner {
  readonly seam: Seam;
  readonly words: string;
}

export const partnersOf = (
  piece: Piece,
  edge: string,
  seams: readonly Seam[],
  unit: DisplayUnit,
): readonly Partner[] =>
  seams.flatMap((seam) => {
    const words = partnerIn(piece, edge, seam, unit);
    return words === undefined ? [] : [{ seam, words }];
  });

/** Undefined where the seam does not take the edge. */
function partnerIn({ base }: Piece, edge: string, seam: Seam, unit: DisplayUnit): string | undefined {
  const { left, right, itsPair } = seam;
  const onLeft = takes(left, base, edge);
  if (!onLeft && !takes(right, base, edge)) return undefined;
  const other = onLeft ? right : left;
  const to = itsPair ? 'its pair' : other.map((one) => `${one.piece} ${one.edge}`).join(' and ');
  return `sewn to ${to}${easeWords(seam, onLeft, unit)}${openingWords(seam, unit)}`;
}

const takes = (edges: Seam['left'], base: string, edge: string): boolean =>
  edges.some((one) => one.piece === base && one.edge === edge);

/** Of the first seam that takes the edge; begins with a comma, empty where none does. */
export function partnerOf(piece: Piece, edge: string, seams: readonly Seam[], unit: DisplayUnit): string {
  for (const seam of seams) {
    const words = partnerIn(piece, edge, seam, unit);
    if (words !== undefined) return `, seam ${seam.name}, ${words}`;
  }
  return '';
}

/** Less than this is no ease but rounding, mm. */
const LEAST = 0.5;

function easeWords(
  { statement, leftLength, rightLength, itsPair }: Seam,
  onLeft: boolean,
  unit: DisplayUnit,
): string {
  const { node } = statement;
  const wanted = node.kind === 'seam' && node.eases.some(({ kind }) => kind !== 'within');
  const surplus = onLeft ? leftLength - rightLength : rightLength - leftLength;
  if (!wanted || itsPair || Math.abs(surplus) < LEAST) return '';
  const gathered = node.eases.some(({ kind }) => kind === 'gathered');
  const longer = gathered ? 'gathered' : 'eased';
  const by = printLength(Math.abs(surplus), unit);
  return surplus > 0 ? `, ${longer} by ${by}` : `, which is ${longer} by ${by}`;
}

const HOW = {
  zip: 'a zip',
  buttoned: 'buttons',
  laced: 'laces',
  hooked: 'hooks',
  'left-open': 'left open',
} as const;

function openingWords({ openings = [] }: Seam, unit: DisplayUnit): string {
  return openings
    .map(({ how, from, to, side }) => {
      const long = printLength(to - from, unit);
      return `, ${HOW[how]} over ${long}${side === undefined ? '' : ` at the ${side}`}`;
    })
    .join('');
}

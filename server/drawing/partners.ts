/** What an edge is sewn to, in words: its partner, what is eased, how it opens. */
import type { DisplayUnit, Piece, Seam } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';

export function partnerOf(piece: Piece, edge: string, seams: readonly Seam[], unit: DisplayUnit): string {
  for (const seam of seams) {
    const { left, right, itsPair, name } = seam;
    for (const [own, other] of [
      [left, right],
      [right, left],
    ] as const) {
      if (!own.some((one) => one.piece === piece.base && one.edge === edge)) continue;
      const to = itsPair ? 'its pair' : other.map((one) => `${one.piece} ${one.edge}`).join(' and ');
      return `, seam ${name}, sewn to ${to}${easeWords(seam, own === left, unit)}${openingWords(seam, unit)}`;
    }
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

/** Finds under collars that are not the little smaller than their collar that rolls the edge to the under side. */
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { Pattern, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { depthOf } from './low-collar';
import { nameOfPiece } from './places';
import { called } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const SMALLER: Usual = {
  name: 'under-collar-smaller',
  kind: 'length',
  low: 2,
  high: 4,
  standing: 'common practice: 1 to 2mm in light cloth, 3mm in medium, 5 to 6mm in heavy',
};

export const unlikeUnderCollar: Judged = {
  code: 'unlike-under-collar',
  severity: 'warning',
  title: 'An under collar that does not suit its collar',
  by: 'judgement',
  usual: [SMALLER],
  ofPattern: (pattern) => {
    const collars = pattern.pieces.filter(isCollar);
    const under = collars.filter(isUnder);
    return under.length === 0 ? [] : under.flatMap((one) => judged(one, collars, pattern));
  },
};

const isCollar = ({ base, cut, side }: Piece): boolean =>
  base.includes('collar') && cut !== undefined && side !== 'left';

export const isUnderCollar = (name: string): boolean =>
  called(name, 'undercollar') || (called(name, 'under') && called(name, 'collar'));

const isUnder = ({ base }: Piece): boolean => isUnderCollar(base);

function judged(under: Piece, all: readonly Piece[], pattern: Pattern): readonly SourcedFinding[] {
  const collars = all.filter((piece) => called(piece.base, 'collar') && !isUnder(piece));
  const [collar] = collars;
  const [own, other] = [depthOf(under), collar && depthOf(collar)];
  // of several collars it is not plain whose it is
  if (collar === undefined || collars.length > 1 || own === undefined || other === undefined) return [];
  const range = usualRange(pattern, SMALLER);
  const by = other - own;
  if (isUsual(range, by, 0.05)) return [];
  const { unit } = pattern;
  const how =
    by < 0
      ? say`${printLength(-by, unit)} larger`
      : by < 0.05
        ? say`no smaller`
        : say`${printLength(by, unit)} smaller`;
  const advice =
    by < range.low
      ? say`The collar needs the more to lie over it, and its edge rolls up without: make the under collar smaller.`
      : say`The collar bags over so small an under collar: make it larger.`;
  const message = say`At the centre back ${under.base} is ${how} than ${collar.base} (${printLength(own, unit)} to ${printLength(other, unit)}); ${rangeInWords(range, unit)} smaller. ${advice}`;
  return [
    {
      source: under.source,
      finding: finding('unlike-under-collar', nameOfPiece(under), message, {
        piece: under.name,
        related: [{ source: collar.source, message: say`${collar.base} is made here.` }],
      }),
    },
  ];
}

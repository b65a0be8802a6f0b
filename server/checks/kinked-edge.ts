/** Finds edges that bend where a seam crosses them: once it is sewn, a hem, a neckline or a waist should run on through it. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Seam } from '../drafting/model';
import type { AroundSeam } from './around';
import { finding, type Judged } from './check';
import { called, cornersOf, fateOf, isBandOf, type CornerBeside, type Fate } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const upTo = (name: string, high: number): Usual => ({
  ...{ name, low: 0, high },
  kind: 'angle',
  standing: 'common practice',
});

const HEM = upTo('hem-kink', 2);
const YOKE = upTo('yoke-kink', 3);
const NECK = upTo('neck-kink', 4);
const WAIST = upTo('waist-kink', 5);
const UNDERARM = upTo('underarm-kink', 8);

export const kinkedEdge: Judged = {
  code: 'kinked-edge',
  severity: 'warning',
  title: 'An edge that bends where a seam crosses it',
  by: 'judgement',
  usual: [HEM, YOKE, NECK, WAIST, UNDERARM],
  ofSewnSeam: (seam, around) => (seam.comparable && seam.side !== 'left' ? kinks(seam, around) : []),
};

/**
 * A bend of more than this, degrees, is a corner that is meant (a point, a slit), not a fault of drawing; an edge that
 * goes round the body by its name is hardly ever meant to have one.
 */
const MEANT = 15;
const MEANT_ROUND = 30;
const ROUND = [
  'hem',
  'neck',
  'neckline',
  'waist',
  'armhole',
  'scye',
  'head',
  'rise',
  'yoke',
  'wrist',
  'foot',
];

const largest = ({ neighbour: { name } }: CornerBeside): number =>
  called(name, ...ROUND) ? MEANT_ROUND : MEANT;

/** Below this, degrees, nothing shows on cloth: rounding. */
const ROUNDING = 0.05;

function kinks(seam: Seam, around: AroundSeam): readonly Finding[] {
  return cornersOf(seam).flatMap(([a, b]) => {
    const bend = a.inside + b.inside - 180;
    const size = Math.abs(bend);
    if (size <= ROUNDING || size > largest(a)) return [];
    const fates = [a, b].map(({ piece, neighbour }) => fateOf(around, piece, neighbour.name, seam.side));
    if (!goesOn(seam, a, b, fates[0]!, fates[1]!) || (isCopy(a, fates[0]!) && isCopy(b, fates[1]!)))
      return [];
    const range = usualRange(around, limitOf(seam, a, fates[0]!));
    return isUsual(range, size - ROUNDING) ? [] : [kink(seam, a, b, bend, rangeInWords(range, around.unit))];
  });
}

/**
 * An edge that follows another piece's, which is judged there: every edge of a facing, which lies behind its piece, and of
 * a lining what is left raw.
 */
const isCopy = ({ piece: { facing, statement } }: CornerBeside, { finish }: Fate): boolean =>
  facing !== undefined || (statement.node.kind === 'lining' && finish?.how === 'raw');

/** Whether the edges beyond a seam's end belong together: sewn along one side of a seam, finished alike, or of one name. */
function goesOn(seam: Seam, a: CornerBeside, b: CornerBeside, one: Fate, other: Fate): boolean {
  if ([a, b].some(({ piece, neighbour }) => piece.fold?.edge === neighbour.name)) return false;
  const sameName = a.neighbour.name === b.neighbour.name;
  if (seam.itsPair) return one.finish !== undefined || onBand(one);
  if (one.seam !== undefined || other.seam !== undefined) {
    if (one.seam === undefined || other.seam === undefined) return false;
    if (one.seam.itsPair || other.seam.itsPair) return one.seam.itsPair && other.seam.itsPair && sameName;
    return one.seam === other.seam && one.side === other.side;
  }
  return one.finish === undefined || other.finish === undefined
    ? sameName
    : one.finish === other.finish || sameName;
}

const onBand = ({ seam, side }: Fate): boolean =>
  seam !== undefined && isBandOf(side === 'left' ? seam.right : seam.left);

/** The finish decides, where there is one that is turned; else the name of the edge. */
function limitOf({ left }: Seam, { neighbour: { name } }: CornerBeside, { finish }: Fate): Usual {
  if (finish?.how === 'turned-up' || finish?.how === 'turned-twice') return HEM;
  if (called(name, 'armhole', 'scye', 'head'))
    return left.every(({ edge }) => called(edge, 'shoulder')) ? WAIST : UNDERARM;
  if (called(name, 'neck', 'neckline')) return NECK;
  if (called(name, 'yoke')) return YOKE;
  if (called(name, 'waist', 'rise', 'crotch') || finish === undefined) return WAIST;
  return called(name, 'hem') ? HEM : NECK;
}

const degrees = (angle: number): string => `${Math.round(angle * 10) / 10}°`;

function kink(seam: Seam, a: CornerBeside, b: CornerBeside, bend: number, range: string): Finding {
  const [one, other] = [a, b].map(({ piece, neighbour }) => `${piece.base}.${neighbour.name}`) as [
    string,
    string,
  ];
  const corners = seam.itsPair
    ? say`its corner measures ${degrees(a.inside)}, and twice that is ${degrees(2 * a.inside)}`
    : say`the corners measure ${degrees(a.inside)} and ${degrees(b.inside)}, together ${degrees(a.inside + b.inside)}`;
  const runs = seam.itsPair ? say`${one} runs on into its mirrored twin` : say`${one} runs on into ${other}`;
  const way = bend > 0 ? say`dips in` : say`comes to a point`;
  const message = say`When ${seam.name} is sewn, ${runs} with a bend of ${degrees(Math.abs(bend))} and ${way} there: ${corners}, where 180° would run straight; ${range}. Draw ${seam.itsPair ? say`the edge` : say`both edges`} square to the seam (arriving square to …), or so that the corners make 180°.`;
  return finding('kinked-edge', { statement: seam.statement, at: seam.left[0]!.at }, message, {
    piece: a.piece.name,
    related: [...new Set([a, b].map(({ neighbour }) => neighbour.source))].map((source) => ({
      source,
      message: say`This edge runs on through the seam.`,
    })),
  });
}

/** Finds darts whose width or length is unusual for the garment, and those that end too near the bust or the hip. */
import { say } from '../../grammar/say';
import { contains, distance, midpoint, type Point } from '../geometry';
import type { Finding } from '../drafting/finding';
import type { BalanceLine, Dart, Piece } from '../drafting/model';
import { finding, type Judged, type Judging } from './check';
import { DART_WORDS, kindOf, swingsAboutBust, type DartKind } from './dart-kinds';
import { dartsOf, placeOf } from './dart-places';
import { amountInWords, isUsual, rangeInWords, usualRange, type Usual } from './usual';
import { ANGLE } from './wide-dart';
import { listed } from './words';

const length = (name: string, low: number, high: number, standing = 'common practice'): Usual => ({
  ...{ name, low, high, standing },
  kind: 'length',
});

const WIDTHS: { readonly [K in DartKind]?: Usual } = {
  'skirt-front': length('skirt-front-dart-width', 10, 22),
  'skirt-back': length('skirt-back-dart-width', 15, 32),
  'bodice-waist-front': length('waist-front-dart-width', 20, 50),
  'bodice-waist-back': length('waist-back-dart-width', 15, 35),
  'back-shoulder': length(
    'shoulder-dart-width',
    6,
    13,
    'common practice: by what the back shoulder is the longer',
  ),
};

const LENGTHS: { readonly [K in DartKind]?: Usual } = {
  'skirt-front': length('skirt-front-dart-length', 80, 110),
  'skirt-back': length('skirt-back-dart-length', 120, 150),
  'back-shoulder': length('shoulder-dart-length', 60, 100, 'from memory'),
};

const BUST_ANGLE: Usual = {
  ...{ name: 'bust-dart-angle', low: 7, high: 22 },
  kind: 'angle',
  standing: 'common practice',
};

const BUST_END = length(
  'bust-dart-end',
  20,
  35,
  'common practice; 13 to 25mm of a waist or shoulder dart, 5cm of a slanting one (Erwin, Practical Dress Design)',
);
const ABOVE_HIP = length('dart-above-hip', 20, Infinity);

export const unusualDart: Judged = {
  code: 'unusual-dart',
  severity: 'note',
  title: 'A dart that is unusual for its garment',
  by: 'judgement',
  usual: [...Object.values(WIDTHS), BUST_ANGLE, ...Object.values(LENGTHS), BUST_END, ABOVE_HIP],
  ofPiece: (piece, pattern) =>
    piece.side === 'left' ? [] : dartsOf(piece).flatMap((dart) => judged(piece, dart, pattern)),
};

function judged(piece: Piece, dart: Dart, pattern: Judging): readonly Finding[] {
  const kind = kindOf(piece, dart);
  if (kind === undefined) return [];
  const odd = measured(piece, dart, kind, pattern).flatMap((one) => unusual(one, pattern));
  // where it ends beyond the outline, that is told
  const outline = piece.edges.map(({ path }) => path);
  if (odd.length === 0 || !contains(outline, dart.tip)) return [];
  const message = say`${dart.name}, ${DART_WORDS[kind]()}, is ${listed(odd.map(({ said }) => said))}. ${odd.map(({ advice }) => advice).join(' ')}`;
  return [
    finding('unusual-dart', { statement: dart.statement, at: placeOf(dart) }, message, { piece: piece.name }),
  ];
}

interface Measured {
  readonly of: Usual | undefined;
  readonly amount: number;
  /** Mm or degrees by which it may miss its range. */
  readonly hair: number;
  readonly is: string;
  /** Where it is too little, and where it is too much. */
  readonly advice: () => readonly [string, string];
}

/** Rounding, mm or degrees; and by what the middle of a mouth lies before the curve of its edge, mm. */
const [HAIR, BEFORE_CURVE] = [0.05, 1];

function measured(piece: Piece, dart: Dart, kind: DartKind, pattern: Judging): readonly Measured[] {
  const { width, length: long } = dart.asLaid;
  const found: Measured[] = [];
  // one that opens too wide to be pressed is told by its angle alone
  if (isUsual(usualRange(pattern, ANGLE), dart.angle)) {
    found.push({ of: WIDTHS[kind], amount: width, hair: HAIR, is: say`wide`, advice: WIDE });
    if (kind === 'bust')
      found.push({
        of: BUST_ANGLE,
        amount: dart.angle,
        hair: HAIR,
        is: say`open at its point`,
        advice: WIDE,
      });
  }
  found.push({ of: LENGTHS[kind], amount: long, hair: BEFORE_CURVE, is: say`long`, advice: LONG });
  if (kind === 'bust' && swingsAboutBust(dart)) {
    const short = distance(dart.pivot, dart.tip);
    found.push({ of: BUST_END, amount: short, hair: HAIR, is: say`short of the bust point`, advice: END });
  }
  const hip = piece.balance.find(({ name }) => name === 'hip-line');
  if (hip !== undefined && (kind === 'skirt-front' || kind === 'skirt-back')) {
    const amount = above(hip, dart);
    const is = amount < 0 ? say`below the hip line` : say`above the hip line`;
    found.push({ of: ABOVE_HIP, amount, hair: HAIR, is, advice: HIP });
  }
  return found;
}

const WIDE = (): readonly [string, string] => [
  say`A seam can take so little.`,
  say`Take it in two, or let a seam take a share of it.`,
];
const LONG = (): readonly [string, string] => [
  say`It ends above what it is to give room to: make it longer.`,
  say`It cups below what it is to give room to: make it shorter.`,
];
const END = (): readonly [string, string] => [
  say`At the bust itself it makes a peak: sew it to 2.5cm short.`,
  say`Its room lands beside the bust: sew it further.`,
];
const HIP = (): readonly [string, string] => [say`Its room is wanted above the hip: make it shorter.`, ''];

/** "3.5cm wide (usual are 1cm to 2.2cm)", and what to do about it. */
function unusual(
  { of, amount, hair, is, advice }: Measured,
  pattern: Judging,
): readonly { readonly said: string; readonly advice: string }[] {
  const range = of && usualRange(pattern, of);
  if (of === undefined || range === undefined || isUsual(range, amount, hair)) return [];
  const size = amountInWords(of.kind, Math.abs(amount), pattern.unit);
  const said = `${size} ${is} (${rangeInWords(range, pattern.unit)})`;
  return [{ said, advice: advice()[amount < range.low ? 0 : 1] }];
}

/** How far a dart ends before the line, mm: below nothing, where it ends beyond. */
function above({ path }: BalanceLine, { from, to, tip }: Dart): number {
  const across = (p: Point): number =>
    (path.end.x - path.start.x) * (p.y - path.start.y) - (path.end.y - path.start.y) * (p.x - path.start.x);
  const away = path.locate(tip).distance;
  return across(midpoint(from, to)) * across(tip) < 0 ? -away : away;
}

/** Walking a seam: one side is rolled along the other, as a cutter checks it, and its notches are held against theirs. */
import { say } from '../../../grammar/say';
import type { LaidLine, Stop } from '../../../client/preview/protocol';
import type { DisplayUnit, Pattern } from '../../drafting/model';
import { alongSide } from '../../drafting/sewing/course';
import { printLength } from '../../drafting/values/quantity';
import type { DrawnDot } from '../../drawing/model';
import { spot } from '../../drawing/path';
import { identity, type Affine } from '../../geometry';
import { frameOfAll, laidAgainst, laidPieces, overLine, type LaidOut } from './paper';
import {
  laidSeam,
  lengthOf,
  partnerOf,
  partnerOfRight,
  placeAt,
  sideWords,
  stretchesOf,
  type LaidSeam,
  type Side,
} from './sides-of-seam';

/** Less than this can't be seen on paper, mm. */
export const NOTHING = 0.05;
/** A notch further off than this is another one, mm. */
const FELLOW_WITHIN = 30;

export function walked(pattern: Pattern, source: string, wanted: number): LaidOut | undefined {
  const laid = laidSeam(pattern, source);
  if (laid === undefined) return undefined;
  const length = lengthOf(laid, 'left');
  const at = Math.min(Math.max(Number.isFinite(wanted) ? wanted : 0, 0), length);
  const [left, right] = [placeAt(laid, 'left', at), placeAt(laid, 'right', partnerOf(laid, at))];
  const by = laidAgainst(left, identity, right);
  const { pieces, texts } = laidPieces(pattern, [
    { piece: left.piece, by: identity },
    { piece: right.piece, by },
  ]);
  const touch = spot(left.point);
  const stops = stopsOf(laid, pattern.unit);
  return {
    words: [lengthsWords(laid, pattern.unit), placeWords(laid, at, pattern.unit), ...stopWords(stops, at)],
    ...{ pieces, texts },
    lines: [
      ...linesOf(laid, at, { left: identity, right: by }),
      ...overOf(laid, { left: identity, right: by }),
    ],
    dots: [touchDot(touch, source)],
    frame: frameOfAll(places(laid)),
    walk: { at, length, along: left.along, touch, stops },
  };
}

const touchDot = (at: DrawnDot['at'], source: string): DrawnDot => ({
  role: 'mark',
  source,
  name: 'touch',
  at,
});

/** Where the pieces lie at both ends and in the middle of the walk, so that the view need not move while it goes on. */
function places(laid: LaidSeam) {
  const length = lengthOf(laid, 'left');
  return [0, length / 2, length].flatMap((at) => {
    const [left, right] = [placeAt(laid, 'left', at), placeAt(laid, 'right', partnerOf(laid, at))];
    return [
      { piece: left.piece, by: identity },
      { piece: right.piece, by: laidAgainst(left, identity, right) },
    ];
  });
}

type Laid = Readonly<Record<Side, Affine>>;

/** What was walked so far, on the two pieces that touch. */
function linesOf(laid: LaidSeam, at: number, by: Laid): readonly LaidLine[] {
  const done = { left: at, right: partnerOf(laid, at) };
  return (['left', 'right'] as const).flatMap((side) => {
    const { piece } = placeAt(laid, side, done[side]);
    const walkedOn = stretchesOf(laid, side, [0, done[side]]).filter((one) => one.piece === piece);
    return walkedOn.map(({ edge, path }) =>
      overLine('walked', path, by[side], { name: edge.name, source: edge.source, tip: '' }),
    );
  });
}

/** What is left over of the longer side, where its end is in sight. */
function overOf(laid: LaidSeam, by: Laid): readonly LaidLine[] {
  const over = leftOver(laid);
  if (over === undefined) return [];
  const { side, from } = over;
  return stretchesOf(laid, side, [from, lengthOf(laid, side)]).map(({ edge, path }) =>
    overLine('over', path, by[side], { name: edge.name, source: edge.source, tip: say`left over` }),
  );
}

function leftOver(
  laid: LaidSeam,
): { readonly side: Side; readonly from: number; readonly size: number } | undefined {
  const { itsPair, difference } = laid.seam;
  if (itsPair || Math.abs(difference) < NOTHING) return undefined;
  const side = difference > 0 ? 'right' : 'left';
  const size = Math.abs(difference);
  return { side, from: lengthOf(laid, side) - size, size };
}

/** `front side is 70.5cm, back side 69.5cm: 1cm of front side is left over.` */
export function lengthsWords(laid: LaidSeam, unit: DisplayUnit): string {
  const [left, right] = [lengthOf(laid, 'left'), lengthOf(laid, 'right')];
  const both = say`${sideWords(laid, 'left')} is ${printLength(left, unit)}, ${sideWords(laid, 'right')} ${printLength(right, unit)}`;
  const over = leftOver(laid);
  const eased = Math.abs(right - left - (laid.seam.itsPair ? 0 : laid.seam.difference));
  const asked = eased < NOTHING ? '' : say`, ${printLength(eased, unit)} eased in as asked`;
  const rest =
    over === undefined
      ? asked === ''
        ? say`: they match`
        : ''
      : say`: ${printLength(over.size, unit)} of ${sideWords(laid, over.side)} is left over`;
  return `${both}${asked}${rest}.`;
}

function placeWords(laid: LaidSeam, at: number, unit: DisplayUnit): string {
  const [left, right] = [placeAt(laid, 'left', at), placeAt(laid, 'right', partnerOf(laid, at))];
  const partner = partnerOf(laid, at);
  const eased =
    Math.abs(partner - at) < NOTHING
      ? ''
      : say`, ${printLength(Math.abs(partner - at), unit)} eased in so far`;
  if (at < NOTHING) return say`Here both sides begin.`;
  const where = ({ piece, edge }: typeof left) => `${piece.base} ${edge.name}`;
  return say`${printLength(at, unit)} along ${where(left)} lies on ${printLength(partner, unit)} along ${where(right)}${eased}.`;
}

const stopWords = (stops: readonly Stop[], at: number): readonly string[] =>
  stops.filter((stop) => Math.abs(stop.at - at) < NOTHING && stop.words !== '').map(({ words }) => words);

/** Ends, joins of edges, and notches of either side, in the order of the walk. */
function stopsOf(laid: LaidSeam, unit: DisplayUnit): readonly Stop[] {
  const length = lengthOf(laid, 'left');
  const joins = [
    ...laid.course.left.map(({ start }) => start),
    ...laid.course.right.map(({ start }) => partnerOfRight(laid, start)),
  ];
  const plain = [0, ...joins, length].map((at) => ({ at, words: '' }));
  const stops = [...notchStops(laid, unit), ...plain].sort((a, b) => a.at - b.at);
  return stops.filter((stop, i) => {
    const before = stops[i - 1];
    return stop.words !== '' || before === undefined || stop.at - before.at > NOTHING;
  });
}

interface Placed {
  readonly name: string;
  readonly at: number;
}

/** Notches of the pieces that lie on a side, counted along it. */
function notchesOn({ course, pieces }: LaidSeam, side: Side): readonly Placed[] {
  return [...pieces].flatMap(([base, { notches }]) =>
    notches.flatMap(({ name, edge, distance }) => {
      const at = alongSide(course[side], { piece: base, edge, distance });
      return at === undefined ? [] : [{ name, at }];
    }),
  );
}

function notchStops(laid: LaidSeam, unit: DisplayUnit): readonly Stop[] {
  const [left, right] = [notchesOn(laid, 'left'), notchesOn(laid, 'right')];
  const paired = new Set<Placed>();
  const stops = left.map(({ name, at }): Stop => {
    const here = partnerOf(laid, at);
    const fellow = nearestTo(right, here);
    if (fellow === undefined) return { at, words: say`Notch ${name} has no fellow on the other side.` };
    paired.add(fellow);
    const off = fellow.at - here;
    if (Math.abs(off) < NOTHING) return { at, words: say`Notch ${name} meets its fellow.` };
    return {
      at,
      words: say`Notch ${name}: its fellow is ${printLength(Math.abs(off), unit)} ${off > 0 ? say`further on` : say`behind`}.`,
    };
  });
  const alone = right.filter((notch) => !paired.has(notch));
  return [
    ...stops,
    ...alone.map(({ name, at }) => ({
      at: partnerOfRight(laid, at),
      words: say`Notch ${name} of ${sideWords(laid, 'right')} has no fellow here.`,
    })),
  ];
}

const nearestTo = (notches: readonly Placed[], at: number): Placed | undefined =>
  notches
    .filter((notch) => Math.abs(notch.at - at) <= FELLOW_WITHIN)
    .sort((a, b) => Math.abs(a.at - at) - Math.abs(b.at - at))[0];

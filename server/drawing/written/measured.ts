/**
 * What the garment measures when it is made up, as far as the pattern can tell it: rings of balance lines and of edges,
 * bands, seams and folds, each beside the body's own measurement where there is one of that name.
 */
import { say } from '../../../grammar/say';
import { ringsAlong } from '../../checks/rings';
import type { BodySheet, Pattern, Piece, Seam } from '../../drafting/model';
import { roundByBand, timesRound } from '../../drafting/sewing/ring';
import { edgeRings } from './girths';
import { bodySheetOf } from './measuring';

/** A number: each of so many that are alike. */
export type Extent = 'all round' | 'each limb' | 'whole' | 'each side' | number;

export function extentWords(of: Extent): string {
  switch (of) {
    case 'all round':
      return say`all round`;
    case 'each limb':
      return say`each limb`;
    case 'whole':
      return say`whole`;
    case 'each side':
      return say`each side`;
    default:
      return say`each of ${of}`;
  }
}

export interface Measured {
  /** `hip`, `hem`, `side`; a measurement's name where the body has one to compare. */
  readonly name: string;
  /** Where on the pieces: `hip-line of back and front`. */
  readonly where: string;
  /** What the length is of: all of it, or one of two that are alike but for the wearer's sides. */
  readonly of: Extent;
  /** Both sides, mm: alike for what goes round the body. */
  readonly left: number;
  readonly right: number;
  /** The body's own, where it was taken. */
  readonly body?: { readonly left: number; readonly right: number };
}

/** Girths that the trade compares, and the balance lines at their level. Names of lines are ours. */
const GIRTHS: readonly {
  readonly measure: string;
  readonly lines: readonly string[];
  readonly round: 'body' | 'limb';
}[] = [
  ...['upper-chest', 'bust', 'under-bust', 'waist', 'high-hip'].map((measure) => ({
    ...{ measure, lines: [`${measure}-line`], round: 'body' as const },
  })),
  { measure: 'hip', lines: ['hip-line', 'seat-line'], round: 'body' },
  ...['thigh', 'knee', 'under-knee', 'calf', 'ankle', 'upper-arm', 'elbow', 'fore-arm', 'wrist'].map(
    (measure) => ({
      ...{ measure, lines: [`${measure}-line`], round: 'limb' as const },
    }),
  ),
];

/** Edges of these names are measured by the tape as the body's measurement of the same name. */
const EDGES: ReadonlySet<string> = new Set([
  ...GIRTHS.map(({ measure }) => measure),
  'neck',
  'mid-neck',
  'armhole',
]);

const named = (name: string): string => name.replace(/-/g, ' ');
const listed = (names: readonly string[]): string =>
  names.join(', ').replace(/, ([^,]*)$/, (_, last: string) => `${say` and `}${last}`);

/** Girths, from the head down where they have a measurement's name, then those of other edges. */
export function girthsOf(pattern: Pattern): readonly Measured[] {
  const sheet = bodySheetOf(pattern);
  const lines = GIRTHS.flatMap(({ measure, lines, round }) =>
    lines.flatMap((line) =>
      ringsAlong(pattern, line, round).map((ring): Measured => {
        const where = say`${line} of ${listed(ring.pieces.map(({ base }) => base))}`;
        const of = extentOf(round);
        return { name: measure, where, of, left: ring.length, right: ring.length, ...bodyOf(sheet, measure) };
      }),
    ),
  );
  const edges = edgeRings(pattern).map((ring): Measured => {
    const own = EDGES.has(ring.name) ? bodyOf(sheet, ring.name) : {};
    return {
      name: ring.name,
      where: say`edges of ${listed(ring.pieces)}`,
      of: extentOf(ring.round),
      left: ring.left,
      right: ring.right,
      ...own,
    };
  });
  const bands = bandsOf(pattern, sheet).filter(
    ({ name }) => ![...lines, ...edges].some((one) => one.name === name),
  );
  const order = (one: Measured): number => {
    const at = GIRTHS.findIndex(({ measure }) => measure === one.name);
    return at < 0 ? GIRTHS.length : at;
  };
  return [...lines, ...edges, ...bands].sort((a, b) => order(a) - order(b));
}

const extentOf = (round: 'body' | 'limb'): Extent => (round === 'body' ? 'all round' : 'each limb');

/** A band that is sewn to edges of one name lies round the body there, without its underlap. */
function bandsOf({ pieces, seams }: Pattern, sheet: BodySheet | undefined): readonly Measured[] {
  return pieces.flatMap((piece) => {
    if (piece.statement.node.kind !== 'band') return [];
    return seams.flatMap(({ left, right }): Measured[] => {
      const band = [left, right].find((side) => side.length === 1 && side[0]!.piece === piece.base);
      const rest = band === left ? right : left;
      const names = new Set(rest.map(({ edge }) => edge));
      if (band === undefined || names.size !== 1) return [];
      const name = [...names][0]!;
      const round = roundByBand(piece, band[0]!);
      if (round === undefined) return [];
      const own = EDGES.has(name) ? bodyOf(sheet, name) : {};
      const where = piece.underlap ? say`${piece.name} without its underlap` : piece.name;
      return [{ name, where, of: 'all round', left: round, right: round, ...own }];
    });
  });
}

function bodyOf(sheet: BodySheet | undefined, name: string): Pick<Measured, 'body'> {
  const taken = sheet?.measures.get(name);
  if (taken?.left.kind !== 'length' || taken.right.kind !== 'length') return {};
  return { body: { left: taken.left.amount, right: taken.right.amount } };
}

/** Measurements that the pattern rests on and that no ring tells, with what would tell them. */
export function untold({ needs }: Pattern, told: readonly Measured[]): readonly string[] {
  const names = new Set(told.map(({ name }) => name));
  return GIRTHS.flatMap(({ measure, lines }) =>
    needs.includes(measure) && !names.has(measure)
      ? [
          say`${measure} can't be told: it needs a balance line ${lines[0]!} across every piece that it crosses, clear of darts and pleats, or edges called ${measure} that close round the ${named(measure)}.`,
        ]
      : [],
  );
}

/** Seams and folds at their finished length, in file order; what the girths tell already is not said again. */
export function lengthsOf(pattern: Pattern, told: readonly Measured[]): readonly Measured[] {
  const girths = new Set(told.map(({ name }) => name));
  return allLengths(pattern).filter(({ name }) => !girths.has(name));
}

function allLengths(pattern: Pattern): readonly Measured[] {
  const sheet = bodySheetOf(pattern);
  const seams = new Map<string, Seam[]>();
  for (const seam of pattern.seams) seams.set(seam.source, [...(seams.get(seam.source) ?? []), seam]);
  const sewn = [...seams.values()].map((both): Measured => {
    const [seam] = both as [Seam, ...Seam[]];
    const on = (side: 'left' | 'right'): number =>
      courseOf(both.find((one) => one.side === side) ?? seam, pattern).length;
    const where = [...new Set([...seam.left, ...seam.right].map(({ piece, edge }) => `${piece}.${edge}`))];
    const pair = seam.itsPair ? say` to its pair` : '';
    const { name } = seam;
    const { times, areAlike } = courseOf(seam, pattern);
    const sided = both.some(({ side }) => side !== undefined) || times === 2;
    return {
      name,
      where: listed(where) + pair,
      of: times > 2 || areAlike ? times : sided ? 'each side' : 'whole',
      left: on('left'),
      right: on('right'),
      ...bodyOf(sheet, name),
    };
  });
  const folds = pattern.pieces.flatMap(({ name, cut, fold, edges }): Measured[] => {
    const edge = cut === undefined ? undefined : edges.find((one) => one.name === fold?.edge);
    if (edge === undefined) return [];
    const where = say`${`${name}.${edge.name}`}, on the fold`;
    return [{ name: edge.name, where, of: 'whole', left: edge.sewn, right: edge.sewn }];
  });
  return [...sewn, ...folds];
}

interface Course {
  readonly length: number;
  readonly times: number;
  /** Of a front and a back alike, or of gores: not one on each side of the wearer. */
  readonly areAlike: boolean;
}

/**
 * How long a seam is as it is sewn, and how often: one that begins at a fold goes on beyond it, one of pieces that are cut
 * twice is sewn on both sides of the wearer, one of gores, or of a front and a back alike, as often as they are cut.
 */
export function courseOf(seam: Seam, { pieces }: Pattern): Course {
  const half = finishedLength(seam);
  const taken = [...seam.left, ...seam.right].flatMap(({ piece, edge }) => {
    const of = pieces.find(({ base }) => base === piece);
    return of === undefined ? [] : [{ of, edge }];
  });
  const once = { length: half, times: 1, areAlike: false };
  if (taken.some(({ of }) => of.statement.node.kind === 'band')) return once;
  const isWhole = !seam.itsPair && seam.side === undefined;
  const folded = taken.map(({ of, edge }) => isWhole && atFold(of, edge));
  const goesOn = folded.some(Boolean);
  const length = goesOn ? 2 * half : half;
  // a half that is cut single meets half of what goes on beyond the fold
  const halves = Math.max(...taken.map(({ of }, i) => (of.copies ?? 1) * (folded[i] === true ? 2 : 1)), 1);
  const copies = goesOn ? Math.floor(halves / 2) : halves;
  if (copies > 1) return { length, times: copies, areAlike: isWhole };
  if (goesOn || !isWhole) return { ...once, length };
  return { ...once, times: taken.every(({ of }) => timesRound(of) === 2) ? 2 : 1 };
}

function atFold({ edges, fold }: Piece, name: string): boolean {
  const i = edges.findIndex((edge) => edge.name === name);
  if (i < 0 || fold === undefined) return false;
  return [i + 1, i - 1].some((k) => edges[(k + edges.length) % edges.length]!.name === fold.edge);
}

/** What is eased or gathered comes down to the shorter edge; what is stretched comes up to the longer one. */
export function finishedLength({ statement: { node }, leftLength, rightLength, itsPair }: Seam): number {
  if (itsPair) return leftLength;
  const stretched = node.kind === 'seam' && node.eases.some(({ kind }) => kind === 'stretched');
  return stretched ? Math.max(leftLength, rightLength) : Math.min(leftLength, rightLength);
}

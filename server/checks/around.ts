/** What lies around a piece or a seam, as far as it is judged by: while all of it stays the same, so does what was found. */
import { keptFor } from '../../grammar/kept';
import type { Finish, Pattern, Piece, Seam } from '../drafting/model';
import { inPlaceOf, stepsOf } from './made-of';

type Units = Pick<Pattern, 'unit' | 'usual'>;

/** The seams and finishes that take edges of a piece. */
export interface AroundPiece extends Units {
  readonly seams: readonly Seam[];
  readonly finishes: readonly Finish[];
  /**
   * Its edges in statements that could not be read, or that name them on a piece of which it was made: each between two
   * blanks.
   */
  readonly doubtful: string;
  /** Its edges that lines of the pattern accept as unfinished, likewise. */
  readonly leftOpen: string;
  /** No piece of the pattern is allowed anything but what finishes take: it is drawn to the finished size. */
  readonly net: boolean;
}

/** The pieces whose edges a seam takes; of others nothing may be asked. */
export interface AroundSeam extends Units {
  /** The piece of that name in the text, or both where the wearer's sides differ. */
  piecesNamed(base: string): readonly Piece[];
  seamsOf(base: string): readonly Seam[];
  finishesOf(base: string): readonly Finish[];
  /** Some piece of the pattern has a notch. */
  readonly notched: boolean;
  readonly closingFixes: Pattern['closingFixes'];
}

/** What surrounds each thing of a pattern, with what it is known by. */
export interface Surroundings {
  readonly ofPiece: (piece: Piece) => AroundPiece;
  readonly ofSeam: AroundSeam;
  /** Everything that `ofSeam` may answer for a seam, to be compared one by one. */
  readonly keyOfSeam: (seam: Seam) => readonly unknown[];
}

const NONE: readonly Piece[] = [];

export function surroundings(pattern: Pattern): Surroundings {
  const { unit, usual, pieces } = pattern;
  const named = byBase(pieces);
  const doubtful = doubtfulEdges(new Set([...pattern.doubtful, ...namedOnSteps(pattern)]));
  const leftOpen = leftOpenEdges(pattern);
  const net = isNet(pattern);
  const notched = pieces.some(({ notches }) => notches.length > 0);
  const piecesNamed = (base: string): readonly Piece[] => named.get(base) ?? NONE;
  const seamsOf = (base: string): readonly Seam[] => pattern.seamsOf(base);
  const finishesOf = (base: string): readonly Finish[] => pattern.finishesOf(base);
  const closingFixes: Pattern['closingFixes'] = (seam) => pattern.closingFixes(seam);
  return {
    ofPiece: ({ base, source }) => ({
      unit,
      usual,
      seams: seamsOf(base),
      finishes: finishesOf(base),
      doubtful: doubtful.get(base) ?? '',
      leftOpen: leftOpen.get(source) ?? '',
      net,
    }),
    ofSeam: { unit, usual, piecesNamed, seamsOf, finishesOf, notched, closingFixes },
    keyOfSeam({ left, right }) {
      const key: unknown[] = [unit, usual, notched];
      for (const side of [left, right])
        for (const { piece } of side) key.push(...piecesNamed(piece), seamsOf(piece), finishesOf(piece));
      return key;
    },
  };
}

export const sameAround = (a: AroundPiece, b: AroundPiece): boolean =>
  a.unit === b.unit &&
  a.usual === b.usual &&
  a.seams === b.seams &&
  a.finishes === b.finishes &&
  a.doubtful === b.doubtful &&
  a.leftOpen === b.leftOpen &&
  a.net === b.net;

export const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);

/** The pieces by their name in the text, put in order once for a list of them. */
export const byBase = keptFor((pieces: readonly Piece[]): ReadonlyMap<string, readonly Piece[]> => {
  const found = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const same = found.get(piece.base);
    if (same === undefined) found.set(piece.base, [piece]);
    else same.push(piece);
  }
  return found;
});

/** Edges of which nothing is said, by piece, as one string each. */
function doubtfulEdges(names: ReadonlySet<string>): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const name of [...names].sort()) {
    const dot = name.indexOf('.');
    const piece = name.slice(0, dot);
    found.set(piece, `${found.get(piece) ?? ' '}${name.slice(dot + 1)} `);
  }
  return found;
}

/** Edges of which something is said, though of a piece that is not cut itself: that is asked about where it is said. */
function namedOnSteps(pattern: Pattern): readonly string[] {
  return [...stepsOf(pattern.pieces).values()].flatMap((step) => {
    const { base } = step.piece;
    const sewn = pattern.seamsOf(base).flatMap(({ left, right }) => [...left, ...right]);
    const all = [...sewn, ...pattern.finishesOf(base).flatMap(({ edges }) => edges)];
    const own = all.filter(({ piece }) => piece === base);
    return own.flatMap(({ edge }) => inPlaceOf(step, edge).map((one) => `${one.piece}.${one.edge}`));
  });
}

/** Edges that a line lets stand without a finish, by the source of their piece, as one string each. */
function leftOpenEdges({ acceptances }: Pattern): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { code, of } of acceptances) {
    const slash = of?.source?.lastIndexOf('/') ?? -1;
    if (code !== 'unfinished-edge' || slash < 0) continue;
    const [piece, edge] = [of!.source!.slice(0, slash), of!.source!.slice(slash + 1)];
    found.set(piece, `${found.get(piece) ?? ' '}${edge} `);
  }
  return found;
}

const isNet = (pattern: Pattern): boolean =>
  pattern.pieces.every((piece) => hasNoneOfItsOwn(piece, pattern.finishesOf(piece.base)));

/** Nothing is allowed but what finishes take. Bands, strips and facings have their allowances from others. */
const hasNoneOfItsOwn = (
  { base, allowances, statement, cut, unbuilt, gaps, side }: Piece,
  finishes: readonly Finish[],
): boolean =>
  statement.node.kind !== 'piece' ||
  cut === undefined ||
  unbuilt.length > 0 ||
  gaps.length > 0 ||
  side === 'left' ||
  [...allowances].every(([edge, width]) => width === 0 || isFinished(base, edge, finishes));

const isFinished = (base: string, edge: string, finishes: readonly Finish[]): boolean =>
  finishes.some(({ edges }) => edges.some((one) => one.piece === base && one.edge === edge));

/** What to look at in a fitting (*common practice*), asked only of what the pattern has. */
import { say } from '../../../grammar/say';
import type { Edge, Finish, Pattern, Piece } from '../../drafting/model';
import { pointOn } from '../../drafting/sewing/course';
import { isPutOn } from './order';

export interface Look {
  readonly at: string;
  /** Pieces, seams or finishes; empty where the pattern has nothing of the kind. */
  readonly where: string;
}

/** From the whole to the parts, and last what the wearer has to do in it. */
export function looksOf(pattern: Pattern): readonly Look[] {
  const all = [...hang(pattern), ...shaped(pattern), ...above(pattern), ...ends(pattern)];
  const work = { at: say`The work of the part: sit, kneel, reach, lift, turn.`, where: say`all` };
  return [...all.filter(({ where }) => where !== ''), work];
}

function has({ pieces }: Pattern, test: (piece: Piece) => boolean): string {
  const names = pieces.filter((piece) => piece.cut !== undefined && test(piece)).map(({ base }) => base);
  return [...new Set(names)].join(', ');
}

const edge = (pattern: Pattern, ...names: readonly string[]): string =>
  has(pattern, ({ edges }) => edges.some(({ name }) => names.includes(name)));

const seam = ({ seams }: Pattern, part: string): string =>
  [...new Set(seams.map(({ name }) => name))].filter((name) => name.includes(part)).join(', ');

const hang = (pattern: Pattern): readonly Look[] => [
  { at: say`The grain hangs plumb at centre front and centre back.`, where: edge(pattern, 'centre') },
  {
    at: say`Level lines run level all round.`,
    where: has(pattern, ({ balance }) => balance.some(({ name }) => name.endsWith('-line'))),
  },
  {
    at: say`The side seam hangs straight to the floor, and swings neither to the front nor to the back.`,
    where: seam(pattern, 'side'),
  },
  {
    at: say`The waist sits where the waist is, without strain and without gaping.`,
    where: edge(pattern, 'waist'),
  },
];

const shaped = (pattern: Pattern): readonly Look[] => [
  {
    at: say`Darts point to the fullest place and end short of it.`,
    where: has(pattern, ({ darts }) => darts.length > 0),
  },
  {
    at: say`Pleats and gathers hang closed and even.`,
    where: has(pattern, ({ shaping }) => (shaping?.pleats.length ?? 0) + (shaping?.gathers.length ?? 0) > 0),
  },
  { at: say`The seat has room to sit, and no folds below it.`, where: edge(pattern, 'rise', 'seat') },
];

const above = (pattern: Pattern): readonly Look[] => [
  {
    at: say`The shoulder seam lies on the top of the shoulder and ends at its tip.`,
    where: seam(pattern, 'shoulder'),
  },
  { at: say`The neck lies flat, neither standing off nor cutting in.`, where: edge(pattern, 'neck') },
  {
    at: say`The armhole is close without binding when the arm comes forward.`,
    where: edge(pattern, 'armhole'),
  },
  {
    at: say`The sleeve hangs a little forward, its head without drag lines.`,
    where: edge(pattern, 'head'),
  },
];

function ends(pattern: Pattern): readonly Look[] {
  const opened = pattern.seams.filter(({ openings = [] }) => openings.length > 0).map(({ name }) => name);
  const turned = pattern.finishes.filter(
    (finish) => (finish.how === 'turned-up' || finish.how === 'turned-twice') && isHem(finish, pattern),
  );
  return [
    {
      at: say`Openings lie flat, close without strain, and let the wearer in and out.`,
      where: [...new Set(opened)].join(', '),
    },
    {
      at: say`The hem is level, measured up from the floor, in the shoes of the part.`,
      where: [...new Set(turned.map(({ name }) => name))].join(', '),
    },
  ];
}

/** A hem is measured from the floor: the lowest edge of a piece that hangs from a seam. A bib's side is turned up as well. */
const isHem = (finish: Finish, pattern: Pattern): boolean =>
  !isPutOn(finish, pattern) &&
  finish.edges.some(({ piece, edge }) => {
    const edges = pattern.pieces.find(({ base }) => base === piece)?.edges ?? [];
    return lowest(edges)?.name === edge;
  });

/** By the middles of the edges, as the piece lies on paper, where down is down. */
function lowest(edges: readonly Edge[]): Edge | undefined {
  const depth = (edge: Edge) => pointOn(edge, edge.sewn / 2).y;
  return edges.reduce<Edge | undefined>(
    (best, one) => (best && depth(best) >= depth(one) ? best : one),
    undefined,
  );
}

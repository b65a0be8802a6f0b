/** Finds zips that are unusually short or long for their garment. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece, Seam } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { called } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const zip = (name: string, low: number, high: number): Usual => ({
  ...{ name, low, high },
  kind: 'length',
  standing: 'common practice',
});

/** By garment, with the words for it. */
const ZIPS = {
  skirt: { words: () => say`a skirt’s zip`, usual: zip('skirt-zip', 180, 230) },
  dress: { words: () => say`the zip of a dress`, usual: zip('dress-zip', 500, 600) },
  fly: { words: () => say`the zip of a fly`, usual: zip('fly-zip', 140, 200) },
} as const;

export const unusualZip: Judged = {
  code: 'unusual-zip',
  severity: 'note',
  title: 'A zip of unusual length for its garment',
  by: 'judgement',
  usual: Object.values(ZIPS).map(({ usual }) => usual),
  ofSeam: (seam, pattern) => judged(seam, pattern),
};

function judged(seam: Seam, pattern: Judging): readonly Finding[] {
  const { openings = [], left, comparable, side, statement } = seam;
  if (!openings.some(({ how }) => how === 'zip')) return [];
  const [edge] = left;
  const garment = edge?.of && garmentOf(edge.of, edge.edge);
  if (edge === undefined || garment === undefined || !comparable || side === 'left') return [];
  const { words, usual } = ZIPS[garment];
  const range = usualRange(pattern, usual);
  // along the whole seam it is as long as that
  return openings.flatMap(({ how, whole, from, to, at }) => {
    const long = to - from;
    if (how !== 'zip' || whole || isUsual(range, long, 0.5)) return [];
    const { unit } = pattern;
    const why =
      long < range.low
        ? say`Shorter, it does not let the body through and tears at its end.`
        : say`Longer, it stiffens the seam and can’t be had everywhere.`;
    const message = say`${capital(words())} is ${printLength(long, unit)} long here; ${rangeInWords(range, unit)}. ${why}`;
    return [finding('unusual-zip', { statement, at }, message, { piece: edge.piece })];
  });
}

const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

/** By the names of the edges; of a bodice nothing is said. */
function garmentOf({ edges }: Piece, edge: string): keyof typeof ZIPS | undefined {
  const has = (...words: readonly string[]): boolean => edges.some(({ name }) => called(name, ...words));
  if (called(edge, 'rise', 'crotch', 'fly')) return 'fly';
  if (!has('hem') || has('rise', 'crotch', 'inseam')) return undefined;
  if (has('shoulder', 'armhole', 'scye', 'neck', 'neckline'))
    return called(edge, 'centre') ? 'dress' : undefined;
  return has('waist') ? 'skirt' : undefined;
}

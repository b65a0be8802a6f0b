/** Finds rings of a garment that leave the body less room than is usual, where it is plain what goes round what. */
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { BodySheet, Pattern, Piece, Seam } from '../drafting/model';
import { roundByBand } from '../drafting/sewing/ring';
import { printLength, printLengthFine } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { ofBodyDraftedFor, taken, whose } from './measurements';
import { ringsAlong, type Ring } from './rings';
import { atLeast, isUsual, rangeInWords, usualRange, type Usual } from './usual';

const eased = (name: string, low: number): Usual =>
  atLeast(name, low, 'common practice, for cloth that does not stretch');

/** Each measurement with the balance lines that lie at its level, and the least ease that the body moves in. */
const MEASURES = [
  { measure: 'bust', lines: ['bust-line'], round: 'body', usual: eased('bust-ease', 40) },
  { measure: 'waist', lines: ['waist-line'], round: 'body', usual: eased('waist-ease', 0) },
  { measure: 'hip', lines: ['hip-line', 'seat-line'], round: 'body', usual: eased('hip-ease', 20) },
  { measure: 'thigh', lines: ['thigh-line'], round: 'limb', usual: eased('thigh-ease', 40) },
  { measure: 'upper-arm', lines: ['upper-arm-line'], round: 'limb', usual: eased('upper-arm-ease', 30) },
] as const;

export const unusualEase: Judged = {
  code: 'unusual-ease',
  severity: 'warning',
  title: 'A ring of the garment with unusual ease',
  by: 'judgement',
  usual: MEASURES.map(({ usual }) => usual),
  ofPattern: ofBodyDraftedFor(
    MEASURES.map(({ measure }) => measure),
    (pattern, sheet) => judged(pattern, sheet),
  ),
};

const judged = (pattern: Pattern, sheet: BodySheet): readonly SourcedFinding[] =>
  hasRings(pattern) ? [...alongLines(pattern, sheet), ...inBands(pattern, sheet)] : [];

const LINES: ReadonlySet<string> = new Set(MEASURES.flatMap(({ lines }) => lines));

const hasRings = ({ pieces }: Pattern): boolean =>
  pieces.some((piece) => isBand(piece) || piece.balance.some(({ name }) => LINES.has(name)));

function alongLines(pattern: Pattern, sheet: BodySheet): readonly SourcedFinding[] {
  return MEASURES.flatMap((of) =>
    of.lines.flatMap((line) =>
      ringsAlong(pattern, line, of.round).flatMap((ring) => {
        const names = ring.pieces.map(({ name }) => name).join(say` and `);
        const words = wanting(pattern, sheet, of, ring.length, say`${ring.line} of ${names}`);
        return words === undefined ? [] : [atLine(ring, words)];
      }),
    ),
  );
}

function atLine({ pieces: [piece], line }: Ring, words: string): SourcedFinding {
  const { source, statement, name } = piece!;
  const own = statement.block?.find(({ node }) => node.kind === 'balance' && node.name.text === line);
  const place =
    own === undefined ? { statement, at: statement.node.at } : { statement: own, at: own.node.at };
  return { source, finding: finding('unusual-ease', place, words, { piece: name }) };
}

const isBand = ({ statement }: Piece): boolean => statement.node.kind === 'band';

/** A band that is sewn to edges called `waist` lies round the waist, without its underlap. */
function inBands(pattern: Pattern, sheet: BodySheet): readonly SourcedFinding[] {
  const bands = new Map(pattern.pieces.filter(isBand).map((piece) => [piece.name, piece]));
  if (bands.size === 0) return [];
  return pattern.seams.flatMap((seam) => {
    const sides = [seam.left, seam.right];
    const band = sides.find((side) => side.length === 1 && bands.has(side[0]!.piece));
    const rest = sides.find((side) => side !== band);
    if (band === undefined || seam.side !== undefined || rest?.every(({ edge }) => edge === 'waist') !== true)
      return [];
    const piece = bands.get(band[0]!.piece)!;
    const round = roundByBand(piece, band[0]!);
    if (round === undefined) return [];
    const words = wanting(pattern, sheet, MEASURES[1], round, piece.name);
    return words === undefined || rest.length === 0 ? [] : [atSeam(seam, piece.name, words)];
  });
}

const atSeam = ({ source, statement, left }: Seam, piece: string, words: string): SourcedFinding => ({
  source,
  finding: finding('unusual-ease', { statement, at: left[0]!.at }, words, { piece }),
});

/** A hair, so that exactly the least passes whatever the rounding, mm. */
const ROUNDING = 0.05;

function wanting(
  pattern: Pattern,
  sheet: BodySheet,
  { measure, usual }: (typeof MEASURES)[number],
  round: number,
  what: string,
): string | undefined {
  const body = taken(sheet, measure);
  if (body === undefined) return undefined;
  const { unit } = pattern;
  const range = usualRange(pattern, usual);
  const ease = round - body;
  if (isUsual(range, ease - ROUNDING) || isUsual(range, ease + ROUNDING)) return undefined;
  const much =
    ease < 0 ? say`${printLength(-ease, unit)} less than the body` : say`${printLength(ease, unit)} of ease`;
  return say`Round the ${measure.replace('-', ' ')} the garment measures ${printLengthFine(round, unit)} (${what}), and ${whose(sheet)} ${printLengthFine(body, unit)}: ${much}; ${rangeInWords(range, unit)}. Change the width, or say what is meant: usual ${usual.name} in LOW .. HIGH.`;
}

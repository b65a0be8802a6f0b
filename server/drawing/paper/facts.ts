/** What must stand on a printed piece: the lines of its label, and of each edge its length, its partner, its allowance. */
import { say } from '../../../grammar/say';
import type { Edge, Finish, Pattern, Piece, Seam } from '../../drafting/model';
import { printLength } from '../../drafting/values/quantity';
import { allowedBothWays, allowedWidths, hemWords, type Widths } from '../allowed';
import { aroundOf, type Around } from '../draw';
import { inlayWords } from '../inlays';
import type { DrawnText, Spot } from '../model';
import { isSeamOf, partnersOf, type Partner } from '../partners';
import { rounded } from '../path';
import { forWhom, sideWord } from '../told';
import { isOpen, openingOf, wholePiece } from '../whole';
import { cutLines } from '../words';
import { markFacts, type MarkFacts } from './mark-facts';
import { datedWords, type Told } from './sheet-content';

export interface EdgeFacts {
  readonly source: string;
  /** Its stretches that are sewn, between darts and pleats; the longest first. */
  readonly runs: readonly (readonly Spot[])[];
  readonly name: string;
  /** "side 68.4cm" */
  readonly length: string;
  /** "23.6cm on paper", where darts or pleats are sewn away; else empty. */
  readonly onPaper: string;
  /** "sewn to back side", "turned up 4cm", "on the fold, never cut"; empty where nothing is known. */
  readonly partner: string;
  /** The same without how much is eased. */
  readonly plainPartner: string;
  /** "allow 1.5cm"; empty where none is stated. */
  readonly allowed: string;
  /** The same as it is read against the run: "allow 1cm to 4cm" for "allow 4cm to 1cm". */
  readonly allowedBack: string;
  /** It is told in the label alone: an edge of a hole, or one that has a length in every size. */
  readonly inLabel: boolean;
}

export interface PieceFacts {
  readonly title: string;
  readonly lines: readonly string[];
  readonly edges: readonly EdgeFacts[];
  /** Of a small print, and of several sizes, none: there they would crowd what must be said. */
  readonly marks: readonly MarkFacts[];
  /** The finished size, of the whole where a half is drafted. */
  readonly outline: readonly Spot[];
  /** Made smaller: held in the hand instead of lying on the table. */
  readonly inHand: boolean;
  /** Words that have their place already: the author's, and those of inlays. */
  readonly placed: readonly DrawnText[];
}

/** Which of how many a piece is, and what is told of every piece. */
export interface Numbered extends Told {
  readonly number: number;
  readonly of: number;
  readonly errors: number;
  /** Said in place of the pattern's own: several sizes on one another. */
  readonly body?: string;
}

export function factsOf(pattern: Pattern, piece: Piece, numbered: Numbered): PieceFacts {
  const around = { ...aroundOf(pattern, piece), ...(numbered.body !== undefined && { body: numbered.body }) };
  const opening = openingOf(piece);
  const whole = opening === undefined ? piece : wholePiece(piece, opening);
  const finishes = pattern.finishesOf(piece.base);
  return {
    title: piece.name,
    lines: labelLines(piece, around, numbered),
    edges: [
      ...piece.edges.map((edge) => edgeFacts(piece, edge, around, finishes, false)),
      ...piece.holes.flatMap(({ edges }) =>
        edges.map((edge) => edgeFacts(piece, edge, around, finishes, true)),
      ),
    ],
    marks: (numbered.scale ?? 1) > 1 ? [] : markFacts(piece, around),
    outline: whole.edges.flatMap(({ path }) => path.polyline(0.5).slice(1)).map(spotOf),
    inHand: (numbered.scale ?? 1) > 1,
    placed: [...placedLabels(piece), ...inlayWords(piece, around)],
  };
}

const spotOf = ({ x, y }: Spot): Spot => ({ x: rounded(x), y: rounded(y) });

/** Height of the capitals of words that the author puts on a place, mm. */
const NOTE_MM = 3;

const placedLabels = ({ labels }: Piece): readonly DrawnText[] =>
  labels.flatMap(({ text, at, source }): DrawnText[] =>
    at === undefined ? [] : [{ role: 'note', source, text, at: spotOf(at), size: NOTE_MM, turn: 0 }],
  );

/**
 * Pattern; body or size; which piece; cut and cloth; side; what the author adds; day and revision; which line is which. Of a
 * small print, whose pieces stay on their sheet, the sheet says what is alike for all.
 */
function labelLines(piece: Piece, around: Around, numbered: Numbered): readonly string[] {
  const { title, body } = around;
  const { number, of, errors, body: sizes, scale = 1 } = numbered;
  const alone = (text: string): string => (scale > 1 ? '' : text);
  return [
    alone(title),
    alone(body === '' ? '' : forWhom(body)),
    say`piece ${number} of ${of}`,
    ...(piece.cut === undefined ? [say`no cutting words`] : cutLines(piece)),
    piece.side === undefined ? '' : wearersSide(piece.side),
    ...piece.remarks,
    ...piece.labels.filter(({ at }) => at === undefined).map(({ text }) => text),
    piece.grain === undefined ? say`no grain stated` : '',
    alone(datedWords(numbered)),
    isCutOnLine(piece, around)
      ? say`no allowance: the line is the finished size`
      : alone(
          sizes === undefined ? say`finished size: the thin dashed line` : say`cut at the line of the size`,
        ),
    errors === 0 ? '' : errorWords(errors),
  ].filter((line) => line !== '');
}

const wearersSide = (side: 'left' | 'right'): string =>
  side === 'left' ? say`for the wearer’s left` : say`for the wearer’s right`;

const errorWords = (errors: number): string =>
  errors === 1 ? say`1 error: mend before you cut` : say`${errors} errors: mend before you cut`;

const isCutOnLine = (piece: Piece, around: Around): boolean =>
  piece.cutting === undefined ||
  piece.edges.every(
    ({ name }) => name === piece.fold?.edge || allowedWidths(piece, name, around)?.[1] === '0mm',
  );

function edgeFacts(
  piece: Piece,
  edge: Edge,
  around: Around,
  finishes: readonly Finish[],
  inLabel: boolean,
): EdgeFacts {
  const { name, source, sewn, drawn } = edge;
  const { unit, seams } = around;
  const paths = edge.parts.filter(({ dart }) => dart === undefined).map(({ path }) => path);
  const sewnPaths = paths.length === 0 ? [edge.path] : [...paths].sort((a, b) => b.length - a.length);
  const partners = partnerWords(piece, name, seams, unit);
  const finished = finishes.filter(({ edges }) =>
    edges.some((one) => one.piece === piece.base && one.edge === name),
  );
  const [allowed, allowedBack] = bothWays(piece, name, around);
  const onPaper = Math.abs(drawn - sewn) > 0.05 ? say`${printLength(drawn, unit)} on paper` : '';
  const hem = finished.length === 0 ? '' : hemWords(piece, name);
  const told = (sewnTo: readonly string[]): string =>
    [...foldWords(piece, name), ...sewnTo, ...finished.map((one) => finishWords(one, unit)), hem]
      .filter((words) => words !== '')
      .join(', ');
  return {
    source,
    name,
    runs: sewnPaths.map((path) => path.polyline(0.2).map(spotOf)),
    length: `${name} ${printLength(sewn, unit)}`,
    onPaper,
    partner: told(partners(({ words }) => words)),
    plainPartner: told(partners(({ plain }) => plain)),
    allowed,
    allowedBack,
    inLabel,
  };
}

const bothWays = (piece: Piece, edge: string, around: Around): readonly [string, string] => {
  const [along, against] = allowedBothWays(piece, edge, around) ?? [];
  return [allowWords(along), allowWords(against)];
};

function allowWords(widths: Widths | undefined): string {
  if (widths === undefined) return '';
  const [from, to] = widths;
  if (from === '0mm' && to === '0mm') return say`no allowance`;
  return from === to ? say`allow ${to}` : say`allow ${from} to ${to}`;
}

/** What an edge is sewn to; of a piece that serves both sides by side where they are not alike, as in ease. */
function partnerWords(
  piece: Piece,
  edge: string,
  seams: readonly Seam[],
  unit: Pattern['unit'],
): (wordsOf: (partner: Partner) => string) => readonly string[] {
  const own = seams.filter((seam) => isSeamOf(seam, piece));
  const partners = partnersOf(piece, edge, own, unit);
  return (wordsOf) => {
    const unlike = piece.side === undefined && new Set(partners.map(wordsOf)).size > 1;
    const words = partners.map((one) =>
      unlike && one.seam.side !== undefined ? `${sideWord(one.seam.side)}: ${wordsOf(one)}` : wordsOf(one),
    );
    return [...new Set(words)];
  };
}

const foldWords = (piece: Piece, edge: string): readonly string[] =>
  piece.fold?.edge !== edge ? [] : [isOpen(piece) ? say`centre of the whole` : say`on the fold, never cut`];

function finishWords({ how, width, facedBy }: Finish, unit: Pattern['unit']): string {
  const wide = printLength(width, unit);
  switch (how) {
    case 'turned-up':
      return say`turned up ${wide}`;
    case 'turned-twice':
      return say`turned twice ${wide}`;
    case 'bound':
      return say`bound`;
    case 'faced':
      return facedBy === undefined ? say`faced` : say`faced by ${facedBy}`;
    case 'rolled':
      return say`rolled`;
    case 'selvedge':
      return say`on the selvedge`;
    case 'raw':
      return say`left raw`;
  }
}

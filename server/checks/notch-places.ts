/** Finds notches so near a corner or each other that the shears can't tell them apart. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Notch, Piece } from '../drafting/model';
import { edgeNamed } from '../drafting/sewing/course';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { nameOfPiece } from './places';
import { atLeast, rangeInWords, usualRange, type UsualRange } from './usual';

const CORNER = atLeast('notch-to-corner', 15);
const APART = atLeast('notch-to-notch', 20);

export const notchPlaces: Judged = {
  code: 'notch-places',
  severity: 'warning',
  title: 'A notch too near a corner or another notch',
  by: 'judgement',
  usual: [CORNER, APART],
  ofPiece: (piece, pattern) => judged(piece, pattern),
};

/** A hair, so that exactly the least passes, mm. */
const ROUNDING = 0.05;

function judged(piece: Piece, pattern: Judging): readonly Finding[] {
  // a band's stand where its seams put them: what is to be moved is said of the piece
  if (piece.notches.length === 0 || piece.side === 'left' || piece.statement.node.kind === 'band') return [];
  const [corner, apart] = [CORNER, APART].map((usual) => usualRange(pattern, usual));
  return [...new Set(piece.notches.map(({ edge }) => edge))].flatMap((edge) => {
    const notches = piece.notches.filter((notch) => notch.edge === edge);
    notches.sort((a, b) => a.distance - b.distance);
    return [
      ...notches.flatMap((notch) => nearCorner(piece, notch, corner!, pattern)),
      ...notches.slice(1).flatMap((notch, i) => nearOther(piece, notches[i]!, notch, apart!, pattern)),
    ];
  });
}

function nearCorner(piece: Piece, notch: Notch, range: UsualRange, { unit }: Judging): readonly Finding[] {
  const edge = edgeNamed(piece, notch.edge);
  if (edge === undefined) return [];
  const [before, after] = [notch.distance, edge.sewn - notch.distance];
  const off = Math.min(before, after);
  // a notch at the corner itself, or where a fold begins, marks the corner: that is meant
  if (off >= range.low - ROUNDING || off < ROUNDING) return [];
  const corner = (before < after ? edge.fromName : edge.toName) || say`the corner`;
  const message = say`${notch.name} is cut ${printLength(off, unit)} from ${corner} on ${piece.base}.${notch.edge}, where the allowances meet; ${rangeInWords(range, unit)} from a corner. Move it further in, or leave it out: the corner itself matches.`;
  return [at(piece, notch, message)];
}

function nearOther(
  piece: Piece,
  one: Notch,
  other: Notch,
  range: UsualRange,
  { unit }: Judging,
): readonly Finding[] {
  const off = other.distance - one.distance;
  if (off >= range.low - ROUNDING || one.source === other.source) return [];
  // two notches of one place: a seam that says where the other seam's notch falls already
  if (off < ROUNDING && one.count === other.count) return [];
  const message = say`${one.name} and ${other.name} are cut ${printLength(off, unit)} apart on ${piece.base}.${other.edge}: they read as one; ${rangeInWords(range, unit)} between notches. Leave one out or move it; two strokes for one place are a double notch (…, double).`;
  return [at(piece, other, message)];
}

/** Shown at the piece, which has both: the line of a notch may stand anywhere in the file. */
const at = (piece: Piece, notch: Notch, message: string): Finding =>
  finding('notch-places', nameOfPiece(piece), message, {
    piece: piece.name,
    related: [{ source: notch.source, message: say`${notch.name} is placed here.` }],
  });

/** Where a seam opens: a zip, buttons, laces, hooks, or a slit; over the whole seam or a part of it. */
import { say } from '../../../grammar/say';
import type { Opening, SeamNode } from '../../../grammar/syntax';
import type { SeamCourse, SeamOpening } from '../sewing-model';
import { widthOf } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { across, sideLength } from './course';
import type { TakenEdge } from './edges';
import { openingName } from './opening-ends';
import { isAtEnd, placeOnSeam, type NamedNotch, type SeamSpot } from './seam-places';

interface Along {
  readonly taken: readonly TakenEdge[];
  readonly course: SeamCourse;
  readonly notch: NamedNotch;
}

/** A hair, mm, by which a zip may be longer than its seam, or longer than nothing: rounding. */
const ROUNDING = 0.05;

export function readOpenings(reader: Reader, node: SeamNode, along: Along): readonly SeamOpening[] {
  return node.openings.flatMap((opening) => {
    const stretch = extent(reader, opening, along);
    if (stretch === undefined) return [];
    const { how, side, at } = opening;
    const whole = opening.from === undefined;
    if (!whole && stretch.to - stretch.from <= ROUNDING) return opensNothing(reader, opening) ?? [];
    return [{ how, ...stretch, whole, ...(side && { side }), at }];
  });
}

function opensNothing(reader: Reader, { how, length, from, to, at }: Opening): undefined {
  const what = capital(openingName(how));
  const why =
    length !== undefined
      ? say`${what} is ${printLength(0, reader.unit)} long`
      : say`${what} runs from ${wordsOf(reader, from!)} to ${wordsOf(reader, to!)}, which are one place of this seam`;
  const comma = reader.statement.text.lastIndexOf(',', at.from);
  const out = { statement: reader.statement, at: { from: comma, to: at.to }, text: '' };
  return report(
    reader,
    'empty-opening',
    at,
    say`${why}, so nothing opens there. Say how long it is (zip 20cm from P), or take it out.`,
    { fixes: comma < 0 ? [] : [{ title: say`Take the opening out`, edits: [out] }] },
  );
}

/** From where to where along the left side. */
function extent(
  reader: Reader,
  opening: Opening,
  { taken, course, notch }: Along,
): { readonly from: number; readonly to: number } | undefined {
  const total = sideLength(course.left);
  if (opening.from === undefined) return { from: 0, to: total };
  const from = placeOnSeam(reader, taken, course, opening.from, notch);
  if (from === undefined) return undefined;
  const begin = onLeft(course, from);
  if (opening.length !== undefined) return counted(reader, opening, begin, total);
  const to = opening.to && placeOnSeam(reader, taken, course, opening.to, notch);
  if (to === undefined) return undefined;
  const end = onLeft(course, to);
  return { from: Math.min(begin, end), to: Math.max(begin, end) };
}

/** The same place on the left side, where the ease of the seam puts it. */
const onLeft = (course: SeamCourse, { side, at }: SeamSpot): number =>
  side === 'left' ? at : across(course, 'right', at);

/** `zip 20cm from P`: from an end of the seam into it. */
function counted(
  reader: Reader,
  opening: Opening,
  begin: number,
  total: number,
): { readonly from: number; readonly to: number } | undefined {
  const length = widthOf(reader, opening.length!, opening.how.replace('-', ' '));
  if (length === undefined) return undefined;
  const atStart = begin < total / 2;
  const [long, seam] = [printLength(length, reader.unit), printLength(total, reader.unit)];
  if (length > total + ROUNDING) {
    return report(
      reader,
      'opening-too-long',
      opening.length!.at,
      say`${capital(openingName(opening.how))} is ${long} long, but the seam it lies in is only ${seam}. Make it ${seam} at most, or leave the length out: then the whole seam opens.`,
    );
  }
  if (!isAtEnd([{ piece: '', edge: '', from: 0, to: total, start: 0 }], begin)) {
    const point = wordsOf(reader, opening.from!);
    return report(
      reader,
      'which-way',
      opening.at,
      say`${point} is no end of this seam, so ${long} from it could lie either way: say from ${point} to another point.`,
    );
  }
  const to = Math.min(length, total);
  return atStart ? { from: 0, to } : { from: total - to, to: total };
}

const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

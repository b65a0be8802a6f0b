/** A ruler laid between two places of the drawing: straight across, and along the outline where both lie on one. */
import { say } from '../../grammar/say';
import type { Measured, Pin } from '../../client/preview/protocol';
import type { Edge, Pattern, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { openingOf, wholePiece } from '../drawing/whole';
import { pathLine } from '../drawing/path';
import { Path, type Point } from '../geometry';

/** A place counts as on the outline within this, mm: the view's own rounding. */
const ON_OUTLINE = 0.25;
/** Less than this, mm, can't be told on paper. */
const NOTHING = 0.05;

export function measured(pattern: Pattern, from: Pin, to: Pin): Measured {
  const { unit } = pattern;
  const [dx, dy] = [Math.abs(to.at.x - from.at.x), Math.abs(to.at.y - from.at.y)];
  const words = (mm: number): string => printLength(mm, unit);
  const slanted = dx >= NOTHING && dy >= NOTHING;
  return {
    straight: words(Math.hypot(dx, dy)),
    apart: slanted ? say`${words(dx)} across, ${words(dy)} ${to.at.y > from.at.y ? say`down` : say`up`}` : '',
    ...alongOutline(pattern, from, to),
  };
}

/** The shorter way round the outline, where both places lie on one. */
function alongOutline(pattern: Pattern, from: Pin, to: Pin): Pick<Measured, 'along' | 'line'> {
  if (from.piece !== to.piece || from.own === undefined || to.own === undefined) return {};
  const piece = pattern.pieces.find(({ name }) => name === from.piece);
  for (const loop of piece === undefined ? [] : loopsOf(piece)) {
    const [a, b] = [placeOn(loop, from.own), placeOn(loop, to.own)];
    if (a === undefined || b === undefined || a === b) continue;
    const way = shorterWay(loop, a, b);
    const names = way.map(({ edge }) => edge.name).join(say` and `);
    const paper = sum(way.map(({ from: s, to: t }) => t - s));
    const sewn = sum(way.map(({ edge, from: s, to: t }) => sewnWithin(edge, s, t)));
    const closed =
      Math.abs(paper - sewn) < NOTHING ? '' : say`, ${printLength(sewn, pattern.unit)} when sewn`;
    const path = Path.of(way.flatMap(({ edge, from: s, to: t }) => edge.path.part(s, t).segments));
    const line = pathLine('balance', path, { name: '', source: '', tip: '' });
    return { along: say`along ${names} ${printLength(paper, pattern.unit)}${closed}`, line };
  }
  return {};
}

/** The outline as it is drawn, and those of its holes. */
function loopsOf(piece: Piece): readonly (readonly Edge[])[] {
  const opening = openingOf(piece);
  const { edges } = opening === undefined ? piece : wholePiece(piece, opening);
  return [edges, ...piece.holes.map((hole) => hole.edges)];
}

interface Stretch {
  readonly edge: Edge;
  readonly from: number;
  readonly to: number;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

const lengthOf = (loop: readonly Edge[]): number => sum(loop.map(({ path }) => path.length));

/** Millimetres of paper from the beginning of the loop. */
function placeOn(loop: readonly Edge[], point: Point): number | undefined {
  let [best, found, start] = [ON_OUTLINE, undefined as number | undefined, 0];
  for (const { path } of loop) {
    const { s, distance } = path.locate(point);
    if (distance < best) [best, found] = [distance, start + s];
    start += path.length;
  }
  return found;
}

/** On the outline from one place to another, whichever way round is shorter. */
function shorterWay(loop: readonly Edge[], a: number, b: number): readonly Stretch[] {
  const [low, high, whole] = [Math.min(a, b), Math.max(a, b), lengthOf(loop)];
  if (high - low <= whole / 2) return stretches(loop, low, high);
  return [...stretches(loop, high, whole), ...stretches(loop, 0, low)];
}

function stretches(loop: readonly Edge[], from: number, to: number): readonly Stretch[] {
  let start = 0;
  return loop.flatMap((edge) => {
    const { length } = edge.path;
    const [s, t] = [Math.max(from - start, 0), Math.min(to - start, length)];
    start += length;
    return t - s > NOTHING / 10 ? [{ edge, from: s, to: t }] : [];
  });
}

/** What is sewn of a stretch of an edge: mouths of darts are folded away, and gathers draw it up. */
function sewnWithin({ parts }: Edge, from: number, to: number): number {
  let start = 0;
  return sum(
    parts.map(({ path, dart, gathered }) => {
      const within = Math.max(0, Math.min(to, start + path.length) - Math.max(from, start));
      start += path.length;
      return dart === undefined ? within * (gathered?.share ?? 1) : 0;
    }),
  );
}

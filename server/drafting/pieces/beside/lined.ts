/** What a lining takes over of its piece: what shapes it and what it is matched by, but nothing that is worked in the cloth outside. */
import type { MarkWord } from '../../../../grammar/syntax';
import type { Piece } from '../../model';
import { areaLeft } from '../holes';

/** Places to match or to sew to; buttons, eyelets, bones, tapes, stitching and creases are worked in one cloth alone (common practice). */
const MATCHED: ReadonlySet<MarkWord> = new Set<MarkWord>(['mark', 'drill']);

export function asLining(piece: Piece): Piece {
  const inside = new Set(piece.holes.flatMap(({ edges }) => edges.map(({ name }) => name)));
  return {
    ...piece,
    marks: piece.marks.filter(({ word }) => MATCHED.has(word)),
    labels: piece.labels.filter(({ at }) => at === undefined),
    holes: [],
    area: areaLeft(piece.edges, []),
    allowances: new Map([...piece.allowances].filter(([edge]) => !inside.has(edge))),
    ...(piece.statedAllowances && {
      statedAllowances: piece.statedAllowances.filter(({ edge }) => !inside.has(edge)),
    }),
  };
}

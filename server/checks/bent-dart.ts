/** Finds darts drafted in the outline whose edge bends where the dart is closed. */
import { say } from '../../grammar/say';
import type { Finding, Fix } from '../drafting/finding';
import type { Dart, Edge, Piece } from '../drafting/model';
import { bendsOf } from '../drafting/pieces/truing';
import { finding, type Judged, type Judging } from './check';
import { dartsOf, placeOf } from './dart-places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const BEND: Usual = {
  name: 'dart-bend',
  kind: 'angle',
  low: 0,
  high: 5,
  standing: 'common practice: the needle and the iron take up a few degrees',
};

export const bentDart: Judged = {
  code: 'bent-dart',
  severity: 'warning',
  title: 'An edge that bends where its dart is closed',
  by: 'judgement',
  usual: [BEND],
  ofPiece: (piece, pattern) => piece.edges.flatMap((edge) => ofEdge(piece, edge, pattern)),
};

/** A hair on top, so that a bend of exactly the range passes whatever the rounding. */
const ROUNDING = 1e-6;

/** Laid darts are trued when they are cut, or left by `untrued` on purpose. */
function ofEdge(piece: Piece, edge: Edge, pattern: Judging): readonly Finding[] {
  if (piece.darts.length === 0) return [];
  const own = edge.parts.flatMap((part) => dartsOf(piece).filter(({ name }) => name === part.dart));
  if (!own.some(({ drafted }) => drafted)) return [];
  const range = usualRange(pattern, BEND);
  const bends = bendsOf(edge, own).map(Math.abs);
  return own.flatMap((dart, i) => {
    const bend = bends[i] ?? 0;
    if (!dart.drafted || isUsual(range, bend - ROUNDING) || bend <= range.high) return [];
    const message = say`When ${dart.name} is closed, ${edge.name} bends by ${Math.round(bend * 10) / 10}° at it; ${rangeInWords(range, pattern.unit)}. Sewn, the edge has a point or a notch there: true ${edge.name}, or draw both legs so that the edge runs on.`;
    return [
      finding('bent-dart', { statement: dart.statement, at: placeOf(dart) }, message, {
        piece: piece.name,
        fixes: fixes(piece, edge, dart),
      }),
    ];
  });
}

/** `true EDGE` after the last line of the piece's own block, where it has one that such a line can follow. */
function fixes(piece: Piece, edge: Edge, dart: Dart): readonly Fix[] {
  const { statement, shaping } = piece;
  const lines = statement.node.kind === 'piece' ? (statement.block ?? []) : [];
  const last = lines[lines.length - 1];
  const own = dart.source === `${piece.source}/${dart.name}`;
  const later = [...(shaping?.pleats ?? []), ...(shaping?.gathers ?? [])].some(
    (one) => one.edge === edge.name,
  );
  if (last === undefined || last.block !== undefined || !own || later) return [];
  const end = last.text.length;
  return [
    {
      title: say`True ${edge.name} with its darts closed`,
      edits: [{ statement: last, at: { from: end, to: end }, text: `\n  true ${edge.name}` }],
    },
  ];
}

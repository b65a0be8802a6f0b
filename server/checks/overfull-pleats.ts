/** Finds pleats so deep for their spacing that more than three layers lie on each other. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece, Pleat, Pleats } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { isUsual, usualRange, type Usual } from './usual';

const TAKEN: Usual = {
  name: 'pleat-taking',
  kind: 'ratio',
  low: 0,
  high: 2,
  standing:
    'common practice: pleats that meet take twice their spacing, so that three times the width is drawn',
};

export const overfullPleats: Judged = {
  code: 'overfull-pleats',
  severity: 'warning',
  title: 'Pleats that lie more than three layers thick',
  by: 'judgement',
  usual: [TAKEN],
  ofPiece: (piece, pattern) => (piece.shaping?.pleats ?? []).flatMap((row) => overfull(piece, row, pattern)),
};

/** How far a folded pleat lies beneath, before and after the place where it is seen. */
function beneath({ folds, width }: Pleat): { readonly before: number; readonly after: number } {
  if (folds === 'both') return { before: width / 4, after: width / 4 };
  return folds === 'start' ? { before: width / 2, after: 0 } : { before: 0, after: width / 2 };
}

const ROUNDING = 1e-6;

function overfull(piece: Piece, row: Pleats, pattern: Judging): readonly Finding[] {
  const range = usualRange(pattern, TAKEN);
  const placed = inOrder(piece, row);
  const worst = placed.slice(1).reduce(
    (most, { pleat, at }, i) => {
      const before = placed[i]!;
      const room = at - before.at;
      const share = (2 * (beneath(before.pleat).after + beneath(pleat).before)) / Math.max(room, ROUNDING);
      return share > most.share ? { share, room } : most;
    },
    { share: 0, room: 0 },
  );
  if (worst.share === 0 || isUsual(range, worst.share - ROUNDING)) return [];
  const { unit } = pattern;
  const { name, statement, taking, edge } = row;
  const most = range.stated
    ? say`this pattern asks for ${range.low} to ${range.high} times`
    : say`usual is up to ${range.high} times`;
  const message = say`The pleats of ${name} take ${printLength(taking, unit)} each, and ${printLength(worst.room, unit)} lies between two on ${edge}: ${Math.round(worst.share * 100) / 100} times what lies between them; ${most}. Beyond that they lie more than three layers thick: take less each, have fewer, or set them further apart.`;
  const at = statement.node.kind === 'pleats' ? statement.node.name.at : statement.node.at;
  return [finding('overfull-pleats', { statement, at }, message, { piece: piece.name })];
}

/** Where each fold lies on the edge as it is sewn, along the edge: a row may have been laid against the outline. */
function inOrder(piece: Piece, row: Pleats): readonly { readonly pleat: Pleat; readonly at: number }[] {
  const places = new Map<string, number>();
  let at = 0;
  for (const { path, dart } of piece.edges.find(({ name }) => name === row.edge)?.parts ?? []) {
    if (dart === undefined) at += path.length;
    else places.set(dart, at);
  }
  const placed = row.pleats.flatMap((pleat) => {
    const place = places.get(pleat.part);
    return place === undefined ? [] : [{ pleat, at: place }];
  });
  return placed.sort((a, b) => a.at - b.at);
}

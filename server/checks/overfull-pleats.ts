/** Finds pleats so deep for their spacing that more than three layers lie on each other. */
import type { Finding } from '../drafting/finding';
import type { Pattern, Piece, Pleat, Pleats } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
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

function overfull(piece: Piece, row: Pleats, pattern: Pattern): readonly Finding[] {
  const range = usualRange(pattern, TAKEN);
  const places = sewnPlaces(piece, row);
  const worst = row.pleats.slice(1).reduce(
    (most, pleat, i) => {
      const room = places[i + 1]! - places[i]!;
      const share = (2 * (beneath(row.pleats[i]!).after + beneath(pleat).before)) / Math.max(room, ROUNDING);
      return share > most.share ? { share, room } : most;
    },
    { share: 0, room: 0 },
  );
  if (worst.share === 0 || isUsual(range, worst.share - ROUNDING)) return [];
  const { unit } = pattern;
  const { name, statement, taking, edge } = row;
  const most = range.stated
    ? `this pattern asks for ${range.low} to ${range.high} times`
    : `usual is up to ${range.high} times`;
  const message =
    `The pleats of ${name} take ${printLength(taking, unit)} each, and ${printLength(worst.room, unit)} lies between two on ${edge}: ` +
    `${Math.round(worst.share * 100) / 100} times what lies between them; ${most}. Beyond that they lie more than three layers thick: ` +
    'take less each, have fewer, or set them further apart.';
  const at = statement.node.kind === 'pleats' ? statement.node.name.at : statement.node.at;
  return [finding('overfull-pleats', { statement, at }, message, { piece: piece.name })];
}

/** Where each fold lies on the edge as it is sewn. */
function sewnPlaces(piece: Piece, row: Pleats): readonly number[] {
  const parts = piece.edges.find(({ name }) => name === row.edge)?.parts ?? [];
  return row.pleats.map(({ part }) => {
    const before = parts.slice(
      0,
      parts.findIndex((one) => one.dart === part),
    );
    return before.reduce((sum, { path, dart }) => (dart === undefined ? sum + path.length : sum), 0);
  });
}

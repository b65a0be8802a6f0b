/** Finds sewn edges of which no allowance is stated, in a pattern that states allowances. */
import type { SourcedFinding } from '../drafting/finding';
import type { Finish, Pattern, Piece } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { isJudged } from './allowed';
import { finding, type Judged } from './check';
import { nameOfPiece } from './places';

export const missingAllowance: Judged = {
  code: 'missing-allowance',
  severity: 'error',
  title: 'A sewn edge without an allowance',
  by: 'judgement',
  ofPattern: (pattern) => {
    const pieces = pattern.pieces.filter((piece) => isJudged(piece) && piece.side !== 'left');
    // a pattern without any allowance is drawn to the finished size: the cutter adds them on the cloth
    if (pieces.every((piece) => isNet(piece, pattern.finishesOf(piece.base)))) return [];
    return pieces.flatMap((piece) => ofPiece(piece, pattern));
  },
};

/** Nothing is allowed but what finishes take. Bands, strips and facings have their allowances from others. */
const isNet = ({ base, allowances, statement }: Piece, finishes: readonly Finish[]): boolean =>
  statement.node.kind !== 'piece' ||
  [...allowances].every(([edge, width]) => width === 0 || isFinished(base, edge, finishes));

const isFinished = (base: string, edge: string, finishes: readonly Finish[]): boolean =>
  finishes.some(({ edges }) => edges.some((one) => one.piece === base && one.edge === edge));

const kept = new WeakMap<
  Piece,
  { readonly seams: Pattern['seams']; readonly findings: readonly SourcedFinding[] }
>();

function ofPiece(piece: Piece, pattern: Pattern): readonly SourcedFinding[] {
  const seams = pattern.seamsOf(piece.base);
  const before = kept.get(piece);
  if (before?.seams === seams) return before.findings;
  const sewn = new Set(
    seams.flatMap(({ left, right }) =>
      [...left, ...right].flatMap((one) => (one.piece === piece.base ? [one.edge] : [])),
    ),
  );
  const bare = everyEdge(piece)
    .map(({ name }) => name)
    .filter((name) => sewn.has(name) && !isAllowed(piece, name));
  const findings = bare.length === 0 || isDoubtful(piece) ? [] : [missing(piece, bare)];
  kept.set(piece, { seams, findings });
  return findings;
}

const isAllowed = ({ allowances, running }: Piece, edge: string): boolean =>
  allowances.has(edge) || running.some((one) => one.edge === edge);

/** A line that could not be read may be the one. */
const isDoubtful = ({ statement }: Piece): boolean =>
  (statement.block ?? []).some(({ node }) => node.kind === 'broken');

function missing(piece: Piece, bare: readonly string[]): SourcedFinding {
  const names =
    bare.length === 1 ? bare[0]! : `${bare.slice(0, -1).join(', ')} and ${bare[bare.length - 1]!}`;
  const message =
    `No allowance is stated at ${names} of ${piece.base}, which ${bare.length === 1 ? 'is' : 'are'} sewn: cut on ` +
    `its line, the piece comes out too small. Say allow 1.5cm for the whole piece or allow 1.5cm at ${bare[0]!}; ` +
    '0cm, if that is meant.';
  return {
    source: piece.source,
    finding: finding('missing-allowance', nameOfPiece(piece), message, { piece: piece.name }),
  };
}

/** Finds armholes that are unusually small or large for the bust of the body. */
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { BodySheet, Finish, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';
import { edgeNamed, loopOf } from '../drafting/sewing/course';
import { printLengthFine } from '../drafting/values/quantity';
import { byBase } from './around';
import { finding, type Judged } from './check';
import { ofBodyDraftedFor, taken, whose } from './measurements';
import { called, fateOf } from './seam-ends';
import { setIn } from './sleeve-ease';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const RING: Usual = {
  name: 'armhole-ring',
  kind: 'ratio',
  low: 0.42,
  high: 0.5,
  standing: 'common practice: of the bust; shirts to 56%',
};

export const armholeRing: Judged = {
  code: 'armhole-ring',
  severity: 'warning',
  title: 'An armhole that is unusually small or large for the body',
  by: 'judgement',
  usual: [RING],
  ofPattern: ofBodyDraftedFor(['bust'], (pattern, sheet) => judged(pattern, sheet)),
};

function judged(pattern: Pattern, sheet: BodySheet): readonly SourcedFinding[] {
  const bust = taken(sheet, 'bust');
  if (bust === undefined || bust <= 0) return [];
  return [...ofSleeves(pattern.seams), ...ofFinishes(pattern)].flatMap((ring) =>
    unusual(pattern, ring, sheet, bust),
  );
}

/** One armhole: what it is made of, and how long it is all round. */
interface Ring {
  readonly of: Seam | Finish;
  readonly edges: readonly SewnEdge[];
  readonly length: number;
}

/** What a sleeve is set into is closed. */
const ofSleeves = (seams: Pattern['seams']): readonly Ring[] =>
  seams.flatMap((seam) => {
    if (seam.side === 'left') return [];
    const set = setIn(seam);
    // one armhole: the edges of both sides of the body at once would be two
    const pieces = new Set(set?.armhole.map(({ piece }) => piece));
    return set === undefined || pieces.size < 2 ? [] : [{ of: seam, edges: set.armhole, length: set.ring }];
  });

const ofFinishes = (pattern: Pattern): readonly Ring[] =>
  pattern.finishes.flatMap((finish) => {
    const edges = finish.edges.filter(({ edge }) => called(edge, 'armhole', 'scye'));
    const length = edges.length < 2 ? undefined : closedLength(pattern, edges);
    return length === undefined ? [] : [{ of: finish, edges, length }];
  });

/** Undefined where the edges do not close, seam by seam, to one ring. */
function closedLength(pattern: Pattern, edges: readonly SewnEdge[]): number | undefined {
  const named = byBase(pattern.pieces);
  const bases = new Set(edges.map(({ piece }) => piece));
  let length = 0;
  for (const one of edges) {
    const piece = named.get(one.piece)?.find(({ side }) => side !== 'left');
    const edge = piece && edgeNamed(piece, one.edge);
    if (piece?.cut === undefined || edge === undefined || one.stretch !== undefined) return undefined;
    if (
      piece.unbuilt.length > 0 ||
      !beside(piece, edge.name).every((name) => leadsTo(pattern, piece, name, bases))
    )
      return undefined;
    length += edge.sewn;
  }
  return length;
}

/** The edges before and after an edge. */
function beside(piece: Piece, name: string): readonly string[] {
  const edge = edgeNamed(piece, name)!;
  const loop = loopOf(piece, edge);
  const index = loop.indexOf(edge);
  return [-1, 1].map((step) => loop[(index + step + loop.length) % loop.length]!.name);
}

/** Whether an edge is sewn to pieces whose armholes are of the ring, and to nothing else. */
function leadsTo(pattern: Pattern, piece: Piece, edge: string, bases: ReadonlySet<string>): boolean {
  const { seam } = fateOf(pattern, piece, edge, piece.side);
  return (
    seam !== undefined && !seam.itsPair && [...seam.left, ...seam.right].every((one) => bases.has(one.piece))
  );
}

/** A hair, so that exactly the bound passes, as a share. */
const ROUNDING = 5e-4;

function unusual(
  pattern: Pattern,
  { of, edges, length }: Ring,
  sheet: BodySheet,
  bust: number,
): readonly SourcedFinding[] {
  const range = usualRange(pattern, RING);
  const share = length / bust;
  if (isUsual(range, share - ROUNDING) || isUsual(range, share + ROUNDING)) return [];
  const { unit } = pattern;
  const names = edges.map(({ piece, edge }) => `${piece}.${edge}`).join(' + ');
  const why =
    share > range.high
      ? say`A deep armhole lifts the whole garment with the arm: raise the underarm, or say what is meant (usual armhole-ring in 0.42 .. 0.56 for a shirt).`
      : say`A small one cuts into the arm: lower the underarm, or widen the back and the front there.`;
  const message = say`The armhole (${names}) is ${printLengthFine(length, unit)} all round, ${Math.round(share * 1000) / 10}% of the bust of ${whose(sheet)} (${printLengthFine(bust, unit)}); ${rangeInWords(range, unit)}. ${why}`;
  const [first] = edges;
  const place = { statement: of.statement, at: first!.at };
  return [{ source: of.source, finding: finding('armhole-ring', place, message, { piece: first!.piece }) }];
}

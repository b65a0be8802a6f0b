/** Finds laced openings with more eyelets on one side than on the other. */
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { Mark, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';
import { LACES_WITHIN, besideEdge } from './beside';
import { finding, type Judged } from './check';
import { nameOfMark } from './places';

interface Row {
  readonly piece: Piece;
  readonly mark: Mark;
}

export const unevenLacing: Judged = {
  code: 'uneven-lacing',
  severity: 'warning',
  title: 'A lacing with more eyelets on one side than on the other',
  by: 'judgement',
  ofPattern: (pattern) => {
    const laced = pattern.seams.filter(isLaced);
    if (laced.length === 0) return [];
    return laced.flatMap((seam) => {
      const [left, right] = [rowsBeside(pattern, seam.left), rowsBeside(pattern, seam.right)];
      const [one, other] = [countOf(left), countOf(right)];
      return one === 0 || other === 0 || one === other ? [] : [uneven(seam, left, right)];
    });
  },
};

/** A seam to its pair is laced through the same row twice. */
const isLaced = ({ statement: { node }, itsPair }: Seam): boolean =>
  !itsPair && node.kind === 'seam' && node.openings.some(({ how }) => how === 'laced');

const rowsBeside = ({ pieces }: Pattern, edges: readonly SewnEdge[]): readonly Row[] =>
  pieces.flatMap((piece) => {
    if (!edges.some((edge) => edge.piece === piece.base) || piece.side === 'left') return [];
    const own = new Set(edges.filter((edge) => edge.piece === piece.base).map(({ edge }) => edge));
    return piece.marks
      .filter((mark) => mark.word === 'eyelet' && mark.row !== undefined)
      .filter((mark) => own.has(besideEdge(piece, mark, LACES_WITHIN)?.edge.name ?? ''))
      .map((mark) => ({ piece, mark }));
  });

const countOf = (rows: readonly Row[]): number => rows.reduce((sum, { mark }) => sum + mark.points.length, 0);

function uneven(seam: Seam, left: readonly Row[], right: readonly Row[]): SourcedFinding {
  const [row] = right;
  const [first] = left;
  const message = say`The lacing of seam ${seam.name} has ${countOf(left)} eyelets on ${first!.piece.base} and ${countOf(right)} on ${row!.piece.base}: the lace runs crooked and pulls one edge up. Count both rows by one value.`;
  return {
    source: row!.piece.source,
    finding: finding('uneven-lacing', nameOfMark(row!.mark), message, {
      piece: row!.piece.name,
      related: [{ source: first!.mark.source, message: say`The eyelets of the other side are marked here.` }],
    }),
  };
}

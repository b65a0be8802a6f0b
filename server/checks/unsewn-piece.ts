/** Finds pieces that are cut and sewn to nothing, in a garment whose other pieces are sewn. */
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { Pattern, Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { nameOfPiece } from './places';

export const unsewnPiece: Judged = {
  code: 'unsewn-piece',
  severity: 'note',
  title: 'A piece that is sewn to nothing',
  by: 'judgement',
  ofPattern: (pattern) => {
    if (pattern.seams.length === 0) return [];
    const facings = new Set(pattern.finishes.flatMap(({ statement: { node } }) => facingOf(node)));
    const doubtful = new Set([...pattern.doubtful].map((name) => name.slice(0, name.indexOf('.'))));
    return pattern.pieces.filter((piece) => isLoose(piece, pattern, facings, doubtful)).map(loose);
  },
};

const facingOf = (node: Piece['statement']['node']): readonly string[] =>
  node.kind === 'finish' && node.facedBy !== undefined ? [node.facedBy.path[0]!.text] : [];

/** Kinds of piece that are put on otherwise than by a seam, or to their piece as a whole. */
const BESIDE: ReadonlySet<string> = new Set(['facing', 'lining', 'strip', 'band', 'join', 'divide']);

function isLoose(
  piece: Piece,
  pattern: Pattern,
  facings: ReadonlySet<string>,
  doubtful: ReadonlySet<string>,
): boolean {
  const { cut, base, side, unbuilt, statement } = piece;
  if (cut === undefined || side === 'left' || unbuilt.length > 0 || BESIDE.has(statement.node.kind))
    return false;
  return pattern.seamsOf(base).length === 0 && !facings.has(base) && !doubtful.has(base);
}

function loose(piece: Piece): SourcedFinding {
  const message = say`${piece.base} is cut, but no seam takes any of its edges, while other pieces of this pattern are sewn. Add its seams, or write on a label how it is put on.`;
  return {
    source: piece.source,
    finding: finding('unsewn-piece', nameOfPiece(piece), message, { piece: piece.name }),
  };
}

/** Finds lengths that grow and then shrink from size to size: a row of the size table, or what is made of it, has a slip. */
import { say } from '../../grammar/say';
import type { Edge, Pattern, Piece, PlacedFinding } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding } from './check';
import { edgeOfPiece } from './places';

export const RISE_AND_FALL = 'rise-and-fall';

/**
 * In mm, our own figure: on sound garments of the company lengths turn slowly, by less than 2mm from one size to the next,
 * where one measurement overtakes another.
 */
const PLAY = 3;

interface Measured {
  readonly size: string;
  readonly mm: number;
}

/** The sewn lengths of one edge, size after size. */
interface Row {
  readonly piece: Piece;
  readonly edge: Edge;
  readonly lengths: Measured[];
}

/** The lengths of every edge that is cut, noted size by size in the order of the table. */
export class Growth {
  private readonly rows = new Map<string, Row>();
  private last: Pattern | undefined;

  note(pattern: Pattern, size: string): void {
    this.last = pattern;
    for (const piece of pattern.pieces) {
      if (piece.cut === undefined || piece.gaps.length > 0) continue;
      for (const edge of piece.edges) {
        const key = `${piece.side ?? ''} ${piece.source} ${edge.name}`;
        const lengths = [...(this.rows.get(key)?.lengths ?? []), { size, mm: edge.sewn }];
        this.rows.set(key, { piece, edge, lengths });
      }
    }
  }

  /** One for the pattern: a slip in a table shows at many edges, and is told where it shows most. */
  finding(): PlacedFinding | undefined {
    const found = [...this.rows.values()].filter((row) => turnsBy(row.lengths) > PLAY);
    const [worst] = found.sort((a, b) => turnsBy(b.lengths) - turnsBy(a.lengths));
    if (worst === undefined || this.last === undefined) return undefined;
    const { piece, edge, lengths } = worst;
    const { unit } = this.last;
    const said = lengths.map(({ size, mm }) => say`${printLength(mm, unit)} for ${size}`).join(', ');
    const others = found.length - 1;
    const more =
      others === 0
        ? ''
        : others === 1
          ? say` 1 other edge does so too, though less.`
          : say` ${others} other edges do so too, though less.`;
    const message = say`${piece.name}.${edge.name} grows and then shrinks from size to size: ${said}. Look at the rows of the table that it is made from.${more}`;
    return this.last.place(
      {
        source: edge.source,
        finding: finding(RISE_AND_FALL, edgeOfPiece(edge), message, { piece: piece.name }),
      },
      'warning',
    );
  }
}

/** By how much some size stands above both beside it. */
function turnsBy(lengths: readonly Measured[]): number {
  const inner = lengths.slice(1, -1);
  return Math.max(0, ...inner.map(({ mm }, i) => Math.min(mm - lengths[i]!.mm, mm - lengths[i + 2]!.mm)));
}

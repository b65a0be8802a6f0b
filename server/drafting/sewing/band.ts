/**
 * A band: cut straight for a ring of edges, double, and folded along its middle. Its length counts the body, not the
 * pieces: what is on the fold or cut as a pair goes round twice, and gores as often as they are cut.
 */
import { say } from '../../../grammar/say';
import type { BandNode, Sewn, Statement } from '../../../grammar/syntax';
import { Path } from '../../geometry';
import type { Piece } from '../model';
import { blankPiece } from '../pieces/beside/blank';
import { rectangle } from '../pieces/beside/strip';
import { wordsFor } from '../pieces/cut-words';
import { lengthOf } from '../values/arithmetic';
import { report, wordsOf, type Reader } from '../values/reader';
import { presentEdges, type TakenEdge } from './edges';
import { ringLength } from './ring';

export interface BandRequest {
  readonly name: string;
  readonly source: string;
  readonly statement: Statement;
  /** The edges it goes round. */
  readonly edges: readonly Sewn[];
}

/** Where the pieces state no allowance for the edge, mm (common practice: 1 to 1.5 cm). */
const USUAL_ALLOWANCE = 10;

export function readBand(reader: Reader, node: BandNode, request: BandRequest): Piece | undefined {
  const edges = presentEdges(reader, request.edges);
  const wide = lengthOf(reader, node.wide, 'wide');
  const underlap = node.underlap === undefined ? 0 : lengthOf(reader, node.underlap.by, 'underlap');
  if (wide === undefined || underlap === undefined || edges === undefined) return undefined;
  const ring = ringLength(edges);
  if (ring <= 0 || wide <= 0) {
    return report(
      reader,
      'no-such-number',
      node.wide.at,
      say`${wordsOf(reader, node.name)} would have no size: it needs edges to go round and a width above nothing.`,
    );
  }
  return bandPiece(request, {
    length: ring + underlap,
    wide,
    underlap,
    side: node.underlap?.at ?? 'right',
    allowance: allowanceOf(edges),
  });
}

const allowanceOf = (edges: readonly TakenEdge[]): number =>
  edges[0]?.of.allowances.get(edges[0].edge) ?? USUAL_ALLOWANCE;

interface BandSize {
  readonly length: number;
  readonly wide: number;
  readonly underlap: number;
  /** The wearer's side at which the underlap lies. */
  readonly side: 'left' | 'right';
  readonly allowance: number;
}

/** The wearer's left end lies on the right of the paper. */
const AS_WORN = { upper: 'upper', right: 'left', lower: 'lower', left: 'right' };

/** Drawn as worn, seen from outside: the wearer's left end lies on the right of the paper. */
function bandPiece(request: BandRequest, size: BandSize): Piece {
  const { source } = request;
  const { length, wide } = size;
  const at = (x: number, y: number): { x: number; y: number } => ({ x, y });
  const edges = rectangle(length, 2 * wide, AS_WORN, request);
  const fold = Path.line(at(0, wide), at(length, wide));
  const lap = size.side === 'left' ? length - size.underlap : size.underlap;
  const balance = [
    { name: 'fold', source, path: fold },
    ...(size.underlap > 0
      ? [{ name: 'underlap', source, path: Path.line(at(lap, 0), at(lap, 2 * wide)) }]
      : []),
  ];
  return {
    ...blankPiece(request),
    ...{ edges, balance, underlap: size.underlap },
    area: length * 2 * wide,
    cut: wordsFor([{ count: 1, as: 'single', cloth: '' }], false),
    grain: { from: at(0, wide), to: at(length, wide), bias: false, source },
    allowances: new Map(edges.map((edge) => [edge.name, size.allowance])),
    remarks: [say`folded along the middle`],
  };
}

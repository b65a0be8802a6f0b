/** A strip: a straight piece of two measures, cut along the thread or on the bias, to bind, tie or face with. */
import { say } from '../../../../grammar/say';
import type { StripNode } from '../../../../grammar/syntax';
import { Path, type Point } from '../../../geometry';
import type { Edge, EdgePart, Piece } from '../../model';
import { lengthOf } from '../../values/arithmetic';
import { report, wordsOf, type Reader } from '../../values/reader';
import { wordsFor } from '../cut-words';
import { blankPiece, type MadePiece } from './blank';

export function readStrip(reader: Reader, node: StripNode, request: MadePiece): Piece | undefined {
  const [long, wide] = [lengthOf(reader, node.length, 'strip'), lengthOf(reader, node.width, 'by')];
  if (long === undefined || wide === undefined) return undefined;
  if (long > 0 && wide > 0) return stripPiece(request, node, long, wide);
  return report(
    reader,
    'no-such-number',
    (long > 0 ? node.width : node.length).at,
    say`${wordsOf(reader, node.name)} would have no size: a strip is longer and wider than nothing.`,
  );
}

/** Cut as long and as wide as it says: nothing is allowed beyond. */
function stripPiece(request: MadePiece, node: StripNode, long: number, wide: number): Piece {
  const edges = rectangle(
    long,
    wide,
    { upper: 'upper', right: 'right', lower: 'lower', left: 'left' },
    request,
  );
  const cut = wordsFor([{ count: 1, as: 'single', cloth: node.cloth?.text ?? '' }], false);
  const middle = { x: long / 2, y: wide / 2 };
  const half = Math.min(wide, long) / 4;
  const grain = node.onBias
    ? { from: { x: middle.x - half, y: middle.y + half }, to: { x: middle.x + half, y: middle.y - half } }
    : { from: { x: 0, y: middle.y }, to: { x: long, y: middle.y } };
  return {
    ...blankPiece(request),
    edges,
    area: long * wide,
    cut: node.onBias ? { ...cut, text: say`${cut.text}, on the bias` } : cut,
    grain: { ...grain, bias: node.onBias, source: request.source },
    allowances: new Map(edges.map((edge) => [edge.name, 0])),
  };
}

/** Names of the four edges of a straight piece, as they lie on paper. */
export interface FourNames {
  readonly upper: string;
  readonly right: string;
  readonly lower: string;
  readonly left: string;
}

/** The edges of a straight piece, from the upper left corner clockwise as seen on paper. */
export function rectangle(
  long: number,
  high: number,
  names: FourNames,
  { source, statement }: Pick<MadePiece, 'source' | 'statement'>,
): readonly Edge[] {
  const corners: readonly Point[] = [
    { x: 0, y: 0 },
    { x: long, y: 0 },
    { x: long, y: high },
    { x: 0, y: high },
  ];
  return [names.upper, names.right, names.lower, names.left].map((name, i): Edge => {
    const path = Path.line(corners[i]!, corners[(i + 1) % 4]!);
    const parts: readonly EdgePart[] = [{ path }];
    const measures = { fromName: '', toName: '', drawn: path.length, sewn: path.length };
    return { name, source: `${source}/${name}`, statement, path, parts, ...measures };
  });
}

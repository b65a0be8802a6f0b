/** Where darts lie on their edge and in the piece, for the checks that judge it. */
import type { Dart, Edge, FishDart, Piece } from '../drafting/model';

/** Steps on the way to another piece are not judged: what is cut of them may be trued or swung yet. */
export const dartsOf = (piece: Piece): readonly Dart[] =>
  piece.cut === undefined || piece.gaps.length > 0 ? [] : piece.darts;

export const fishDartsOf = ({ shaping }: Piece): readonly FishDart[] => shaping?.fishDarts ?? [];

/** The run of the outline that draws a dart, or its name in its own line. */
export function placeOf({ name, statement: { node } }: Pick<Dart, 'name' | 'statement'>): {
  from: number;
  to: number;
} {
  if (node.kind === 'edge')
    return node.runs.find((run) => run.kind === 'dart' && run.name.text === name)?.at ?? node.at;
  return node.kind === 'dart' || node.kind === 'fish-dart' ? node.name.at : node.at;
}

/** A stretch that is sewn between what darts take, and what stands at its two ends. */
export interface Between {
  readonly length: number;
  readonly before: Dart | 'end';
  readonly after: Dart | 'end';
}

/** The stretches between the darts of an edge, with those at its ends. */
export function betweenDarts(edge: Edge, darts: readonly Dart[]): readonly Between[] {
  const found: Between[] = [];
  let [length, before]: [number, Dart | 'end'] = [0, 'end'];
  for (const part of edge.parts) {
    const dart = part.dart === undefined ? undefined : darts.find(({ name }) => name === part.dart);
    if (dart === undefined) {
      if (part.dart === undefined) length += part.path.length;
      continue;
    }
    found.push({ length, before, after: dart });
    [length, before] = [0, dart];
  }
  return [...found, { length, before, after: 'end' }];
}

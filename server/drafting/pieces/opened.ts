/** A piece on the fold that is drafted for both sides: both halves joined along the fold, cut open. */
import { say } from '../../../grammar/say';
import { mirror } from '../../geometry';
import type { Edge, Piece } from '../model';
import { carriedTogether } from './carried';
import { openCut } from './cut-words';
import { moved } from './moved';
import { outlineBack } from './outline-back';
import { shapingTogether } from './shaped';

/** What belongs to an edge of the other half goes by this name. */
const ofOther = (edge: string): string => `${edge}-other`;

const keysOfOther = <T>(of: ReadonlyMap<string, T> = new Map()): readonly (readonly [string, T])[] =>
  [...of].map(([edge, one]) => [ofOther(edge), one]);

const edgesOfOther = <T extends { readonly edge: string }>(all: readonly T[] = []): readonly T[] =>
  all.map((one) => ({ ...one, edge: ofOther(one.edge) }));

export function opened(drawn: Piece, other: Piece): Piece {
  const axis = drawn.edges.find(({ name }) => name === drawn.fold!.edge)!.path;
  // laid on the other side of the fold the outline is walked on across it
  const back = outlineBack(moved(other, mirror(axis.start, axis.end)));
  const { fold: _, ...rest } = drawn;
  return {
    ...rest,
    edges: [...besideFold(drawn), ...besideFold(back).map(otherEdge)],
    notches: [...drawn.notches, ...edgesOfOther(back.notches)],
    area: drawn.area + other.area,
    ...allowedTogether(drawn, back),
    remarks: [say`one open piece: the two halves differ`],
    ...carriedTogether(drawn, back),
    darts: [
      ...drawn.darts,
      ...edgesOfOther(back.darts).map((dart) => ({ ...dart, name: ofOther(dart.name) })),
    ],
    trued: [...drawn.trued, ...edgesOfOther(back.trued)],
    ...(drawn.shaping && { shaping: shapingTogether(drawn.shaping, back.shaping) }),
    ...(drawn.cut && { cut: openCut(drawn.cut) }),
  };
}

/** The edges of a half in the order of the outline, from behind the fold round to before it. */
function besideFold({ edges, fold }: Piece): readonly Edge[] {
  const at = edges.findIndex(({ name }) => name === fold!.edge);
  return [...edges.slice(at + 1), ...edges.slice(0, at)];
}

const otherEdge = (edge: Edge): Edge => ({
  ...edge,
  name: ofOther(edge.name),
  parts: edge.parts.map((part) => (part.dart === undefined ? part : { ...part, dart: ofOther(part.dart) })),
});

/** Each half keeps the allowances that it was drafted with. */
const allowedTogether = (
  drawn: Piece,
  back: Piece,
): Pick<Piece, 'allowances' | 'hems' | 'inlays' | 'running' | 'statedAllowances'> => ({
  allowances: new Map([...drawn.allowances, ...keysOfOther(back.allowances)]),
  hems: new Map([...drawn.hems, ...keysOfOther(back.hems)]),
  inlays: new Map([...(drawn.inlays ?? []), ...keysOfOther(back.inlays)]),
  running: [...drawn.running, ...edgesOfOther(back.running)],
  statedAllowances: [...(drawn.statedAllowances ?? []), ...edgesOfOther(back.statedAllowances)],
});

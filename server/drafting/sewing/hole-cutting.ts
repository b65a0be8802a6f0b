/** The cutting line of a hole: its allowances lie within it, on the cloth that falls away. */
import { cuttingLine, signedArea } from '../../geometry';
import type { Hole, Piece } from '../model';

/** Holes with their cutting lines drawn anew; one that its allowances fill has none. */
export function cutHoles({ holes, allowances }: Pick<Piece, 'holes' | 'allowances'>): Piece['holes'] {
  return holes.map((hole): Hole => {
    const { cutting: _, ...rest } = hole;
    const edges = hole.edges.map(({ name, path }) => ({ path, allowance: allowances.get(name) ?? 0 }));
    const { outline } = cuttingLine(edges, { hole: true });
    const [sewn, cut] = [signedArea(edges.map(({ path }) => path)), signedArea(outline)];
    // an outline turned inside out: the allowances of both sides meet
    const filled = Math.sign(sewn) !== Math.sign(cut) || Math.abs(cut) > Math.abs(sewn) + 1e-6;
    return filled ? rest : { ...rest, cutting: outline };
  });
}

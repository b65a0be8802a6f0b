/** The cutting line of a hole: its allowances lie within it, on the cloth that falls away. */
import { cuttingLine, signedArea, type Path } from '../../geometry';
import type { Hole, Piece } from '../model';

interface HoleEdge {
  readonly path: Path;
  readonly allowance: number;
}

/** Holes with their cutting lines drawn anew; one that its allowances fill has none. */
export function cutHoles({ holes, allowances }: Pick<Piece, 'holes' | 'allowances'>): Piece['holes'] {
  return holes.map((hole): Hole => {
    const { cutting: _, ...rest } = hole;
    const edges = hole.edges.map(({ name, path }) => ({ path, allowance: allowances.get(name) ?? 0 }));
    const { outline } = cuttingLine(edges, { hole: true });
    return isFilled(edges, outline) ? rest : { ...rest, cutting: outline };
  });
}

/** Nearer to an edge than its allowance by more than this the cutting line is none, mm. */
const ROUNDING = 0.1;

/** The allowances of opposite edges meet: what comes of them is turned inside out, once or in both directions. */
function isFilled(edges: readonly HoleEdge[], outline: readonly Path[]): boolean {
  const sewn = signedArea(edges.map(({ path }) => path));
  if (Math.sign(sewn) !== Math.sign(signedArea(outline))) return true;
  return outline.some((cut) => {
    if (cut.length < ROUNDING) return false;
    const middle = cut.pointAt(cut.length / 2);
    return edges.some(({ path, allowance }) => path.locate(middle).distance < allowance - ROUNDING);
  });
}

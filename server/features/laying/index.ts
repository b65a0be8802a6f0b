/** What a person may lay out instead of the sheet, and what each laying comes to. */
import type { Layable, Laying } from '../../../client/preview/protocol';
import type { Pattern, Piece } from '../../drafting/model';
import { closable, dartsClosed } from './darts';
import type { LaidOut } from './paper';
import { sourceOfSeam } from './sides-of-seam';
import { together } from './together';
import { walked } from './walk';
import { sidesLaid } from './wearer-sides';

export type { LaidOut } from './paper';

/** Undefined where it can't be laid from the text as it stands. */
export function layOut(pattern: Pattern, laying: Laying): LaidOut | undefined {
  switch (laying.kind) {
    case 'walk':
      return walked(pattern, laying.of, laying.at);
    case 'together':
      return together(pattern, laying.of, laying.at);
    case 'darts':
      return dartsClosed(pattern, laying.of);
    case 'sides':
      return sidesLaid(pattern, laying.of);
  }
}

/** Everything that can be laid out of a pattern, in file order. */
export function layables({ seams, pieces }: Pattern): readonly Layable[] {
  const sewn = seams.filter(({ course, comparable }) => course !== undefined && comparable);
  const ofSeams = (kind: 'walk' | 'together') =>
    sewn.map((seam): Layable => {
      const side = seam.side === undefined ? '' : `, ${seam.side}`;
      const about = [seam.source, ...[...seam.left, ...seam.right].map(({ source }) => source)];
      return { kind, of: sourceOfSeam(seam), words: `${seam.name}${side}`, about };
    });
  const darted = pieces.filter((piece) => closable(piece).length > 0);
  const sided = pieces.filter(({ side }) => side === 'right');
  return [
    ...ofSeams('walk'),
    ...ofSeams('together'),
    ...darted.map((piece): Layable => ofPiece('darts', piece, piece.name)),
    ...sided.map((piece): Layable => ofPiece('sides', piece, piece.base)),
  ];
}

const ofPiece = (kind: 'darts' | 'sides', { source, edges, darts }: Piece, words: string): Layable => ({
  ...{ kind, of: source, words },
  about: [source, ...edges.map((edge) => edge.source), ...darts.map((dart) => dart.source)],
});

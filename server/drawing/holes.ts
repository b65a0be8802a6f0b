/** Holes: the line along which the cloth is cut out. Their sewing lines are drawn with those of the outline. */
import { say } from '../../grammar/say';
import type { Piece } from '../drafting/model';
import { Path } from '../geometry';
import type { DrawnLine } from './model';
import { pathLine } from './path';

export const holeLines = (piece: Piece): DrawnLine[] =>
  piece.holes.flatMap(({ name, source, cutting }): DrawnLine[] => {
    if (cutting === undefined) return [];
    const segments = cutting.flatMap((path) => path.segments);
    const line = pathLine('hole', Path.of(segments), { name, source, tip: say`${name}, cut out` });
    return [{ ...line, closed: true }];
  });

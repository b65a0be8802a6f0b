/** Where an opening of a seam ends: a short stroke across the sewing line of both edges, which the machine stops at. */
import { say } from '../../grammar/say';
import type { Piece, Seam } from '../drafting/model';
import { edgeNamed, pointOn } from '../drafting/sewing/course';
import { acrossOpening, endsWithin, openingName } from '../drafting/sewing/opening-ends';
import { printLength } from '../drafting/values/quantity';
import type { DisplayUnit } from '../drafting/model';
import { add, Path, scale } from '../geometry';
import type { DrawnLine } from './model';
import { isSeamOf } from './partners';
import { pathLine } from './path';
import { sideWord } from './told';

/** Half the stroke, mm. */
const REACH = 5;

/** The ends of every opening on the edges of a piece; where a whole seam opens there is nothing to stop at. */
export function openingEnds(piece: Piece, seams: readonly Seam[], unit: DisplayUnit): DrawnLine[] {
  const drawn = new Set<string>();
  return seams.flatMap((seam) =>
    !isSeamOf(seam, piece)
      ? []
      : (seam.openings ?? []).flatMap((opening) =>
          endsWithin(seam, opening).flatMap((end) =>
            acrossOpening(seam, end).flatMap(({ run, distance }) => {
              const edge = run.piece === piece.base ? edgeNamed(piece, run.edge) : undefined;
              if (edge === undefined) return [];
              const long = printLength(opening.to - opening.from, unit);
              const at = pointOn(edge, distance);
              const place = `${seam.name} ${at.x.toFixed(1)} ${at.y.toFixed(1)}`;
              if (drawn.has(place)) return []; // the seams of both sides, on a piece that serves both
              drawn.add(place);
              const path = edge.path;
              const along = path.tangentAt(path.locate(at).s);
              const off = scale({ x: along.y, y: -along.x }, REACH);
              const tip = say`end of ${openingName(opening.how)}, ${long}${opening.side ? say`, at the ${sideWord(opening.side)}` : ''}`;
              const words = { name: seam.name, source: seam.source, tip };
              return [pathLine('mark', Path.line(add(at, off), add(at, scale(off, -1))), words)];
            }),
          ),
        ),
  );
}

/** Fish darts, pleats and gathers of a piece: carried along when the paper is moved, parted where it is cut. */
import { apply, contains, midpoint, type Affine, type Path } from '../../geometry';
import { leadsOver, pathPartly, pathWithin, type Moving } from './carried';
import type { FishDart, Pleats, Shaping } from '../model';
import { NO_SHAPING } from '../shaping-model';

/** All of it carried by one movement. */
export const shapingMoved = (shaping: Shaping, m: Affine): Shaping => ({
  ...shaping,
  fishDarts: shaping.fishDarts.map((dart) => movedFish(dart, m)),
  pleats: shaping.pleats.map((row) => movedRow(row, m, () => true)),
});

/**
 * Carried by a movement where it lies on the part of the paper that moves. The lines of a pleat that lead over the cut go
 * on to where they ended.
 *
 * @param parts of edges that move, as a dart or pleat names them
 */
export function shapingPartly(shaping: Shaping, parts: ReadonlySet<string>, moving: Moving): Shaping {
  const region = [...moving.stretch, moving.cut];
  const over = pathPartly(moving);
  const line = (path: Path, moves: boolean): Path =>
    leadsOver(path, moving.cut) ? over(path) : moves ? path.transformed(moving.by) : path;
  return {
    ...shaping,
    fishDarts: shaping.fishDarts.map((dart) => (liesIn(region, dart) ? movedFish(dart, moving.by) : dart)),
    pleats: shaping.pleats.map((row) => ({
      ...row,
      pleats: row.pleats.map((pleat) => ({
        ...pleat,
        start: line(pleat.start, parts.has(pleat.part)),
        end: line(pleat.end, parts.has(pleat.part)),
      })),
    })),
  };
}

/** What is left of it on a part of the piece. */
export const shapingWithin = (
  shaping: Shaping,
  parts: ReadonlySet<string>,
  edges: ReadonlySet<string>,
  region: readonly Path[],
  cut: Path,
): Shaping => ({
  ...shaping,
  fishDarts: shaping.fishDarts.filter((dart) => liesIn(region, dart)),
  pleats: shaping.pleats.flatMap((row) => {
    const left = pathWithin(region, cut);
    const pleats = row.pleats
      .filter(({ part }) => parts.has(part))
      .map((pleat) => ({
        ...pleat,
        start: left(pleat.start) ?? pleat.start,
        end: left(pleat.end) ?? pleat.end,
      }));
    return pleats.length === 0 ? [] : [{ ...row, pleats }];
  }),
  gathers: shaping.gathers.filter(({ edge }) => edges.has(edge)),
});

/** Of both halves of a piece; those of the other half go by its edges. */
export const shapingTogether = (one: Shaping = NO_SHAPING, other: Shaping = NO_SHAPING): Shaping => ({
  fishDarts: [...one.fishDarts, ...other.fishDarts.map((dart) => ({ ...dart, name: `${dart.name}-other` }))],
  pleats: [...one.pleats, ...other.pleats.map(ofOtherHalf)],
  gathers: [...one.gathers, ...other.gathers.map((one) => ({ ...one, edge: `${one.edge}-other` }))],
  closed: one.closed,
});

/** A row of pleats whose edge is walked the other way. */
export const walkedBack = (row: Pleats): Pleats => ({
  ...row,
  pleats: [...row.pleats].reverse().map((pleat) => ({
    ...pleat,
    ...{ start: pleat.end, end: pleat.start },
    folds: pleat.folds === 'both' ? pleat.folds : pleat.folds === 'start' ? 'end' : 'start',
  })),
});

const ofOtherHalf = (row: Pleats): Pleats => ({
  ...row,
  name: `${row.name}-other`,
  edge: `${row.edge}-other`,
  pleats: row.pleats.map((pleat) => ({ ...pleat, part: `${pleat.part}-other` })),
});

const liesIn = (region: readonly Path[], { from, to, left, right }: FishDart): boolean =>
  contains(region, midpoint(left, right)) || (contains(region, from) && contains(region, to));

/** A movement that turns the paper over makes left of right. */
function movedFish(dart: FishDart, m: Affine): FishDart {
  const over = m.a * m.d - m.b * m.c < 0;
  const [left, right] = over ? [dart.right, dart.left] : [dart.left, dart.right];
  const { pressed } = dart;
  return {
    ...dart,
    from: apply(m, dart.from),
    to: apply(m, dart.to),
    left: apply(m, left),
    right: apply(m, right),
    pressed: !over || pressed === 'open' || pressed === '' ? pressed : pressed === 'left' ? 'right' : 'left',
  };
}

const movedRow = (row: Pleats, m: Affine, moves: (part: string) => boolean): Pleats => ({
  ...row,
  pleats: row.pleats.map((pleat) =>
    moves(pleat.part)
      ? { ...pleat, start: pleat.start.transformed(m), end: pleat.end.transformed(m) }
      : pleat,
  ),
});

/** The end of a dart in the allowance: cut so that, folded and pressed, it lies on the edge (the roof). */
import { add, dot, lineLine, midpoint, normalised, Path, scale, subtract, type Point } from '../../geometry';
import type { Dart, Edge } from '../model';

/** A roof higher than this share of the mouth would be a spike; the dart is then cut straight across. */
const HIGHEST = 2;

/** The edge as it is cut: each mouth follows the folded dart. */
export function cutPath(edge: Edge, darts: readonly Dart[]): Path {
  if (edge.parts.every((part) => part.dart === undefined)) return edge.path;
  const segments = edge.parts.flatMap((part, i) => {
    const dart = darts.find(({ name }) => name === part.dart);
    if (dart === undefined) return part.path.segments;
    const before = edge.parts[i - 1]?.path;
    const after = edge.parts[i + 1]?.path;
    return Path.polyline([dart.from, ...roof(dart, before, after), dart.to]).segments;
  });
  return Path.of(segments);
}

/** Points between the leg ends; none where the pressing is not said. */
export function roof(dart: Dart, before: Path | undefined, after: Path | undefined): readonly Point[] {
  const fromBack = before && scale(before.tangentAt(before.length, 'before'), -1);
  const toOn = after?.tangentAt(0);
  const fromRoof = fromBack && underlay(dart, dart.from, fromBack);
  const toRoof = toOn && underlay(dart, dart.to, toOn);
  switch (dart.pressed) {
    case 'from':
      return fromRoof ? [fromRoof] : [];
    case 'to':
      return toRoof ? [toRoof] : [];
    case 'open':
      return fromRoof && toRoof ? [fromRoof, toRoof] : [];
    case '':
      return [];
  }
}

/**
 * Where the fold of the dart meets the edge as it lies beneath: the edge beside a leg, mirrored across that leg, met by
 * the dart's middle line.
 */
function underlay(dart: Dart, end: Point, away: Point): Point | undefined {
  const leg = normalised(subtract(end, dart.pivot));
  const middle = normalised(subtract(midpoint(dart.from, dart.to), dart.pivot));
  if (leg === undefined || middle === undefined) return undefined;
  const mirrored = subtract(scale(leg, 2 * dot(away, leg)), away);
  const met = lineLine(dart.pivot, middle, end, mirrored);
  if (met === undefined) return undefined;
  const off = subtract(met, end);
  const reach = Math.hypot(off.x, off.y);
  return dot(off, mirrored) > 0 && reach <= HIGHEST * dart.width ? add(end, off) : undefined;
}

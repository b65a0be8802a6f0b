/** Finds darts that end close to another edge of their piece. */
import { say } from '../../grammar/say';
import { boxOfPaths, contains, type Path, type Point } from '../geometry';
import type { Finding } from '../drafting/finding';
import type { Dart, Edge, FishDart, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { dartsOf, fishDartsOf, placeOf } from './dart-places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const END: Usual = {
  name: 'dart-end-to-edge',
  kind: 'length',
  low: 20,
  high: Infinity,
  standing: 'common practice: the fullness that a dart ends in needs room',
};

export const dartNearEdge: Judged = {
  code: 'dart-near-edge',
  severity: 'warning',
  title: 'A dart that ends close to another edge',
  by: 'judgement',
  usual: [END],
  ofPiece: (piece, pattern) => {
    const fish = piece.cut === undefined ? [] : fishDartsOf(piece);
    return [
      ...dartsOf(piece).flatMap((dart) => near(piece, dart, [dart.tip], pattern)),
      ...fish.flatMap((dart) => near(piece, dart, [dart.from, dart.to], pattern)),
    ];
  },
};

/** How far a point lies from the box round a path, mm: the path itself is no nearer. */
function boxAway(path: Path, { x, y }: Point): number {
  const { minX, maxX, minY, maxY } = boxOfPaths([path]);
  return Math.hypot(Math.max(minX - x, 0, x - maxX), Math.max(minY - y, 0, y - maxY));
}

/** The edge that the dart opens on is near by its nature; a fold is no edge once the piece is open. */
function near(
  piece: Piece,
  dart: Dart | FishDart,
  ends: readonly Point[],
  pattern: Judging,
): readonly Finding[] {
  const range = usualRange(pattern, END);
  const own = 'edge' in dart ? dart.edge : '';
  const others = piece.edges.filter(({ name }) => name !== own && name !== piece.fold?.edge);
  const outline = piece.edges.map(({ path }) => path);
  const inside = ends.filter((end) => contains(outline, end));
  const found = inside
    .flatMap((end) =>
      others
        .filter(({ path }) => boxAway(path, end) <= range.low)
        .map((edge) => ({ edge, away: edge.path.locate(end).distance })),
    )
    .reduce<{ edge: Edge; away: number } | undefined>((a, b) => (a && a.away <= b.away ? a : b), undefined);
  if (found === undefined || isUsual(range, found.away)) return [];
  const message = say`${dart.name} ends ${printLength(found.away, pattern.unit)} from ${found.edge.name}; ${rangeInWords(range, pattern.unit)}. The cloth has no room to spread there: make the dart shorter, or move it.`;
  return [
    finding('dart-near-edge', { statement: dart.statement, at: placeOf(dart) }, message, {
      piece: piece.name,
      related: [{ source: found.edge.source, message: say`${found.edge.name} runs here.` }],
    }),
  ];
}

/** Finds darts that run over a hole, another dart or an edge of their piece: sewn up, one takes the other with it. */
import { say } from '../../grammar/say';
import { contains, distance, intersections, Path, type Outline, type Point } from '../geometry';
import type { Finding, Related } from '../drafting/finding';
import type { Dart, FishDart, Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { dartsOf, fishDartsOf, placeOf } from './dart-places';

export const crossedDart: Judged = {
  code: 'crossed-dart',
  severity: 'error',
  title: 'A dart that runs over a hole, another dart or an edge',
  by: 'judgement',
  ofPiece: (piece) => (piece.cut === undefined || piece.gaps.length > 0 ? [] : crossed(piece)),
};

/** A dart with the cloth that it takes: its corners, walked round. */
interface Taken {
  readonly dart: Dart | FishDart;
  readonly corners: readonly Point[];
}

/** Legs that begin, end or touch within this of each other do not cross, mm: two darts may end at one point. */
const TOUCHING = 0.5;

function crossed(piece: Piece): readonly Finding[] {
  const taken: readonly Taken[] = [
    ...dartsOf(piece).map((dart) => ({ dart, corners: [dart.from, dart.tip, dart.to] })),
    ...fishDartsOf(piece).map((dart) => ({ dart, corners: [dart.from, dart.left, dart.to, dart.right] })),
  ];
  return taken.flatMap((one, i) => {
    const over = overHole(piece, one) ?? overDart(one, taken.slice(0, i)) ?? overEdge(piece, one);
    return over === undefined ? [] : [told(piece, one.dart, over)];
  });
}

interface Over {
  readonly what: string;
  readonly related: Related;
}

const overHole = ({ holes }: Piece, one: Taken): Over | undefined => {
  const hole = holes.find(({ edges }) =>
    meets(
      one,
      edges.map(({ path }) => path),
    ),
  );
  return hole && over(hole, say`the hole ${hole.name}`);
};

function overDart(one: Taken, others: readonly Taken[]): Over | undefined {
  const other = others.find(({ corners }) => meets(one, sidesOf(corners)));
  return other && over(other.dart);
}

/** Where a point of it lies beyond the outline that is told by itself; the edge that it opens on it meets by its nature. */
function overEdge({ edges }: Piece, one: Taken): Over | undefined {
  const own = 'edge' in one.dart ? one.dart.edge : '';
  const edge = edges.find(({ name, path }) => name !== own && crossesAny(legsOf(one), [path]));
  const outline = edges.map(({ path }) => path);
  const inner = 'edge' in one.dart ? [one.dart.tip] : one.corners;
  return edge !== undefined && inner.every((point) => contains(outline, point)) ? over(edge) : undefined;
}

const over = ({ name, source }: { readonly name: string; readonly source: string }, what = name): Over => ({
  what,
  related: { source, message: say`${name} lies here.` },
});

const sidesOf = (corners: readonly Point[]): readonly Path[] =>
  corners.map((corner, i) => Path.line(corner, corners[(i + 1) % corners.length]!));

/** What is sewn: of a dart that opens on an edge not its mouth. */
const legsOf = ({ dart, corners }: Taken): readonly Path[] =>
  'edge' in dart ? sidesOf(corners).slice(0, -1) : sidesOf(corners);

/** Whether a dart and something else closed cross, or one lies within the other. */
function meets(one: Taken, other: Outline): boolean {
  const own = sidesOf(one.corners);
  if (crossesAny(own, other)) return true;
  const within = (some: Outline, paths: Outline): boolean =>
    some.some((path) =>
      SHARES.some((share) => {
        const point = path.pointAt(share * path.length);
        return contains(paths, point) && paths.every((edge) => edge.locate(point).distance > TOUCHING);
      }),
    );
  return within(other, own) || within(own, other);
}

/** Where a path is looked at: one that crosses nothing lies within or without as a whole, but may touch. */
const SHARES = [0, 0.25, 0.5, 0.75];

/** Two paths cross where neither ends. */
const crossesAny = (some: Outline, others: Outline): boolean =>
  some.some((one) =>
    others.some((other) =>
      intersections(one, other).some(({ point }) =>
        [one.start, one.end, other.start, other.end].every((end) => distance(point, end) > TOUCHING),
      ),
    ),
  );

function told(piece: Piece, dart: Dart | FishDart, { what, related }: Over): Finding {
  const message = say`${dart.name} runs over ${what} in ${piece.name}: sewn up, the dart would take it in as well. Move one of the two, or make the dart shorter or narrower.`;
  return finding('crossed-dart', { statement: dart.statement, at: placeOf(dart) }, message, {
    piece: piece.name,
    related: [related],
  });
}

/** Where on the pieces a finding is: the gap itself, the corner that bends, the middle of an edge or of a seam's edges. */
import type { Pattern, Piece, PlacedFinding } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import type { Spot } from '../drawing/model';
import { spot } from '../drawing/path';
import { lerp, type Point } from '../geometry';
import { laidSeam, lengthOf, placeAt, type LaidSeam } from './laying/sides-of-seam';
import { bendAt } from './laying/together';

/** In the millimetres of the piece of that name. */
export interface ProblemSpot {
  readonly piece: string;
  readonly at: Spot;
}

const GAPS: ReadonlySet<string> = new Set(['unclosed-outline', 'run-with-gap']);

/** Empty for what is nowhere on a piece: a name, a value, a line of the file. */
export function spotsOf(pattern: Pattern, finding: PlacedFinding): readonly ProblemSpot[] {
  const pieces = pattern.pieces.filter(({ source }) => source === finding.piece);
  const gaps = GAPS.has(finding.code) ? pieces.flatMap(gapSpots) : [];
  if (gaps.length > 0) return gaps;
  const laid = laidSeam(pattern, finding.source);
  if (laid !== undefined) return seamSpots(laid, finding.code);
  const own = pattern.pieces.flatMap((piece) => thingSpot(piece, finding.source));
  if (own.length > 0 || pieces.length === 0 || finding.severity === 'note') return own;
  // said of the whole piece, at the words of one of its edges
  const [edge] = pattern.sourcesAt(finding.place.uri, finding.place.from);
  return edge === undefined ? [] : pieces.flatMap((piece) => thingSpot(piece, edge));
}

const gapSpots = ({ name, gaps }: Piece): readonly ProblemSpot[] =>
  gaps.map(({ from, to }) => ({ piece: name, at: spot(lerp(from, to, 0.5)) }));

function seamSpots(laid: LaidSeam, code: string): readonly ProblemSpot[] {
  const share = code === 'kinked-edge' ? (bendAt(laid, 'start') >= bendAt(laid, 'end') ? 0 : 1) : 0.5;
  const sides = laid.seam.itsPair ? (['left'] as const) : (['left', 'right'] as const);
  return sides.map((side) => {
    const { piece, point } = placeAt(laid, side, share * lengthOf(laid, side));
    return { piece: piece.name, at: spot(point) };
  });
}

/** An edge in its middle, a dart at its mouth, a mark where it is. */
function thingSpot(piece: Piece, source: string): readonly ProblemSpot[] {
  const at = placeOf(piece, source);
  return at === undefined ? [] : [{ piece: piece.name, at: spot(at) }];
}

function placeOf(piece: Piece, source: string): Point | undefined {
  const edge = everyEdge(piece).find((one) => one.source === source);
  if (edge !== undefined) return edge.path.pointAt(edge.path.length / 2);
  const dart = piece.darts.find((one) => one.source === source);
  if (dart !== undefined) return lerp(dart.from, dart.to, 0.5);
  const mark = piece.marks.find((one) => one.source === source);
  if (mark !== undefined) return mark.points[0] ?? mark.paths[0]?.pointAt(mark.paths[0].length / 2);
  return piece.notches.find((one) => one.source === source)?.point;
}

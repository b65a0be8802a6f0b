/**
 * Where on the pieces a finding is: the gap itself, the corner that bends, the middle of an edge or of a seam's edges, the
 * dart, the grain or whatever its words name; a finding of a whole piece stands above the piece's name.
 */
import type { Pattern, Piece, PlacedFinding } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { drawnPiece } from '../drawing/draw';
import type { Spot } from '../drawing/model';
import { pathOf, spot } from '../drawing/path';
import { lerp, type Path, type Point } from '../geometry';
import { laidSeam, lengthOf, placeAt, type LaidSeam } from './laying/sides-of-seam';
import { bendAt } from './laying/together';

/** In the millimetres of the piece of that name. */
export interface ProblemSpot {
  readonly piece: string;
  readonly at: Spot;
}

const GAPS: ReadonlySet<string> = new Set(['unclosed-outline', 'run-with-gap']);

/** Looks a pattern through once, when the first finding asks; the answer is empty for what is nowhere on a piece. */
export function problemSpots(pattern: Pattern): (finding: PlacedFinding) => readonly ProblemSpot[] {
  let things: Things | undefined;
  const known = (): Things => (things ??= thingsOf(pattern));
  let lines: ReadonlyMap<string, readonly Place[]> | undefined;
  const placesOf = (source: string) =>
    known().places.get(source) ?? (lines ??= linesOf(pattern)).get(source) ?? [];
  const at = (source: string) => placesOf(source).map(({ piece, point }) => ({ piece, at: spot(point()) }));
  return (finding) => {
    const pieces = known().pieces.get(finding.piece ?? finding.source) ?? [];
    const gaps = GAPS.has(finding.code) ? pieces.flatMap(gapSpots) : [];
    if (gaps.length > 0) return gaps;
    const laid = finding.source.startsWith(SEAM) ? laidSeam(pattern, finding.source) : undefined;
    if (laid !== undefined) return seamSpots(laid, finding.code);
    const own = at(finding.source);
    if (own.length > 0 || finding.severity === 'note') return own;
    // said of the whole piece, at the words of one of its lines
    for (const source of sourcesOf(pattern, finding, known().byBase)) {
      const spots = at(source);
      const here = spots.filter((one) => pieces.some(({ name }) => name === one.piece));
      const found = pieces.length > 0 ? here : spots;
      if (found.length > 0) return found;
    }
    return pieces.map((piece) => aboveName(pattern, piece));
  };
}

/** What is underlined, the innermost first, then the edges that are told (`front.hem`), then what is spoken of besides. */
function* sourcesOf(
  pattern: Pattern,
  { place, related, message }: PlacedFinding,
  byBase: Things['pieces'],
): Generator<string> {
  yield* pattern.sourcesAt(place.uri, place.from);
  for (const [, piece, edge] of message.matchAll(/([\p{L}\p{N}-]+)\.([\p{L}\p{N}-]+)/gu))
    for (const { source } of byBase.get(piece!) ?? []) yield `${source}/${edge}`;
  yield* pattern.sourcesAt(place.uri, place.to);
  for (const other of related) yield* pattern.sourcesAt(other.place.uri, other.place.from);
}

/** Clear of the capitals of the piece's name, in heights of them. */
const ABOVE = 2.2;

function aboveName(pattern: Pattern, piece: Piece): ProblemSpot {
  const { texts, frame } = drawnPiece(pattern, piece);
  const title = texts.find(({ role }) => role === 'title');
  const middle = { x: (frame.left + frame.right) / 2, y: (frame.top + frame.bottom) / 2 };
  const at = title === undefined ? middle : { x: title.at.x, y: title.at.y - ABOVE * title.size };
  return { piece: piece.name, at: spot(at) };
}

/** What sources of seams begin with. */
const SEAM = 'seam:';

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

/** Pieces, and where each thing of theirs is, by source; a place is worked out when it is asked for. */
interface Things {
  readonly pieces: ReadonlyMap<string, readonly Piece[]>;
  /** By the names by which messages tell of them. */
  readonly byBase: ReadonlyMap<string, readonly Piece[]>;
  readonly places: ReadonlyMap<string, readonly Place[]>;
}

interface Place {
  readonly piece: string;
  readonly point: () => Point;
}

/** An edge in its middle, a dart at its mouth, a mark and a notch where they are. */
function thingsOf(pattern: Pattern): Things {
  const pieces = new Map<string, Piece[]>();
  const byBase = new Map<string, Piece[]>();
  const places = new Map<string, Place[]>();
  const put = <T>(map: Map<string, T[]>, source: string, one: T) =>
    void (map.get(source)?.push(one) ?? map.set(source, [one]));
  for (const piece of pattern.pieces) {
    put(pieces, piece.source, piece);
    put(byBase, piece.base, piece);
    const add = (source: string, point: () => Point) => put(places, source, { piece: piece.name, point });
    for (const { source, path } of everyEdge(piece)) add(source, () => middleOf(path));
    for (const { source, from, to } of piece.darts) add(source, () => lerp(from, to, 0.5));
    for (const { source, point } of piece.notches) add(source, () => point);
    for (const { source, points, paths } of piece.marks) {
      if (points[0] !== undefined) add(source, () => points[0]!);
      else if (paths[0] !== undefined) add(source, () => middleOf(paths[0]!));
    }
  }
  return { pieces, byBase, places };
}

/** All else that is drawn of a piece, in the middle of its line: the grain, a fold, a hole, pleats. */
function linesOf(pattern: Pattern): ReadonlyMap<string, readonly Place[]> {
  const found = new Map<string, Place[]>();
  for (const piece of pattern.pieces)
    for (const line of drawnPiece(pattern, piece).lines) {
      const places = found.get(line.source) ?? [];
      if (line.source === piece.source || places.some((one) => one.piece === piece.name)) continue;
      found.set(line.source, [...places, { piece: piece.name, point: () => middleOf(pathOf(line)) }]);
    }
  return found;
}

const middleOf = (path: Path): Point => path.pointAt(path.length / 2);

/** Draws a pattern: every piece with its lines, dots and words, laid beside the others on one sheet. */
import { say } from '../../grammar/say';
import { boxOfPaths, Path, type Affine, type Box, type Point, type Segment } from '../geometry';
import type { Edge, Pattern, Piece, Seam } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { printLength } from '../drafting/values/quantity';
import type {
  Drawing,
  DrawnDot,
  DrawnLine,
  DrawnText,
  Frame,
  LineRole,
  PieceDrawing,
  Placement,
} from './model';
import { allowedWords } from './allowed';
import { dartDots, dartLines, fishDartLines } from './darts';
import { fullnessLines } from './fullness';
import { grainDrawn } from './grain';
import { drillLines } from './drills';
import { holeLines } from './holes';
import { inlayLines, inlayWords } from './inlays';
import { markDots, markLines } from './marks';
import { notchStrokes } from './notches';
import { openingEnds } from './openings';
import { partnerOf } from './partners';
import { pathLine, rounded, spot } from './path';
import { lineName } from './told';
import { isOpen, openingOf, otherDots, otherHalf, wholePiece } from './whole';
import { authoredOf, texts } from './words';

/** What a piece's drawing depends on besides the piece itself. */
export interface Around {
  readonly unit: Pattern['unit'];
  readonly body: string;
  readonly title: string;
  readonly seams: readonly Seam[];
}

const kept = new WeakMap<Piece, { readonly around: Around; readonly drawing: PieceDrawing }>();

/** Pieces that did not change keep their drawing, object for object. */
export function draw(pattern: Pattern): Drawing {
  const pieces = shown(pattern).map((piece) => drawnPiece(pattern, piece));
  const { placements, frame } = place(pieces);
  const { title, unit } = pattern;
  return { title, body: bodyOf(pattern), unit, pieces, placements, frame };
}

/** One piece of a pattern, whether or not it is cut. */
export const drawnPiece = (pattern: Pattern, piece: Piece): PieceDrawing =>
  drawPiece(piece, aroundOf(pattern, piece));

const bodyOf = ({ body }: Pattern): string =>
  body === undefined ? '' : [body.name, body.size ?? ''].join(' ').trim();

export const aroundOf = (pattern: Pattern, piece: Piece): Around => ({
  unit: pattern.unit,
  title: pattern.title,
  body: bodyOf(pattern),
  seams: pattern.seamsOf(piece.base),
});

/** What is cut, in the order of the drawing; a file of pieces without cutting words (a block) shows them all. */
export function shown(pattern: Pattern): readonly Piece[] {
  const cut = pattern.pieces.filter((piece) => piece.cut !== undefined);
  return cut.length > 0 ? cut : pattern.pieces;
}

const sameAround = (a: Around, b: Around): boolean =>
  a.unit === b.unit &&
  a.body === b.body &&
  a.title === b.title &&
  (a.seams === b.seams ||
    (a.seams.length === b.seams.length && a.seams.every((seam, i) => seam === b.seams[i])));

function drawPiece(piece: Piece, around: Around): PieceDrawing {
  const before = kept.get(piece);
  if (before !== undefined && sameAround(before.around, around)) return before.drawing;
  const drawing = drawn(piece, around);
  kept.set(piece, { around, drawing });
  return drawing;
}

function drawn(piece: Piece, around: Around): PieceDrawing {
  const opening = openingOf(piece);
  const whole = opening === undefined ? piece : wholePiece(piece, opening);
  const grain = grainDrawn(piece);
  const [half, dots] = [halfLines(piece, around), halfDots(piece)];
  const lines = [...half, ...(opening ? otherHalf(half, opening) : [])];
  const inTheWay = [...grain, ...lines.filter(({ role }) => role === 'centre')];
  const words: DrawnText[] = [...texts(whole, around, inTheWay), ...inlayWords(piece, around)];
  const authored = authoredOf(piece);
  const cutting = piece.cutting ?? [];
  const other = opening === undefined ? [] : cutting.map((path) => path.transformed(opening));
  const box = boxOfPaths([...whole.edges.map(({ path }) => path), ...cutting, ...other]);
  return {
    name: piece.name,
    source: piece.source,
    frame: frameOf(box),
    lines: [...cuttingLines(piece, opening), ...lines, ...grain],
    dots: [...dots, ...(opening ? otherDots(dots, opening) : [])],
    texts: words,
    ...(authored.length > 0 && { authored }),
    spoken: spoken(piece, around),
  };
}

/** What is drawn on the half or the whole that the pattern says, without its cutting line and its grain. */
export function halfLines(piece: Piece, around: Around): DrawnLine[] {
  return [
    ...sewingLines(piece, around),
    ...dartLines(piece, around),
    ...fishDartLines(piece, around),
    ...fullnessLines(piece, around),
    ...piece.balance.map(({ name: called, source, path }) => {
      const name = lineName(piece, called);
      return pathLine('balance', path, { name, source, tip: name });
    }),
    ...piece.notches.map((notch) => notchStrokes(piece, notch)).flat(),
    ...openingEnds(piece, around.seams, around.unit),
    ...drillLines(piece, around),
    ...markLines(piece, around),
    ...holeLines(piece),
    ...inlayLines(piece, around),
  ];
}

function halfDots(piece: Piece): DrawnDot[] {
  const corners = piece.corners.map(({ name, point }): DrawnDot => ({
    role: 'corner',
    source: cornerSource(piece, name),
    name,
    at: spot(point),
  }));
  return [...corners, ...dartDots(piece), ...markDots(piece)];
}

const cornerSource = (piece: Piece, corner: string): string =>
  `${piece.source.slice(0, piece.source.length - piece.base.length)}${piece.draft}/${corner}`;

/** One closed line, so that its corners are mitred by every printer; open where the cloth is folded and never cut. */
function cuttingLines(piece: Piece, opening: Affine | undefined): DrawnLine[] {
  if (piece.cutting === undefined) return [];
  const fold = foldOf(piece);
  const index = fold === undefined ? 0 : piece.edges.indexOf(fold) + 1;
  const around = [...piece.cutting.slice(index), ...piece.cutting.slice(0, index)].flatMap(
    (path) => path.segments,
  );
  const half = fold === undefined ? around : besideFold(around, alongFold(fold.path));
  if (half.length === 0) return [];
  const segments = opening === undefined ? half : bothHalves(Path.of(half), opening);
  const { name, source } = piece;
  const line = pathLine('cutting', Path.of(segments), { name, source, tip: say`${name}, cutting line` });
  return [{ ...line, closed: fold === undefined || opening !== undefined }];
}

const bothHalves = (half: Path, opening: Affine): readonly Segment[] => [
  ...half.segments,
  ...half.transformed(opening).reversed().segments,
];

const foldOf = (piece: Piece): Edge | undefined => piece.edges.find(({ name }) => name === piece.fold?.edge);

/** How far off the fold a cut may lie and still be the fold: rounding. */
const ON_FOLD = 0.01;

/** Whether a stretch of the cut lies along the fold. */
function alongFold(fold: Path): (segment: Segment) => boolean {
  const { start } = fold;
  const along = fold.tangentAt(0);
  const off = (p: Point): number => Math.abs((p.x - start.x) * along.y - (p.y - start.y) * along.x);
  return ({ kind, p0, p3 }) => kind === 'line' && off(p0) < ON_FOLD && off(p3) < ON_FOLD;
}

/** What is cut, from where it leaves the fold to where it comes back: it may leave a little aslant, where a hem is not square. */
function besideFold(around: readonly Segment[], isFold: (segment: Segment) => boolean): readonly Segment[] {
  const leaves = around.map(isFold).lastIndexOf(true) + 1;
  return [...around.slice(leaves), ...around.slice(0, leaves)].filter((segment) => !isFold(segment));
}

/** The cloth is folded through the allowances as well: the fold runs on to the cutting line at both ends. */
function foldPath(piece: Piece, fold: Edge): Path {
  const { start } = fold.path;
  const along = fold.path.tangentAt(0);
  const ends = (piece.cutting ?? [])
    .flatMap((path) => path.segments)
    .filter(alongFold(fold.path))
    .flatMap(({ p0, p3 }) => [p0, p3])
    .map((p) => (p.x - start.x) * along.x + (p.y - start.y) * along.y);
  const at = (s: number): Point => ({ x: start.x + along.x * s, y: start.y + along.y * s });
  return Path.line(at(Math.min(0, ...ends)), at(Math.max(fold.path.length, ...ends)));
}

function sewingLines(piece: Piece, around: Around): DrawnLine[] {
  return everyEdge(piece).map(({ name, source, path, sewn, drawn: onPaper }) => {
    const folded = isOpen(piece) ? 'centre' : 'fold';
    const role: LineRole = piece.fold?.edge === name ? folded : 'sewing';
    const closedBy =
      Math.abs(onPaper - sewn) > 0.005 ? say`, ${printLength(sewn, around.unit)} when sewn` : '';
    const partner = partnerOf(piece, name, around.seams, around.unit);
    const laid = role === 'fold' ? say`, on the fold` : role === 'centre' ? say`, centre of the whole` : '';
    const allowed = allowedWords(piece, name, around);
    const tip = `${name}, ${printLength(onPaper, around.unit)}${closedBy}${laid}${partner}${allowed}`;
    const fold = role === 'sewing' ? undefined : foldOf(piece);
    const line = pathLine(role, fold === undefined ? path : foldPath(piece, fold), { name, source, tip });
    return role === 'fold' ? { ...line, arrows: 'both' } : line;
  });
}

function spoken(piece: Piece, around: Around): string {
  const cut = piece.cut === undefined ? say`not cut` : piece.cut.text;
  const [edges, seams] = [piece.edges.length, around.seams.length];
  const edgesInWords = edges === 1 ? say`1 edge` : say`${edges} edges`;
  return [piece.name, cut, edgesInWords, seams === 1 ? say`1 seam` : say`${seams} seams`].join(', ');
}

const frameOf = (box: Box): Frame => ({
  left: rounded(box.minX),
  top: rounded(box.minY),
  right: rounded(box.maxX),
  bottom: rounded(box.maxY),
});

/** Paper left between two pieces, mm. */
const BETWEEN = 40;

/** A row of pieces is begun anew beyond this share of the side of a square that would hold them all. */
const ROW = 1.6;

/**
 * Pieces beside each other in file order, tops level, in rows.
 *
 * @param wide how wide a row may be, mm; unless told, about as wide as all of them are high
 */
export function place(
  pieces: readonly PieceDrawing[],
  wide?: number,
): { placements: readonly Placement[]; frame: Frame } {
  const sizes = pieces.map(({ frame }) => ({
    wide: frame.right - frame.left + BETWEEN,
    high: frame.bottom - frame.top + BETWEEN,
  }));
  const widest = Math.max(0, ...sizes.map((size) => size.wide));
  const usual = ROW * Math.sqrt(sizes.reduce((sum, one) => sum + one.wide * one.high, 0));
  const row = Math.max(widest, wide === undefined ? usual : wide + BETWEEN);
  const placements: Placement[] = [];
  let [x, y, high, right] = [0, 0, 0, 0];
  pieces.forEach((piece, i) => {
    const size = sizes[i]!;
    if (x > 0 && x + size.wide > row) [x, y, high] = [0, y + high, 0];
    placements.push({
      piece: piece.name,
      by: { x: rounded(x - piece.frame.left), y: rounded(y - piece.frame.top) },
    });
    x += size.wide;
    high = Math.max(high, size.high);
    right = Math.max(right, x);
  });
  const bottom = y + high;
  const none = pieces.length === 0;
  return {
    placements,
    frame: {
      left: 0,
      top: 0,
      right: none ? 0 : rounded(right - BETWEEN),
      bottom: none ? 0 : rounded(bottom - BETWEEN),
    },
  };
}

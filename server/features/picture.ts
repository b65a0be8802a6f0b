/**
 * A small picture of a piece, an edge or a curve, for a hover. It brings its own paper and ink, so that it reads on
 * any theme; it is made of numbers alone, so that no word of an author can get into its markup.
 */
import { inWords, say } from '../../grammar/say';
import type { DefinitionInfo, Pattern, Piece } from '../drafting/model';
import { drawnPiece } from '../drawing/draw';
import { arrowHeads, lineTypes, paintOrder } from '../drawing/lines';
import type { DrawnLine, LineRole, Spot } from '../drawing/model';
import { pathLine } from '../drawing/path';
import { plain } from './markdown';

export interface Picture {
  readonly svg: string;
  /** What it shows, for whoever can't see it. */
  readonly words: string;
}

/** The paper, px: high enough to tell a curve; any higher, and the hover of an editor would have to be scrolled. */
const [WIDTH, HEIGHT, MARGIN] = [260, 128, 9];
const PAPER = '#fffefa';
const INK = '#1d1d1b';
const QUIET = '#5f5f58';

/** Ink on a screen, px, for a millimetre of it on paper, and the least that is seen. */
const WEIGHT = 2.2;
const LEAST = 0.8;

/** What is drawn of a piece at this size; words, marks and construction would be dust. */
const SHOWN: ReadonlySet<LineRole> = new Set([
  ...(['cutting', 'hole', 'sewing', 'fold', 'grain', 'dart', 'centre', 'balance', 'notch'] as const),
]);

export function pictureOf(pattern: Pattern, info: DefinitionInfo): Picture | undefined {
  const piece = ownerOf(pattern, info.source);
  if (piece !== undefined) return ofPiece(pattern, piece, info);
  if (info.shape === undefined || info.shape.kind === 'point') return undefined;
  const line = pathLine('cutting', info.shape.path, { name: '', source: info.source, tip: '' });
  const words = `${info.name}, ${inWords(info.kind)}`;
  return svgOf([line], info.shape.path.isClosed() ? [] : [info.shape.path.start, info.shape.path.end], words);
}

/** The piece itself, or the one that an edge, a dart or a mark belongs to. */
function ownerOf(pattern: Pattern, source: string): Piece | undefined {
  const slash = source.lastIndexOf('/');
  const owner = slash < 0 ? source : source.slice(0, slash);
  return pattern.pieces.find((piece) => piece.source === source || piece.source === owner);
}

function ofPiece(pattern: Pattern, piece: Piece, info: DefinitionInfo): Picture | undefined {
  const { lines, spoken } = drawnPiece(pattern, piece);
  const shown = lines.filter(({ role, source }) => SHOWN.has(role) || source === info.source);
  const itself = piece.source === info.source;
  const heavy = itself ? undefined : info.source;
  return svgOf(shown, [], itself ? spoken : say`${info.name} on ${piece.name}`, heavy);
}

/** @param heavy the source of what is meant; then the rest is only there to show where it lies */
function svgOf(
  lines: readonly DrawnLine[],
  dots: readonly Spot[],
  words: string,
  heavy?: string,
): Picture | undefined {
  const fit = fitted(lines);
  if (fit === undefined) return undefined;
  const inOrder = paintOrder.flatMap((role) => lines.filter((line) => line.role === role));
  const last = (line: DrawnLine): number => (line.source === heavy && line.role === 'sewing' ? 1 : 0);
  const drawn = inOrder
    .sort((a, b) => last(a) - last(b))
    .map((line) => element(line, fit, heavy !== undefined && line.source === heavy, heavy !== undefined));
  const ends = dots.map((dot) => {
    const [x, y] = fit.at(dot.x, dot.y);
    return `<circle cx="${x}" cy="${y}" r="3" fill="${INK}"/>`;
  });
  const { width, height } = fit;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">` +
    `<rect x="0.5" y="0.5" width="${width - 1}" height="${height - 1}" rx="3" fill="${PAPER}" stroke="${QUIET}"/>` +
    `<g fill="none" stroke="${INK}" stroke-linejoin="round">${drawn.join('')}</g>${ends.join('')}</svg>`;
  return { svg, words };
}

interface Fit {
  readonly width: number;
  readonly height: number;
  at(x: number, y: number): readonly [number, number];
}

/** From millimetres to a paper that the lines fill; a long thin piece gets a lower paper, not a wider one. */
function fitted(lines: readonly DrawnLine[]): Fit | undefined {
  const all = lines.flatMap(spots).filter(([x, y]) => Number.isFinite(x) && Number.isFinite(y));
  if (all.length === 0) return undefined;
  const [left, right] = range(all.map(([x]) => x));
  const [top, bottom] = range(all.map(([, y]) => y));
  const [w, h] = [right - left, bottom - top];
  const scale = Math.min((WIDTH - 2 * MARGIN) / Math.max(w, 1), (HEIGHT - 2 * MARGIN) / Math.max(h, 1));
  const round = (px: number): number => Math.round(px * 10) / 10;
  const width = Math.max(60, Math.ceil(w * scale) + 2 * MARGIN);
  const height = Math.max(40, Math.ceil(h * scale) + 2 * MARGIN);
  const [dx, dy] = [(width - w * scale) / 2, (height - h * scale) / 2];
  return {
    ...{ width, height },
    at: (x, y) => [round((x - left) * scale + dx), round((y - top) * scale + dy)],
  };
}

function range(numbers: readonly number[]): readonly [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const one of numbers) [low, high] = [Math.min(low, one), Math.max(high, one)];
  return [low, high];
}

const spots = ({ start, stretches }: DrawnLine): readonly (readonly [number, number])[] => [
  [start.x, start.y],
  ...stretches.flatMap((to) => pairs(to)),
];

const pairs = (to: readonly number[]): readonly (readonly [number, number])[] =>
  Array.from({ length: to.length / 2 }, (_, i) => [to[2 * i]!, to[2 * i + 1]!] as const);

function element(line: DrawnLine, fit: Fit, heavy: boolean, beside: boolean): string {
  const { weight, dash } = lineTypes[line.role];
  const px = heavy
    ? line.role === 'sewing'
      ? 3.2
      : 1.6
    : Math.max(LEAST, weight * WEIGHT * (beside ? 0.6 : 1));
  const dashes = heavy ? [] : dash.map((mm) => Math.round((mm / weight) * px * 5) / 10);
  const to = line.stretches.map((stretch) => {
    const at = pairs(stretch).map(([x, y]) => fit.at(x, y).join(' '));
    return (stretch.length === 2 ? 'L' : 'C') + at.join(' ');
  });
  const d = `M${fit.at(line.start.x, line.start.y).join(' ')}${to.join('')}${line.closed ? 'Z' : ''}`;
  const ink = beside && !heavy ? ` stroke="${QUIET}"` : '';
  const dashed = dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.join(' ')}"`;
  const heads = arrowHeads(line).map(({ at, turn }) => {
    const place = `translate(${fit.at(at.x, at.y).join(' ')}) rotate(${Math.round(turn)})`;
    return `<path d="M0 0L-7 2V-2Z" transform="${place}" fill="${beside && !heavy ? QUIET : INK}" stroke="none"/>`;
  });
  return `<path d="${d}" stroke-width="${Math.round(px * 100) / 100}"${ink}${dashed}/>${heads.join('')}`;
}

/** The picture as Markdown that carries it along: nothing is fetched for it. */
export const asMarkdown = ({ svg, words }: Picture): string =>
  `![${plain(words)}](data:image/svg+xml;base64,${btoa(svg)})`;

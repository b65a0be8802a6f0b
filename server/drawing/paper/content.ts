/**
 * The operators that draw in a PDF (ISO 32000-1, section 8 and 9), written as text. Units are millimetres with y down:
 * whoever shows the content turns them into points, once.
 */
import { arrowHeads, lineTypeOf, paintOrder } from '../lines';
import type { DrawnDot, DrawnLine, DrawnText, Drawing, PieceDrawing } from '../model';

/** Turns a text into the glyphs of the font that is embedded: `<0034…>`, and how wide it runs at size 1. */
export interface Font {
  glyphs(text: string): string;
  widthOf(text: string): number;
}

/** Capital height as a share of the font size in the bundled font (Noto Sans: 714 of 1000 units). */
const CAPITAL_HEIGHT = 0.714;
const HEAD_LENGTH_MM = 5;
const HEAD_HALF_WIDTH_MM = 0.9;
const DOT_RADIUS_MM = { corner: 0.5, point: 0.6, mark: 0.8 } as const;
/** A circle of four cubics: the controls lie this far along the tangents (4/3 · tan(π/8)). */
const ROUND = 0.5522847498;

/** A number in a PDF: no exponent, a ten-thousandth of a millimetre. */
export const number = (value: number): string => {
  const rounded = Math.round(value * 1e4) / 1e4;
  return Number.isFinite(rounded) ? String(rounded === 0 ? 0 : rounded) : '0';
};
/** A straight line. */
export const stroke = (x1: number, y1: number, x2: number, y2: number): string =>
  `${number(x1)} ${number(y1)} m ${number(x2)} ${number(y2)} l S`;
const numbers = (...values: readonly number[]): string => values.map(number).join(' ');

/** The name under which a page's resources know the layer of a size: sizes are counted from 0. */
export const layerName = (index: number): string => `Size${index}`;

/** The whole drawing: every piece in its place; in a nest what belongs to a size stands in the layer of that size. */
export function drawingContent({ pieces, placements, sizes = [] }: Drawing, font: Font): string {
  const named = new Map(pieces.map((piece) => [piece.name, piece]));
  return placements
    .flatMap(({ piece, by }) => {
      const drawn = named.get(piece);
      return drawn === undefined
        ? []
        : [`q 1 0 0 1 ${numbers(by.x, by.y)} cm`, pieceContent(drawn, font, sizes), 'Q'];
    })
    .join('\n');
}

function pieceContent(piece: PieceDrawing, font: Font, sizes: readonly string[]): string {
  const roles = paintOrder.filter((role) => role !== 'construction');
  const layered = <T extends { readonly ofSize?: string }>(
    things: readonly T[],
    draw: (thing: T) => string,
  ) => things.map((thing) => inLayer(draw(thing), thing.ofSize, sizes));
  return [
    ...roles.flatMap((role) =>
      layered(
        piece.lines.filter((line) => line.role === role),
        (line) => lineContent(line, sizes),
      ),
    ),
    ...layered(
      piece.dots.filter(({ role }) => role !== 'point'),
      dotContent,
    ),
    ...layered(piece.texts, (text) => textContent(text, font)),
  ].join('\n');
}

/** ISO 32000-1, 8.11.3.2: what a reader can show and hide stands between BDC and EMC. */
function inLayer(content: string, size: string | undefined, sizes: readonly string[]): string {
  const index = size === undefined ? -1 : sizes.indexOf(size);
  return index < 0 ? content : `/OC /${layerName(index)} BDC\n${content}\nEMC`;
}

function lineContent(line: DrawnLine, sizes: readonly string[]): string {
  const { weight, dash } = lineTypeOf(line, sizes);
  const style = `${number(weight)} w [${numbers(...dash)}] 0 d ${dash.length > 0 ? 0 : 1} J 1 j`;
  const share = headShare(line);
  const heads = arrowHeads(line).map(({ at, turn }) => headContent(at.x, at.y, turn, share));
  return [`${style} ${pathContent(line)} ${line.closed ? 's' : 'S'}`, ...heads].join('\n');
}

export function pathContent({ start, stretches }: Pick<DrawnLine, 'start' | 'stretches'>): string {
  const parts = stretches.map((stretch) => `${numbers(...stretch)} ${stretch.length === 2 ? 'l' : 'c'}`);
  return [`${numbers(start.x, start.y)} m`, ...parts].join(' ');
}

/** A matrix that turns clockwise as seen and moves; y runs down. */
function matrix(x: number, y: number, turn: number): string {
  const angle = (turn * Math.PI) / 180;
  return numbers(Math.cos(angle), Math.sin(angle), -Math.sin(angle), Math.cos(angle), x, y);
}

function headContent(x: number, y: number, turn: number, share: number): string {
  const [back, half] = [-HEAD_LENGTH_MM * share, HEAD_HALF_WIDTH_MM * share];
  return `q ${matrix(x, y, turn)} cm 0 0 m ${numbers(back, half)} l ${numbers(back, -half)} l f Q`;
}

/** The heads of a short line are smaller, so that some of the line is seen between them. */
function headShare({ start, stretches }: DrawnLine): number {
  const [x, y] = stretches.at(-1)?.slice(-2) ?? [start.x, start.y];
  return Math.min(1, Math.hypot(x! - start.x, y! - start.y) / (4 * HEAD_LENGTH_MM));
}

function dotContent({ at: { x, y }, role }: DrawnDot): string {
  const r = DOT_RADIUS_MM[role];
  const k = ROUND * r;
  return [
    `${numbers(x + r, y)} m`,
    `${numbers(x + r, y + k, x + k, y + r, x, y + r)} c`,
    `${numbers(x - k, y + r, x - r, y + k, x - r, y)} c`,
    `${numbers(x - r, y - k, x - k, y - r, x, y - r)} c`,
    `${numbers(x + k, y - r, x + r, y - k, x + r, y)} c f`,
  ].join(' ');
}

function textContent({ at, text, size, turn, clear }: DrawnText, font: Font): string {
  const big = size / CAPITAL_HEIGHT;
  const drawn = words({ text, x: at.x, y: at.y, size: big, turn, middle: true }, font);
  if (clear !== true) return drawn;
  const half = (font.widthOf(text) * big) / 2 + size * 0.2;
  const bare = [-half, -size * 1.2, 2 * half, size * 1.4];
  return `q ${matrix(at.x, at.y, turn)} cm 1 g ${numbers(...bare)} re f Q\n${drawn}`;
}

export interface Words {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Font size, mm. */
  readonly size: number;
  readonly turn?: number;
  /** Round `x`, instead of from there. */
  readonly middle?: boolean;
}

/** A line of text on its base line. Glyphs stand upright, though y runs down. */
export function words({ text, x, y, size, turn = 0, middle = false }: Words, font: Font): string {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const back = middle ? (font.widthOf(text) * size) / 2 : 0;
  const place = numbers(cos, sin, sin, -cos, x - back * cos, y - back * sin);
  return `BT /F ${number(size)} Tf ${place} Tm ${font.glyphs(text)} Tj ET`;
}

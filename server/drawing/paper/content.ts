/**
 * The operators that draw in a PDF (ISO 32000-1, section 8 and 9), written as text. Units are millimetres with y down:
 * whoever shows the content turns them into points, once.
 */
import { arrowHeads, lineTypes, paintOrder } from '../lines';
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
const numbers = (...values: readonly number[]): string => values.map(number).join(' ');

/** The whole drawing: every piece in its place. */
export function drawingContent({ pieces, placements }: Drawing, font: Font): string {
  const named = new Map(pieces.map((piece) => [piece.name, piece]));
  return placements
    .flatMap(({ piece, by }) => {
      const drawn = named.get(piece);
      return drawn === undefined
        ? []
        : [`q 1 0 0 1 ${numbers(by.x, by.y)} cm`, pieceContent(drawn, font), 'Q'];
    })
    .join('\n');
}

function pieceContent(piece: PieceDrawing, font: Font): string {
  const roles = paintOrder.filter((role) => role !== 'construction');
  return [
    ...roles.flatMap((role) => piece.lines.filter((line) => line.role === role).map(lineContent)),
    ...piece.dots.filter(({ role }) => role !== 'point').map(dotContent),
    ...piece.texts.map((text) => textContent(text, font)),
  ].join('\n');
}

function lineContent(line: DrawnLine): string {
  const { weight, dash } = lineTypes[line.role];
  const style = `${number(weight)} w [${numbers(...dash)}] 0 d ${dash.length > 0 ? 0 : 1} J 1 j`;
  const heads = arrowHeads(line).map(({ at, turn }) => headContent(at.x, at.y, turn));
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

function headContent(x: number, y: number, turn: number): string {
  const [back, half] = [-HEAD_LENGTH_MM, HEAD_HALF_WIDTH_MM];
  return `q ${matrix(x, y, turn)} cm 0 0 m ${numbers(back, half)} l ${numbers(back, -half)} l f Q`;
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

const textContent = ({ at, text, size, turn }: DrawnText, font: Font): string =>
  words({ text, x: at.x, y: at.y, size: size / CAPITAL_HEIGHT, turn, middle: true }, font);

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

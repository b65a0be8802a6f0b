/**
 * Prints a drawing as SVG in full size: one user unit is one millimetre, paper white and ink black whatever the
 * editor's theme is. Presentation attributes only, no style sheet, no script, nothing from outside: programs that
 * drive a cutter read little else.
 */
import { say } from '../../grammar/say';
import type {
  DrawnDot,
  DrawnLine,
  DrawnText,
  Drawing,
  Frame,
  LineRole,
  PieceDrawing,
  Placement,
} from './model';
import {
  arrowHeads,
  decimal,
  HEAD_HALF_WIDTH_MM,
  HEAD_LENGTH_MM,
  lineTypeOf,
  paintOrder,
  pathData,
} from './lines';
import { legend, legendSize } from './legend';
import { titleOf } from './told';
import { group, leaf, text, type Attributes } from './xml';

export interface SvgOptions {
  /** White round the drawing, mm. */
  readonly margin?: number;
  /** Draw the lines and points of the draft as well. */
  readonly construction?: boolean;
  /** Leave out test square, ruler and key. */
  readonly bare?: boolean;
}

/** Capital height as a share of the font size in the bundled font (Noto Sans: 714 of 1000 units). */
export const CAPITAL_HEIGHT = 0.714;

const FONTS = "'Noto Sans', 'DejaVu Sans', Arial, Helvetica, sans-serif";
const DEFAULT_MARGIN_MM = 10;
const GAP_ABOVE_LEGEND_MM = 15;
const DOT_RADIUS_MM = { corner: 0.5, point: 0.6, mark: 0.8 } as const;

interface Layout {
  readonly paper: Frame;
  readonly legendTop: number;
}

/** The whole drawing as one SVG document ending with a line feed. Never throws; a piece without a place is left out. */
export function toSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const layout = layOut(drawing, options);
  const { left, top, right, bottom } = layout.paper;
  const width = right - left;
  const height = bottom - top;
  const root = {
    xmlns: 'http://www.w3.org/2000/svg',
    width: `${decimal(width)}mm`,
    height: `${decimal(height)}mm`,
    viewBox: [left, top, width, height].map(decimal).join(' '),
    'font-family': FONTS,
    fill: '#000',
  };
  const parts = [
    text('title', {}, titleOf(drawing)),
    text('desc', {}, say`Full size. The finished size is the thin dashed line.`),
    leaf('rect', { class: 'paper', x: left, y: top, width, height, fill: '#fff' }),
    ...pieces(drawing, options),
    ...(options.bare ? [] : [legend(drawing, left + marginOf(options), layout.legendTop)]),
  ];
  return `<?xml version="1.0" encoding="UTF-8"?>\n${group('svg', root, parts)}\n`;
}

function marginOf(options: SvgOptions): number {
  return Math.max(0, options.margin ?? DEFAULT_MARGIN_MM);
}

function layOut(drawing: Drawing, options: SvgOptions): Layout {
  const margin = marginOf(options);
  const { left, top, right, bottom } = drawing.frame;
  const legendTop = bottom + (bottom > top ? GAP_ABOVE_LEGEND_MM : 0);
  const size = options.bare ? { width: 1, height: 1 } : legendSize(drawing);
  const paper = {
    left: left - margin,
    top: top - margin,
    right: Math.max(right, left + size.width) + margin,
    bottom: (options.bare ? Math.max(bottom, top + 1) : legendTop + size.height) + margin,
  };
  return { paper, legendTop };
}

function pieces(drawing: Drawing, options: SvgOptions): string[] {
  const named = new Map(drawing.pieces.map((piece) => [piece.name, piece]));
  const identifiers = new Identifiers();
  return drawing.placements.flatMap((placement) => {
    const piece = named.get(placement.piece);
    return piece
      ? [pieceGroup(piece, placement, identifiers.of('piece-', piece.name), { ...options, ...drawing })]
      : [];
  });
}

/** Names that XML allows, made from names of an author, each one once in the document: vector programs list them. */
class Identifiers {
  private readonly taken = new Set<string>();

  of(before: string, name: string): string {
    const plain = `${before}${name.replace(/[^A-Za-z0-9-]/gu, (sign) => `_${sign.codePointAt(0)!.toString(16)}_`)}`;
    let id = plain;
    for (let i = 2; this.taken.has(id); i++) id = `${plain}.${i}`;
    this.taken.add(id);
    return id;
  }
}

function pieceGroup(
  piece: PieceDrawing,
  placement: Placement,
  id: string,
  { sizes, construction = false }: SvgOptions & Pick<Drawing, 'sizes'>,
): string {
  const { x, y } = placement.by;
  const attributes = { id, class: 'piece', transform: `translate(${decimal(x)} ${decimal(y)})` };
  const found = { sizes: sizes ?? [], construction };
  return group('g', attributes, [
    text('title', {}, piece.spoken || piece.name),
    ...drawnGroups(only(piece, undefined), id, found),
    ...found.sizes.flatMap((size, i) => {
      const name = `${id}.size-${i + 1}`;
      const inside = drawnGroups(only(piece, size), name, found);
      const title = text('title', {}, say`${piece.name}, size ${size}`);
      return inside.length === 0 ? [] : [group('g', { id: name, class: 'size' }, [title, ...inside])];
    }),
  ]);
}

/** What a piece has for one size of a nest; for no size: what all of them share. */
function only({ lines, dots, texts }: PieceDrawing, size: string | undefined): Drawn {
  const own = ({ ofSize }: { readonly ofSize?: string }): boolean => ofSize === size;
  return { lines: lines.filter(own), dots: dots.filter(own), texts: texts.filter(own) };
}

type Drawn = Pick<PieceDrawing, 'lines' | 'dots' | 'texts'>;

/** Lines by what they are, from the quietest to the loudest, then dots and words; each under a name of its own. */
function drawnGroups(
  { lines, dots, texts }: Drawn,
  id: string,
  { sizes, construction }: { readonly sizes: readonly string[]; readonly construction: boolean },
): string[] {
  const roles = paintOrder.filter((role) => role !== 'construction' || construction);
  return [
    ...roles.flatMap((role) => lineGroup(role, lines, id, sizes)),
    ...dotGroup(
      dots.filter((dot) => dot.role !== 'point' || construction),
      id,
    ),
    ...textGroup(texts, id),
  ];
}

function lineGroup(
  role: LineRole,
  all: readonly DrawnLine[],
  id: string,
  sizes: readonly string[],
): string[] {
  const lines = all.filter((line) => line.role === role);
  if (lines.length === 0) return [];
  const type = lineTypeOf(lines[0]!, sizes);
  const attributes = {
    id: `${id}.${role}`,
    class: role,
    fill: 'none',
    stroke: '#000',
    'stroke-width': type.weight,
    'stroke-linejoin': 'round',
    ...(type.dash.length
      ? { 'stroke-dasharray': type.dash.map(decimal).join(' ') }
      : { 'stroke-linecap': 'round' }),
  };
  const identifiers = new Identifiers();
  const named = lines.flatMap((line) => lineElements(line, identifiers.of(`${id}.${role}.`, line.name)));
  return [group('g', attributes, named)];
}

function lineElements(line: DrawnLine, id: string): string[] {
  const path = leaf('path', { id, d: pathData(line) }, text('title', {}, line.tip || line.name));
  return [path, ...arrowHeads(line).map(({ at, turn }) => headElement(at.x, at.y, turn))];
}

function headElement(x: number, y: number, turn: number): string {
  const place = `translate(${decimal(x)} ${decimal(y)}) rotate(${decimal(turn)})`;
  const d = `M0 0L${-HEAD_LENGTH_MM} ${HEAD_HALF_WIDTH_MM}V${-HEAD_HALF_WIDTH_MM}Z`;
  return leaf('path', { class: 'arrow', transform: place, d, fill: '#000', stroke: 'none' });
}

function dotGroup(dots: readonly DrawnDot[], id: string): string[] {
  if (dots.length === 0) return [];
  const circles = dots.map((dot) =>
    leaf('circle', { cx: dot.at.x, cy: dot.at.y, r: DOT_RADIUS_MM[dot.role] }, text('title', {}, dot.name)),
  );
  return [group('g', { id: `${id}.dots`, class: 'dots' }, circles)];
}

function textGroup(texts: readonly DrawnText[], id: string): string[] {
  if (texts.length === 0) return [];
  const attributes = { id: `${id}.texts`, class: 'texts', 'text-anchor': 'middle' };
  return [group('g', attributes, texts.flatMap(textElements))];
}

/** Width of a letter of the bundled font against its capitals, taken so wide that no letter stands on a line. */
const LETTER = 1;

/** Words that stand on lines have bare paper behind them. */
function textElements(drawn: DrawnText): string[] {
  if (drawn.clear !== true) return [textElement(drawn)];
  const { at, size, turn } = drawn;
  const [wide, high] = [drawn.text.length * size * LETTER, size * 1.3];
  const transform = `translate(${decimal(at.x)} ${decimal(at.y)}) rotate(${decimal(turn)})`;
  const box = { x: -wide / 2, y: -size * 1.15, width: wide, height: high, fill: '#fff', transform };
  return [leaf('rect', { class: 'clear', ...box }), textElement(drawn)];
}

function textElement(drawn: DrawnText): string {
  const { x, y } = drawn.at;
  const turn: Attributes = drawn.turn
    ? { transform: `rotate(${decimal(drawn.turn)} ${decimal(x)} ${decimal(y)})` }
    : {};
  return text(
    'text',
    { class: drawn.role, x, y, 'font-size': drawn.size / CAPITAL_HEIGHT, ...turn },
    drawn.text,
  );
}

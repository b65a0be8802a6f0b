/** Draws one piece of the model as SVG nodes. Weights, dashes and colours are in the style sheet, by class. */
import { say } from '../../../grammar/say';
import type { DrawnDot, DrawnLine, DrawnText, PieceDrawing } from '../../../server/drawing/model';
import { arrowHeads, lineTypeOf, paintOrder, pathData } from '../../../server/drawing/lines';
import { styled, svg } from './dom';
import { labelOf } from './lettering';
import { labelGroup, staleNote, textGroup } from './words';

/** A closed head of about 25°, in screen pixels; the style sheet keeps its size at every zoom. */
const HEAD = 'M0 0L-10 2.2V-2.2Z';
/** Screen pixels for a millimetre of line width: the cutting line of 0.7 mm becomes two pixels, at every zoom. */
const PX_PER_MM_OF_WEIGHT = 2 / 0.7;

export const px = (mm: number): number => Math.round(mm * PX_PER_MM_OF_WEIGHT * 100) / 100;

/** A stretch too short to be seen: a round cap makes it a dot of the same size at every zoom. */
const DOT = 'h.001';

/**
 * The node of a piece, in the piece's own millimetres: its body, then each thing (what one statement drew) with a
 * wide unseen line that makes it easy to point at, then dots and words. `stale`: why it is drawn as it was before.
 */
export function drawPiece(
  piece: PieceDrawing,
  stale: string | undefined,
  sizes: readonly string[] = [],
): SVGGElement {
  const spoken = stale === undefined ? piece.spoken : say`${piece.spoken}. As last drawn: ${stale}`;
  return svg(
    'g',
    {
      class: stale === undefined ? 'piece' : 'piece stale',
      'data-piece': piece.name,
      'data-source': piece.source,
      'data-tip': stale === undefined ? undefined : say`As last drawn: ${stale}`,
      role: 'group',
      'aria-label': spoken || piece.name,
      tabindex: -1,
    },
    svg('path', { class: 'body', d: bodyPath(piece) }),
    ...thingsOf(piece).map((lines) => drawThing(lines, piece, sizes)),
    ...piece.dots.map(drawDot),
    ...drawWords(piece.texts, piece),
    ...(stale === undefined ? [] : [staleNote(piece.frame)]),
  );
}

/** The lines of each source together, the quietest things first. */
function thingsOf(piece: PieceDrawing): DrawnLine[][] {
  const bySource = new Map<string, DrawnLine[]>();
  for (const line of piece.lines) {
    const key = `${line.source}\n${line.ofSize ?? ''}`;
    bySource.set(key, [...(bySource.get(key) ?? []), line]);
  }
  const loudness = (lines: readonly DrawnLine[]) =>
    Math.max(...lines.map(({ role }) => paintOrder.indexOf(role)));
  return [...bySource.values()].sort((a, b) => loudness(a) - loudness(b));
}

function drawThing(lines: readonly DrawnLine[], piece: PieceDrawing, sizes: readonly string[]): SVGGElement {
  const { source, name } = lines[0]!;
  const tip = lines.find((line) => line.tip)?.tip ?? name;
  // The outline of a whole piece is the piece itself: no stop of its own for the keyboard.
  const own = source !== piece.source;
  return svg(
    'g',
    {
      class: own ? 'thing' : 'thing whole',
      'data-source': source,
      'data-tip': tip,
      ...(own ? { role: 'button', 'aria-label': tip, tabindex: -1 } : { 'aria-hidden': 'true' }),
    },
    ...lines.flatMap((line) => drawLine(line, sizes)),
  );
}

function drawLine(line: DrawnLine, sizes: readonly string[]): SVGElement[] {
  const d = pathData(line);
  return [
    svg('path', { class: `hit ${line.role}`, d }),
    sized(svg('path', { class: `line ${line.role}`, d }), line, sizes),
    ...arrowHeads(line).map(({ at, turn }) =>
      svg(
        'g',
        { class: `head ${line.role}`, transform: `translate(${at.x} ${at.y}) rotate(${turn})` },
        svg('path', { class: 'steady', d: HEAD }),
      ),
    ),
  ];
}

/** In a nest each size has its own dash and weight. */
function sized(path: SVGPathElement, line: DrawnLine, sizes: readonly string[]): SVGPathElement {
  if (line.ofSize === undefined) return path;
  const { weight, dash } = lineTypeOf(line, sizes);
  return styled(path, { '--weight': `${px(weight)}px`, '--dash': dashesOf(dash) });
}

export const dashesOf = (dash: readonly number[]): string =>
  dash.length === 0 ? 'none' : dash.map((mm) => `${px(mm)}px`).join(' ');

function drawDot(dot: DrawnDot): SVGGElement {
  const d = `M${dot.at.x} ${dot.at.y}${DOT}`;
  return svg(
    'g',
    {
      ...{ class: `dot ${dot.role}`, 'data-source': dot.source, 'data-tip': dot.name },
      ...{ role: 'button', 'aria-label': spokenDot(dot), tabindex: -1 },
    },
    svg('path', { class: 'hit', d }),
    svg('path', { class: 'spot', d }),
  );
}

const spokenDot = ({ name, ofSize }: DrawnDot): string =>
  ofSize === undefined ? say`${name}, point` : say`${name}, point, size ${ofSize}`;

function drawWords(texts: readonly DrawnText[], piece: PieceDrawing): SVGGElement[] {
  const label = labelOf(piece);
  const rest = texts.filter((text) => !label.includes(text));
  return [...(label.length ? [labelGroup(label)] : []), ...rest.map(textGroup)];
}

/** What is pointed at when no line is: the piece without its holes. */
function bodyPath(piece: PieceDrawing): string {
  const holes = piece.lines.filter(({ role, closed }) => closed && role === 'hole');
  return outerPath(piece) + holes.map(pathData).join('');
}

/** The closed outline, or the outer lines end to end, or nothing. */
function outerPath(piece: PieceDrawing): string {
  const closed = piece.lines.find(({ role, closed }) => closed && role === 'cutting');
  if (closed) return pathData(closed);
  const cutting = piece.lines.filter(({ role }) => role === 'cutting');
  const outer = cutting.length
    ? cutting
    : piece.lines.filter(({ role }) => role === 'sewing' || role === 'fold');
  return outer.map((line, i) => (i === 0 ? pathData(line) : pathData(line).replace('M', 'L'))).join('');
}

/** Sets how often a millimetre goes into a screen pixel, for all that keeps its size on the screen. */
export function setZoom(stage: SVGSVGElement, zoom: number): void {
  styled(stage, { '--zoom': zoom });
}

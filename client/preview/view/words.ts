/** Draws the words of a piece: sized on paper, but grown on the screen where they could not be read. */
import type { DrawnText, Frame } from '../../../server/drawing/model';
import { say } from '../../../grammar/say';
import { styled, svg } from './dom';

/** Capital height as a share of the font size, for common screen fonts. */
const CAPITAL_HEIGHT = 0.72;
/** Mean width of a letter as a share of the font size: enough to guess a line's length without measuring it. */
const LETTER_WIDTH = 0.56;
/** A label may be grown until it fills so much of its piece. */
const LABEL_SHARE = 0.92;

const NOTE_LETTER_PX = 6.2;
const NOTE_HEIGHT_PX = 20;

/** Piece, pattern, body and cut words: one block that grows about its own middle, so that its lines never collide. */
export function labelGroup(texts: readonly DrawnText[], frame: Frame): SVGGElement {
  const x = texts[0]!.at.x;
  const y = (texts[0]!.at.y + texts[texts.length - 1]!.at.y) / 2;
  const lines = texts.map((text) => textNode(text, text.at.x - x, text.at.y - y));
  const grown = svg('g', { class: 'grow' }, ...lines);
  const most = Math.max(1, LABEL_SHARE * Math.min(...roomFor(texts, frame)));
  styled(grown, { '--cap': Math.max(...texts.map(({ size }) => size)), '--most': most });
  return svg('g', { class: 'label', transform: `translate(${x} ${y})` }, grown);
}

/** How often the label goes into its piece, across and down. */
function roomFor(texts: readonly DrawnText[], frame: Frame): [number, number] {
  const widths = texts.map(({ text, size }) => (text.length * LETTER_WIDTH * size) / CAPITAL_HEIGHT);
  const high = Math.abs(texts[texts.length - 1]!.at.y - texts[0]!.at.y) + 2 * texts[0]!.size;
  return [(frame.right - frame.left) / Math.max(...widths), (frame.bottom - frame.top) / high];
}

/** A text by itself: along an edge, or a note. */
export function textGroup(text: DrawnText): SVGGElement {
  const grown = styled(svg('g', { class: 'grow' }, textNode(text, 0, 0)), {
    '--cap': text.size,
    '--most': 2.5,
  });
  const place = `translate(${text.at.x} ${text.at.y}) rotate(${text.turn})`;
  return svg('g', { class: `words ${text.role}`, transform: place, 'data-source': text.source }, grown);
}

function textNode(text: DrawnText, x: number, y: number): SVGTextElement {
  return styled(svg('text', { class: text.role, x, y }, ...nameAndLength(text)), {
    'font-size': `${text.size / CAPITAL_HEIGHT}px`,
  });
}

/** The name of an edge and its length can be shown each without the other. */
function nameAndLength({ text, length }: DrawnText): (Node | string)[] {
  if (length === undefined || !text.endsWith(` ${length}`)) return [text];
  const name = text.slice(0, text.length - length.length - 1);
  return [svg('tspan', { class: 'name' }, name), svg('tspan', { class: 'length' }, ` ${length}`)];
}

/**
 * The note on a piece that shows an older state of the text: a tag across its lower edge, never wider than the piece.
 * Why is said by the tip and by the list of problems: a sentence on every piece would cover its neighbours.
 */
export function staleNote(frame: Frame): SVGGElement {
  const note = say`as last drawn`;
  const width = note.length * NOTE_LETTER_PX + 16;
  const tag = svg(
    'g',
    { class: 'steady limited' },
    svg('rect', { x: -width / 2, y: -NOTE_HEIGHT_PX / 2, width, height: NOTE_HEIGHT_PX, rx: 2 }),
    svg('text', { x: 0, y: 4 }, note),
  );
  styled(tag, { '--most': (frame.right - frame.left) / width });
  const place = `translate(${(frame.left + frame.right) / 2} ${frame.bottom})`;
  return svg('g', { class: 'stale-note', transform: place, 'aria-hidden': 'true' }, tag);
}

/** Draws the words of a piece: sized on paper, but grown on the screen where they could not be read. */
import type { DrawnText, Frame } from '../../../server/drawing/model';
import { styled, svg } from './dom';

/** Capital height as a share of the font size, for common screen fonts. */
const CAPITAL_HEIGHT = 0.72;
/** Mean width of a letter as a share of the font size: enough to guess a line's length without measuring it. */
const LETTER_WIDTH = 0.56;
/** A label may be grown until it fills so much of its piece. */
const LABEL_SHARE = 0.92;

const NOTE_AWAY_PX = 6;
const NOTE_LINE_PX = 16;
const NOTE_LETTER_PX = 6.6;
const NOTE_LETTERS = 34;
const NOTE_LINES = 3;

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
  return styled(svg('text', { class: text.role, x, y }, text.text), {
    'font-size': `${text.size / CAPITAL_HEIGHT}px`,
  });
}

/** The note on a piece that shows an older state of the text: hung below the piece, where it hides nothing of it. */
export function staleNote(reason: string, frame: Frame): SVGGElement {
  const lines = wrapped(`as last drawn: ${reason}`);
  const width = Math.max(...lines.map(({ length }) => length)) * NOTE_LETTER_PX + 20;
  const height = lines.length * NOTE_LINE_PX + 12;
  const note = svg(
    'g',
    { class: 'steady limited' },
    svg('rect', { x: -width / 2, y: NOTE_AWAY_PX, width, height, rx: 2 }),
    ...lines.map((line, i) => svg('text', { x: 0, y: NOTE_AWAY_PX + 18 + i * NOTE_LINE_PX }, line)),
  );
  styled(note, { '--most': (1.3 * (frame.right - frame.left)) / width });
  const place = `translate(${(frame.left + frame.right) / 2} ${frame.bottom})`;
  return svg('g', { class: 'stale-note', transform: place, 'aria-hidden': 'true' }, note);
}

/** Cut at spaces into a few short lines; what is left over is in the tip. */
function wrapped(text: string): string[] {
  const lines = [''];
  for (const word of text.split(/\s+/)) {
    const last = lines[lines.length - 1]!;
    if (last && last.length + word.length >= NOTE_LETTERS) lines.push(word);
    else lines[lines.length - 1] = last ? `${last} ${word}` : word;
  }
  if (lines.length <= NOTE_LINES) return lines;
  return [...lines.slice(0, NOTE_LINES - 1), `${lines[NOTE_LINES - 1]} …`];
}

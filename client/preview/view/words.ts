/** Draws the words of a piece: sized on paper, but grown on the screen where they could not be read. */
import type { DrawnText, Frame, PieceDrawing, Spot } from '../../../server/drawing/model';
import { say } from '../../../grammar/say';
import { styled, svg } from './dom';
import { CAPITAL_HEIGHT, edgeWordsOf, lettered, middleOf } from './lettering';

const NOTE_LETTER_PX = 6.2;
const NOTE_HEIGHT_PX = 20;

/** Piece, pattern, body and cut words: one block, drawn about its own middle, so that its lines never collide. */
export function labelGroup(texts: readonly DrawnText[]): SVGGElement {
  const { x, y } = middleOf(texts);
  const lines = texts.map((text) => textNode(text, text.at.x - x, text.at.y - y));
  return svg('g', { class: 'label', transform: `translate(${x} ${y})` }, ...lines);
}

/** A text by itself: along an edge, or a note. */
export function textGroup(text: DrawnText): SVGGElement {
  const words = textNode(text, 0, 0);
  const grown =
    text.role === 'edge'
      ? words
      : styled(svg('g', { class: 'grow' }, words), { '--cap': text.size, '--most': 2.5 });
  const attributes = { transform: placeOf(text, text.at, 1), 'data-source': text.source };
  return svg('g', { class: `words ${text.role}`, ...attributes }, grown);
}

const placeOf = ({ turn }: Pick<DrawnText, 'turn'>, { x, y }: Spot, scale: number): string =>
  `translate(${x} ${y}) rotate(${turn}) scale(${scale})`;

/** Sets the words of a piece for a zoom: as large as can be read, where there is room beside the signs of its problems. */
export function letter(
  node: SVGGElement,
  piece: PieceDrawing,
  zoom: number,
  signs: readonly Spot[] = [],
): void {
  const { label, edges } = lettered(piece, zoom, signs);
  const block = node.querySelector<SVGGElement>(':scope > .label');
  block?.classList.toggle('crowded', label === undefined);
  block?.classList.toggle('bare', label?.bare === true);
  block?.classList.toggle('upward', label?.upward === true);
  if (label)
    block?.setAttribute('transform', placeOf({ turn: label.upward ? -90 : 0 }, label.at, label.scale));
  const texts = edgeWordsOf(piece);
  node.querySelectorAll<SVGGElement>(':scope > .words.edge').forEach((words, i) => {
    const at = edges[i];
    words.classList.toggle('crowded', at === undefined);
    if (at) words.setAttribute('transform', placeOf(texts[i]!, at.at, at.scale));
  });
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

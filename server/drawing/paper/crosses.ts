/** The crosses by which papers are laid on one another, with the names of both beside them, clear of the pieces. */
import type { Drawing, PieceDrawing, Spot } from '../model';
import { runs } from './along';
import { stroke, words, type Font } from './content';
import { metrics } from './font';
import { rectOfText, Space, type Rect } from './space';
import { MARGIN_MM, OVERLAP_MM, withMarks, type Free, type MatchMark, type Tile, type Tiling } from './tiles';

/** Half the width of a cross, and from its end to a name, mm. */
const [CROSS_MM, BESIDE_MM] = [4, 1];
/** Size of type, mm: capitals of 2.5 mm. */
const NAME = 3.5;
const CAPITAL = 0.714 * NAME;
/** From one name to the one below it. */
const ROW_MM = CAPITAL + 1.2;

/** From a name to the side of the strip. */
const CLEAR_MM = 0.4;

interface Named extends Spot {
  readonly text: string;
  readonly wide: number;
}

/**
 * The names within the strip in which the papers lap over each other, each from the left end of its base line: above one
 * another in a strip that stands, side by side in one that lies.
 */
export function namesOf(
  { at: { x, y }, between, beside, before, aside }: MatchMark,
  font: Pick<Font, 'widthOf'>,
): readonly Named[] {
  const off = CROSS_MM + BESIDE_MM;
  const wide = (text: string): number => font.widthOf(text) * NAME;
  const by = (room: number): number => aside * Math.max(0, (OVERLAP_MM - room) / 2 - CLEAR_MM);
  if (beside) {
    const first = before ? y - off - ROW_MM : y + off + CAPITAL;
    return between.map((text, i) => ({
      text,
      wide: wide(text),
      x: x + by(wide(text)) - wide(text) / 2,
      y: first + i * ROW_MM,
    }));
  }
  const text = between.join(' ');
  return [
    { text, wide: wide(text), x: before ? x - off - wide(text) : x + off, y: y + by(CAPITAL) + CAPITAL / 2 },
  ];
}

export function crossContent(mark: MatchMark, { frame }: Tile, font: Font): string {
  const by = { x: MARGIN_MM - frame.left, y: MARGIN_MM - frame.top };
  const [x, y] = [mark.at.x + by.x, mark.at.y + by.y];
  return [
    stroke(x - CROSS_MM, y, x + CROSS_MM, y),
    stroke(x, y - CROSS_MM, x, y + CROSS_MM),
    ...namesOf(mark, font).map((name) =>
      words({ text: name.text, x: name.x + by.x, y: name.y + by.y, size: NAME }, font),
    ),
  ].join('\n');
}

/** The tiling with its crosses clear of lines and words, as far as that can be. */
export function clearMarks(tiling: Tiling, { pieces, placements }: Drawing): Tiling {
  const named = new Map(pieces.map((piece) => [piece.name, piece]));
  const laid = placements.flatMap(({ piece, by }) => {
    const drawn = named.get(piece);
    if (drawn === undefined) return [];
    const { frame, texts } = drawn;
    return [{ by, frame, everything: spaceOf(drawn), words: spaceOf({ lines: [], dots: [], texts }) }];
  });
  const free: Free = (mark, of) => {
    const rects = namesOf(mark, metrics()).map(rectOf);
    const cross = { ...mark.at, wide: 2 * CROSS_MM, high: 2 * CROSS_MM, turn: 0 };
    return laid.every(({ by, frame, everything, words: said }) => {
      const clear = (space: Space, rect: Rect): boolean => {
        const [x, y] = [rect.x - by.x, rect.y - by.y];
        const [w, h] = [rect.wide / 2 + 1, rect.high / 2 + 1];
        const { left, top, right, bottom } = frame;
        const isNear = x > left - w && x < right + w && y > top - h && y < bottom + h;
        return !isNear || space.free({ ...rect, x, y });
      };
      return (
        rects.every((rect) => clear(of === 'words' ? said : everything, rect)) &&
        clear(of === 'everything' ? everything : said, cross)
      );
    });
  };
  return withMarks(tiling, free);
}

const rectOf = ({ x, y, wide }: Named): Rect => ({
  x: x + wide / 2,
  y: y - CAPITAL / 2,
  wide,
  high: CAPITAL,
  turn: 0,
});

function spaceOf(piece: Pick<PieceDrawing, 'lines' | 'dots' | 'texts'>): Space {
  const space = new Space(piece);
  for (const text of piece.texts) space.add(rectOfText(text, runs(text.text, text.size, metrics())));
  return space;
}

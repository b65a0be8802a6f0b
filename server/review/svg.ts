/**
 * Plates as SVG: unchanged thin, what was dashed, what is solid and heavier; lost and gained areas hatched two ways, so
 * that the drawing is read in black and white. Classes let a page show one side alone.
 */
import { say } from '../../grammar/say';
import type { Path, Point, Region } from '../geometry';
import { decimal } from '../drawing/lines';
import { CAPITAL_HEIGHT } from '../drawing/svg';
import { group, leaf, text, type Attributes } from '../drawing/xml';
import type { Look, Plate } from './plate';
import { RING } from './spread';

const FONTS = "'Noto Sans', 'DejaVu Sans', Arial, Helvetica, sans-serif";

const LOOKS = ['same', 'was', 'now'] as const;
const AREAS = ['lost', 'gained'] as const;

/** Widths of lines and dashes in heights of a letter. */
const WEIGHTS: Readonly<Record<Look, number>> = { same: 0.07, was: 0.11, now: 0.18 };
const OUTLINE = 1;
const ON_PIECE = 0.7;
const DASH = [0.75, 0.4];

/** A letter of a title takes this width, in heights of a letter, on the average and a little more. */
const TITLE_WIDTH = 1.15;

/** Millimetres of paper between two plates, in heights of a letter. */
const BETWEEN = 4;
/** A row of plates is begun anew beyond this share of the side of a square that would hold them all. */
const ROW = 1.6;

export interface SvgPlates {
  /** The elements of the drawing, and what they take of the paper. */
  readonly body: readonly string[];
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A document of its own: white paper, black ink, a key. */
export function plateDocument(title: string, plates: readonly Plate[]): string {
  const { body, left, top, width, height } = plateElements(plates);
  const root = {
    xmlns: 'http://www.w3.org/2000/svg',
    width: `${decimal(width)}mm`,
    height: `${decimal(height)}mm`,
    viewBox: [left, top, width, height].map(decimal).join(' '),
    'font-family': FONTS,
    fill: '#000',
    stroke: 'none',
  };
  const paper = leaf('rect', { class: 'paper', x: left, y: top, width, height, fill: '#fff' });
  return `<?xml version="1.0" encoding="UTF-8"?>\n${group('svg', root, [text('title', {}, title), paper, ...body])}\n`;
}

/** All plates beside each other in rows, with the key below. */
export function plateElements(plates: readonly Plate[]): SvgPlates {
  const size = Math.max(3, ...plates.map((plate) => plate.size));
  const gap = BETWEEN * size;
  const sizes = plates.map(({ frame, title }) => ({
    wide: Math.max(frame.maxX - frame.minX, title.length * TITLE_WIDTH * size),
    high: frame.maxY - frame.minY + 3 * size,
  }));
  const most = Math.max(
    60 * size,
    ROW * Math.sqrt(sizes.reduce((sum, one) => sum + (one.wide + gap) * (one.high + gap), 0)),
    ...sizes.map(({ wide }) => wide),
  );
  let [x, y, high, right] = [0, 0, 0, 0];
  const body = plates.map((plate, i) => {
    const one = sizes[i]!;
    if (x > 0 && x + one.wide > most) [x, y, high] = [0, y + high + gap, 0];
    const drawn = plateGroup(plate, { x: x - plate.frame.minX, y: y - plate.frame.minY + 3 * size }, size);
    right = Math.max(right, x + one.wide);
    x += one.wide + gap;
    high = Math.max(high, one.high);
    return drawn;
  });
  const keyTop = y + high + gap;
  const width = Math.max(right, keyLayout().wide * size);
  return {
    body: [hatches(size), ...body, ...(plates.length === 0 ? [] : [key(size, keyTop)])],
    ...{ left: -size, top: -size, width: width + 2 * size, height: keyTop + 5 * size },
  };
}

/** Lost leans to the left and is dotted, gained leans to the right and is whole. */
function hatches(size: number): string {
  const pitch = 0.55 * size;
  const pattern = (id: string, turn: number, dash: Readonly<Record<string, string>>) =>
    leaf(
      'pattern',
      {
        id,
        width: pitch,
        height: pitch,
        patternUnits: 'userSpaceOnUse',
        patternTransform: `rotate(${turn})`,
      },
      leaf('path', {
        d: `M0 ${decimal(pitch / 2)}H${decimal(pitch)}`,
        class: 'hatch',
        stroke: '#000',
        'stroke-width': 0.07 * size,
        ...dash,
      }),
    );
  return group('defs', {}, [
    pattern('hatch-lost', 45, { 'stroke-dasharray': `${decimal(pitch * 0.28)} ${decimal(pitch * 0.22)}` }),
    pattern('hatch-gained', -45, {}),
  ]);
}

function plateGroup(plate: Plate, by: Point, title: number): string {
  const { size, frame, lines, lost, gained, arrows, marks } = plate;
  const attributes = {
    class: 'plate',
    'data-piece': plate.number,
    transform: `translate(${decimal(by.x)} ${decimal(by.y)})`,
  };
  const at = { x: frame.minX + size, y: frame.minY - size };
  return group('g', attributes, [
    text(
      'text',
      { class: 'title', ...at, 'font-size': (1.3 * title) / CAPITAL_HEIGHT, 'font-weight': 600 },
      plate.title,
    ),
    ...lost.map((region) => area('lost', region)),
    ...gained.map((region) => area('gained', region)),
    ...LOOKS.flatMap((look) =>
      lines
        .filter((line) => line.look === look)
        .map((line) => lineElement(line.look, line.outline, line.path, size)),
    ),
    ...arrows.map((arrow) => arrowElement(arrow.from, arrow.to, size)),
    ...marks.map((mark) => markElement(mark.mark, mark.at, mark.to, size)),
  ]);
}

const xy = ({ x, y }: Point): string => `${decimal(x)} ${decimal(y)}`;

const area = (look: 'lost' | 'gained', { points }: Region): string =>
  leaf('path', { class: look, d: `M${points.map(xy).join('L')}Z`, fill: `url(#hatch-${look})` });

function pathData({ segments }: Path): string {
  let last: Point | undefined;
  return segments
    .map((one) => {
      const start = last && Math.hypot(last.x - one.p0.x, last.y - one.p0.y) < 1e-6 ? '' : `M${xy(one.p0)}`;
      last = one.p3;
      return start + (one.kind === 'line' ? `L${xy(one.p3)}` : `C${xy(one.p1)} ${xy(one.p2)} ${xy(one.p3)}`);
    })
    .join('');
}

function lineElement(look: Look, outline: boolean, path: Path, size: number): string {
  const weight = WEIGHTS[look] * size * (outline ? OUTLINE : ON_PIECE);
  const dash: Attributes =
    look === 'was'
      ? { 'stroke-dasharray': DASH.map((one) => decimal(one * size * (outline ? 1 : 0.6))).join(' ') }
      : { 'stroke-linecap': 'round' };
  return leaf('path', {
    class: look,
    d: pathData(path),
    fill: 'none',
    stroke: '#000',
    'stroke-width': weight,
    'stroke-linejoin': 'round',
    ...dash,
  });
}

/** Shorter moves than this, in heights of a letter, are drawn this long: the tip tells the place, the shaft the way. */
const SHORTEST = 2;

function arrowElement(from: Point, to: Point, size: number): string {
  const far = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const along = { x: (to.x - from.x) / far, y: (to.y - from.y) / far };
  const shaft = Math.max(far, SHORTEST * size);
  const back = (by: number, aside = 0): Point => ({
    x: to.x - along.x * by - along.y * aside,
    y: to.y - along.y * by + along.x * aside,
  });
  const head = `M${xy(to)}L${xy(back(0.9 * size, 0.3 * size))}L${xy(back(0.9 * size, -0.3 * size))}Z`;
  return group('g', { class: 'arrow' }, [
    leaf('path', {
      d: `M${xy(back(shaft))}L${xy(back(0.5 * size))}`,
      fill: 'none',
      stroke: '#000',
      'stroke-width': 0.1 * size,
    }),
    leaf('path', { d: head, fill: '#000' }),
  ]);
}

function markElement(mark: string, at: Point, to: Point, size: number): string {
  const far = Math.hypot(to.x - at.x, to.y - at.y) || 1;
  const edge = {
    x: at.x + ((to.x - at.x) / far) * RING * size,
    y: at.y + ((to.y - at.y) / far) * RING * size,
  };
  return group('g', { class: 'mark', 'data-row': mark }, [
    leaf('path', { d: `M${xy(edge)}L${xy(to)}`, fill: 'none', stroke: '#000', 'stroke-width': 0.05 * size }),
    leaf('circle', { cx: to.x, cy: to.y, r: 0.14 * size, fill: '#000' }),
    leaf('circle', {
      class: 'ring',
      cx: at.x,
      cy: at.y,
      r: RING * size,
      fill: '#fff',
      stroke: '#000',
      'stroke-width': 0.08 * size,
    }),
    text(
      'text',
      { x: at.x, y: at.y + 0.45 * size, 'font-size': (0.9 * size) / CAPITAL_HEIGHT, 'text-anchor': 'middle' },
      mark,
    ),
  ]);
}

/** What each line and each hatching means. */
function key(size: number, top: number): string {
  const swatch = (x: number, drawn: string, words: string): string[] => [
    group('g', { transform: `translate(${decimal(x * size)} ${decimal(top + size)})` }, [
      drawn,
      text('text', { x: 4.6 * size, y: 0.5 * size, 'font-size': size / CAPITAL_HEIGHT }, words),
    ]),
  ];
  const stroke = (look: Look): string =>
    leaf('path', {
      class: `key-${look}`,
      d: `M0 0H${decimal(4 * size)}`,
      fill: 'none',
      stroke: '#000',
      'stroke-width': WEIGHTS[look] * size,
      ...(look === 'was' && { 'stroke-dasharray': DASH.map((one) => decimal(one * size)).join(' ') }),
    });
  const box = (look: 'lost' | 'gained'): string =>
    leaf('rect', {
      class: `key-${look}`,
      x: 0,
      y: -0.9 * size,
      width: 4 * size,
      height: 1.8 * size,
      fill: `url(#hatch-${look})`,
      stroke: '#000',
      'stroke-width': 0.04 * size,
    });
  const { lines, areas, below } = keyWords();
  const { places } = keyLayout();
  return group('g', { class: 'key' }, [
    ...LOOKS.flatMap((look, i) => swatch(places[i]!, stroke(look), lines[i]!)),
    ...AREAS.flatMap((look, i) => swatch(places[LOOKS.length + i]!, box(look), areas[i]!)),
    text('text', { x: 0, y: top + 3.8 * size, 'font-size': (0.85 * size) / CAPITAL_HEIGHT }, below),
  ]);
}

const keyWords = () => ({
  lines: [say`unchanged`, say`as it was`, say`as it is now`],
  areas: [say`lost`, say`gained`],
  below: say`Arrows point to where a point went; a short move is drawn longer. Numbers are those of the rows.`,
});

/** All of the key in heights of a letter: from one swatch to the next, a swatch with its gaps, a broad letter and a slim one. */
const KEY_STEPS = [13.5, 12.5, 14, 9, 17];
const SWATCH = 5.1;
const BROAD = 0.93;
const SLIM = 0.5;
const GAP = 1.2;
const SMALL_LETTER = 0.675;

/** Where each swatch begins, and how wide the key is, with room for words longer than the English ones. */
function keyLayout(): { readonly places: readonly number[]; readonly wide: number } {
  const { lines, areas, below } = keyWords();
  let next = 0;
  const places = [...lines, ...areas].map((words, i) => {
    const here = next;
    const slim = words.match(/[ fijlrt]/g)?.length ?? 0;
    const taken = SWATCH + BROAD * (words.length - slim) + SLIM * slim;
    next += taken <= KEY_STEPS[i]! ? KEY_STEPS[i]! : taken + GAP;
    return here;
  });
  return { places, wide: Math.max(next, SMALL_LETTER * below.length) };
}

/**
 * The strip below the pieces of an exported drawing: a test square, a ruler in the pattern's unit, and a key that
 * says in words what each weight and dash means. A print that came out in another size is found here, before cutting.
 */
import { inWords, say } from '../../grammar/say';
import type { Drawing, LineRole } from './model';
import { decimal, lineTypeOf, lineTypes, type LineType } from './lines';
import { forWhom } from './told';
import { group, leaf, text } from './xml';

type Unit = Drawing['unit'];

interface Ruler {
  /** Side of the test square and length of the ruler, mm. */
  readonly square: number;
  readonly length: number;
  /** Distance of two ticks, mm; every so many ticks a longer one with a number. */
  readonly tick: number;
  readonly numbered: number;
  readonly squareWords: string;
  readonly numbersOf: (mm: number) => string;
}

const INCH_MM = 25.4;
const GAP_MM = 12;
/** Lines of the key that not every pattern has, in a column of their own. */
const BESIDES: readonly LineRole[] = ['hole', 'centre', 'tape', 'topstitch', 'crease'];
const BESIDE_MM = 105;
const KEY: readonly LineRole[] = ['cutting', 'sewing', 'fold', 'grain', 'balance', 'notch'];

const metric = { square: 100, length: 200, tick: 10, numbered: 5, squareWords: '100 mm' };

const rulers: Readonly<Record<Unit, Ruler>> = {
  cm: { ...metric, numbersOf: (mm) => `${mm / 10} cm` },
  mm: { ...metric, numbersOf: (mm) => `${mm} mm` },
  in: {
    square: 4 * INCH_MM,
    length: 8 * INCH_MM,
    tick: INCH_MM / 4,
    numbered: 4,
    squareWords: '4 in',
    numbersOf: (mm) => `${Math.round(mm / INCH_MM)} in`,
  },
};

/** Room the strip takes, mm. */
export function legendSize(drawing: Drawing): { readonly width: number; readonly height: number } {
  const ruler = rulers[drawing.unit];
  const beside = Math.max(ruler.length, columnsOf(drawing).length * BESIDE_MM);
  return { width: ruler.square + GAP_MM + beside + GAP_MM, height: ruler.square };
}

export function legend(drawing: Drawing, left: number, top: number): string {
  const ruler = rulers[drawing.unit];
  return group('g', { class: 'legend', transform: `translate(${decimal(left)} ${decimal(top)})` }, [
    testSquare(ruler),
    group('g', { class: 'beside', transform: `translate(${decimal(ruler.square + GAP_MM)} 0)` }, [
      heading(drawing),
      rulerLine(ruler),
      key(drawing),
    ]),
  ]);
}

function testSquare(ruler: Ruler): string {
  const { square, squareWords } = ruler;
  const middle = square / 2;
  return group('g', { class: 'test-square', 'text-anchor': 'middle' }, [
    leaf('rect', {
      x: 0,
      y: 0,
      width: square,
      height: square,
      fill: 'none',
      stroke: '#000',
      'stroke-width': 0.35,
    }),
    text('text', { x: middle, y: middle - 3, 'font-size': 7 }, say`${squareWords} by ${squareWords}`),
    text('text', { x: middle, y: middle + 7, 'font-size': 5 }, say`measure before you cut`),
  ]);
}

function heading(drawing: Drawing): string {
  return group('g', { class: 'heading' }, [
    text('text', { x: 0, y: 6, 'font-size': 8 }, drawing.title || say`Pattern`),
    ...(drawing.body ? [text('text', { x: 0, y: 14, 'font-size': 5 }, forWhom(drawing.body))] : []),
  ]);
}

function rulerLine(ruler: Ruler): string {
  const count = Math.round(ruler.length / ruler.tick);
  const ticks = Array.from({ length: count + 1 }, (_, i) => {
    const long = i % ruler.numbered === 0;
    return `M${decimal(i * ruler.tick)} 0V${long ? -5 : -2.5}`;
  });
  const numbers = Array.from({ length: Math.floor(count / ruler.numbered) + 1 }, (_, i) => {
    const at = i * ruler.numbered * ruler.tick;
    return text('text', { x: at, y: -6.5, 'font-size': 4 }, i === 0 ? '0' : ruler.numbersOf(at));
  });
  return group('g', { class: 'ruler', transform: 'translate(0 32)', 'text-anchor': 'middle' }, [
    leaf('path', {
      d: `M0 0H${decimal(ruler.length)}${ticks.join('')}`,
      fill: 'none',
      stroke: '#000',
      'stroke-width': 0.25,
    }),
    ...numbers,
  ]);
}

function key(drawing: Drawing): string {
  const columns = columnsOf(drawing).map((rows, i) =>
    i === 0 ? rows : [group('g', { transform: `translate(${i * BESIDE_MM} 0)` }, rows)],
  );
  return group('g', { class: 'key', transform: 'translate(0 46)' }, columns.flat());
}

/**
 * Every kind of line that a pattern may have, beside them those that this one has besides, and the sizes of a nest, whose
 * cutting lines look otherwise.
 */
function columnsOf({ pieces, sizes = [] }: Drawing): readonly string[][] {
  const lines = pieces.flatMap((piece) => piece.lines);
  const drawn = new Set(lines.map(({ role }) => role));
  const shared = new Set(lines.filter(({ ofSize }) => ofSize === undefined).map(({ role }) => role));
  const isSized = (role: LineRole): boolean =>
    lineTypeOf({ role, ofSize: sizes[0] }, sizes) !== lineTypes[role];
  const isTold = (role: LineRole): boolean => (isSized(role) ? shared : drawn).has(role);
  const usual = sizes.length === 0 ? KEY : KEY.filter(isTold);
  const beside = BESIDES.filter(isTold).slice(0, KEY.length);
  const rows = [usual, beside].map((roles) => roles.map((role): KeyRow => ({ role, type: lineTypes[role] })));
  const sized = sizes.map((size): KeyRow => ({
    role: 'cutting',
    type: lineTypeOf({ role: 'cutting', ofSize: size }, sizes),
  }));
  for (let i = 0; i < sized.length; i += KEY.length) rows.push(sized.slice(i, i + KEY.length));
  return rows.filter((column) => column.length > 0).map(keyRows);
}

interface KeyRow {
  readonly role: LineRole;
  readonly type: LineType;
}

function keyRows(rows: readonly KeyRow[]): string[] {
  return rows.flatMap(({ role, type }, i) => {
    const y = i * 9;
    const dash: Record<string, string> = type.dash.length
      ? { 'stroke-dasharray': type.dash.map(decimal).join(' ') }
      : {};
    const d = role === 'notch' ? `M15 ${y - 3}v6` : `M0 ${y}H30`;
    return [
      leaf('path', { d, fill: 'none', stroke: '#000', 'stroke-width': type.weight, ...dash }),
      text('text', { x: 35, y: y + 1.6, 'font-size': 4.5 }, inWords(type.words)),
    ];
  });
}

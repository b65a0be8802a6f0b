/**
 * Figures of a published draft, written beside the lines of a pattern: `#= 6.5655in`, `#= (0.8in, 8.75in)`,
 * `#= length 70.0000cm`, `#= 15509.7cm2`, each with `within 0.005cm` where the figures themselves are coarser.
 */
import type { Pattern } from '../../server/drafting/model';

export interface Reading {
  /** Written path: `bodice.back-shoulder`. */
  readonly path: string;
  readonly line: number;
  readonly of: 'value' | 'length' | 'point';
  /** One number, or x and y; mm, mm², degrees or plain. */
  readonly figures: readonly number[];
  readonly within: number;
}

const factors: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  cm2: 100,
  in2: 645.16,
  deg: 1,
  '': 1,
};

/** However few figures are printed, a length or an angle is held at least this closely: hundredths of mm or degrees. */
const CLOSEST = 0.01;

/** The amount of `2.50in`, and how far from it is still right: half a unit of its last figure, or `CLOSEST`. */
function figure(text: string): { readonly amount: number; readonly half: number } {
  const [, number = '', unit = ''] = /^(-?[\d.]+)(mm|cm2?|in2?|deg|)$/.exec(text.trim()) ?? [];
  const factor = factors[unit];
  if (number === '' || factor === undefined) throw new Error(`not a figure: ${text}`);
  const decimals = (number.split('.')[1] ?? '').length;
  const half = (0.5 * factor) / 10 ** decimals;
  return { amount: Number(number) * factor, half: unit.endsWith('2') ? half : Math.min(half, CLOSEST) };
}

/** Every reading of a file, in its order. */
export function readingsOf(text: string): Reading[] {
  let draft = '';
  return text.split('\n').flatMap((line, index) => {
    draft = /^draft (\S+) \{/.exec(line)?.[1] ?? (line.startsWith('}') ? '' : draft);
    const [, name, given] =
      /^\s*(?:let|choose|solve|point|line|curve|arc|circle) (\S+) .*#= (.+)$/.exec(line) ?? [];
    if (name === undefined || given === undefined) return [];
    const [wanted = '', within] = given.split(' within ');
    const of = wanted.startsWith('(') ? 'point' : wanted.startsWith('length ') ? 'length' : 'value';
    const figures = wanted
      .replace(/^length |[()]/g, '')
      .split(',')
      .map(figure);
    const half = Math.max(...figures.map((each) => each.half));
    return [
      {
        path: draft === '' ? name : `${draft}.${name}`,
        line: index + 1,
        of,
        figures: figures.map(({ amount }) => amount),
        within: within === undefined ? half + 1e-9 : figure(within).amount,
      },
    ];
  });
}

/** What a pattern has where a reading stands; undefined where it has nothing of the kind. */
export function drawnAt(pattern: Pattern, { path, of }: Reading): readonly number[] | undefined {
  const value = pattern.values.get(path);
  if (of === 'value') return value === undefined || value.kind === 'text' ? undefined : [value.amount];
  const shape = pattern.shapes.get(path);
  if (shape === undefined) return undefined;
  if (of === 'point') return shape.kind === 'point' ? [shape.point.x, shape.point.y] : undefined;
  return shape.kind === 'point' ? undefined : [shape.path.length];
}

/** The readings that a pattern does not bear out, each as a sentence. */
export function missed(pattern: Pattern, readings: readonly Reading[]): string[] {
  return readings.flatMap((reading) => {
    const drawn = drawnAt(pattern, reading);
    const holds =
      drawn?.every((amount, i) => Math.abs(amount - reading.figures[i]!) <= reading.within) ?? false;
    const said = drawn?.map((amount) => amount.toFixed(5)).join(', ') ?? 'not drawn';
    return holds
      ? []
      : [`line ${reading.line}: ${reading.path} is ${said}, read ${reading.figures.join(', ')}`];
  });
}

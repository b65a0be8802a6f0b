/** Reads a seam: both sides' sewn lengths, what is eased, stretched or gathered, and how far the two may differ. */
import type { Ease, SeamNode, Sewn } from '../../../grammar/syntax';
import type { Seam } from '../model';
import { ofKind, widthOf } from '../values/arithmetic';
import { replace, report, wordsOf, type Reader } from '../values/reader';
import { takenEdge, type TakenEdge } from './edges';
import { isBand, ringLength } from './ring';

export interface SeamRequest {
  readonly name: string;
  readonly source: string;
  /** The file's own `tolerance`, when it has one. */
  readonly tolerance?: number;
}

/** Two sewn edges may differ by this much, or by a quarter of a hundredth of their length, but never by more than LARGEST (common practice: 1 to 1.5 mm on paper, 3 mm on a long seam). */
const SMALLEST = 1;
const SHARE = 0.0025;
const LARGEST = 3;

export const usualTolerance = (length: number): number =>
  Math.min(LARGEST, Math.max(SMALLEST, SHARE * length));

export function readSeam(reader: Reader, node: SeamNode, request: SeamRequest): Seam | undefined {
  const left = sideOf(reader, node.left.parts);
  const right = node.right === 'its-pair' ? [] : sideOf(reader, node.right.parts);
  const within = statedTolerance(reader, node.eases);
  const asked = askedEase(reader, node);
  if (left === undefined || right === undefined || asked === undefined) return undefined;
  const itsPair = node.right === 'its-pair';
  const round = isBand(left) || isBand(right);
  const leftLength = round ? ringOf(left) : sum(left);
  const rightLength = itsPair ? leftLength : round ? ringOf(right) : sum(right);
  const tolerance = within ?? request.tolerance ?? usualTolerance(Math.max(leftLength, rightLength));
  const whole = [...left, ...right].every(
    (edge) => edge.of.unbuilt.length === 0 && edge.of.gaps.length === 0,
  );
  return {
    name: request.name,
    source: request.source,
    statement: reader.statement,
    left,
    right,
    itsPair,
    leftLength,
    rightLength,
    difference: itsPair ? 0 : differenceAfter(asked, { left, right, leftLength, rightLength }),
    tolerance,
    toleranceStated: within !== undefined || request.tolerance !== undefined,
    comparable: whole,
  };
}

const sum = (edges: readonly TakenEdge[]): number => edges.reduce((total, edge) => total + edge.length, 0);

/** Round the body; of a band without what laps under. */
const ringOf = (edges: readonly TakenEdge[]): number =>
  isBand(edges)
    ? edges.reduce((total, edge) => total + edge.length - (edge.of.underlap ?? 0), 0)
    : ringLength(edges);

function sideOf(reader: Reader, parts: readonly Sewn[]): TakenEdge[] | undefined {
  const edges = parts.map((part) => takenEdge(reader, part));
  return edges.some((edge) => edge === undefined) ? undefined : (edges as TakenEdge[]);
}

function statedTolerance(reader: Reader, eases: readonly Ease[]): number | undefined {
  for (const ease of eases) {
    if (ease.kind === 'within') return widthOf(reader, ease.by, 'within');
  }
  return undefined;
}

/** How much longer one side is meant to be: between `low` and `high`, of the piece `of`; or a gathered ratio. */
interface Asked {
  readonly low: number;
  readonly high: number;
  readonly of: string;
  readonly ratio?: number;
}

const NOTHING_ASKED: Asked = { low: 0, high: 0, of: '' };

function askedEase(reader: Reader, node: SeamNode): Asked | undefined {
  for (const ease of node.eases) {
    switch (ease.kind) {
      case 'within':
        continue;
      case 'gathered':
        return gathered(reader, ease);
      case 'stretched': {
        const by = widthOf(reader, ease.by, 'stretched');
        return by === undefined ? undefined : asked(reader, node, ease.of, -by, -by);
      }
      case 'easing': {
        const range = easeRange(reader, ease);
        return range === undefined ? undefined : asked(reader, node, ease.of, ...range);
      }
    }
  }
  return NOTHING_ASKED;
}

/** `gathered 2.5 to 1`: more cloth drawn up to less. */
function gathered(reader: Reader, ease: Extract<Ease, { kind: 'gathered' }>): Asked | undefined {
  const full = ofKind(reader, ease.ratio, 'ratio', 'gathered');
  const drawnUp = ofKind(reader, ease.to, 'ratio', 'gathered');
  if (full === undefined || drawnUp === undefined) return undefined;
  if (drawnUp > 0 && full >= drawnUp) return { ...NOTHING_ASKED, ratio: full / drawnUp };
  const words = `${wordsOf(reader, ease.ratio)} to ${wordsOf(reader, ease.to)}`;
  return report(
    reader,
    'no-such-number',
    ease.at,
    `Gathers draw more cloth up to less, such as 2 to 1; ${words} does not.`,
  );
}

/** `easing 6mm`, `easing 2cm .. 4cm`: the least and the most. */
function easeRange(
  reader: Reader,
  ease: Extract<Ease, { kind: 'easing' }>,
): readonly [number, number] | undefined {
  const low = widthOf(reader, ease.low, 'easing');
  const high = ease.high === undefined ? low : widthOf(reader, ease.high, 'easing');
  if (low === undefined || high === undefined) return undefined;
  if (low <= high) return [low, high];
  const at = { from: ease.low.at.from, to: ease.high!.at.to };
  const [least, most] = [wordsOf(reader, ease.high!), wordsOf(reader, ease.low)];
  report(
    reader,
    'range-turned-about',
    at,
    `This range runs from ${most} down to ${least}: the lower end comes first.`,
    { fixes: [replace(reader, 'Put the lower end first', at, `${least} .. ${most}`)] },
  );
  return [high, low];
}

type PieceRef = Extract<Ease, { kind: 'easing' }>['of'];

/** The piece that is eased must be in the seam. */
function asked(reader: Reader, node: SeamNode, of: PieceRef, low: number, high: number): Asked | undefined {
  if (of === undefined) return { low, high, of: '' };
  const name = of.path[of.path.length - 1]!.text;
  const sides = [...node.left.parts, ...(node.right === 'its-pair' ? [] : node.right.parts)];
  const known = sides.some(({ edge }) => edge.path.slice(0, -1).some(({ text }) => text === name));
  if (known) return { low, high, of: name };
  return report(
    reader,
    'unknown-name',
    of.at,
    `${wordsOf(reader, of)} is not sewn in this seam, so it can't be eased here.`,
  );
}

interface Sides {
  readonly left: readonly TakenEdge[];
  readonly right: readonly TakenEdge[];
  readonly leftLength: number;
  readonly rightLength: number;
}

/** Right minus left, less what was asked for; 0 inside a range of ease. */
function differenceAfter(want: Asked, sides: Sides): number {
  const { leftLength, rightLength } = sides;
  if (want.ratio !== undefined) return rightLength - leftLength / want.ratio;
  const bare = rightLength - leftLength;
  if (want.low === 0 && want.high === 0) return bare;
  const onRight =
    want.of !== '' ? sides.right.some(({ piece }) => piece === want.of) : bare * Math.sign(want.low) > 0;
  const [low, high] = onRight ? [want.low, want.high] : [-want.high, -want.low];
  return bare < low ? bare - low : bare > high ? bare - high : 0;
}

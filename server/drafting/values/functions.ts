/** The functions of numbers: `min`, `round`, `sqrt`, the angles. Functions of shapes are in `shapes/measuring.ts`. */
import { say } from '../../../grammar/say';
import type { Quantity } from '../model';
import { angle, kindWords, length, ratio } from './quantity';

interface Refusal {
  readonly code: 'wrong-kind' | 'no-such-number';
  readonly message: string;
}

type Apply = (args: readonly Quantity[]) => Quantity | Refusal;

const RADIANS = Math.PI / 180;

const wrong = (message: string): Refusal => ({ code: 'wrong-kind', message });

/** All arguments of one kind; at least one. */
const alike =
  (name: string, of: (amounts: readonly number[]) => number): Apply =>
  (args) => {
    const kind = args[0]?.kind;
    if (kind === undefined) return wrong(say`${name} needs at least one value.`);
    const other = args.find((arg) => arg.kind !== kind);
    if (other !== undefined) {
      return wrong(
        say`${name} compares values of one kind; these are ${kindWords(kind)} and ${kindWords(other.kind)}.`,
      );
    }
    return { kind, amount: of(args.map(({ amount }) => amount)) };
  };

const single =
  (name: string, of: (arg: Quantity) => Quantity | Refusal): Apply =>
  (args) =>
    args.length === 1 ? of(args[0]!) : wrong(say`${name} takes one value, not ${args.length}.`);

const ofAngle = (name: string, of: (radians: number) => number): Apply =>
  single(name, (arg) =>
    arg.kind === 'angle'
      ? ratio(of(arg.amount * RADIANS))
      : wrong(say`${name} takes an angle, such as 20deg; this is ${kindWords(arg.kind)}.`),
  );

const toAngle = (name: string, of: (share: number) => number): Apply =>
  single(name, (arg) => {
    if (arg.kind !== 'ratio')
      return wrong(say`${name} takes a plain number; this is ${kindWords(arg.kind)}.`);
    const result = of(arg.amount);
    if (Number.isFinite(result)) return angle(result / RADIANS);
    return {
      code: 'no-such-number',
      message: say`No angle has ${arg.amount} for its ${name.slice(1)}: it must lie between -1 and 1.`,
    };
  });

function squareRoot(arg: Quantity): Quantity | Refusal {
  if (arg.amount < 0)
    return { code: 'no-such-number', message: say`A number below zero has no square root.` };
  if (arg.kind === 'area') return length(Math.sqrt(arg.amount));
  if (arg.kind === 'ratio') return ratio(Math.sqrt(arg.amount));
  return wrong(
    say`sqrt takes a plain number or an area (a length times a length); this is ${kindWords(arg.kind)}.`,
  );
}

/** `round(x)` to a whole millimetre, degree or number; `round(x, 5mm)` to the nearest multiple. Halves go away from zero. */
const rounded: Apply = (args) => {
  const [amount, step = amount && { kind: amount.kind, amount: 1 }] = args;
  if (amount === undefined || step === undefined || args.length > 2) {
    return wrong(say`round takes a value, and the step to round to when it is not one: round(x, 5mm).`);
  }
  if (step.kind !== amount.kind) {
    return wrong(
      say`round needs a step of the value's own kind, ${kindWords(amount.kind)}; this is ${kindWords(step.kind)}.`,
    );
  }
  const steps = amount.amount / step.amount;
  return { kind: amount.kind, amount: Math.sign(steps) * Math.round(Math.abs(steps)) * step.amount };
};

const FUNCTIONS: Readonly<Record<string, Apply>> = {
  min: alike('min', (amounts) => Math.min(...amounts)),
  max: alike('max', (amounts) => Math.max(...amounts)),
  abs: single('abs', ({ kind, amount }) => ({ kind, amount: Math.abs(amount) })),
  sqrt: single('sqrt', squareRoot),
  round: rounded,
  sin: ofAngle('sin', Math.sin),
  cos: ofAngle('cos', Math.cos),
  tan: ofAngle('tan', Math.tan),
  asin: toAngle('asin', Math.asin),
  acos: toAngle('acos', Math.acos),
  atan: toAngle('atan', Math.atan),
};

export const FUNCTION_NAMES: ReadonlySet<string> = new Set(Object.keys(FUNCTIONS));

/** The result of a function, or why there is none. */
export const applied = (name: string, args: readonly Quantity[]): Quantity | Refusal =>
  FUNCTIONS[name]!(args);

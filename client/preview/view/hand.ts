/** Moves a point by hand: the pointer's way on the sheet, or the arrow keys, become new lengths for the text. */
import { say } from '../../../grammar/say';
import type { Grip, Gripped } from '../protocol';

/** What is told while a point is held. */
export interface HandActions {
  grip(source: string, piece: string): void;
  pull(source: string, amounts: readonly number[]): void;
  release(): void;
  /** Says near the point why it can't be moved, or what its lengths are now. */
  say(words: string): void;
}

export type Axes = Extract<Grip, { axes: unknown }>['axes'];

/** Lengths go in steps that can be read off a ruler. */
const STEPS: Readonly<Record<string, number>> = { cm: 0.1, mm: 1, m: 0.001, in: 0.125, yd: 0.0625 };
/** With Shift so many of them at once: a centimetre, an inch. */
const MANY: Readonly<Record<string, number>> = { in: 8, yd: 4 };

const stepOf = (unit: string): number => STEPS[unit] ?? 0.1;

interface Taken {
  readonly source: string;
  readonly byKeys: boolean;
  grip: Grip | undefined;
  /** On the sheet, mm, since it was taken hold of. */
  by: { readonly x: number; readonly y: number };
  /** By keys: its lengths by now. */
  amounts: readonly number[];
  told: string;
}

export class Hand {
  private taken: Taken | undefined;

  constructor(private readonly actions: HandActions) {}

  /** Takes hold of a dot of the drawing; false for what is no point. */
  take(dot: SVGGElement, byKeys = false): boolean {
    const { source } = dot.dataset;
    const piece = dot.closest<SVGGElement>('[data-piece]')?.dataset.piece;
    if (source === undefined || piece === undefined) return false;
    this.taken = { source, byKeys, grip: undefined, by: { x: 0, y: 0 }, amounts: [], told: '' };
    this.actions.grip(source, piece);
    return true;
  }

  /** A point is held by the keyboard. */
  get byKeys(): boolean {
    return this.taken?.byKeys === true;
  }

  /** The server's answer may come after the hand began to move. */
  gripped({ source, grip }: Gripped): void {
    const { taken } = this;
    if (taken?.source !== source) return;
    taken.grip = grip;
    if (!taken.byKeys) return this.follow();
    if ('axes' in grip) {
      taken.amounts = grip.axes.map(({ amount }) => amount);
      return this.actions.say(say`${wordsOf(grip.axes, taken.amounts)}: arrow keys move it, Enter lets go`);
    }
    this.end();
    this.actions.say(grip.reason);
  }

  move(x: number, y: number): void {
    if (this.taken === undefined) return;
    this.taken.by = { x, y };
    this.follow();
  }

  /** One step of the length that moves it most in a direction of the sheet; `far`: several. */
  step(x: number, y: number, far: boolean): void {
    const { taken } = this;
    if (taken?.grip === undefined || 'reason' in taken.grip) return;
    const { axes } = taken.grip;
    const next = amountsStepped(axes, taken.amounts, { x, y }, far);
    if (next === undefined)
      return this.actions.say(say`${wordsOf(axes, taken.amounts)}: it does not go that way`);
    taken.amounts = next;
    this.tell(taken, axes, next);
  }

  /** Lets go. */
  end(): void {
    if (this.taken === undefined) return;
    this.actions.release();
    this.taken = undefined;
    this.actions.say('');
  }

  private follow(): void {
    const { taken } = this;
    if (taken?.grip === undefined || (taken.by.x === 0 && taken.by.y === 0)) return;
    if ('reason' in taken.grip) return this.actions.say(taken.grip.reason);
    this.tell(taken, taken.grip.axes, amountsAfter(taken.grip.axes, taken.by));
  }

  private tell(taken: Taken, axes: Axes, amounts: readonly number[]): void {
    const words = wordsOf(axes, amounts);
    this.actions.say(words);
    if (words === taken.told) return;
    taken.told = words;
    this.actions.pull(taken.source, amounts);
  }
}

const wordsOf = (axes: Axes, amounts: readonly number[]): string =>
  axes.map(({ unit }, i) => `${amounts[i]}${unit}`).join(', ');

/** The lengths that bring the point as near to the pointer as whole steps allow. */
export function amountsAfter(axes: Axes, by: { readonly x: number; readonly y: number }): number[] {
  return axes.map(({ x, y, amount, unit, mm }) => {
    const step = stepOf(unit);
    const wanted = amount + (x * by.x + y * by.y) / mm;
    const moved = Math.round((wanted - amount) / step);
    return moved === 0 ? amount : Number(Math.max(0, Math.round(wanted / step) * step).toFixed(4));
  });
}

/** A length that hardly moves the point in a direction is not meant by it. */
const MEANT = 0.2;

/** The lengths after one press of an arrow, on whole steps; undefined where none goes that way. */
export function amountsStepped(
  axes: Axes,
  amounts: readonly number[],
  way: { readonly x: number; readonly y: number },
  far: boolean,
): number[] | undefined {
  const along = axes.map(({ x, y }) => x * way.x + y * way.y);
  const most = along.reduce((best, one, i) => (Math.abs(one) > Math.abs(along[best]!) ? i : best), 0);
  if (Math.abs(along[most] ?? 0) < MEANT) return undefined;
  const { unit } = axes[most]!;
  const step = stepOf(unit) * (far ? (MANY[unit] ?? 10) : 1);
  const on = Math.sign(along[most]!);
  const next = on * Math.floor((on * amounts[most]!) / step + 1 + 1e-9) * step;
  return amounts.map((amount, i) => (i === most ? Number(Math.max(0, next).toFixed(4)) : amount));
}

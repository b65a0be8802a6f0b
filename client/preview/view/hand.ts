/** Moves a point by hand: the pointer's way on the sheet becomes new lengths for the text. */
import type { Grip, Gripped } from '../protocol';

/** What is told while a point is held. */
export interface HandActions {
  grip(source: string, piece: string): void;
  pull(source: string, amounts: readonly number[]): void;
  release(): void;
  /** Says near the pointer why the point can't be moved, or what its lengths are now. */
  say(words: string): void;
}

type Axes = Extract<Grip, { axes: unknown }>['axes'];

/** Lengths go in steps that can be read off a ruler. */
const STEPS: Readonly<Record<string, number>> = { cm: 0.1, mm: 1, m: 0.001, in: 0.125, yd: 0.0625 };

interface Taken {
  readonly source: string;
  grip: Grip | undefined;
  /** On the sheet, mm, since it was taken hold of. */
  by: { readonly x: number; readonly y: number };
  told: string;
}

export class Hand {
  private taken: Taken | undefined;

  constructor(private readonly actions: HandActions) {}

  /** Takes hold of a dot of the drawing; false for what is no point. */
  take(dot: SVGGElement): boolean {
    const { source } = dot.dataset;
    const piece = dot.closest<SVGGElement>('[data-piece]')?.dataset.piece;
    if (source === undefined || piece === undefined) return false;
    this.taken = { source, grip: undefined, by: { x: 0, y: 0 }, told: '' };
    this.actions.grip(source, piece);
    return true;
  }

  /** The server's answer may come after the hand began to move. */
  gripped({ source, grip }: Gripped): void {
    if (this.taken?.source !== source) return;
    this.taken.grip = grip;
    this.follow();
  }

  move(x: number, y: number): void {
    if (this.taken === undefined) return;
    this.taken.by = { x, y };
    this.follow();
  }

  /** Lets go. */
  end(): void {
    if (this.taken !== undefined) this.actions.release();
    this.taken = undefined;
    this.actions.say('');
  }

  private follow(): void {
    const { taken } = this;
    if (taken?.grip === undefined || (taken.by.x === 0 && taken.by.y === 0)) return;
    if ('reason' in taken.grip) return this.actions.say(taken.grip.reason);
    const amounts = amountsAfter(taken.grip.axes, taken.by);
    const words = taken.grip.axes.map(({ unit }, i) => `${amounts[i]}${unit}`).join(', ');
    this.actions.say(words);
    if (words === taken.told) return;
    taken.told = words;
    this.actions.pull(taken.source, amounts);
  }
}

/** The lengths that bring the point as near to the pointer as whole steps allow. */
export function amountsAfter(axes: Axes, by: { readonly x: number; readonly y: number }): number[] {
  return axes.map(({ x, y, amount, unit, mm }) => {
    const step = STEPS[unit] ?? 0.1;
    const wanted = amount + (x * by.x + y * by.y) / mm;
    const moved = Math.round((wanted - amount) / step);
    return moved === 0 ? amount : Number(Math.max(0, Math.round(wanted / step) * step).toFixed(4));
  });
}

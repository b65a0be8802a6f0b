/** All sizes of a pattern on one another, kept in step with its text: each size is an edit of what it was before. */
import type { Pattern } from '../drafting/model';
import type { Choice, Workshop } from '../drafting/workshop';
import { draw } from '../drawing/draw';
import type { Drawing } from '../drawing/model';
import { nest } from '../drawing/nest';
import { Kept } from './kept';

export class Nested {
  /** Who tries each size at the workshop. */
  readonly #seats = new Set<string>();
  readonly #kept = new Kept();

  constructor(
    private readonly workshop: Workshop,
    private readonly key: string,
    private readonly seat: string,
  ) {}

  /** Undefined where there is no table of sizes behind the pattern. Pieces that look the same stay the same object. */
  draw({ sizes, body }: Pattern, choice: Choice): Drawing | undefined {
    if (body === undefined || sizes.length < 2) return undefined;
    const drawn = nest(
      sizes.map((size) => {
        const seat = `${this.seat}, size ${size}`;
        this.#seats.add(seat);
        const own = { ...choice, for: { name: body.name, size } };
        return { size, drawing: draw(this.workshop.tried(this.key, seat, own)) };
      }),
    );
    return { ...drawn, pieces: drawn.pieces.map((piece) => this.#kept.of(piece)) };
  }

  /** Forgets every size. */
  leave(): void {
    for (const seat of this.#seats) this.workshop.leave(this.key, seat);
    this.#seats.clear();
    this.#kept.forget();
  }
}

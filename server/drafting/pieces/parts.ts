/**
 * What stands in a piece's own block: its edges, darts and named corners as they come to be, looked up before the draft's
 * names. An edge and a corner may bear one name: which is meant shows in what is wanted.
 */
import type { Shape } from '../model';

export type Wanted = 'point' | 'path' | undefined;

export class OwnParts {
  // made when something is put there: most definitions are no pieces
  private points?: Map<string, Shape>;
  private paths?: Map<string, Shape>;

  private of(shape: Shape): Map<string, Shape> {
    return shape.kind === 'point' ? (this.points ??= new Map()) : (this.paths ??= new Map());
  }

  set(name: string, shape: Shape): void {
    const shapes = this.of(shape);
    if (!shapes.has(name)) shapes.set(name, shape);
  }

  /** Takes the place of an earlier part: an edge once its darts are cut. */
  replace(name: string, shape: Shape): void {
    this.of(shape).set(name, shape);
  }

  private get(name: string, wanted: Wanted): Shape | undefined {
    const point = this.points?.get(name);
    const path = this.paths?.get(name);
    return wanted === 'point' ? (point ?? path) : (path ?? point);
  }

  /** A part by its whole path (`bust-dart.tip`) or its first name; how many names that took. */
  find(
    path: readonly { readonly text: string }[],
    wanted: Wanted,
  ): { readonly shape: Shape; readonly taken: number } | undefined {
    if (this.points === undefined && this.paths === undefined) return undefined;
    const [first, second] = path;
    const both = second === undefined ? undefined : this.get(`${first!.text}.${second.text}`, wanted);
    if (both !== undefined) return { shape: both, taken: 2 };
    const one = this.get(first!.text, second === undefined ? wanted : 'path');
    return one && { shape: one, taken: 1 };
  }
}

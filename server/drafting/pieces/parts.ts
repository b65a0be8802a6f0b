/** What stands in a piece's own block: its edges and named corners as they come to be, looked up before the draft's names. */
import type { Shape } from '../model';

export class OwnParts {
  private readonly shapes = new Map<string, Shape>();

  set(name: string, shape: Shape): void {
    if (!this.shapes.has(name)) this.shapes.set(name, shape);
  }

  /** Takes the place of an earlier part: an edge once its darts are cut. */
  replace(name: string, shape: Shape): void {
    this.shapes.set(name, shape);
  }

  get(name: string): Shape | undefined {
    return this.shapes.get(name);
  }

  /** A part by its whole path (`bust-dart.tip`) or its first name; how many names that took. */
  find(path: readonly { readonly text: string }[]): { readonly shape: Shape; readonly taken: number } | undefined {
    const [first, second] = path;
    const both = second === undefined ? undefined : this.shapes.get(`${first!.text}.${second.text}`);
    if (both !== undefined) return { shape: both, taken: 2 };
    const one = this.shapes.get(first!.text);
    return one && { shape: one, taken: 1 };
  }
}

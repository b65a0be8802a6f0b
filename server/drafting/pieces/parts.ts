/** What stands in a piece's own block: its edges and named corners as they come to be, looked up before the draft's names. */
import type { Shape } from '../model';

export class OwnParts {
  private readonly shapes = new Map<string, Shape>();

  set(name: string, shape: Shape): void {
    if (!this.shapes.has(name)) this.shapes.set(name, shape);
  }

  get(name: string): Shape | undefined {
    return this.shapes.get(name);
  }

  names(): Iterable<string> {
    return this.shapes.keys();
  }
}

/** What is selected, and what the cursor in the text stands on: kept by source, so that both survive new drawings. */
import type { Source } from '../../../server/drawing/model';
import type { Stage } from './stage';

export class Selection {
  selected: Source | '' = '';
  private marked: ReadonlySet<Source> = new Set();

  constructor(private readonly stage: Stage) {}

  select(source: Source | ''): void {
    this.selected = source;
    this.paint(this.stage.things());
  }

  mark(sources: readonly Source[]): void {
    this.marked = new Set(sources);
    this.paint(this.stage.things());
  }

  /** Paints pieces that were drawn anew. */
  paintPieces(pieces: readonly SVGGElement[]): void {
    for (const piece of pieces) this.paint([piece, ...piece.querySelectorAll<SVGGElement>('[data-source]')]);
  }

  private paint(nodes: readonly SVGGElement[]): void {
    for (const node of nodes) {
      const source = node.dataset.source!;
      const selected = source === this.selected;
      node.classList.toggle('selected', selected);
      node.classList.toggle('marked', this.marked.has(source));
      if (node.getAttribute('role') === 'button') node.setAttribute('aria-pressed', String(selected));
    }
  }
}

/** What is selected, and what the cursor in the text stands on: kept by source, so that both survive new drawings. */
import type { Source } from '../../../server/drawing/model';
import type { Stage } from './stage';

export class Selection {
  selected: Source | '' = '';
  /** The cursor stands on all of these: a name, the line of a piece, the piece. */
  private under: readonly Source[] = [];
  private marked: ReadonlySet<Source> = new Set();

  constructor(private readonly stage: Stage) {}

  select(source: Source | ''): void {
    this.selected = source;
    this.paint(this.stage.things());
  }

  mark(sources: readonly Source[]): void {
    this.under = sources;
    this.paintAll();
  }

  /** Paints pieces that were drawn anew. */
  paintPieces(pieces: readonly SVGGElement[]): void {
    if (pieces.length > 0) this.paintAll();
  }

  private paintAll(): void {
    const things = this.stage.things();
    this.marked = new Set(closest(this.under, things));
    this.paint(things);
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

/** A whole piece is meant only where nothing that is drawn on it is: marked all round, it would hide its own edge. */
function closest(sources: readonly Source[], things: readonly SVGGElement[]): readonly Source[] {
  const drawn = (source: Source, selector: string): boolean =>
    things.some((node) => node.dataset.source === source && node.matches(selector));
  const within = sources.filter((source) => drawn(source, '.thing:not(.whole), .dot'));
  return within.length > 0 ? within : sources;
}

/** The last good drawing of each piece, kept where it outlives a hidden view and a server that was started anew. */
import type { PieceDrawing } from '../../../server/drawing/model';
import type { Sheet } from '../protocol';

export class LastDrawn {
  private kept = new Map<string, PieceDrawing>();

  get pieces(): readonly PieceDrawing[] {
    return [...this.kept.values()];
  }

  /** Takes what a sheet brings, and drops what it no longer places. */
  take({ pieces, placements }: Sheet): void {
    for (const piece of pieces) this.kept.set(piece.name, piece);
    const placed = new Set(placements.map(({ piece }) => piece));
    this.kept = new Map([...this.kept].filter(([name]) => placed.has(name)));
  }
}

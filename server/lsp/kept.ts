/** Pieces that are drawn anew and look as before stay the same object, so that nobody is sent them again. */
import type { PieceDrawing } from '../drawing/model';

export class Kept {
  #before = new Map<string, { readonly text: string; readonly piece: PieceDrawing }>();

  of(piece: PieceDrawing): PieceDrawing {
    const text = JSON.stringify(piece);
    const before = this.#before.get(piece.name);
    if (before?.text === text) return before.piece;
    this.#before.set(piece.name, { text, piece });
    return piece;
  }

  forget(): void {
    this.#before.clear();
  }
}

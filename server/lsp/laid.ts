/** What is laid out in one preview, sent whenever it looks different; a drawing that the view holds is not sent again. */
import { say } from '../../grammar/say';
import type { Laid, Laying } from '../../client/preview/protocol';
import type { Pattern } from '../drafting/model';
import type { PieceDrawing } from '../drawing/model';
import { layOut, type LaidOut } from '../features/laying';

const notNow = (): string => say`This can’t be laid out from the text as it stands.`;

const NOTHING_LAID: LaidOut = {
  ...{ words: [notNow()], pieces: [], lines: [], dots: [], texts: [] },
  frame: { left: 0, top: 0, right: 0, bottom: 0 },
};

export class LaidOnTable {
  /** By name: the drawings that the view was sent. */
  #drawings = new Map<string, PieceDrawing>();
  #said = '';

  constructor(private readonly where: Pick<Laid, 'uri' | 'seat'>) {}

  /** Undefined where it looks as it did. */
  next(pattern: Pattern, laying: Laying): Laid | undefined {
    const out = layOut(pattern, laying) ?? NOTHING_LAID;
    const pieces = out.pieces.map(({ drawing, ...lies }) =>
      this.#drawings.get(drawing.name) === drawing ? lies : { ...lies, drawing },
    );
    const laid: Laid = { type: 'laid', ...this.where, laying, ...out, pieces };
    const isHeld = out.pieces.every(({ drawing }) => this.#drawings.get(drawing.name) === drawing);
    const said = JSON.stringify({ ...laid, pieces: out.pieces.map(({ drawing: _, ...lies }) => lies) });
    if (isHeld && said === this.#said) return undefined;
    this.#said = said;
    for (const { drawing } of out.pieces) this.#drawings.set(drawing.name, drawing);
    return laid;
  }

  /** The person turned to something else. */
  clear(): void {
    this.#drawings.clear();
    this.#said = '';
  }
}

/** Previews that are open, and the sheets that keep each of them in step with its text. */
import type { Sheet } from '../../client/preview/protocol';
import { draw, place } from '../drawing/draw';
import type { Drawing, PieceDrawing } from '../drawing/model';
import type { Pattern } from '../drafting/model';
import type { Desk } from './desk';
import { fullSheet, nextSheet, type Before, type Drawn, type Held } from './sheets';
import { canonical } from './uris';

interface Preview {
  readonly clientUri: string;
  held: Held | undefined;
}

export class Previews {
  readonly #open = new Map<string, Preview>();

  constructor(
    private readonly desk: Desk,
    private readonly send: (sheet: Sheet) => void,
  ) {}

  keys(): readonly string[] {
    return [...this.#open.keys()];
  }

  /** Begins a preview, or begins it again: the answer replaces all that the view holds. `last`: what it held so far. */
  open(uri: string, last: readonly PieceDrawing[] = []): Sheet {
    const key = canonical(uri);
    const before = this.#open.get(key)?.held ?? lastHeld(last);
    const held = fullSheet(this.#drawn(uri, this.desk.pattern(key)), before);
    this.#open.set(key, { clientUri: uri, held });
    return held.sheet;
  }

  close(uri: string): void {
    this.#open.delete(canonical(uri));
  }

  /** Sends what changed, if a preview of this file is open and anything did. */
  update(key: string, pattern: Pattern): void {
    const preview = this.#open.get(key);
    if (preview?.held === undefined) return;
    const next = nextSheet(this.#drawn(preview.clientUri, pattern), preview.held);
    if (next === undefined) return;
    preview.held = next;
    this.send(next.sheet);
  }

  #drawn(uri: string, pattern: Pattern): Drawn {
    const drawing = draw(pattern);
    return { uri, drawing, wanted: wanted(pattern, drawing), findings: this.desk.problems(pattern), place };
  }
}

function lastHeld(last: readonly PieceDrawing[]): Before {
  return { version: 0, pieces: new Map(last.map((piece) => [piece.name, piece])) };
}

/** The pieces that the text names and that are shown or can't be had; a step that is never cut is neither. */
function wanted({ pieceNames, pieces }: Pattern, drawing: Drawing): readonly string[] {
  const shown = new Set(drawing.pieces.map(({ source }) => source));
  const sound = new Set(pieces.map(({ source }) => source));
  return pieceNames.filter((name) => shown.has(name) || !sound.has(name));
}

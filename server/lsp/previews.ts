/** Previews that are open, and the sheets that keep each of them in step with its text. */
import type { Sheet, Trial } from '../../client/preview/protocol';
import { draw, place } from '../drawing/draw';
import type { Drawing, PieceDrawing } from '../drawing/model';
import type { Pattern } from '../drafting/model';
import { choiceFor, isNothing, NOTHING_TRIED, triedChoices } from '../features/trial';
import type { Desk } from './desk';
import { fullSheet, nextSheet, type Before, type Drawn, type Held } from './sheets';
import { canonical } from './uris';

interface Preview {
  readonly clientUri: string;
  held: Held | undefined;
  trial: Trial;
}

/** By which the workshop knows who tries. */
const SEAT = 'preview';

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
  open(uri: string, last: readonly PieceDrawing[] = [], trial: Trial = NOTHING_TRIED): Sheet {
    const key = canonical(uri);
    const preview: Preview = { clientUri: uri, held: undefined, trial };
    const before = this.#open.get(key)?.held ?? lastHeld(last);
    preview.held = fullSheet(this.#drawn(preview, this.desk.pattern(key)), before);
    this.#open.set(key, preview);
    return preview.held.sheet;
  }

  /** Draws a preview for another body or other values, from now on. */
  tryOut(uri: string, trial: Trial): void {
    const key = canonical(uri);
    const preview = this.#open.get(key);
    if (preview === undefined) return;
    preview.trial = trial;
    this.update(key, this.desk.pattern(key));
  }

  close(uri: string): void {
    const key = canonical(uri);
    this.#open.delete(key);
    this.desk.workshop.leave(key, SEAT);
  }

  /** Sends what changed, if a preview of this file is open and anything did. */
  update(key: string, pattern: Pattern): void {
    const preview = this.#open.get(key);
    if (preview?.held === undefined) return;
    const next = nextSheet(this.#drawn(preview, pattern), preview.held);
    if (next === undefined) return;
    preview.held = next;
    this.send(next.sheet);
  }

  #drawn({ clientUri: uri, trial }: Preview, written: Pattern): Drawn {
    const choice = choiceFor(written, trial);
    const pattern = isNothing(choice) ? written : this.desk.workshop.tried(written.uri, SEAT, choice);
    const drawing = draw(pattern);
    return {
      ...{ uri, drawing, trial, place },
      wanted: wanted(pattern, drawing),
      findings: this.desk.problems(pattern),
      everybody: pattern.everybody.map(({ name, size }) => [name, size ?? ''].join(' ').trim()),
      choices: triedChoices(pattern),
    };
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

/** Previews that are open, and the sheets that keep each of them in step with its text. */
import type { Laid, Sheet, Trial, Want } from '../../client/preview/protocol';
import { wholeByMirror } from '../drawing/by-mirror';
import { withDrafts } from '../drawing/draft';
import { draw, place } from '../drawing/draw';
import type { Drawing, PieceDrawing } from '../drawing/model';
import type { Pattern } from '../drafting/model';
import { problemSpots } from '../features/problem-spots';
import { choiceFor, isNothing, NOTHING_TRIED, triedChoices } from '../features/trial';
import type { Desk } from './desk';
import { Grace } from './grace';
import { Kept } from './kept';
import { LaidOnTable } from './laid';
import { Nested } from './nested';
import { fullSheet, nextSheet, type Before, type Drawn, type Held } from './sheets';
import { canonical } from './uris';

interface Preview {
  /** The file as we know it, and as the client writes it. */
  readonly key: string;
  readonly clientUri: string;
  readonly seat: string;
  held: Held | undefined;
  trial: Trial;
  want: Want;
  readonly nested: Nested;
  readonly drafted: Kept;
  readonly table: LaidOnTable;
}

/** Which of a file's previews is meant: several may be open, each with what it tries. */
export interface Seat {
  readonly uri: string;
  readonly seat?: string;
}

export interface Opening extends Seat {
  /** What the view held so far. */
  readonly last?: readonly PieceDrawing[];
  readonly trial?: Trial;
  readonly want?: Want;
}

/** The seat of a preview that does not name its own. */
const ONLY = 'preview';

export class Previews {
  readonly #open = new Map<string, Preview>();

  constructor(
    private readonly desk: Desk,
    private readonly send: (message: Sheet | Laid) => void,
    private readonly grace: Grace = new Grace(),
  ) {}

  keys(): readonly string[] {
    return [...new Set([...this.#open.values()].map(({ key }) => key))];
  }

  /** Begins a preview, or begins it again: the answer replaces all that the view holds. */
  open({ uri, seat = ONLY, last = [], trial = NOTHING_TRIED, want = {} }: Opening): Sheet {
    const key = canonical(uri);
    const old = this.#find({ uri, seat });
    const nested = old?.nested ?? new Nested(this.desk.workshop, key, seat);
    const table = new LaidOnTable({ uri, seat });
    const preview: Preview = {
      ...{ key, clientUri: uri, seat, held: undefined, trial, want, nested, table },
      drafted: new Kept(),
    };
    const before = old?.held ?? lastHeld(last);
    preview.held = fullSheet(this.#drawn(preview), before);
    this.#open.set(seatKey({ uri, seat }), preview);
    return preview.held.sheet;
  }

  /** Draws a preview for another body or other values, from now on. */
  tryOut({ trial, ...seat }: Seat & { readonly trial: Trial }): void {
    const preview = this.#find(seat);
    if (preview === undefined) return;
    preview.trial = trial;
    this.#update(preview);
  }

  /** Shows more, or less, from now on. */
  wants({ want, ...seat }: Seat & { readonly want: Want }): void {
    const preview = this.#find(seat);
    if (preview === undefined) return;
    preview.want = want;
    if (want.sizes !== true) preview.nested.leave();
    if (want.laying === undefined) preview.table.clear();
    this.#update(preview);
  }

  close(seat: Seat): void {
    const preview = this.#find(seat);
    if (preview === undefined) return;
    this.#open.delete(seatKey(seat));
    preview.nested.leave();
    this.desk.workshop.leave(preview.key, preview.seat);
  }

  /** Sends what changed to every preview of a file, if anything did. */
  update(key: string): void {
    for (const preview of this.#open.values()) if (preview.key === key) this.#update(preview);
  }

  /** The pattern as a preview shows it, with what it tries. */
  shown(seat: Seat): Pattern {
    const preview = this.#find(seat);
    return preview === undefined ? this.desk.pattern(seat.uri) : this.#pattern(preview);
  }

  #find(seat: Seat): Preview | undefined {
    return this.#open.get(seatKey(seat));
  }

  #update(preview: Preview): void {
    if (preview.held === undefined) return;
    const next = nextSheet(this.#drawn(preview), preview.held);
    // drawing and problems are of one text: the drawing waits where the problems do
    if (next && this.grace.waits(codesOf(preview.held), codesOf(next))) return;
    if (next !== undefined) {
      preview.held = next;
      this.send(next.sheet);
    }
    const { laying } = preview.want;
    const laid = laying && preview.table.next(this.#pattern(preview), laying);
    if (laid !== undefined) this.send(laid);
  }

  #pattern({ key, seat, trial }: Preview): Pattern {
    const written = this.desk.pattern(key);
    const choice = choiceFor(written, trial);
    return isNothing(choice) ? written : this.desk.workshop.tried(key, seat, choice);
  }

  #drawn(preview: Preview): Drawn {
    const { clientUri: uri, seat, trial, want, nested, drafted } = preview;
    const pattern = this.#pattern(preview);
    const all = want.sizes === true ? nested.draw(pattern, choiceFor(pattern, trial)) : undefined;
    const drawn = all ?? draw(pattern);
    const opened = want.whole === true ? drawnWhole(drawn) : drawn;
    // sizes on one another are drawn with as many drafts: their lines would be a thicket
    const drawing = want.construction === true && !all ? drawnOnDraft(opened, pattern, drafted) : opened;
    return {
      ...{ uri, seat, drawing, trial, place },
      wanted: wanted(pattern, drawing),
      findings: this.desk.problems(pattern),
      everybody: pattern.everybody.map(({ name, size }) => [name, size ?? ''].join(' ').trim()),
      choices: triedChoices(pattern),
      sizes: pattern.sizes,
      // sizes are moved to lie on one another: a sign of one of them would stand beside its place
      spotsOf: all ? () => [] : problemSpots(pattern),
    };
  }
}

const codesOf = ({ sheet }: Held): readonly string[] => sheet.problems.map(({ code }) => code);

const seatKey = ({ uri, seat = ONLY }: Seat): string => `${canonical(uri)}\n${seat}`;

function drawnWhole(drawing: Drawing): Drawing {
  const pieces = drawing.pieces.map(wholeByMirror);
  return { ...drawing, pieces, ...place(pieces) };
}

function drawnOnDraft(drawing: Drawing, pattern: Pattern, kept: Kept): Drawing {
  const pieces = withDrafts(drawing, pattern).pieces.map((piece) => kept.of(piece));
  return { ...drawing, pieces, ...place(pieces) };
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

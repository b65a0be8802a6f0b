/** What a preview is sent: the whole drawing first, then only what changed. Pieces that broke keep their last drawing. */
import { say } from '../../grammar/say';
import { PROTOCOL_VERSION, type PreviewProblem, type Sheet } from '../../client/preview/protocol';
import type { Drawing, PieceDrawing, Placement } from '../drawing/model';
import type { PlacedFinding } from '../drafting/model';

/** What one preview holds after a sheet. */
export interface Held {
  readonly version: number;
  readonly sheet: Sheet;
  /** By name, in the order of the sheet: the drawings that the view has. */
  readonly pieces: ReadonlyMap<string, PieceDrawing>;
}

/** What a whole sheet needs to know of the one before it. */
export type Before = Pick<Held, 'version' | 'pieces'>;

/** A drafted pattern as a preview needs it. */
export interface Drawn {
  readonly uri: string;
  readonly seat: string;
  readonly drawing: Drawing;
  /** Every piece that should be on the sheet, drawn or not, in file order. */
  readonly wanted: readonly string[];
  readonly findings: readonly PlacedFinding[];
  readonly everybody: Sheet['everybody'];
  readonly choices: Sheet['choices'];
  readonly trial: Sheet['trial'];
  readonly sizes: Sheet['sizes'];
  /** Where a finding is on the pieces. */
  spotsOf(finding: PlacedFinding): PreviewProblem['spots'];
  /** Lays pieces beside each other. */
  place(pieces: readonly PieceDrawing[]): Pick<Drawing, 'placements' | 'frame'>;
}

/** The whole drawing, with what is kept of `before`. */
export function fullSheet(drawn: Drawn, before: Before | undefined): Held {
  const all = withStale(drawn, before);
  return hold(drawn, all, { version: (before?.version ?? 0) + 1, since: 0, full: true, pieces: all.pieces });
}

/** What changed since `before`; undefined when the view would look the same. */
export function nextSheet(drawn: Drawn, before: Held): Held | undefined {
  const all = withStale(drawn, before);
  const pieces = all.pieces.filter((piece) => before.pieces.get(piece.name) !== piece);
  const next = hold(drawn, all, { version: before.version + 1, since: before.version, full: false, pieces });
  return pieces.length === 0 && sameFrame(next.sheet, before.sheet) ? undefined : next;
}

interface All extends Pick<Drawing, 'placements' | 'frame'> {
  readonly pieces: readonly PieceDrawing[];
  readonly stale: Sheet['stale'];
}

/** The pieces of a drawing, and the last good drawings of those the text still names but can't be drawn from it. */
function withStale(drawn: Drawn, before: Before | undefined): All {
  const fresh = drawn.drawing.pieces;
  const drawnSources = new Set(fresh.map(({ source }) => source));
  const kept = [...(before?.pieces.values() ?? [])].filter(
    ({ source }) => !drawnSources.has(source) && drawn.wanted.includes(source),
  );
  if (kept.length === 0) return { pieces: fresh, stale: [], ...places(drawn.drawing) };
  const order = (piece: PieceDrawing) => drawn.wanted.indexOf(piece.source);
  const pieces = [...fresh, ...kept].sort((a, b) => order(a) - order(b));
  const stale = kept.map((piece) => ({ piece: piece.name, reason: reasonFor(piece, drawn.findings) }));
  return { pieces, stale, ...drawn.place(pieces) };
}

const places = ({
  placements,
  frame,
}: Drawing): { placements: readonly Placement[]; frame: Drawing['frame'] } => ({
  placements,
  frame,
});

/** The error that speaks of the piece, else the first one, since a piece may rest on anything before it. */
function reasonFor(piece: PieceDrawing, findings: readonly PlacedFinding[]): string {
  const errors = findings.filter(({ severity }) => severity === 'error');
  const found = errors.find((error) => error.piece === piece.source) ?? errors[0];
  return found?.message ?? say`It can’t be drawn from the text as it stands.`;
}

function hold(
  { uri, seat, drawing, findings, everybody, choices, trial, sizes, spotsOf }: Drawn,
  all: All,
  part: Pick<Sheet, 'version' | 'since' | 'full' | 'pieces'>,
): Held {
  const { title, body, unit } = drawing;
  const sheet: Sheet = {
    type: 'sheet',
    protocol: PROTOCOL_VERSION,
    ...{ uri, seat },
    ...part,
    title,
    body,
    ...{ everybody, choices, trial, sizes },
    nested: drawing.sizes ?? [],
    unit,
    placements: all.placements,
    frame: all.frame,
    stale: all.stale,
    problems: findings.map((finding) => previewProblem(finding, spotsOf(finding))),
  };
  return { version: part.version, sheet, pieces: new Map(all.pieces.map((piece) => [piece.name, piece])) };
}

function previewProblem(
  { severity, code, message, source, piece }: PlacedFinding,
  spots: PreviewProblem['spots'] = [],
): PreviewProblem {
  return {
    ...{ severity, code, message, source },
    ...(piece === undefined ? {} : { piece }),
    ...(spots.length > 0 && { spots }),
  };
}

/** True when two sheets say the same of everything but the pieces' own drawings. */
function sameFrame(a: Sheet, b: Sheet): boolean {
  const rest = ({ version: _, since: __, full: ___, pieces: ____, ...said }: Sheet) => JSON.stringify(said);
  return rest(a) === rest(b);
}

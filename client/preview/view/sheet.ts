/** What the view holds of the drawing, and how the sheets that arrive change it. Knows no DOM. */
import type { PieceDrawing, Placement } from '../../../server/drawing/model';
import { PROTOCOL_VERSION, type Sheet } from '../protocol';

export interface Held {
  readonly sheet: Sheet;
  readonly pieces: ReadonlyMap<string, PieceDrawing>;
  readonly stale: ReadonlyMap<string, string>;
}

export type Outcome =
  /** The sheet builds on one that the view does not hold. */
  | { readonly kind: 'ask' }
  /** The sheet speaks another version of the protocol. */
  | { readonly kind: 'stranger' }
  | {
      readonly kind: 'applied';
      readonly held: Held;
      /** Pieces to draw anew, in file order. */
      readonly redraw: readonly string[];
      /** All pieces now on the sheet, in file order. */
      readonly placements: readonly Placement[];
    };

/** Lays a sheet upon what is held. What was held stays as it was. */
export function applySheet(before: Held | undefined, sheet: Sheet): Outcome {
  if (sheet.protocol !== PROTOCOL_VERSION) return { kind: 'stranger' };
  if (!sheet.full && before?.sheet.version !== sheet.since) return { kind: 'ask' };
  const pieces = mergedPieces(sheet.full ? undefined : before, sheet);
  if (!pieces) return { kind: 'ask' };
  const held: Held = {
    sheet,
    pieces,
    stale: new Map(sheet.stale.map(({ piece, reason }) => [piece, reason])),
  };
  const redraw = sheet.placements.map(({ piece }) => piece).filter((name) => differs(name, before, held));
  return { kind: 'applied', held, redraw, placements: sheet.placements };
}

/** Every placed piece with its newest drawing; nothing when one is missing. */
function mergedPieces(before: Held | undefined, sheet: Sheet): Map<string, PieceDrawing> | undefined {
  const sent = new Map(sheet.pieces.map((piece) => [piece.name, piece]));
  const merged = new Map<string, PieceDrawing>();
  for (const { piece: name } of sheet.placements) {
    const piece = sent.get(name) ?? before?.pieces.get(name);
    if (!piece) return undefined;
    merged.set(name, piece);
  }
  return merged;
}

function differs(name: string, before: Held | undefined, held: Held): boolean {
  return (
    before?.pieces.get(name) !== held.pieces.get(name) || before?.stale.get(name) !== held.stale.get(name)
  );
}

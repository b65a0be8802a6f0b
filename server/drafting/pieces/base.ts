/** The piece that another is made from. */
import { say } from '../../../grammar/say';
import type { Ref } from '../../../grammar/syntax';
import type { Piece } from '../model';
import { report, type Reader } from '../values/reader';

/** A piece that is named whole. */
export function basePiece(reader: Reader, ref: Ref): Piece | undefined {
  return based(reader, ref, 0)?.piece;
}

/** A piece, and the name of a part of it behind a point: `yoke.shoulder`. */
export function basePart(
  reader: Reader,
  ref: Ref,
): { readonly piece: Piece; readonly rest: Ref['path'] } | undefined {
  return based(reader, ref, 1);
}

/** None where it is not fully itself, or its outline has a gap: it has said so. */
function based(
  reader: Reader,
  ref: Ref,
  more: number,
): { readonly piece: Piece; readonly rest: Ref['path'] } | undefined {
  const found = reader.find(ref);
  if (found === undefined) return undefined;
  const { answer, rest } = found;
  if (answer.is === 'piece' && rest.length === more) {
    const { unbuilt, gaps } = answer.piece;
    if (unbuilt.length === 0 && gaps.length === 0) return { piece: answer.piece, rest };
    reader.blocked = true;
    return undefined;
  }
  const words = ref.path.map(({ text }) => text).join('.');
  const what =
    more === 0 ? say`is no piece; a piece is worked from another piece` : say`is no edge of a piece`;
  return report(reader, 'wrong-kind', ref.at, `${words} ${what}.`);
}

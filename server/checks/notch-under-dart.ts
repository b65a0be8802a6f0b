/** Finds notches that would be cut through a folded dart. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Dart, Notch, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { dartsOf, placeOf } from './dart-places';

export const notchUnderDart: Judged = {
  code: 'notch-under-dart',
  severity: 'warning',
  title: 'A notch that lies under a folded dart',
  by: 'judgement',
  ofPiece: (piece, pattern) =>
    dartsOf(piece).flatMap((dart) =>
      piece.notches
        .filter((notch) => notch.edge === dart.edge)
        .flatMap((notch) => under(piece, dart, notch, pattern)),
    ),
};

/** A notch at the very end of a leg marks the dart itself, mm. */
const MARKS_LEG = 2;

/** Folded, a dart lies beside its leg for half its width; pressed open, for a quarter on both sides. */
function under(piece: Piece, dart: Dart, notch: Notch, { unit }: Judging): readonly Finding[] {
  const { path } = piece.edges.find(({ name }) => name === dart.edge)!;
  const [from, to, at] = [dart.from, dart.to, notch.point].map((p) => path.locate(p).s) as [
    number,
    number,
    number,
  ];
  const reach = dart.width / (dart.pressed === 'open' ? 4 : 2);
  const before = dart.pressed === 'from' || dart.pressed === 'open' ? from - at : -1;
  const after = dart.pressed === 'to' || dart.pressed === 'open' ? at - to : -1;
  const away = Math.max(before, after);
  if (away <= MARKS_LEG || away >= reach) return [];
  const message = say`${notch.name} lies ${printLength(away, unit)} beside ${dart.name} on ${dart.edge}, where the folded dart covers ${printLength(reach, unit)}: it would be cut through three layers. Move the notch, or press the dart the other way.`;
  return [
    finding('notch-under-dart', { statement: dart.statement, at: placeOf(dart) }, message, {
      piece: piece.name,
      related: [{ source: notch.source, message: say`${notch.name} is placed here.` }],
    }),
  ];
}

/** What stands above a piece and a seam: how it is cut and what is wrong with it; both lengths of what is sewn. */
import { say } from '../../grammar/say';
import type { Pattern, Piece, PlacedFinding, Seam } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';

export interface Lens {
  /** Where the name of the piece or seam stands. */
  readonly from: number;
  readonly to: number;
  readonly words: string;
}

/** The lenses of a pattern's own file, in the order of its pieces and seams. */
export function lenses(pattern: Pattern, findings: readonly PlacedFinding[]): readonly Lens[] {
  const problems = counted(findings);
  const pieces = new Map<string, Piece>();
  // both halves of a piece that differs from side to side stand on one line of the text
  for (const piece of pattern.pieces) if (!pieces.has(piece.source)) pieces.set(piece.source, piece);
  return [
    ...[...pieces.values()].flatMap((piece) => at(pattern, piece.source, pieceWords(piece, problems))),
    ...pattern.seams.flatMap((seam) => at(pattern, seam.source, seamWords(pattern, seam))),
  ];
}

function at(pattern: Pattern, source: string, words: string): readonly Lens[] {
  const place = pattern.locate(source);
  return place === undefined || place.uri !== pattern.uri ? [] : [{ from: place.from, to: place.to, words }];
}

/** How many findings speak of each piece; what is only noted is no problem. */
function counted(findings: readonly PlacedFinding[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { severity, piece, source } of findings) {
    if (severity === 'note') continue;
    const owner = piece ?? source;
    counts.set(owner, (counts.get(owner) ?? 0) + 1);
  }
  return counts;
}

function pieceWords({ cut, source }: Piece, problems: ReadonlyMap<string, number>): string {
  const count = problems.get(source) ?? 0;
  const said = count === 0 ? say`no problems` : count === 1 ? say`1 problem` : say`${count} problems`;
  return `${cut?.text ?? say`not cut`} · ${said}`;
}

function seamWords({ unit }: Pattern, seam: Seam): string {
  if (seam.itsPair) return say`${printLength(seam.leftLength, unit)}, sewn to its pair`;
  const side = (edges: Seam['left']) => edges.map(({ piece, edge }) => `${piece}.${edge}`).join(' + ');
  const left = `${side(seam.left)} ${printLength(seam.leftLength, unit)}`;
  const right = `${side(seam.right)} ${printLength(seam.rightLength, unit)}`;
  return seam.comparable ? `${left} · ${right}` : say`${left} · ${right} · not compared`;
}

/** The edges of a piece as they run when their darts are sewn and their pleats laid, with the edges beside them. */
import { say } from '../../../grammar/say';
import type { LaidLine } from '../../../client/preview/protocol';
import type { Dart, Edge, Pattern, Piece } from '../../drafting/model';
import { close } from '../../drafting/pieces/truing';
import { loopOf } from '../../drafting/sewing/course';
import { printLength } from '../../drafting/values/quantity';
import { compose, identity, inverse, Path, type Affine } from '../../geometry';
import { laidPieces, overLine, type LaidOut } from './paper';

/** So much of the edge beside is shown, mm: enough to see whether the corner runs on. */
const BESIDE = 60;

export function dartsClosed(pattern: Pattern, source: string): LaidOut | undefined {
  const piece = pattern.pieces.find((one) => one.source === source && closable(one).length > 0);
  if (piece === undefined) return undefined;
  const edges = closable(piece);
  const { pieces, texts, frame } = laidPieces(pattern, [{ piece, by: identity }]);
  return {
    words: edges.map((edge) => closedWords(piece, edge, pattern)),
    pieces: pieces.map((one) => ({ ...one, faint: true })),
    lines: edges.flatMap((edge) => closedLines(piece, edge)),
    ...{ dots: [], texts, frame },
  };
}

/** Edges from which a dart or a pleat is taken. */
export const closable = ({ edges }: Pick<Piece, 'edges'>): readonly Edge[] =>
  edges.filter(({ parts }) => parts.some(({ dart }) => dart !== undefined));

const dartsOf = ({ darts }: Piece, edge: Edge): readonly Dart[] =>
  edge.parts.flatMap(({ dart }) => darts.find(({ name }) => name === dart) ?? []);

/** The parts where they come together; the longest keeps its place on the paper. */
function closedParts(piece: Piece, edge: Edge): readonly { readonly path: Path; readonly by: Affine }[] {
  const closed = close(edge, dartsOf(piece, edge));
  const still = closed.reduce((a, b) => (b.part.path.length > a.part.path.length ? b : a));
  const back = inverse(still.by) ?? identity;
  return closed.map(({ part, by }) => ({ path: part.path, by: compose(by, back) }));
}

function closedLines(piece: Piece, edge: Edge): readonly LaidLine[] {
  const parts = closedParts(piece, edge);
  const words = { name: edge.name, source: edge.source, tip: say`${edge.name}, its darts closed` };
  const runs = parts.map(({ path, by }) => overLine('closed', path, by, words));
  return [...runs, ...legs(piece, edge, parts), ...beside(piece, edge, parts)];
}

/** Each closed dart is one line: its two legs lie on each other. */
function legs(
  piece: Piece,
  edge: Edge,
  parts: readonly { readonly path: Path; readonly by: Affine }[],
): readonly LaidLine[] {
  let part = 0;
  return edge.parts.flatMap(({ dart: name }) => {
    if (name === undefined) {
      part++;
      return [];
    }
    const dart = piece.darts.find((one) => one.name === name);
    const before = parts[part - 1];
    if (dart === undefined || before === undefined) return [];
    const words = { name: dart.name, source: dart.source, tip: say`${dart.name}, closed` };
    return [overLine('closed', Path.line(dart.from, dart.tip), before.by, words)];
  });
}

/** The ends of the edges beside it, swung with the parts that they adjoin. */
function beside(
  piece: Piece,
  edge: Edge,
  parts: readonly { readonly path: Path; readonly by: Affine }[],
): readonly LaidLine[] {
  const loop = loopOf(piece, edge);
  const index = loop.indexOf(edge);
  const at = (i: number): Edge => loop[(i + loop.length) % loop.length]!;
  const [before, after] = [at(index - 1), at(index + 1)];
  const told = ({ name, source }: Edge) => ({ name, source, tip: name });
  const last = before.path.part(Math.max(before.path.length - BESIDE, 0), before.path.length);
  const first = after.path.part(0, Math.min(BESIDE, after.path.length));
  return [
    overLine('closed', last, parts[0]!.by, told(before)),
    overLine('closed', first, parts[parts.length - 1]!.by, told(after)),
  ];
}

/** `waist is 22.7cm on paper and 17.1cm with its darts closed; it bends by 0.4° at inner and 0.2° at outer.` */
function closedWords(piece: Piece, edge: Edge, { unit }: Pattern): string {
  const lengths = say`${edge.name} is ${printLength(edge.drawn, unit)} on paper and ${printLength(edge.sewn, unit)} when sewn`;
  const all = bendsAt(piece, edge);
  if (all.length > 0 && all.every(({ degrees }) => degrees === 0))
    return say`${lengths}, and runs on in one line where it closes.`;
  const bends = all.map(({ name, degrees }) => say`${degrees}° at ${name}`);
  if (bends.length === 0) return `${lengths}.`;
  return say`${lengths}; it bends by ${bends.join(say` and `)}.`;
}

function bendsAt(piece: Piece, edge: Edge): readonly { readonly name: string; readonly degrees: number }[] {
  const parts = closedParts(piece, edge);
  const names = edge.parts.flatMap(({ dart }) => dart ?? []);
  return parts.slice(1).map((next, i) => {
    const before = parts[i]!;
    const [a, b] = [before.path.transformed(before.by), next.path.transformed(next.by)];
    const [into, out] = [a.tangentAt(a.length, 'before'), b.tangentAt(0)];
    const turn = Math.atan2(into.x * out.y - into.y * out.x, into.x * out.x + into.y * out.y);
    return { name: names[i] ?? '', degrees: Number(Math.abs((turn * 180) / Math.PI).toFixed(1)) };
  });
}

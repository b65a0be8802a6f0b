/** Which drawn things a few typed letters mean, the likeliest first. Knows no DOM. */
import type { PieceDrawing, Source } from '../../../server/drawing/model';

export interface Findable {
  readonly source: Source;
  readonly piece: string;
  readonly name: string;
  /** What is told where it is pointed at. */
  readonly tip: string;
}

/** Everything with a name of its own, in the order of the sheet. */
export function findables(pieces: Iterable<PieceDrawing>): Findable[] {
  const found = new Map<string, Findable>();
  const add = (one: Findable) => {
    const key = `${one.piece} ${one.source} ${one.name}`;
    if (!found.has(key)) found.set(key, one);
  };
  for (const { name: piece, source, spoken, lines, dots } of pieces) {
    add({ source, piece, name: piece, tip: spoken });
    for (const line of lines) if (line.source !== source) add({ ...line, piece });
    for (const dot of dots) add({ source: dot.source, piece, name: dot.name, tip: dot.name });
  }
  return [...found.values()];
}

/** Letters that stand at the beginning of a name mean it before letters within, and those before letters of its piece. */
export function found(all: readonly Findable[], letters: string): Findable[] {
  const words = letters.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  const ranked = all.flatMap((one) => {
    const ranks = words.map((word) => rank(one, word));
    return ranks.includes(-1) ? [] : [{ one, rank: Math.max(...ranks) }];
  });
  return ranked.sort((a, b) => a.rank - b.rank).map(({ one }) => one);
}

function rank({ name, piece, tip }: Findable, word: string): number {
  const lower = name.toLowerCase();
  if (lower === word) return 0;
  if (lower.startsWith(word)) return 1;
  if (lower.includes(word)) return 2;
  if (piece.toLowerCase().startsWith(word)) return 3;
  return tip.toLowerCase().includes(word) ? 4 : -1;
}

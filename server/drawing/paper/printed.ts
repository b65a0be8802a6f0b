/**
 * A pattern as it is printed: the drawing, made smaller where that is asked for, with everything on each piece that whoever
 * cuts it must know. Pieces are lettered for the way they come to lie, so that their words are read from one side.
 */
import { say } from '../../../grammar/say';
import type { Pattern } from '../../drafting/model';
import { compose, identity, scaling, type Affine } from '../../geometry';
import { draw, place, shown } from '../draw';
import type { Drawing, DrawnText, Frame, PieceDrawing } from '../model';
import { movedSpot, movedText } from '../moved';
import { rounded } from '../path';
import type { Turn } from './arrange';
import { factsOf, type Numbered, type PieceFacts } from './facts';
import { metrics } from './font';
import { lettered, type SheetEdges } from './lettering';
import { mappedPiece, QUARTER } from './mapped';
import type { Told } from './sheet-content';

export interface PrintedOptions extends Told {
  /** Some pieces alone; all unless told. */
  readonly pieces?: readonly string[];
  /** How many errors are found of a piece. */
  readonly errorsOf?: (piece: string) => number;
}

export interface Printed {
  readonly drawing: Drawing;
  readonly turn: Turn;
  /** The piece, upright or turned, with its words off the edges of the sheets that it lies on. */
  readonly off: (piece: PieceDrawing, edges: SheetEdges) => PieceDrawing;
}

export function printed(pattern: Pattern, options: PrintedOptions = {}): Printed {
  const whole = draw(pattern);
  const facts = factsOfAll(pattern, options);
  return letteredWhole(whole, (_, i) => facts[i]!, options);
}

/** What the pattern's own first line says of its state. */
export const toldBy = ({ revision, dated }: Pick<Pattern, 'dated' | 'revision'>): Told => ({
  ...(revision !== undefined && { revision }),
  ...(dated !== undefined && { date: dated }),
});

/** What is told of each piece of a pattern, in the order of the drawing. */
export function factsOfAll(
  pattern: Pattern,
  { errorsOf = () => 0, ...told }: PrintedOptions & Pick<Numbered, 'body'>,
): readonly PieceFacts[] {
  const source = shown(pattern);
  const own = toldBy(pattern);
  return source.map((piece, i) =>
    factsOf(pattern, piece, {
      ...own,
      ...told,
      number: i + 1,
      of: source.length,
      errors: errorsOf(piece.base),
    }),
  );
}

/** A drawing whose pieces are lettered anew, each for the way it comes to lie. */
export function letteredWhole(
  whole: Drawing,
  factsFor: (piece: PieceDrawing, index: number) => PieceFacts,
  { scale = 1, pieces: names }: PrintedOptions,
): Printed {
  const smaller = scale === 1 ? identity : scaling({ x: 0, y: 0 }, 1 / scale);
  const turns = new Map<PieceDrawing, () => PieceDrawing>();
  const anew = new Map<PieceDrawing, (edges: SheetEdges) => PieceDrawing>();
  const made = (drawn: PieceDrawing, facts: PieceFacts, m: Affine): PieceDrawing => {
    const piece = letteredBy(drawn, facts, m);
    anew.set(piece, (edges) => letteredBy(drawn, facts, m, edges));
    return piece;
  };
  const pieces = whole.pieces.flatMap((drawn, i): PieceDrawing[] => {
    if (names !== undefined && !names.includes(drawn.name)) return [];
    const facts = factsFor(drawn, i);
    const upright = made(drawn, facts, smaller);
    turns.set(
      upright,
      once(() => made(drawn, facts, compose(smaller, QUARTER))),
    );
    return [upright];
  });
  const turn: Turn = (piece) => turns.get(piece)?.() ?? mappedPiece(piece, QUARTER);
  const off = (piece: PieceDrawing, edges: SheetEdges): PieceDrawing => {
    const moved = anew.get(piece)?.(edges) ?? piece;
    // a label that no longer fits would change how the pieces lie
    return isSame(moved.frame, piece.frame) ? moved : piece;
  };
  return { drawing: { ...whole, pieces, ...place(pieces) }, turn, off };
}

const isSame = (a: Frame, b: Frame): boolean =>
  a.left === b.left && a.top === b.top && a.right === b.right && a.bottom === b.bottom;

function letteredBy(drawn: PieceDrawing, facts: PieceFacts, m: Affine, edges?: SheetEdges): PieceDrawing {
  const bare = mappedPiece({ ...drawn, texts: [] }, m);
  return lettered(bare, mappedFacts(facts, m), metrics(), edges);
}

/** Words that have their place shrink with it, no smaller than this, mm; what is said of an edge goes to the label. */
const LEAST_MM = 1.6;

function mappedFacts(facts: PieceFacts, m: Affine): PieceFacts {
  const share = Math.hypot(m.a, m.b);
  const least = ({ role }: DrawnText): number => (role === 'edge' ? 0 : LEAST_MM);
  const placed = facts.placed.map((text) =>
    readable({ ...movedText(text, m), size: Math.max(least(text), text.size * share) }),
  );
  const lost = placed.filter(({ size }) => size < LEAST_MM);
  return {
    ...facts,
    lines: [...facts.lines, ...lost.map(({ text, source }) => say`${text} at ${source.split('/').pop()!}`)],
    edges: facts.edges.map((edge) => ({
      ...edge,
      runs: edge.runs.map((run) => run.map((at) => movedSpot(at, m))),
    })),
    marks: facts.marks.map((mark) => ({ ...mark, run: mark.run.map((at) => movedSpot(at, m)) })),
    outline: facts.outline.map((at) => movedSpot(at, m)),
    placed: placed.filter(({ size }) => size >= LEAST_MM),
  };
}

/** What came to stand on its head is turned about its middle. */
function readable(text: DrawnText): DrawnText {
  const turn = ((((text.turn + 180) % 360) + 360) % 360) - 180;
  if (turn <= 90.01 && turn >= -90.01) return text;
  const angle = (turn * Math.PI) / 180;
  const { x, y } = text.at;
  const at = { x: rounded(x + Math.sin(angle) * text.size), y: rounded(y - Math.cos(angle) * text.size) };
  return { ...text, at, turn: rounded(turn > 0 ? turn - 180 : turn + 180) };
}

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => (made ??= make());
}

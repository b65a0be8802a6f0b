/** One piece in one size as the exchange format has it: what is cut, sewn, drawn and drilled, each as flat lines and points. */
import { say } from '../../../grammar/say';
import type { Piece } from '../../drafting/model';
import { Path, type Point } from '../../geometry';
import type { DrawnLine, DrawnText, LineRole, PieceDrawing } from '../model';
import { pathOf } from '../path';
import { openingOf, wholePiece } from '../whole';
import { authoredOf } from '../words';
import { spelt } from './ascii';
import { flatOf, type Flat } from './flat';

export interface ExchangeNotch {
  readonly at: Point;
  /** Cut so deep, mm. */
  readonly depth: number;
  /** Degrees, clockwise as seen from the right: the way in which it is cut. */
  readonly turn: number;
}

export interface ExchangePiece {
  readonly name: string;
  /** The size or the body; '' for a pattern that is drafted for nobody. */
  readonly size: string;
  readonly drawing: PieceDrawing;
  readonly boundary: Flat;
  readonly cutOuts: readonly Flat[];
  readonly sewLines: readonly Flat[];
  readonly internal: readonly Flat[];
  readonly mirrorLine: readonly Point[];
  readonly grain: readonly Point[];
  readonly notches: readonly ExchangeNotch[];
  readonly drillHoles: readonly Point[];
  /** Pieces cut in all; undefined where the pattern does not say. */
  readonly quantity: number | undefined;
  readonly cloths: readonly string[];
  /** How it is cut, what its author notes, and what is wrong with it, each a sentence. */
  readonly annotations: readonly string[];
  /** Words that stand at a place of their own: names of edges and notes. */
  readonly words: readonly DrawnText[];
}

const INTERNAL: ReadonlySet<LineRole> = new Set([
  'balance',
  'centre',
  'crease',
  'dart',
  'inlay',
  'mark',
  'tape',
  'topstitch',
]);

export function exchangePiece(piece: Piece, drawing: PieceDrawing, size: string): ExchangePiece {
  const { lines } = drawing;
  const of = (role: LineRole): readonly DrawnLine[] => lines.filter((line) => line.role === role);
  const flat = (line: DrawnLine): Flat => flatOf(pathOf(line), line.closed);
  const layers = piece.cut?.layers ?? [];
  return {
    name: piece.name,
    size,
    drawing,
    boundary: boundaryOf(piece, of('cutting')),
    cutOuts: of('hole').map(flat),
    sewLines: of('sewing').map(flat),
    internal: lines.filter(({ role, drilled }) => INTERNAL.has(role) && drilled === undefined).map(flat),
    mirrorLine: endsOf(of('fold')),
    grain: endsOf(of('grain')),
    notches: of('notch').map(notchOf),
    drillHoles: lines.flatMap(({ drilled }) => (drilled === undefined ? [] : [drilled])),
    quantity: piece.cut && layers.reduce((sum, { count }) => sum + count, 0),
    cloths: [...new Set(layers.map(({ cloth }) => cloth))].filter((cloth) => cloth !== ''),
    annotations: annotations(piece, of('grain').length > 0),
    words: drawing.texts.filter(({ role }) => role === 'edge' || role === 'note'),
  };
}

/** The cutting line, closed along the fold of a half; where there is none, the sewing line of the whole outline. */
function boundaryOf(piece: Piece, [cutting]: readonly DrawnLine[]): Flat {
  if (cutting !== undefined) return flatOf(pathOf(cutting), true);
  const opening = openingOf(piece);
  const { edges } = opening === undefined ? piece : wholePiece(piece, opening);
  return flatOf(Path.of(edges.flatMap(({ path }) => path.segments)), true);
}

function endsOf([line]: readonly DrawnLine[]): readonly Point[] {
  if (line === undefined) return [];
  const path = pathOf(line);
  return [path.start, path.end];
}

/** The stroke of a notch begins where the shears go in. */
function notchOf(line: DrawnLine): ExchangeNotch {
  const { start, end, length } = pathOf(line);
  const turn = (Math.atan2(end.y - start.y, end.x - start.x) * 180) / Math.PI;
  return { at: start, depth: length, turn };
}

function annotations(piece: Piece, hasGrain: boolean): readonly string[] {
  const { cut, unbuilt } = piece;
  const own = piece.labels.filter(({ at }) => at === undefined).map(({ text }) => text);
  const gaps = piece.gaps.filter(({ hole }) => hole === undefined);
  return [
    cut === undefined
      ? spelt(say`not cut: the pattern does not say how many`)
      : spelt(cut.text, authoredOf(piece)),
    ...piece.remarks.map((remark) => spelt(remark)),
    ...own,
    ...(piece.cutting === undefined
      ? [spelt(say`no cutting line could be had: the boundary is the sewing line`)]
      : []),
    ...(hasGrain ? [] : [spelt(say`no grain is stated`)]),
    ...gaps.map(({ size, before, after }) =>
      spelt(say`faulty: a gap of ${millimetres(size)} mm between ${before} and ${after}`, [before, after]),
    ),
    ...(unbuilt.length > 0
      ? [spelt(say`faulty: left out for an error: ${unbuilt.join(', ')}`, unbuilt)]
      : []),
  ];
}

const millimetres = (mm: number): string => String(Math.round(mm * 10) / 10);

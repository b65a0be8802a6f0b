/** A square panel of 20 by 30 cm that tests put marks and holes on, and what comes of it. */
import assert from 'node:assert/strict';
import type { Mark, Pattern, Piece } from '../../server/drafting/model';
import { draw } from '../../server/drawing/draw';
import type { DrawnLine, PieceDrawing } from '../../server/drawing/model';
import { patternIn } from './drafts';

/** @param lines of the piece's block, after its outline */
export const panelText = (lines: string, more = '', cut = 'cut pair'): string => `
draft panel {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point d = a down 30cm
  point middle = a right 10cm down 15cm
}
piece front of panel {
  ${cut}
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  grain along centre
  ${lines.trim().replaceAll('\n', '\n  ')}
}
${more}
`;

export const panel = (lines: string, more = '', cut?: string): Pattern =>
  patternIn(panelText(lines, more, cut));

export function pieceIn(pattern: Pattern, name = 'front'): Piece {
  const found = pattern.pieces.find((piece) => piece.name === name);
  const said = pattern.findings.map(({ finding }) => finding.message).join('\n');
  assert.ok(found, `${name} is made; found: ${said}`);
  return found;
}

export function markIn(pattern: Pattern, name: string, piece = 'front'): Mark {
  const found = pieceIn(pattern, piece).marks.find((mark) => mark.name === name);
  const said = pattern.findings.map(({ finding }) => finding.message).join('\n');
  assert.ok(found, `${name} is marked; found: ${said}`);
  return found;
}

export function drawnIn(pattern: Pattern, name = 'front'): PieceDrawing {
  const found = draw(pattern).pieces.find((piece) => piece.name === name);
  assert.ok(found, `${name} is drawn`);
  return found;
}

/** The lines that a thing of the piece drew, by its name. */
export const linesOf = (drawing: PieceDrawing, name: string): readonly DrawnLine[] =>
  drawing.lines.filter((line) => line.name === name);

/** Millimetres to a thousandth, as `x y`. */
export const spotWords = ({ x, y }: { x: number; y: number }): string =>
  [x, y].map((n) => String(Math.round(n * 1000) / 1000 + 0)).join(' ');

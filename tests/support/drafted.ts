/** A pattern drafted from a text alone, and its pieces by name. */
import assert from 'node:assert/strict';
import type { Edge, Pattern, Piece } from '../../server/drafting/model';
import { Workshop } from '../../server/drafting/workshop';

export function drafted(text: string): Pattern {
  const workshop = new Workshop({ read: () => undefined, resolve: (_, path) => ({ uri: path }) });
  workshop.setText('test.draft', text);
  return workshop.pattern('test.draft');
}

export function pieceOf(pattern: Pattern, name: string): Piece {
  const found = pattern.pieces.find((piece) => piece.name === name);
  assert.ok(
    found,
    `${name} is made; found: ${pattern.findings.map(({ finding }) => finding.message).join('\n')}`,
  );
  return found;
}

export function edgeOf(piece: Piece, name: string): Edge {
  const found = piece.edges.find((edge) => edge.name === name);
  assert.ok(found, `${piece.name} has ${piece.edges.map((edge) => edge.name).join(', ')}, but no ${name}`);
  return found;
}

export const codesOf = (pattern: Pattern): string[] => pattern.findings.map(({ finding }) => finding.code);

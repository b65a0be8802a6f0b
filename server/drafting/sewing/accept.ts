/** Reads an `accept` line as far as its names go: whether the piece has the edge that it speaks of. */
import { say } from '../../../grammar/say';
import type { AcceptNode } from '../../../grammar/syntax';
import type { Piece } from '../model';
import { nearest } from '../names/spelling';
import { report, type Reader } from '../values/reader';

/** @returns always undefined: nothing rests on an acceptance; the checks read it where they judge */
export function readAccept(reader: Reader, { of }: AcceptNode): undefined {
  const found = of && reader.find(of);
  if (found?.answer.is !== 'piece' || found.rest.length === 0) return undefined;
  const { piece } = found.answer;
  const [word] = found.rest;
  const names = namesWithin(piece);
  if (names.has(word!.text)) return undefined;
  const near = nearest(word!.text, names);
  const edges = say`Its edges are ${piece.edges.map(({ name }) => name).join(', ')}.`;
  const advice = near === undefined ? edges : say`Did you mean ${piece.name}.${near}?`;
  const message = say`${piece.name} has nothing called ${word!.text}. ${advice}`;
  const edits = near === undefined ? [] : [{ statement: reader.statement, at: word!.at, text: near }];
  return report(reader, 'unknown-name', word!.at, message, {
    related: [{ source: piece.source, message: say`${piece.name} is made here.` }],
    fixes: edits.length === 0 ? [] : [{ title: say`Change to ${near!}`, edits }],
  });
}

/** Whatever of a piece bears a name: its edges, corners, darts, notches, marks. */
function namesWithin(piece: Piece): ReadonlySet<string> {
  const lists = Object.values(piece).filter((part): part is readonly unknown[] => Array.isArray(part));
  const own = piece.statement.block?.map(({ node }) => node) ?? [];
  return new Set([...lists.flat(), ...own].flatMap((part) => nameOf(part)));
}

function nameOf(part: unknown): readonly string[] {
  if (typeof part !== 'object' || part === null || !('name' in part)) return [];
  const { name } = part;
  if (typeof name === 'string') return name === '' ? [] : [name];
  return typeof name === 'object' && name !== null && 'text' in name ? [String(name.text)] : [];
}

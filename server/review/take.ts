/** What a comparison needs of a drafted pattern, taken at once: a pattern that is drafted anew for the other side reads on. */
import { say } from '../../grammar/say';
import type { SourceFile } from '../../grammar/syntax';
import { check } from '../checks';
import type { FileRange, Pattern, Piece, PlacedFinding, Seam, Value } from '../drafting/model';
import type { Undrafted } from './model';

/** A pattern as it stands, and the files it was read from. */
export interface Side {
  readonly pattern: Pattern;
  /** The syntax of a file of the pattern. */
  source(uri: string): SourceFile | undefined;
  /** How a file is named to a person. */
  shown(uri: string): string;
}

export interface TakenFile {
  readonly uri: string;
  readonly shown: string;
  readonly source: SourceFile;
  /** Where each of its top-level statements begins: an edit of the other side moves them. */
  readonly offsets: readonly number[];
}

/** The measured part, which there is for every size. */
export interface TakenSize {
  readonly size: string;
  readonly pieces: readonly Piece[];
  readonly seams: readonly Seam[];
  readonly findings: readonly PlacedFinding[];
}

export interface Taken extends TakenSize {
  readonly title: string;
  readonly unit: Pattern['unit'];
  readonly body: string;
  readonly files: readonly TakenFile[];
  readonly values: ReadonlyMap<string, Value>;
  readonly choices: ReadonlyMap<string, Value>;
  /** Measurements that the pattern rests on, of the body it is drafted for. */
  readonly measures: ReadonlyMap<string, { readonly left: number; readonly right: number }>;
  readonly places: ReadonlyMap<string, FileRange>;
  readonly undrafted: readonly Undrafted[];
  readonly sizes: readonly TakenSize[];
}

/** The part of a pattern drafted for one size. */
export const takenSize = (pattern: Pattern, size: string): TakenSize => ({
  size,
  pieces: pattern.pieces,
  seams: pattern.seams,
  findings: check(pattern),
});

/** All that is compared of a pattern; `sizes`: what was taken of it for each size of its table. */
export function take(side: Side, sizes: readonly TakenSize[] = []): Taken {
  const { pattern } = side;
  const measured = takenSize(pattern, pattern.body?.size ?? '');
  return {
    ...measured,
    title: pattern.title,
    unit: pattern.unit,
    body: pattern.body === undefined ? '' : [pattern.body.name, pattern.body.size ?? ''].join(' ').trim(),
    files: pattern.files.flatMap((uri) => filesOf(side, uri)),
    values: pattern.values,
    choices: new Map(
      pattern.choices.flatMap(({ path, value }) => (value === undefined ? [] : [[path, value] as const])),
    ),
    measures: measuresOf(pattern),
    places: placesOf(pattern),
    undrafted: undraftedOf(pattern, measured.findings),
    sizes,
  };
}

function filesOf(side: Side, uri: string): TakenFile[] {
  const source = side.source(uri);
  if (source === undefined) return [];
  return [{ uri, shown: side.shown(uri), source, offsets: source.items.map(({ offset }) => offset) }];
}

function measuresOf(pattern: Pattern): Taken['measures'] {
  const { body, bodies, needs } = pattern;
  const sheet = bodies.find(({ name, size }) => name === body?.name && (size ?? '') === (body?.size ?? ''));
  return new Map(
    needs.flatMap((name) => {
      const taken = sheet?.measures.get(name);
      return taken === undefined
        ? []
        : [[name, { left: taken.left.amount, right: taken.right.amount }] as const];
    }),
  );
}

function placesOf(pattern: Pattern): Taken['places'] {
  const sources = [...pattern.pieces, ...pattern.seams].map(({ source }) => source);
  return new Map(
    sources.flatMap((source) => {
      const place = pattern.locate(source);
      return place === undefined ? [] : [[source, place] as const];
    }),
  );
}

/** Pieces that the text names and that did not come out, or not wholly. */
function undraftedOf(pattern: Pattern, findings: readonly PlacedFinding[]): Undrafted[] {
  const made = new Set(pattern.pieces.flatMap(({ name, base, source }) => [name, base, source]));
  const missing = pattern.pieceNames.filter((name) => !made.has(name));
  const partly = pattern.pieces.filter(({ unbuilt }) => unbuilt.length > 0);
  const reasons = missing.length === 0 ? new Map<string, string>() : reasonsIn(findings);
  const why = (name: string): string => reasons.get(name) ?? say`it rests on something that has an error.`;
  return [
    ...missing.map((name) => ({ name, why: why(name) })),
    ...partly.map(({ name, unbuilt }) => ({
      name,
      why: say`not all of it is built: ${unbuilt.join(', ')}.`,
    })),
  ];
}

/** The first error about each name: those that are of a thing before those that only speak of it. */
function reasonsIn(findings: readonly PlacedFinding[]): ReadonlyMap<string, string> {
  const reasons = new Map<string, string>();
  const errors = findings.filter(({ severity }) => severity === 'error');
  const note = (names: Iterable<string>, message: string): void => {
    for (const name of names) if (!reasons.has(name)) reasons.set(name, message);
  };
  for (const { piece, source, message } of errors)
    note([...(piece === undefined ? [] : [piece]), ...source.split(/[/#:]/)], message);
  for (const { message } of errors) note(message.match(/[\p{L}\p{M}\d-]+/gu) ?? [], message);
  return reasons;
}

/** Divides a piece at a line of its draft: writes the line that divides it, and what seams and finishes say of it anew. */
import { say } from '../../grammar/say';
import type { TopLevel } from '../../grammar/syntax';
import type { Edge, Pattern, Piece, Shape } from '../drafting/model';
import type { Path } from '../geometry';
import type { Names } from './names';
import { occurrencesIn, type Occurrence } from './occurrences';
import type { Shaping } from './shaping';

/** An end of the line counts as on the outline, and a cut as through a corner, within this, mm: as the division has it. */
const ON_OUTLINE = 0.5;

/** Which edges either part has, by name. */
interface Parts {
  readonly first: ReadonlySet<string>;
  readonly second: ReadonlySet<string>;
}

/** Offered at a line or curve of a draft whose ends lie on the outline of one piece. */
export function dividings(pattern: Pattern, names: Names, text: string, offset: number): readonly Shaping[] {
  for (const source of pattern.sourcesAt(pattern.uri, offset)) {
    const info = pattern.info(source);
    const shape = info?.shape;
    if (shape === undefined || shape.kind === 'point' || !source.includes('/')) continue;
    const draft = source.slice(0, source.indexOf('/'));
    const whole = pattern.pieces.filter((piece) => piece.draft === draft && piece.source === piece.base);
    return whole.flatMap((piece) => divided(pattern, names, text, piece, info!.name, shape));
  }
  return [];
}

function divided(
  { uri }: Pattern,
  names: Names,
  text: string,
  piece: Piece,
  line: string,
  shape: Exclude<Shape, { kind: 'point' }>,
): readonly Shaping[] {
  const { statement } = piece;
  if (statement.node.kind !== 'piece' || statement.node.of === undefined || piece.gaps.length > 0) return [];
  const parts = partsOf(piece, shape.path);
  const holding = parts && [...parts.first].find((edge) => !parts.second.has(edge));
  if (parts === undefined || holding === undefined) return [];
  const [one, other] = partNames(names, piece, parts, shape.path);
  const renewed = renewals(names, text, piece, parts, [one, other]);
  const top = names.root.topLevels.find((each) => each.statement === statement);
  if (renewed === undefined || top === undefined) return [];
  const at = top.offset + statement.end;
  const end = /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
  const written = `${end}divide ${piece.base} at ${line} into ${one} holding ${holding}, ${other}`;
  return [
    {
      title: say`Divide ${piece.base} at ${line}`,
      kind: 'write',
      edits: [{ uri, from: at, to: at, text: written }, ...renewed],
    },
  ];
}

/** The outline from one end of the cut to the other, and on to where it began; undefined where it is not cut through. */
function partsOf({ edges }: Piece, cut: Path): Parts | undefined {
  const [from, to] = [placeOn(edges, cut.start), placeOn(edges, cut.end)];
  if (from === undefined || to === undefined || from.index === to.index) return undefined;
  const [a, b] = from.index < to.index ? [from, to] : [to, from];
  const first = new Set(edges.slice(a.index + 1, b.index).map(({ name }) => name));
  const second = new Set([...edges.slice(b.index + 1), ...edges.slice(0, a.index)].map(({ name }) => name));
  if (a.after > ON_OUTLINE) first.add(edges[a.index]!.name);
  if (a.before > ON_OUTLINE) second.add(edges[a.index]!.name);
  if (b.before > ON_OUTLINE) first.add(edges[b.index]!.name);
  if (b.after > ON_OUTLINE) second.add(edges[b.index]!.name);
  return first.size > 0 && second.size > 0 ? { first, second } : undefined;
}

/** The edge that a point lies on, and how much of it lies before and after. */
function placeOn(edges: readonly Edge[], point: Path['start']) {
  for (const [index, { path }] of edges.entries()) {
    const { s, distance } = path.locate(point);
    if (distance <= ON_OUTLINE) return { index, before: s, after: path.length - s };
  }
  return undefined;
}

/** Above and below for a cut across, else by the fold or the first edge. */
function partNames(names: Names, piece: Piece, { first }: Parts, cut: Path): [string, string] {
  const across = Math.abs(cut.end.x - cut.start.x) >= Math.abs(cut.end.y - cut.start.y);
  const middle = (cut.start.y + cut.end.y) / 2;
  const mine = piece.edges.filter(({ name }) => first.has(name));
  const upper = mine.some(({ path }) => path.pointAt(path.length / 2).y < middle);
  const words = across
    ? upper
      ? ['upper', 'lower']
      : ['lower', 'upper']
    : piece.fold !== undefined && first.has(piece.fold.edge)
      ? ['centre', 'side']
      : piece.fold !== undefined
        ? ['side', 'centre']
        : ['one', 'other'];
  const [one, other] = words.map((word) => freeName(names, `${piece.base}-${word}`));
  return [one!, other!];
}

function freeName({ root }: Names, wanted: string): string {
  for (let i = 1; ; i++) {
    const name = i === 1 ? wanted : `${wanted}${i}`;
    if (root.get(name) === undefined) return name;
  }
}

type Edits = Shaping['edits'];

/** What seams, finishes and other lines say of an edge of the piece, said of the parts; undefined where that can't be done. */
function renewals(
  names: Names,
  text: string,
  piece: Piece,
  parts: Parts,
  [one, other]: readonly [string, string],
): Edits | undefined {
  const edits: Edits[number][] = [];
  for (const top of names.root.topLevels) {
    if (top.statement === piece.statement || !top.text.includes(piece.base)) continue;
    const named = occurrencesIn(names, names.root, top, piece.base).filter(
      ({ meaning }) => meaning.kind === 'piece' && meaning.key === `${names.uri}#${piece.base}`,
    );
    for (const place of named) {
      const edge = /^\.([\p{L}\p{M}\p{Nd}-]+)/u.exec(text.slice(place.to))?.[1];
      const put = edge && renewed(top, text, place, edge, parts, [one, other]);
      if (put === undefined || put === '') return undefined;
      edits.push({ uri: names.uri, from: place.from, to: place.to + edge!.length + 1, text: put });
    }
  }
  return edits;
}

function renewed(
  top: TopLevel,
  text: string,
  place: Occurrence,
  edge: string,
  { first, second }: Parts,
  [one, other]: readonly [string, string],
): string | undefined {
  const [inFirst, inSecond] = [first.has(edge), second.has(edge)];
  if (!inFirst && !inSecond) return undefined;
  if (!inSecond) return `${one}.${edge}`;
  if (!inFirst) return `${other}.${edge}`;
  // a stretch of an edge, or a place on it, does not say which of the two it lies on
  if (/^\.[\p{L}\p{M}\p{Nd}-]+\s+(from|to|at|reversed)\b/u.test(text.slice(place.to))) return undefined;
  const { kind } = top.statement.node;
  if (kind === 'finish') return `${one}.${edge}, ${other}.${edge}`;
  return kind === 'seam' || kind === 'band' ? `${one}.${edge} + ${other}.${edge}` : undefined;
}

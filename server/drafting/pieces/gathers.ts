/** Gathers: a stretch of an edge that threads draw up to a length. */
import { say } from '../../../grammar/say';
import type { GathersNode, Statement } from '../../../grammar/syntax';
import type { Edge, EdgePart, Gathers } from '../model';
import { distanceAlong } from '../shapes/places';
import { lengthOf } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { report, type Reader } from '../values/reader';
import { edgeOf } from './outline';
import { edgeNamed, type Bench, type Named } from './working/bench';
import type { Worked } from './working/ring';

/** Rounding, mm: a stretch that is drawn up by less is as it was. */
const ROUNDING = 1e-6;

export function gathered(
  bench: Bench,
  worked: Worked,
  statement: Statement,
  node: GathersNode,
): { readonly edge: Edge; readonly index: number; readonly gathers: Gathers } | undefined {
  const { reader } = bench;
  const named = edgeNamed(bench, worked, node.on);
  const length = lengthOf(reader, node.length, 'to');
  const stretch = named && stretchOf(reader, named, node);
  if (named === undefined || length === undefined || stretch === undefined) return undefined;
  const { edge, index } = named;
  const [from, to] = stretch;
  const flat = to - from;
  const name = node.name.text;
  if (!(length > 0) || length > flat + ROUNDING) {
    return report(
      reader,
      'no-such-number',
      node.length.at,
      say`${name} can't bring ${printLength(flat, reader.unit)} of ${edge.name} to ${printLength(length, reader.unit)}: gathers draw cloth up, to less than it is and more than nothing.`,
    );
  }
  const parts = drawnUp(edge.parts, from, to, { by: name, share: length / flat });
  if (parts === undefined) {
    return report(
      reader,
      'darts-overlap',
      node.name.at,
      say`${name} runs into other gathers on ${edge.name}: end one where the other begins, or draw both up as one.`,
    );
  }
  const made = { ...edge, ...edgeOf(parts, edge.path.start) };
  const source = `${bench.source}/${name}`;
  return { edge: made, index, gathers: { name, source, statement, edge: edge.name, flat, gathered: length } };
}

/** From place to place, or the whole edge; flat distances from its start, the lesser first. */
function stretchOf(
  reader: Reader,
  { edge, shape }: Named,
  node: GathersNode,
): readonly [number, number] | undefined {
  if (node.from === undefined || node.to === undefined) return [0, shape.path.length];
  const a = distanceAlong(reader, shape, node.from, edge.name);
  const b = distanceAlong(reader, shape, node.to, edge.name);
  if (a === undefined || b === undefined) return undefined;
  const [from, to] = a < b ? [a, b] : [b, a];
  if (from >= -0.05 && to <= shape.path.length + 0.05 && to - from > 0.05)
    return [Math.max(0, from), Math.min(shape.path.length, to)];
  return report(
    reader,
    'out-of-reach',
    node.to.at,
    say`${node.name.text} needs a stretch of ${edge.name} to gather; this one lies beyond its end, or has no length.`,
  );
}

/** The parts with a stretch of what is sewn marked as drawn up; undefined where it is already. */
function drawnUp(
  parts: readonly EdgePart[],
  from: number,
  to: number,
  gathers: NonNullable<EdgePart['gathered']>,
): readonly EdgePart[] | undefined {
  const found: EdgePart[] = [];
  let walked = 0;
  for (const part of parts) {
    if (part.dart !== undefined) {
      found.push(part);
      continue;
    }
    const { length } = part.path;
    const [a, b] = [Math.max(0, from - walked), Math.min(length, to - walked)];
    walked += length;
    if (b - a <= ROUNDING) {
      found.push(part);
      continue;
    }
    if (part.gathered !== undefined) return undefined;
    if (a > ROUNDING) found.push({ path: part.path.part(0, a) });
    found.push({ path: part.path.part(a, b), gathered: gathers });
    if (length - b > ROUNDING) found.push({ path: part.path.part(b, length) });
  }
  return found;
}

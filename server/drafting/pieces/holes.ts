/** Reads the holes of a piece: closed like an outline, with edges of their own. */
import { say } from '../../../grammar/say';
import type { Statement } from '../../../grammar/syntax';
import { areaOf } from '../../geometry';
import type { Edge, Gap, Hole, Piece } from '../model';
import { edgeShape } from '../shapes/parts';
import { report, type Reader } from '../values/reader';
import { walkOutline, type Walked } from './outline';
import type { OwnParts } from './parts';

export interface ReadHoles {
  readonly holes: readonly Hole[];
  /** Where they do not go on where they ended. */
  readonly gaps: readonly Gap[];
}

/** @param edges of the outline, whose names are taken */
export function readHoles(
  reader: Reader,
  block: readonly Statement[],
  edges: readonly Edge[],
  source: string,
  parts: OwnParts,
): ReadHoles {
  const found: { holes: Hole[]; gaps: Gap[] } = { holes: [], gaps: [] };
  const taken = new Set(edges.map(({ name }) => name));
  for (const statement of block) {
    const { node } = statement;
    if (node.kind !== 'hole') continue;
    const walked = walkOutline(reader, statement, source);
    if (walked === undefined || !hasNamesOfItsOwn(reader, walked, taken)) continue;
    const { text: name } = node.name;
    const own = walked.edges;
    found.gaps.push(...walked.gaps.map((gap) => ({ ...gap, hole: name })));
    const closes = !walked.gaps.some(({ closing }) => closing);
    const area = closes ? areaOf(own.map(({ path }) => path)) : 0;
    found.holes.push({ name, source: `${source}/${name}`, statement, edges: own, area });
    for (const edge of own) {
      taken.add(edge.name);
      parts.set(edge.name, edgeShape(edge));
    }
    for (const { name: corner, point } of walked.corners) parts.set(corner, { kind: 'point', point });
  }
  return found;
}

/** Seams and finishes know an edge by its name alone, so no two of a piece may share one. */
function hasNamesOfItsOwn(reader: Reader, { edges, drafted }: Walked, taken: ReadonlySet<string>): boolean {
  const dart = drafted[0];
  if (dart !== undefined) {
    reader.statement = dart.statement;
    const run =
      dart.statement.node.kind === 'edge'
        ? dart.statement.node.runs.find(({ kind }) => kind === 'dart')
        : undefined;
    report(
      reader,
      'wrong-kind',
      run?.at ?? dart.statement.node.at,
      say`A hole has no darts to be sewn; say how its edge runs past ${dart.name}.`,
    );
    return false;
  }
  const twice = edges.find(({ name }) => taken.has(name));
  if (twice === undefined) return true;
  reader.statement = twice.statement;
  const { node } = twice.statement;
  report(
    reader,
    'defined-twice',
    node.kind === 'edge' ? node.name.at : node.at,
    say`This piece has an edge called ${twice.name} already; the edges of a hole bear names of their own.`,
  );
  return false;
}

/** What is left of the area within an outline, mm². */
export const areaLeft = (edges: readonly Edge[], holes: Piece['holes']): number =>
  areaOf(edges.map(({ path }) => path)) - holes.reduce((sum, { area }) => sum + area, 0);

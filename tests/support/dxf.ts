/** Reads a DXF with a reader that is not ours, and measures what it found. */
import assert from 'node:assert/strict';
import dxfParser from 'dxf-parser';
import type { IDxf, IEntity, IPoint } from 'dxf-parser';

type ParserClass = new () => { parseSync(text: string): IDxf | null };

/** The package is bundled for browsers: its class lies in the default export, or is it. */
const packed = dxfParser as unknown as ParserClass & { readonly default?: ParserClass };
const DxfParser: ParserClass = packed.default ?? packed;

export interface DxfEntity extends IEntity {
  readonly vertices?: readonly IPoint[];
  readonly shape?: boolean;
  readonly text?: string;
  readonly textHeight?: number;
  readonly position?: IPoint;
  readonly name?: string;
}

export interface ReadDxf {
  readonly entities: readonly DxfEntity[];
  readonly blocks: ReadonlyMap<string, readonly DxfEntity[]>;
  readonly layers: readonly string[];
}

export function readDxf(text: string): ReadDxf {
  const found = new DxfParser().parseSync(text);
  assert.ok(found, 'the reader reads it');
  const blocks = Object.entries(found.blocks).map(
    ([name, { entities = [] }]) => [name, entities as DxfEntity[]] as const,
  );
  return {
    entities: found.entities as DxfEntity[],
    blocks: new Map(blocks),
    layers: Object.keys(found.tables?.layer?.layers ?? {}),
  };
}

export const onLayer = (entities: readonly DxfEntity[], layer: string, type?: string): readonly DxfEntity[] =>
  entities.filter((entity) => entity.layer === layer && (type === undefined || entity.type === type));

export const textsOf = (entities: readonly DxfEntity[]): readonly string[] =>
  entities.flatMap(({ text }) => (text === undefined ? [] : [text]));

/** Enclosed by a closed polyline, mm², by the corners' cross products. */
export function areaOfPolyline({ vertices = [], shape }: DxfEntity): number {
  assert.equal(shape, true, 'the polyline is closed');
  let twice = 0;
  vertices.forEach((p, i) => {
    const q = vertices[(i + 1) % vertices.length]!;
    twice += p.x * q.y - q.x * p.y;
  });
  return Math.abs(twice) / 2;
}

export function boxOfEntities(entities: readonly DxfEntity[]): readonly number[] {
  const spots = entities.flatMap(({ vertices = [] }) => vertices);
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

/** A file as a person can review it: every block with what lies on its layers, and its words. */
export function dxfSummary(text: string): string {
  const { blocks, entities } = readDxf(text);
  const counted = (all: readonly DxfEntity[]): readonly string[] => {
    const kinds = new Map<string, number>();
    for (const { layer, type } of all)
      if (type !== 'TEXT') kinds.set(`${layer} ${type}`, (kinds.get(`${layer} ${type}`) ?? 0) + 1);
    return [...kinds].map(([kind, count]) => `  ${kind} ${count}`);
  };
  return [
    ...[...blocks].flatMap(([name, inside]) => [
      `block ${name}`,
      ...counted(inside),
      ...inside.flatMap(({ text: words, layer }) => (words === undefined ? [] : [`  ${layer} "${words}"`])),
    ]),
    'entities',
    ...counted(entities),
    ...entities.flatMap(({ text: words, layer }) => (words === undefined ? [] : [`  ${layer} "${words}"`])),
    '',
  ].join('\n');
}

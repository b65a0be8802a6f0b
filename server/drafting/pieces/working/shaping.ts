/** Darts, fish darts, pleats and gathers as steps: in a piece's own block after its outline, and in the work on a piece. */
import type { Statement, StatementNode } from '../../../../grammar/syntax';
import { normalised, signedArea, subtract, type Point } from '../../../geometry';
import type { Piece, Shaping } from '../../model';
import { NO_SHAPING } from '../../shaping-model';
import type { Reader } from '../../values/reader';
import { laidDart } from '../darts';
import { fishDart } from '../fish-dart';
import { gathered } from '../gathers';
import { areaLeft } from '../holes';
import type { OwnParts } from '../parts';
import { laidOn } from '../with-darts';
import { edgeNamed, remember, type Bench, type Step } from './bench';
import { pleated } from './pleated';
import type { Worked } from './ring';
import { trued } from './smooth';

const withShaping = (worked: Worked, more: (shaping: Shaping) => Partial<Shaping>): Worked => {
  const shaping = worked.shaping ?? NO_SHAPING;
  return { ...worked, shaping: { ...shaping, ...more(shaping) } };
};

const fish: Step = ({ reader, source }, worked, line) => {
  if (line.node.kind !== 'fish-dart') return undefined;
  const dart = fishDart(reader, line, line.node, source);
  if (dart === undefined || dart === 'none') return dart && worked;
  return withShaping(worked, ({ fishDarts }) => ({ fishDarts: [...fishDarts, dart] }));
};

const pleats: Step = (bench, worked, line) => {
  if (line.node.kind !== 'pleats') return undefined;
  const made = pleated(bench, worked, line, line.node);
  return made && withShaping(made.worked, (before) => ({ pleats: [...before.pleats, made.pleats] }));
};

const gathers: Step = (bench, worked, line) => {
  if (line.node.kind !== 'gathers') return undefined;
  const made = gathered(bench, worked, line, line.node);
  if (made === undefined) return undefined;
  const edges = worked.edges.map((edge, i) => (i === made.index ? made.edge : edge));
  return withShaping({ ...worked, edges }, (before) => ({ gathers: [...before.gathers, made.gathers] }));
};

/** A dart laid on an edge of a piece that is worked. */
const dart: Step = ({ reader, source }, worked, line) => {
  const { node } = line;
  if (node.kind !== 'dart' || node.on === undefined) return undefined;
  const one = laidDart(reader, worked.edges, line, node);
  if (one === undefined || one === 'none') return one && worked;
  const laid = laidOn(reader, one.edge, [one], source);
  if (laid.missing.length > 0) return undefined;
  return {
    ...worked,
    edges: worked.edges.map((edge) => (edge === one.edge ? laid.edge : edge)),
    darts: [...worked.darts, ...laid.darts],
    trued: [...(worked.trued ?? []), ...(laid.trued ? [laid.trued] : [])],
  };
};

const trueStep: Step = (bench, worked, { node }) => {
  if (node.kind !== 'true') return undefined;
  const named = edgeNamed(bench, worked, node.edge);
  return named && trued(bench.reader, worked, named.index, node.edge);
};

/** The same, and known that a line has closed a dart of it for good. */
export const closedBy = (worked: Worked, name: string, source: string, statement: Statement): Worked =>
  withShaping(worked, ({ closed }) => ({ closed: [...closed, { name, source, statement }] }));

/** Without one of these the piece is drawn all the same, and known to lack it. */
export const SHAPING_STEPS: { readonly [K in StatementNode['kind']]?: Step } = {
  'fish-dart': fish,
  dart,
  pleats,
  gathers,
};

const AFTER_OUTLINE: typeof SHAPING_STEPS = { 'fish-dart': fish, pleats, gathers, true: trueStep };

export const TRUE_STEP = trueStep;

/** The bench for the work on a piece. */
export function benchFor(
  reader: Reader,
  parts: OwnParts,
  piece: Piece,
  own: { readonly source: string; readonly paired?: string | undefined },
): Bench {
  const { source, paired } = own;
  const centre =
    piece.fold?.edge ??
    piece.edges.find(({ name }) => name === paired)?.name ??
    piece.edges.find(({ name }) => name === 'centre')?.name;
  return { reader, parts, source, centre, grain: grainOf(piece), failed: new Set() };
}

function grainOf({ grain, fold, edges }: Piece): Point | undefined {
  if (grain !== undefined) return grain.bias ? undefined : normalised(subtract(grain.to, grain.from));
  const along = edges.find(({ name }) => name === fold?.edge)?.path;
  return along && normalised(subtract(along.end, along.start));
}

/** Does one step of shaping; where it can't be had the piece goes on without it, and the bench notes its name. */
export function shapedBy(step: Step, bench: Bench, worked: Worked, line: Statement): Worked {
  const made = doStep(step, bench, worked, line);
  if (made !== undefined) return made;
  const { node } = line;
  bench.failed.add('name' in node && node.name !== undefined ? node.name.text : node.kind);
  return worked;
}

/** One step, on the piece as it is by now. */
export function doStep(step: Step, bench: Bench, worked: Worked, line: Statement): Worked | undefined {
  const { reader, parts } = bench;
  reader.statement = line;
  reader.inward = signedArea(worked.edges.map(({ path }) => path)) < 0 ? -1 : 1;
  const made = step(bench, worked, line);
  if (made !== undefined) remember(parts, made);
  return made;
}

/** What a piece's own block does to it besides its darts: after everything is placed, in the order of the lines. */
export function shapedFurther(
  reader: Reader,
  own: { readonly source: string; readonly paired?: string | undefined; readonly parts: OwnParts },
  piece: Piece,
  block: readonly Statement[],
): Piece {
  const lines = block.filter(({ node }) => AFTER_OUTLINE[node.kind] !== undefined);
  if (lines.length === 0) return piece;
  // an outline with a gap has said so, and has no edges to rely on
  if (piece.gaps.length > 0)
    return { ...piece, unbuilt: [...piece.unbuilt, ...lines.map(({ node }) => node.kind)] };
  const bench = benchFor(reader, own.parts, piece, own);
  for (const name of piece.unbuilt) bench.failed.add(name);
  let worked: Worked = piece;
  remember(own.parts, worked);
  for (const line of lines) worked = shapedBy(AFTER_OUTLINE[line.node.kind]!, bench, worked, line);
  const area = areaLeft(worked.edges, worked.holes);
  return { ...piece, ...worked, area, unbuilt: [...bench.failed] };
}

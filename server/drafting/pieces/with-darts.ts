/** The outline of a piece with its darts cut in and its edges trued. */
import { say } from '../../../grammar/say';
import type { DartNode, Statement } from '../../../grammar/syntax';
import { signedArea } from '../../geometry';
import type { Dart, Edge, Trued } from '../model';
import { report, type Reader } from '../values/reader';
import { cutDarts, draftedDart, laidDart, type Laid } from './darts';
import type { Walked } from './outline';
import { trueEdge } from './truing';

export interface Shaped extends Walked {
  readonly darts: readonly Dart[];
  readonly trued: readonly Trued[];
  /** Darts that could not be had: the piece is drawn without them. */
  readonly missing: readonly string[];
}

type DartLine = Statement & { readonly node: DartNode };

const isDart = (line: Statement): line is DartLine => line.node.kind === 'dart';

/** @param source path of the piece, for the darts' own paths */
export function withDarts(
  reader: Reader,
  walked: Walked,
  block: readonly Statement[],
  source: string,
): Shaped {
  namedOnce(reader, block);
  const lines = block.filter(isDart);
  // an edge that is bridged over a gap is no edge to lay a dart on
  if (walked.gaps.length > 0) return { ...walked, darts: [], trued: [], missing: [] };
  reader.inward = signedArea(walked.edges.map(({ path }) => path)) < 0 ? -1 : 1;
  const drafted = walked.drafted.map((one) => draftedDart(reader, one, block, source));
  strayLines(reader, lines, drafted);
  const missing: string[] = [];
  const laid = lines.flatMap((line) => {
    if (line.node.on === undefined) return [];
    const one = laidDart(reader, walked.edges, line, line.node);
    if (one === undefined) missing.push(line.node.name.text);
    return one === undefined || one === 'none' ? [] : [one];
  });
  const [darts, trued]: [Dart[], Trued[]] = [[...drafted], []];
  const edges = walked.edges.map((edge) => {
    const own = laid.filter((one) => one.edge === edge);
    if (own.length === 0) return edge;
    const result = laidOn(reader, edge, own, source);
    darts.push(...result.darts);
    if (result.trued !== undefined) trued.push(result.trued);
    missing.push(...result.missing);
    return result.edge;
  });
  return { ...walked, edges, darts, trued, missing };
}

/** Seams, pleats and whoever swings a dart know it by its name alone; of two the first is meant. */
function namedOnce(reader: Reader, block: readonly Statement[]): void {
  const names = new Set<string>();
  for (const line of block) {
    const { node } = line;
    if (node.kind !== 'dart' && node.kind !== 'fish-dart') continue;
    const { text, at } = node.name;
    if (names.has(text)) {
      reader.statement = line;
      const message = say`This piece has a dart called ${text} already; give this one a name of its own.`;
      report(reader, 'defined-twice', at, message);
    }
    names.add(text);
  }
}

/** A line about a dart of the outline that the outline does not have. */
function strayLines(reader: Reader, lines: readonly DartLine[], drafted: readonly Dart[]): void {
  for (const line of lines) {
    const { name, on } = line.node;
    if (on !== undefined || drafted.some((dart) => dart.name === name.text)) continue;
    reader.statement = line;
    report(
      reader,
      'unknown-name',
      name.at,
      say`The outline has no dart called ${name.text}. A dart laid on an edge says where: dart ${name.text} on EDGE at PLACE.`,
    );
  }
}

export interface DartsLaid {
  readonly edge: Edge;
  readonly darts: readonly Dart[];
  readonly trued?: Trued;
  readonly missing: readonly string[];
}

/** All darts of one edge, cut into it; the edge trued, unless its line says otherwise. */
export function laidOn(reader: Reader, edge: Edge, laid: readonly Laid[], source: string): DartsLaid {
  const cut = cutDarts(reader, edge, laid, source);
  const there = new Set(cut.darts.map(({ name }) => name));
  const missing = laid.flatMap(({ node }) => (there.has(node.name.text) ? [] : [node.name.text]));
  const { node } = edge.statement;
  if (cut.darts.length === 0 || (node.kind === 'edge' && node.untrued)) return { ...cut, missing };
  return { ...trueEdge(cut.edge, cut.darts), missing };
}

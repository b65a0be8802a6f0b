/** Walks an outline: edge after edge, run after run, from a point and back to it. */
import { say } from '../../../grammar/say';
import type { EdgeNode, Expr, Name, Run, Span, Statement } from '../../../grammar/syntax';
import { distance, Path, samePoint, type Point } from '../../geometry';
import type { Corner, Edge, EdgePart, Gap } from '../model';
import { report, type Reader } from '../values/reader';
import { pathOf, pointOf, type PathShape } from '../shapes/phrase';
import { stretch, wayBetween } from '../shapes/ways';

/** Two ends further apart than this leave a hole in the outline; a sharp pencil can't tell less (language reference, pieces). */
export const CLOSED_WITHIN = 0.05;

/** A dart drafted in the outline: leg ends and apex, the rest stands in a line of its own. */
export interface DraftedDart {
  readonly name: string;
  readonly statement: Statement;
  readonly edge: string;
  readonly from: Point;
  readonly to: Point;
  readonly apex: Point;
}

export interface Walked {
  readonly edges: readonly Edge[];
  readonly drafted: readonly DraftedDart[];
  readonly corners: readonly Corner[];
  readonly gaps: readonly Gap[];
}

interface Walk {
  readonly reader: Reader;
  readonly source: string;
  readonly start: Point;
  at: Point;
  atName: string;
  readonly edges: Edge[];
  readonly drafted: DraftedDart[];
  readonly corners: Corner[];
  readonly gaps: Gap[];
}

export const nameOf = (expr: Expr): string =>
  expr.kind === 'ref'
    ? expr.path[expr.path.length - 1]!.text
    : expr.kind === 'bracket'
      ? nameOf(expr.inside)
      : '';

/**
 * The edges of an outline, with the gaps between their runs.
 *
 * @param statement the `outline from P` or `hole NAME from P` statement, its edges in the block
 * @param source path of the piece, for the edges' own paths
 * @returns undefined when an edge can't be had, or when there is none
 */
export function walkOutline(reader: Reader, statement: Statement, source: string): Walked | undefined {
  const { node, block = [] } = statement;
  if (node.kind !== 'outline' && node.kind !== 'hole') return undefined;
  reader.statement = statement;
  const what = node.kind === 'hole' ? say`The hole ${node.name.text}` : say`This outline`;
  const start = pointOf(reader, node.from, `${node.kind} from`);
  if (start === undefined) return undefined;
  const name = nameOf(node.from);
  const walk: Walk = {
    reader,
    source,
    start,
    at: start,
    atName: name,
    edges: [],
    drafted: [],
    corners: [],
    gaps: [],
  };
  remember(walk, name, start);
  let whole = true;
  for (const line of block) {
    reader.statement = line;
    if (line.node.kind === 'edge') whole = walkEdge(walk, line, line.node) && whole;
    else if (line.node.kind === 'broken') whole = false;
  }
  if (!whole) {
    reader.blocked = true;
    return undefined;
  }
  if (walk.edges.length === 0) {
    reader.statement = statement;
    return report(
      reader,
      'empty-outline',
      node.at,
      say`${what} has no edges: name each edge and say how it runs, such as side straight to hem-side.`,
    );
  }
  close(walk);
  return walk;
}

function remember(walk: Walk, name: string, point: Point): void {
  if (name !== '' && !walk.corners.some((corner) => corner.name === name)) walk.corners.push({ name, point });
}

function walkEdge(walk: Walk, statement: Statement, node: EdgeNode): boolean {
  const fromName = walk.atName;
  const parts: EdgePart[] = [];
  for (const run of node.runs) {
    const next = walkRun(walk, run, node.name.text);
    if (next === undefined) return false;
    if (next !== 'nothing') addPart(parts, next);
    walk.atName = nameOf(run.to);
    remember(walk, walk.atName, walk.at);
  }
  const { name } = node;
  namedOnce(walk, name);
  const ends = {
    name: name.text,
    source: `${walk.source}/${name.text}`,
    statement,
    fromName,
    toName: walk.atName,
  };
  walk.edges.push(Object.assign(ends, edgeOf(parts, walk.at)));
  return true;
}

/** Seams, finishes and places know an edge by its name alone. */
function namedOnce({ reader, edges }: Walk, { text, at }: Name): void {
  const other = edges.find(({ name }) => name.toLowerCase() === text.toLowerCase());
  if (other === undefined) return;
  const message =
    other.name === text
      ? say`This outline has an edge called ${text} already. Give each edge a name of its own, or let this be a stretch of it (then …).`
      : say`${text} and ${other.name} differ in capitals alone, which nobody hears when they are read out. Rename one of them.`;
  report(reader, 'defined-twice', at, message, {
    related: [{ source: other.source, message: say`${other.name} runs here.` }],
  });
}

/** Runs that follow each other are one part; a dart stands between parts. */
function addPart(parts: EdgePart[], next: EdgePart): void {
  const last = parts[parts.length - 1];
  if (last === undefined || last.dart !== undefined || next.dart !== undefined) parts.push(next);
  else parts[parts.length - 1] = { path: last.path.joinedTo(next.path) };
}

/** The measures of an edge made of parts; one of no parts is a point. */
export function edgeOf(
  parts: readonly EdgePart[],
  at: Point,
): Pick<Edge, 'path' | 'parts' | 'drawn' | 'sewn'> {
  const path = parts.length === 0 ? Path.line(at, at) : Path.joined(parts.map((part) => part.path));
  const sewn = parts.reduce((sum, part) => sum + sewnLength(part), 0);
  return { path, parts, sewn, drawn: path.length };
}

/** What is left of a part when it is sewn: nothing of what a dart or pleat takes, a share of what is gathered. */
export const sewnLength = ({ path, dart, gathered }: EdgePart): number =>
  dart === undefined ? path.length * (gathered?.share ?? 1) : 0;

/** One run from where the walk stands; moves the walk to its end. */
function walkRun(walk: Walk, run: Run, edge: string): EdgePart | 'nothing' | undefined {
  const to = pointOf(walk.reader, run.to, 'to');
  if (run.kind === 'along') {
    const curve = pathOf(walk.reader, run.curve, 'along');
    return curve === undefined || to === undefined ? undefined : alongCurve(walk, run, curve, to, edge);
  }
  if (to === undefined) return undefined;
  const from = walk.at;
  walk.at = to;
  switch (run.kind) {
    case 'straight':
      return samePoint(from, to, 1e-9) ? 'nothing' : { path: Path.line(from, to) };
    case 'curve': {
      const shape = wayBetween(walk.reader, {
        expr: run,
        start: from,
        end: to,
        options: run.options,
        word: 'curve',
      });
      return shape === undefined || shape.kind === 'point' ? undefined : { path: shape.path };
    }
    case 'dart': {
      const apex = pointOf(walk.reader, run.by, 'by');
      if (apex === undefined) return undefined;
      walk.drafted.push({ name: run.name.text, statement: walk.reader.statement, edge, from, to, apex });
      return { path: Path.line(from, to), dart: run.name.text };
    }
  }
}

/** `along C to P`: from where the walk stands, if that is on C; else from C's far end, with a gap before it. */
function alongCurve(
  walk: Walk,
  run: Extract<Run, { kind: 'along' }>,
  curve: PathShape,
  to: Point,
  edge: string,
): EdgePart {
  const { path } = curve;
  const end = path.locate(to);
  const here = path.locate(walk.at);
  const begins = here.distance <= CLOSED_WITHIN;
  const from = begins ? here.s : end.s > path.length / 2 ? 0 : path.length;
  const before: Point = walk.at;
  const begin = path.pointAt(from);
  if (!begins) addGap(walk, before, begin, edge, run.at);
  let walked = whole(curve, from, end.s);
  if (!begins) walked = Path.line(before, begin).joinedTo(walked);
  walk.at = path.pointAt(end.s);
  if (end.distance > CLOSED_WITHIN) {
    addGap(walk, walk.at, to, edge, run.to.at);
    walked = walked.joinedTo(Path.line(walk.at, to));
    walk.at = to;
  }
  return { path: walked };
}

/** All of a closed curve when it ends where it began. */
function whole(curve: PathShape, from: number, to: number): Path {
  const round = curve.kind === 'curve' && curve.closed && Math.abs(from - to) < CLOSED_WITHIN;
  return round ? curve.path : stretch(curve, from, to);
}

function addGap(walk: Walk, from: Point, to: Point, edge: string, at: Span): void {
  const last = walk.edges[walk.edges.length - 1];
  walk.gaps.push({
    from,
    to,
    size: distance(from, to),
    before: last?.name ?? edge,
    after: edge,
    statement: walk.reader.statement,
    at,
    closing: false,
  });
}

function close(walk: Walk): void {
  const size = distance(walk.at, walk.start);
  if (size <= CLOSED_WITHIN) return;
  const last = walk.edges[walk.edges.length - 1]!;
  const node = last.statement.node as EdgeNode;
  walk.gaps.push({
    from: walk.at,
    to: walk.start,
    size,
    before: last.name,
    after: walk.edges[0]!.name,
    statement: last.statement,
    at: node.runs[node.runs.length - 1]!.at,
    closing: true,
  });
}

/** Makes one piece of two that lie edge to edge: what runs on under one name is one edge, the rest keeps its names. */
import { distance, samePoint, type Path, type Point } from '../../../geometry';
import type { BalanceLine, Corner, Edge, EdgePart, Hole, Mark, Piece } from '../../model';
import { NO_SHAPING } from '../../shaping-model';
import { edgeOf } from '../outline';
import type { MadePiece } from './blank';
import type { Laid, Side } from './join';
import { pulled } from './pulled';
import { renamedGathers, renamedPart, renamedPleats, secondNames, type SecondNames } from './second-names';

/** Points nearer than this are one, mm. */
const ONE_POINT = 0.05;

export function merged(one: Side, laid: Laid, made: MadePiece): Piece {
  const [first, second] = [one.piece, laid.piece];
  const names = namesOf(one, laid);
  const own = without(first, one.edge);
  const others = snapped(without(second, laid.edge), own).map((edge) => renamed(edge, names));
  const edges = ring(own, others).map((edge) => ({ ...edge, source: `${made.source}/${edge.name}` }));
  const fold = foldOf(one, laid, names);
  const { cutting: _, side: __, fold: ___, ...kept } = first;
  const cut = first.fold === undefined && fold !== undefined ? (second.cut ?? first.cut) : first.cut;
  const grain = first.grain ?? second.grain;
  return {
    ...kept,
    ...{ name: made.name, base: made.name, source: made.source, statement: made.statement, edges },
    ...(cut && { cut }),
    ...(grain && { grain }),
    ...(fold && { fold }),
    darts: [
      ...first.darts,
      ...second.darts.map((dart) => ({
        ...dart,
        name: names.of('shaping', dart.name),
        edge: names.of('edge', dart.edge),
      })),
    ],
    trued: [...first.trued, ...second.trued.map((one) => ({ ...one, edge: names.of('edge', one.edge) }))],
    ...shapingOf(first, second, names),
    corners: [...first.corners, ...second.corners.flatMap((corner) => addedCorner(first, corner, names))],
    allowances: allowancesOf(one, laid, names),
    ...statedOf(one, laid, names),
    running: runningOf(one, laid, names, edges),
    // found by where they lie: of two corners of one name the second bears another now
    cornerCuts: [...first.cornerCuts, ...second.cornerCuts.map(({ name: _, ...cut }) => cut)],
    balance: balanceOf(first, second, names),
    marks: [...first.marks, ...second.marks.map((mark) => markAs(mark, names))],
    holes: [...first.holes, ...second.holes.map((hole) => holeAs(hole, names))],
    labels: [...first.labels, ...second.labels],
    unbuilt: [...new Set([...first.unbuilt, ...second.unbuilt])],
  };
}

/** The other edges, in the direction of the outline, from behind the joined one round to before it. */
function without({ edges }: Piece, edge: Edge): readonly Edge[] {
  const at = edges.findIndex(({ name }) => name === edge.name);
  return [...edges.slice(at + 1), ...edges.slice(0, at)];
}

function namesOf(one: Side, laid: Laid): SecondNames {
  const [a, b] = [without(one.piece, one.edge), without(laid.piece, laid.edge)];
  // where one ends and the other begins they are one edge, if they bear one name
  const running = new Set<string>();
  if (a.at(-1)?.name === b[0]?.name) running.add(b[0]?.name ?? '');
  if (a[0]?.name === b.at(-1)?.name) running.add(a[0]?.name ?? '');
  return secondNames(withoutEdge(one), withoutEdge(laid), running);
}

/** The joined edge goes, and its name with it. */
const withoutEdge = ({ piece, edge }: Side): Piece => ({ ...piece, edges: without(piece, edge) });

function renamed(edge: Edge, names: SecondNames): Edge {
  return {
    ...edge,
    name: names.of('edge', edge.name),
    parts: edge.parts.map((part) => renamedPart(part, names)),
  };
}

function addedCorner(first: Piece, corner: Corner, names: SecondNames): Corner[] {
  const same = first.corners.find(({ name }) => name === corner.name);
  if (same !== undefined && samePoint(same.point, corner.point, ONE_POINT)) return [];
  return [{ ...corner, name: names.of('corner', corner.name) }];
}

/** Both rows of edges as one ring; at its two joints edges of one name become one. */
function ring(own: readonly Edge[], others: readonly Edge[]): readonly Edge[] {
  const found = [...own];
  for (const edge of others) {
    const last = found[found.length - 1];
    if (edge === others[0] && last?.name === edge.name) found[found.length - 1] = runningOn(last, edge);
    else found.push(edge);
  }
  const [begin, end] = [found[0]!, found[found.length - 1]!];
  if (begin === end || begin.name !== end.name) return found;
  return [...found.slice(1, -1), { ...runningOn(end, begin), ...(own.includes(begin) && heldBy(begin)) }];
}

/** The words of a joined edge are those of the first piece. */
const heldBy = ({ statement }: Edge): Pick<Edge, 'statement'> => ({ statement });

function runningOn(before: Edge, after: Edge): Edge {
  const parts: EdgePart[] = [...before.parts];
  const [last, next] = [parts[parts.length - 1], after.parts[0]];
  if (last !== undefined && next !== undefined && last.dart === undefined && next.dart === undefined) {
    parts[parts.length - 1] = { path: last.path.joinedTo(next.path) };
    parts.push(...after.parts.slice(1));
  } else parts.push(...after.parts);
  return { ...before, toName: after.toName, ...edgeOf(parts, before.path.start) };
}

/** Ends that miss the first piece by a hair are drawn on to it. */
function snapped(others: readonly Edge[], own: readonly Edge[]): readonly Edge[] {
  const [begin, end] = [own[own.length - 1]?.path.end, own[0]?.path.start];
  return others.map((edge, i) => {
    let found = edge;
    if (i === 0 && begin !== undefined) found = drawnOn(found, 'start', begin);
    if (i === others.length - 1 && end !== undefined) found = drawnOn(found, 'end', end);
    return found;
  });
}

function drawnOn(edge: Edge, which: 'start' | 'end', to: Point): Edge {
  const from = which === 'start' ? edge.path.start : edge.path.end;
  if (distance(from, to) === 0) return edge;
  const at = which === 'start' ? 0 : edge.parts.length - 1;
  const parts = edge.parts.map((part, i) =>
    i === at ? { ...part, path: pulled(part.path, which, to) } : part,
  );
  return { ...edge, ...edgeOf(parts, to) };
}

function foldOf(one: Side, laid: Laid, names: SecondNames): Piece['fold'] {
  const own = one.piece.fold;
  if (own !== undefined && own.edge !== one.edge.name) return own;
  const other = laid.piece.fold;
  if (other === undefined || other.edge === laid.edge.name) return undefined;
  return { ...other, edge: names.of('edge', other.edge) };
}

/** The first piece's hold for what is one edge; an edge of the second keeps its own. */
function allowancesOf(one: Side, laid: Laid, names: SecondNames): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const [edge, width] of laid.piece.allowances)
    if (edge !== laid.edge.name) found.set(names.of('edge', edge), width);
  for (const [edge, width] of one.piece.allowances) if (edge !== one.edge.name) found.set(edge, width);
  return found;
}

function shapingOf(first: Piece, second: Piece, names: SecondNames): Pick<Piece, 'shaping'> {
  const [one, other] = [first.shaping ?? NO_SHAPING, second.shaping ?? NO_SHAPING];
  if (first.shaping === undefined && second.shaping === undefined) return {};
  return {
    shaping: {
      fishDarts: [
        ...one.fishDarts,
        ...other.fishDarts.map((dart) => ({ ...dart, name: names.of('shaping', dart.name) })),
      ],
      pleats: [...one.pleats, ...other.pleats.map((row) => renamedPleats(row, names))],
      gathers: [...one.gathers, ...other.gathers.map((row) => renamedGathers(row, names))],
      closed: [...one.closed, ...other.closed],
    },
  };
}

/** A balance line that was parted with the paper and meets its other half again is one; others keep apart. */
function balanceOf(first: Piece, second: Piece, names: SecondNames): readonly BalanceLine[] {
  const found = [...first.balance];
  for (const line of second.balance) {
    const at = found.findIndex(({ name }) => name === line.name);
    const path = found[at] && throughBoth(found[at].path, line.path);
    if (path) found[at] = { ...found[at]!, path };
    else found.push(markAs(line, names));
  }
  return found;
}

/** Two lines that meet end to end as one, in the direction of the first. */
function throughBoth(a: Path, b: Path): Path | undefined {
  const meets = (p: Point, q: Point): boolean => samePoint(p, q, ONE_POINT);
  if (meets(a.end, b.start)) return a.joinedTo(b);
  if (meets(a.end, b.end)) return a.joinedTo(b.reversed());
  if (meets(a.start, b.end)) return b.joinedTo(a);
  return meets(a.start, b.start) ? b.reversed().joinedTo(a) : undefined;
}

const markAs = <T extends BalanceLine | Mark>(mark: T, names: SecondNames): T => ({
  ...mark,
  name: names.of('mark', mark.name),
});

const holeAs = (hole: Hole, names: SecondNames): Hole => ({
  ...hole,
  name: names.of('hole', hole.name),
  edges: hole.edges.map((edge) => renamed(edge, names)),
});

function statedOf(one: Side, laid: Laid, names: SecondNames): Pick<Piece, 'statedAllowances' | 'inlays'> {
  const own = (one.piece.statedAllowances ?? []).filter(({ edge }) => edge !== one.edge.name);
  const others = (laid.piece.statedAllowances ?? []).flatMap((stated) => {
    const edge = names.of('edge', stated.edge);
    const said = stated.edge === laid.edge.name || own.some((before) => before.edge === edge);
    return said ? [] : [{ ...stated, edge }];
  });
  const inlays = new Map<string, number>();
  for (const [edge, width] of laid.piece.inlays ?? [])
    if (edge !== laid.edge.name) inlays.set(names.of('edge', edge), width);
  for (const [edge, width] of one.piece.inlays ?? []) if (edge !== one.edge.name) inlays.set(edge, width);
  return { statedAllowances: [...own, ...others], inlays };
}

/** Counted anew from the start of the edge, where another was put before it. */
function runningOf(one: Side, laid: Laid, names: SecondNames, edges: readonly Edge[]): Piece['running'] {
  const moved = (piece: Piece, edge: Edge, nameOf: (name: string) => string): Piece['running'] =>
    piece.running
      .filter((run) => run.edge !== edge.name)
      .map((run) => {
        const before = piece.edges.find(({ name }) => name === run.edge)!.path;
        const after = edges.find(({ name }) => name === nameOf(run.edge))!.path;
        const by = after.locate(before.start).s;
        return { ...run, edge: nameOf(run.edge), from: run.from + by, to: run.to + by };
      });
  return [
    ...moved(one.piece, one.edge, (name) => name),
    ...moved(laid.piece, laid.edge, (name) => names.of('edge', name)),
  ];
}

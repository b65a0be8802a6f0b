/**
 * Which names a statement mentions, and in which name space each is to be looked up. One walk over the syntax, used by
 * the graph of definitions, by renaming and by completion alike.
 */
import type {
  Bearing,
  Expr,
  Heading,
  Pick,
  Place,
  Ref,
  Run,
  Sewn,
  Statement,
  StatementNode,
  StepForm,
  WayOption,
} from '../../../grammar/syntax';

/**
 * - `value`: a quantity. `shape`: a point, line, curve, edge or piece.
 * - `part`: something of the piece whose block we are in (an edge, a corner, a dart): looked up when the piece is made.
 * - `edge`: `piece.edge`, or a seam's name. `block`: a draft or piece. `body`: a body or a size table.
 * - `comparand`: a bare name beside `=`: a value, or one of the words of a choice (`when closure = zip`).
 * - `word`: one of the words offered by a `choose … among`.
 */
export type RefSpace = 'value' | 'comparand' | 'shape' | 'part' | 'edge' | 'block' | 'body' | 'word';

export type Visit = (ref: Ref, space: RefSpace, statement: Statement) => void;

/** Functions whose arguments are shapes; all others take values. */
export const SHAPE_FUNCTIONS: ReadonlySet<string> = new Set(['length', 'drawn', 'distance', 'slope', 'angle', 'area']);

type See = (ref: Ref, space: RefSpace) => void;

/** Visits every name mentioned in a statement and in the block it owns, except what the block defines for itself. */
export function eachReference(statement: Statement, visit: Visit): void {
  const see: See = (ref, space) => visit(ref, space, statement);
  ofNode(statement.node, see);
  if (!ownsReferences(statement.node)) return;
  for (const inner of statement.block ?? []) eachReference(inner, visit);
}

/** A draft's statements are definitions of their own; a piece's lines are the piece's. */
function ownsReferences(node: StatementNode): boolean {
  return node.kind !== 'draft' && node.kind !== 'body' && node.kind !== 'sizes';
}

export function value(expr: Expr | undefined, see: See): void {
  if (expr === undefined) return;
  switch (expr.kind) {
    case 'quantity':
    case 'text':
      return;
    case 'ref':
      return see(expr, 'value');
    case 'call':
      return expr.args.forEach((arg) => (SHAPE_FUNCTIONS.has(expr.func.text) ? shape : value)(arg, see));
    case 'compare':
      comparand(expr.left, see);
      return comparand(expr.right, see);
    case 'sum':
    case 'product':
    case 'logic':
      value(expr.left, see);
      return value(expr.right, see);
    case 'negative':
    case 'not':
      return value(expr.of, see);
    case 'bracket':
      return value(expr.inside, see);
    case 'coordinates':
      value(expr.x, see);
      return value(expr.y, see);
    default:
      return shape(expr, see);
  }
}

function comparand(expr: Expr, see: See): void {
  if (expr.kind === 'ref' && expr.path.length === 1) see(expr, 'comparand');
  else value(expr, see);
}

export function shape(expr: Expr | undefined, see: See): void {
  if (expr === undefined) return;
  switch (expr.kind) {
    case 'ref':
      return see(expr, 'shape');
    case 'bracket':
      return shape(expr.inside, see);
    case 'crossing':
      shape(expr.one, see);
      shape(expr.other, see);
      return pick(expr.pick, see);
    case 'placed':
      shape(expr.on, see);
      return place(expr.place, see);
    case 'midpoint':
      shape(expr.one, see);
      return shape(expr.other, see);
    case 'section':
      shape(expr.of, see);
      shape(expr.from, see);
      return shape(expr.to, see);
    case 'joined':
      return expr.parts.forEach((part) => shape(part, see));
    case 'step':
      shape(expr.base, see);
      return step(expr.step, see);
    case 'way':
      shape(expr.start, see);
      shape(expr.end, see);
      return expr.options.forEach((option) => wayOption(option, see));
    default:
      return value(expr, see);
  }
}

function pick(of: Pick | undefined, see: See): void {
  shape(of?.point, see);
}

/** A bare place (`at back-foot`) is a point; a counted one (`7cm from A`) begins with a value. */
export function place(of: Place | undefined, see: See): void {
  if (of === undefined) return;
  if (of.counted !== undefined || of.value.kind !== 'ref') value(of.value, see);
  else if (of.value.path.length > 1 || of.value.path[0]!.text !== 'halfway') shape(of.value, see);
  shape(of.point, see);
  shape(of.toward, see);
}

function bearing(of: Bearing, see: See): void {
  value(of.angle, see);
}

function step(of: StepForm, see: See): void {
  switch (of.kind) {
    case 'by':
      return value(of.distance, see);
    case 'until':
      shape(of.target, see);
      return pick(of.pick, see);
    case 'bearing':
      bearing(of.bearing, see);
      return value(of.distance, see);
    case 'reach':
      value(of.radius, see);
      shape(of.target, see);
      return pick(of.pick, see);
    case 'dropped':
      shape(of.onto, see);
      return pick(of.pick, see);
    case 'squared-out':
      shape(of.line, see);
      value(of.distance, see);
      return shape(of.toward, see);
    case 'turned':
      value(of.angle, see);
      return shape(of.about, see);
    case 'mirrored':
      return shape(of.across, see);
    case 'moved':
      return of.by.forEach(({ distance }) => value(distance, see));
    case 'parallel':
      value(of.distance, see);
      return shape(of.toward, see);
    case 'laid':
      return [of.anchor, of.on, of.second, of.toward].forEach((operand) => shape(operand, see));
    case 'reversed':
      return;
  }
}

function heading(of: Heading, see: See): void {
  switch (of.kind) {
    case 'direction':
      return;
    case 'toward':
      return shape(of.point, see);
    case 'square':
      return shape(of.to, see);
    case 'along':
      return shape(of.line, see);
    case 'bearing':
      return bearing(of.bearing, see);
  }
}

function wayOption(of: WayOption, see: See): void {
  switch (of.kind) {
    case 'through':
      for (const via of of.via) {
        shape(via.point, see);
        if (via.going !== undefined) heading(via.going, see);
      }
      return;
    case 'leaving':
    case 'arriving':
      return heading(of.heading, see);
    case 'fuller':
    case 'flatter':
      return value(of.by, see);
    case 'hollow':
      value(of.depth, see);
      shape(of.toward, see);
      return place(of.place, see);
    case 'centre':
      return shape(of.point, see);
  }
}

function run(of: Run, see: See): void {
  if (of.kind === 'along') shape(of.curve, see);
  if (of.kind === 'dart') shape(of.by, see);
  if (of.kind === 'curve') of.options.forEach((option) => wayOption(option, see));
  shape(of.to, see);
}

function sewn(of: Sewn, see: See): void {
  see(of.edge, 'edge');
  place(of.from, see);
  place(of.to, see);
}

/** A choice among words mentions none of them as names of ours. */
function choice(node: Extract<StatementNode, { kind: 'choose' }>, see: See): void {
  if (node.among === undefined) {
    value(node.value, see);
    value(node.range?.low, see);
    return value(node.range?.high, see);
  }
  for (const option of [node.value, ...node.among]) {
    if (option.kind === 'ref') see(option, 'word');
    else value(option, see);
  }
}

function ofNode(node: StatementNode, see: See): void {
  const part = (expr: Expr | undefined): void => {
    if (expr?.kind === 'ref') see(expr, 'part');
    else shape(expr, see);
  };
  switch (node.kind) {
    case 'let':
      return value(node.value, see);
    case 'choose':
      return choice(node, see);
    case 'solve':
      return [node.range.low, node.range.high, node.left, node.right].forEach((expr) => value(expr, see));
    case 'expect':
      value(node.condition, see);
      return value(node.within, see);
    case 'use':
      return node.given.forEach((given) => value(given.value, see));
    case 'tolerance':
      return value(node.value, see);
    case 'measure':
      value(node.range?.low, see);
      return value(node.range?.high, see);
    case 'shape':
      return shape(node.phrase, see);
    case 'circle':
      shape(node.centre, see);
      return value(node.size, see);
    case 'piece':
      if (node.of !== undefined) see(node.of, 'block');
      if (node.workedFrom !== undefined) see(node.workedFrom, 'block');
      return value(node.when, see);
    case 'lining':
      see(node.of, 'block');
      return value(node.when, see);
    case 'outline':
    case 'hole':
      return part(node.from);
    case 'edge':
      return node.runs.forEach((one) => run(one, see));
    case 'cut':
      return node.layers.forEach(({ count }) => typeof count === 'number' || value(count, see));
    case 'fold':
      return see(node.edge, 'part');
    case 'grain':
      return [node.along, node.biasTo, node.from, node.to].forEach(part);
    case 'allow':
      value(node.width, see);
      value(node.running?.width, see);
      if (node.running?.at !== undefined) see(node.running.at, 'part');
      if (node.running?.along !== undefined) see(node.running.along, 'part');
      return node.edges.forEach((edge) => see(edge, 'part'));
    case 'inlay':
      value(node.width, see);
      return node.edges.forEach((edge) => see(edge, 'part'));
    case 'corner':
      return part(node.point);
    case 'balance':
      part(node.from);
      return part(node.to);
    case 'label':
      return part(node.place);
    case 'mark':
      return shape(node.phrase, see);
    case 'notch':
      if (node.on.kind === 'ref') see(node.on, 'edge');
      return place(node.place, see);
    case 'seam':
      node.left.parts.forEach((one) => sewn(one, see));
      if (node.right !== 'its-pair') node.right.parts.forEach((one) => sewn(one, see));
      return ofSeam(node, see);
    case 'finish':
      node.edges.forEach((one) => sewn(one, see));
      return value(node.width, see);
    default:
      return;
  }
}

function ofSeam(node: Extract<StatementNode, { kind: 'seam' }>, see: See): void {
  for (const ease of node.eases) {
    if (ease.kind === 'easing') {
      value(ease.low, see);
      value(ease.high, see);
    } else if (ease.kind === 'gathered') {
      value(ease.ratio, see);
      value(ease.to, see);
    } else {
      value(ease.by, see);
    }
  }
  node.openings.forEach(({ length }) => value(length, see));
  value(node.when, see);
}

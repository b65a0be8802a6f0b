/**
 * Which names a statement mentions, and in which name space each is to be looked up. One walk over the syntax, used by
 * the graph of definitions, by renaming and by completion alike.
 */
import { ofNode } from './mentions';
import type {
  Bearing,
  Expr,
  Heading,
  Pick,
  Place,
  Ref,
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
 * - `measured`: a shape whose length is asked, or that is laid on this sheet: it may lie on another.
 * - `subject`: whatever something may be found of: a piece, an edge, a seam, a finish, a draft, a value.
 * - `word`: one of the words offered by a `choose … among`.
 */
export type RefSpace =
  'value' | 'comparand' | 'measured' | 'shape' | 'part' | 'edge' | 'block' | 'body' | 'subject' | 'word';

export type Visit = (ref: Ref, space: RefSpace, statement: Statement) => void;

/** Functions whose arguments are shapes; all others take values. */
export const SHAPE_FUNCTIONS: ReadonlySet<string> = new Set([
  'length',
  'drawn',
  'distance',
  'slope',
  'angle',
  'area',
]);

export type See = (ref: Ref, space: RefSpace) => void;

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
      return expr.args.forEach((arg) => (SHAPE_FUNCTIONS.has(expr.func.text) ? measured : value)(arg, see));
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

/** A shape that may lie on another sheet: only its measure is taken, or it is brought over. */
function measured(expr: Expr, see: See): void {
  shape(expr, (ref, space) => see(ref, space === 'shape' ? 'measured' : space));
}

export function comparand(expr: Expr, see: See): void {
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
      (expr.step.kind === 'laid' ? measured : shape)(expr.base, see);
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
      return [of.anchor, of.on, of.second, of.toward].forEach((operand) => measured(operand, see));
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

export function wayOption(of: WayOption, see: See): void {
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

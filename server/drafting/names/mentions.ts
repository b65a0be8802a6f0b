/** The names that each kind of statement mentions: one small function a kind. */
import type { Expr, LengthenNode, Run, Sewn, StatementNode } from '../../../grammar/syntax';
import { comparand, place, shape, value, wayOption, type See } from './references';

type Kind = StatementNode['kind'];
type Of<K extends Kind> = K extends LengthenNode['kind'] ? LengthenNode : Extract<StatementNode, { kind: K }>;
type Table = { readonly [K in Kind]?: (node: Of<K>, see: See) => void };

/** An edge, a corner or a dart of the piece whose block this is; anything else is a shape of its draft. */
function part(expr: Expr | undefined, see: See): void {
  if (expr?.kind === 'ref') see(expr, 'part');
  else shape(expr, see);
}

/** What stands in a phrase of a piece may be its edges, corners, darts and marks. */
const ownFirst =
  (see: See): See =>
  (ref, space) =>
    see(ref, space === 'shape' ? 'part' : space);

const ofOwn = (expr: Expr | undefined, see: See): void => shape(expr, ownFirst(see));

const values = (exprs: readonly (Expr | undefined)[], see: See): void =>
  exprs.forEach((expr) => value(expr, see));

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
function choice(node: Of<'choose'>, see: See): void {
  if (node.among === undefined) return values([node.value, node.range?.low, node.range?.high], see);
  for (const option of [node.value, ...node.among]) {
    if (option.kind === 'ref') see(option, 'word');
    else value(option, see);
  }
}

function seam(node: Of<'seam'>, see: See): void {
  node.left.parts.forEach((one) => sewn(one, see));
  if (node.right !== 'its-pair') node.right.parts.forEach((one) => sewn(one, see));
  for (const ease of node.eases) {
    if (ease.kind === 'easing') {
      values([ease.low, ease.high], see);
      shape(ease.between?.one, see);
      shape(ease.between?.other, see);
    } else if (ease.kind === 'gathered') values([ease.ratio, ease.to], see);
    else value(ease.by, see);
  }
  for (const sharing of node.sharing) {
    if (sharing.kind === 'none') sharing.points.forEach((point) => shape(point, see));
    else value(sharing.share, see);
  }
  for (const { length, from, to } of node.openings) {
    value(length, see);
    shape(from, see);
    shape(to, see);
  }
}

function pressing(node: { readonly pressed?: { readonly toward?: Expr } }, see: See): void {
  part(node.pressed?.toward, see);
}

function piece(node: Of<'piece'>, see: See): void {
  if (node.of !== undefined) see(node.of, 'block');
  if (node.workedFrom !== undefined) see(node.workedFrom, 'block');
}

function allow(node: Of<'allow'>, see: See): void {
  values([node.width, node.running?.width], see);
  part(node.running?.at, see);
  part(node.running?.along, see);
  place(node.stretch?.from, ownFirst(see));
  place(node.stretch?.to, ownFirst(see));
  node.edges.forEach((edge) => part(edge, see));
}

function dart(node: Of<'dart'>, see: See): void {
  part(node.on, see);
  place(node.place, see);
  values([node.width, node.long, node.sewnTo], see);
  shape(node.swingsAbout, see);
  pressing(node, see);
}

function byALine(node: LengthenNode, see: See): void {
  value(node.by, see);
  part(node.line, see);
}

const MENTIONS: Table = {
  let: (node, see) => value(node.value, see),
  choose: choice,
  solve: (node, see) => values([node.range.low, node.range.high, node.left, node.right], see),
  expect: (node, see) => values([node.condition, node.within], see),
  use: (node, see) => node.given.forEach((given) => comparand(given.value, see)),
  tolerance: (node, see) => value(node.value, see),
  measure: (node, see) => values([node.range?.low, node.range?.high], see),
  usual: (node, see) => values([node.range.low, node.range.high], see),
  accept: (node, see) => node.of && see(node.of, 'subject'),
  shape: (node, see) => shape(node.phrase, see),
  circle: (node, see) => {
    shape(node.centre, see);
    value(node.size, see);
  },
  piece,
  lining: (node, see) => see(node.of, 'block'),
  outline: (node, see) => part(node.from, see),
  hole: (node, see) => part(node.from, see),
  edge: (node, see) => node.runs.forEach((one) => run(one, see)),
  cut: (node, see) => node.layers.forEach(({ count }) => typeof count === 'number' || value(count, see)),
  fold: (node, see) => part(node.edge, see),
  grain: (node, see) => [node.along, node.biasTo, node.from, node.to].forEach((expr) => part(expr, see)),
  allow,
  inlay: (node, see) => {
    value(node.width, see);
    node.edges.forEach((edge) => part(edge, see));
  },
  corner: (node, see) => part(node.point, see),
  dart,
  'fish-dart': (node, see) => {
    part(node.from, see);
    part(node.to, see);
    value(node.width, see);
    place(node.place, see);
    pressing(node, see);
  },
  pleats: (node, see) => {
    part(node.on, see);
    values([node.count, ...(node.places?.distances ?? []), node.taking, node.stitchedDown], see);
    part(node.places?.from, see);
    place(node.from, see);
    place(node.to, see);
    part(node.folds, see);
  },
  gathers: (node, see) => {
    part(node.on, see);
    place(node.from, see);
    place(node.to, see);
    value(node.length, see);
  },
  balance: (node, see) => {
    part(node.from, see);
    part(node.to, see);
  },
  label: (node, see) => part(node.place, see),
  mark: (node, see) => {
    ofOwn(node.phrase, see);
    value(node.size?.by, see);
  },
  marks: (node, see) => {
    values([node.count, node.size?.by], see);
    ofOwn(node.along, see);
    [node.from, node.to].forEach((one) => place(one, ownFirst(see)));
  },
  notch: (node, see) => {
    if (node.on.kind === 'ref') see(node.on, 'edge');
    place(node.place, see);
  },
  seam,
  finish: (node, see) => {
    node.edges.forEach((one) => sewn(one, see));
    value(node.width, see);
    if (node.facedBy !== undefined) see(node.facedBy, 'block');
  },
  divide: (node, see) => {
    if (node.piece.kind === 'ref') see(node.piece, 'block');
    node.through.forEach((cut) => part(cut, see));
    const named = node.along?.name;
    if (node.along !== undefined && named?.at.from !== node.along.line.at.from) shape(node.along.line, see);
  },
  join: ({ one, other }, see) => [one, other].forEach((edge) => edge.kind === 'ref' && see(edge, 'edge')),
  facing: (node, see) => {
    see(node.of, 'block');
    node.along.forEach((edge) => part(edge, see));
    value(node.deep, see);
  },
  strip: (node, see) => values([node.length, node.width], see),
  swing: (node, see) => {
    part(node.dart, see);
    value(node.share, see);
    part(node.to, see);
    place(node.place, see);
  },
  close: (node, see) => {
    part(node.dart, see);
    part(node.into, see);
  },
  slash: (node, see) => {
    [node.from, node.to, node.hinge].forEach((expr) => part(expr, see));
    value(node.open, see);
  },
  spread: (node, see) => {
    [node.along, node.to].forEach((expr) => part(expr, see));
    value(node.width, see);
  },
  lengthen: byALine,
  shorten: byALine,
  widen: byALine,
  smooth: (node, see) => {
    part(node.point, see);
    value(node.by, see);
  },
  true: (node, see) => part(node.edge, see),
  band: (node, see) => {
    // the name of a seam stands for its edges, which the links look up
    node.for.parts.forEach((one) => one.edge.path.length > 1 && sewn(one, see));
    values([node.wide, node.underlap?.by], see);
  },
};

/** Hands every name that one statement mentions to `see`, with the space it is to be looked up in. */
export function ofNode(node: StatementNode, see: See): void {
  const mention = MENTIONS[node.kind] as ((node: StatementNode, see: See) => void) | undefined;
  mention?.(node, see);
  if ('when' in node) value(node.when, see);
}

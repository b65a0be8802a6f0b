/** Notches are strokes across the allowance: one at the front, two at the back (common practice). */
import { say } from '../../grammar/say';
import type { Notch, Piece } from '../drafting/model';
import { cutWidthAt } from '../drafting/pieces/widths';
import { add, Path, scale, signedArea } from '../geometry';
import type { DrawnLine } from './model';
import { pathLine } from './path';
import { lineName } from './told';

/** A notch is cut no deeper than half the allowance, and no deeper than this, mm (common practice: 3 to 6 mm). */
const DEEPEST = 6;
/** Shown on a piece without allowance. */
const SHOWN = 4;
/** Between the strokes of a double notch. */
const APART = 5;

function notchTold({ name, count }: Notch): string {
  if (count === 1) return say`${name}, single notch`;
  return count === 2 ? say`${name}, double notch` : say`${name}, triple notch`;
}

export function notchStrokes(piece: Piece, notch: Notch): DrawnLine[] {
  const hole = piece.holes.find(({ edges }) => edges.some(({ name }) => name === notch.edge));
  const edges = hole === undefined ? piece.edges : hole.edges;
  const edge = edges.find(({ name }) => name === notch.edge);
  if (edge === undefined) return [];
  // the allowance of a hole lies within it
  const outward = signedArea(edges.map(({ path }) => path)) < 0 !== (hole !== undefined) ? -1 : 1;
  const middle = edge.path.locate(notch.point).s;
  const allowance = cutWidthAt(piece, notch.edge, middle);
  const depth = allowance > 0 ? Math.min(DEEPEST, allowance / 2) : SHOWN;
  const words = {
    name: lineName(piece, notch.name),
    source: notch.source,
    tip: notchTold({ ...notch, name: lineName(piece, notch.name) }),
  };
  return Array.from({ length: notch.count }, (_, i) => {
    const s = middle + (i - (notch.count - 1) / 2) * APART;
    const at = edge.path.pointAt(s);
    const along = edge.path.tangentAt(Math.min(Math.max(s, 0), edge.path.length));
    const out = { x: along.y * outward, y: -along.x * outward };
    // the stroke stands in the allowance, from the cutting line inward: it is what the shears do
    const [from, to] = allowance > 0 ? [allowance, allowance - depth] : [0, -depth];
    return pathLine('notch', Path.line(add(at, scale(out, from)), add(at, scale(out, to))), words);
  });
}

/** The words on a piece: its label in plain lines, and the names of its edges along them. */
import type { Edge, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { signedArea } from '../geometry';
import type { Around } from './draw';
import type { DrawnText } from './model';
import { rounded } from './path';
import { roomFor } from './room';

/** Heights of capitals, mm: read at arm's length from a sheet on the table. */
const TITLE = 7;
const DETAIL = 4;
const EDGE = 3.2;
/** Height of a line of text, in heights of a capital. */
const LEADING = 1.9;

export function texts(piece: Piece, around: Around): DrawnText[] {
  return [...label(piece, around), ...piece.edges.flatMap((edge) => edgeName(piece, edge, around))];
}

/** Piece; pattern; body or size; cut and cloth; what the author adds. */
function label(piece: Piece, around: Around): DrawnText[] {
  const lines = [
    around.title,
    around.body === '' ? '' : `for ${around.body}`,
    piece.cut?.text ?? '',
    ...piece.labels.filter(({ at }) => at === undefined).map(({ text }) => text),
  ].filter((line) => line !== '');
  const wide = Math.max(piece.name.length * TITLE, ...lines.map((line) => line.length * DETAIL)) * 0.72;
  const high = TITLE * LEADING + lines.length * DETAIL * LEADING;
  const room = roomFor(piece, wide, high);
  const base = { source: piece.source, turn: 0 };
  const at = (y: number): DrawnText['at'] => ({ x: rounded(room.x), y: rounded(room.y + y * room.scale) });
  const found: DrawnText[] = [
    { ...base, role: 'title', text: piece.name, at: at(-high / 2 + TITLE), size: rounded(TITLE * room.scale) },
    ...lines.map((text, i): DrawnText => ({
      ...base,
      role: 'detail',
      text,
      at: at(-high / 2 + TITLE * LEADING + (i + 0.8) * DETAIL * LEADING),
      size: rounded(DETAIL * room.scale),
    })),
  ];
  for (const { text, at: place, source } of piece.labels) {
    if (place === undefined) continue;
    found.push({ role: 'note', source, text, at: { x: rounded(place.x), y: rounded(place.y) }, size: DETAIL, turn: 0 });
  }
  return found;
}

/** Along the middle of its edge, inside the piece, never upside down. Edges too short for it go without. */
function edgeName(piece: Piece, edge: Edge, around: Around): DrawnText[] {
  const text = `${edge.name} ${printLength(edge.sewn, around.unit)}`;
  if (text.length * EDGE * 0.72 > edge.path.length) return [];
  const inward = signedArea(piece.edges.map(({ path }) => path)) < 0 ? -1 : 1;
  const middle = edge.path.length / 2;
  const at = edge.path.pointAt(middle);
  const along = edge.path.tangentAt(middle);
  const turn = (Math.atan2(along.y, along.x) * 180) / Math.PI;
  const upright = turn > 90.001 || turn <= -89.999 ? turn + 180 : turn;
  const inside = { x: -along.y * inward, y: along.x * inward };
  // the base line stands nearer the edge when the text hangs below it
  const hangs = Math.cos((upright * Math.PI) / 180) * inside.y - Math.sin((upright * Math.PI) / 180) * inside.x > 0;
  const off = hangs ? EDGE * 2 : EDGE;
  return [
    {
      role: 'edge',
      source: edge.source,
      text,
      at: { x: rounded(at.x + inside.x * off), y: rounded(at.y + inside.y * off) },
      size: EDGE,
      turn: rounded(((upright + 540) % 360) - 180),
    },
  ];
}


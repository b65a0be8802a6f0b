/** Drawings made by hand, so that the printers and the preview are tested without the engine. */
import type {
  DrawnDot,
  DrawnLine,
  DrawnText,
  Drawing,
  Frame,
  LineRole,
  PieceDrawing,
  Spot,
  Stretch,
} from '../../server/drawing/model';

export function spot(x: number, y: number): Spot {
  return { x, y };
}

export function line(
  role: LineRole,
  source: string,
  start: Spot,
  stretches: readonly Stretch[],
  more: Partial<DrawnLine> = {},
): DrawnLine {
  const name = source.split('/').pop()!;
  return { role, source, name, start, stretches, closed: false, arrows: 'none', tip: name, ...more };
}

export function piece(name: string, frame: Frame, more: Partial<PieceDrawing> = {}): PieceDrawing {
  return { name, source: name, frame, lines: [], dots: [], texts: [], spoken: name, ...more };
}

export function drawing(pieces: readonly PieceDrawing[], more: Partial<Drawing> = {}): Drawing {
  let x = 0;
  const placements = pieces.map(({ name, frame }) => {
    const by = spot(x - frame.left, -frame.top);
    x += frame.right - frame.left + 40;
    return { piece: name, by };
  });
  const bottom = Math.max(0, ...pieces.map(({ frame }) => frame.bottom - frame.top));
  const frame = { left: 0, top: 0, right: Math.max(0, x - 40), bottom };
  return { title: 'Harbour skirt', body: 'ferrywoman', unit: 'cm', pieces, placements, frame, ...more };
}

/** One edge of a hand-made piece: its name, what it is, where it goes on to, and its allowance in mm. */
interface Edge {
  readonly name: string;
  readonly stretches: readonly Stretch[];
  readonly allow: number;
  readonly tip: string;
}

/** A rectangle `piece` of 100 by 60 mm with one closed cutting line: the smallest thing that can be drawn. */
export function smallPiece(name = 'pocket'): PieceDrawing {
  const corners: Stretch[] = [
    [100, 0],
    [100, 60],
    [0, 60],
  ];
  return piece(
    name,
    { left: 0, top: 0, right: 100, bottom: 60 },
    {
      spoken: `${name}, cut pair, 4 edges`,
      lines: [
        line('cutting', name, spot(0, 0), corners, { closed: true, tip: `${name}, cutting line` }),
        line('grain', `${name}/grain`, spot(50, 15), [[50, 45]], { arrows: 'both', tip: 'grain' }),
      ],
      dots: [{ role: 'corner', source: `${name}/a`, name: 'a', at: spot(0, 0) }],
      texts: [{ role: 'title', source: name, text: name, at: spot(25, 30), size: 5, turn: 0 }],
    },
  );
}

/** A skirt with a front on the fold, a back with two darts and its band: a whole small pattern. */
export function skirt(): Drawing {
  return drawing([skirtBack(), skirtFront(), waistband()]);
}

function skirtBack(): PieceDrawing {
  const source = 'back';
  const edges: Edge[] = [
    {
      name: 'waist',
      allow: 15,
      tip: 'waist, 17.1 cm sewn (22.7 cm drawn), sewn to waistband lower',
      stretches: [[75, 7, 150, 0, 225, -12]],
    },
    {
      name: 'side',
      allow: 25,
      tip: 'side, 69.5 cm, sewn to front side',
      stretches: [
        [246, 60, 257.5, 130, 257.5, 205],
        [257.5, 680],
      ],
    },
    { name: 'hem', allow: 40, tip: 'hem, 25.8 cm, turned up 4 cm', stretches: [[0, 680]] },
    { name: 'centre', allow: 25, tip: 'centre, 67 cm, sewn to its pair, zip 20 cm', stretches: [[0, 10]] },
  ];
  return assembled(source, spot(0, 10), edges, 'cut pair', [
    ...dart(`${source}/inner`, 62, 8.5, 75, 150, 89, 7.3),
    ...dart(`${source}/outer`, 138, 1.5, 151, 132, 166, -2),
    line('balance', `${source}/hip-line`, spot(0, 205), [[257.5, 205]], { tip: 'hip-line' }),
    line('notch', `${source}/hip-level`, spot(257.5, 205), [[269.5, 205]], { tip: 'notch hip-level' }),
    line('notch', `${source}/zip-end`, spot(0, 207), [[-12, 207]], { tip: 'notch zip-end' }),
    line('notch', `${source}/zip-end`, spot(0, 213), [[-12, 213]], { tip: 'notch zip-end' }),
  ]);
}

function skirtFront(): PieceDrawing {
  const source = 'front';
  const edges: Edge[] = [
    { name: 'centre', allow: 0, tip: 'centre, 68 cm, on the fold', stretches: [[267.5, 680]] },
    { name: 'hem', allow: 40, tip: 'hem, 26.8 cm, turned up 4 cm', stretches: [[0, 680]] },
    {
      name: 'side',
      allow: 25,
      tip: 'side, 69.5 cm, sewn to back side',
      stretches: [
        [0, 205],
        [0, 130, 11, 60, 32, -12],
      ],
    },
    {
      name: 'waist',
      allow: 15,
      tip: 'waist, 20.5 cm sewn (23.6 cm drawn), sewn to waistband lower',
      stretches: [[110, 0, 190, 0, 267.5, 0]],
    },
  ];
  return assembled(source, spot(267.5, 0), edges, 'cut 1 on fold', [
    ...dart(`${source}/inner`, 182, 0, 190, 90, 197, 0),
    ...dart(`${source}/outer`, 104, -4, 112, 97, 119.5, -3),
    line('balance', `${source}/hip-line`, spot(0, 205), [[267.5, 205]], { tip: 'hip-line' }),
    line('notch', `${source}/hip-level`, spot(0, 205), [[-12, 205]], { tip: 'notch hip-level' }),
    line('fold', `${source}/centre`, spot(267.5, 0), [[267.5, 680]], {
      tip: 'centre, 68 cm, on the fold',
      arrows: 'both',
    }),
    line('construction', 'skirt/hip', spot(0, 205), [[320, 205]], { tip: 'hip' }),
  ]);
}

function waistband(): PieceDrawing {
  const edges: Edge[] = [
    { name: 'upper', allow: 0, tip: 'upper, 78.5 cm, on the fold', stretches: [[785, 0]] },
    { name: 'right', allow: 10, tip: 'right, 4 cm', stretches: [[785, 40]] },
    {
      name: 'lower',
      allow: 15,
      tip: 'lower, 78.5 cm, sewn to front waist and back waist',
      stretches: [[0, 40]],
    },
    { name: 'left', allow: 10, tip: 'left, 4 cm', stretches: [[0, 0]] },
  ];
  return assembled('waistband', spot(0, 0), edges, 'cut 1 on fold', [
    line('fold', 'waistband/upper', spot(0, 0), [[785, 0]], {
      tip: 'upper, 78.5 cm, on the fold',
      arrows: 'both',
    }),
    line('notch', 'waistband/side', spot(205, 40), [[205, 48]], { tip: 'notch side' }),
    line('notch', 'waistband/side-2', spot(615, 40), [[615, 48]], { tip: 'notch side' }),
  ]);
}

function dart(
  source: string,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  x3: number,
  y3: number,
): DrawnLine[] {
  return [
    line(
      'dart',
      source,
      spot(x1, y1),
      [
        [x2, y2],
        [x3, y3],
      ],
      { tip: `${source.split('/').pop()}, 2.7 cm wide` },
    ),
  ];
}

function assembled(
  source: string,
  start: Spot,
  edges: readonly Edge[],
  cut: string,
  more: readonly DrawnLine[],
): PieceDrawing {
  const outer = offset(start, edges);
  const frame = frameOf(outer);
  const sewn = edges.filter(({ tip }) => !tip.endsWith('on the fold'));
  return piece(source, frame, {
    lines: [
      cuttingLine(source, outer, cut.endsWith('on fold')),
      ...sewn.map((edge) => {
        const { name, stretches, tip } = edge;
        return line('sewing', `${source}/${name}`, startOf(edge, start, edges), stretches, { tip });
      }),
      grainLine(source, frame),
      ...more,
    ],
    dots: edges.map((edge, i): DrawnDot => {
      const at = startOf(edge, start, edges);
      return { role: 'corner', source: `${source}/corner-${i}`, name: `corner ${i + 1}`, at };
    }),
    texts: [
      ...labels(source, frame, cut),
      ...edges.map((edge) => edgeWords(source, edge, startOf(edge, start, edges))),
    ],
    spoken: `${source}, ${cut}, ${edges.length} edges`,
  });
}

function startOf(edge: Edge, start: Spot, edges: readonly Edge[]): Spot {
  const i = edges.indexOf(edge);
  return i === 0 ? start : endOf(edges[i - 1]!.stretches);
}

function frameOf(spots: readonly Spot[]): Frame {
  const xs = spots.map(({ x }) => x);
  const ys = spots.map(({ y }) => y);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

/** Round the piece, or, where its first edge is a fold, round all but that: no shears go along a fold. */
function cuttingLine(source: string, outer: readonly Spot[], onFold: boolean): DrawnLine {
  const [first, ...rest] = onFold ? [...outer.slice(1), outer[0]!] : outer;
  const stretches = rest.map(({ x, y }) => [x, y] as const);
  return line('cutting', source, first!, stretches, { closed: !onFold, tip: `${source}, cutting line` });
}

function grainLine(source: string, frame: Frame): DrawnLine {
  const end = grainSpot(frame, 0.85);
  const more = { arrows: 'both', tip: 'grain, along centre' } as const;
  return line('grain', `${source}/grain`, grainSpot(frame, 0.55), [[end.x, end.y]], more);
}

/** Name and length along an edge, on the side of the piece. */
function edgeWords(source: string, edge: Edge, a: Spot): DrawnText {
  const b = endOf(edge.stretches);
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  const turn = (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
  const upright = turn > 90 || turn <= -90 ? turn - 180 : turn;
  const inward = turn === upright ? 7 : 3.5;
  const at = spot(
    (a.x + b.x) / 2 - ((b.y - a.y) / long) * inward,
    (a.y + b.y) / 2 + ((b.x - a.x) / long) * inward,
  );
  const text = edge.tip
    .split(',')
    .slice(0, 2)
    .join('')
    .replace(/ sewn.*/, '');
  return { role: 'edge', source: `${source}/${edge.name}`, text, at, size: 3.5, turn: upright };
}

function grainSpot(frame: Frame, share: number): Spot {
  const wide = frame.right - frame.left > frame.bottom - frame.top;
  return wide
    ? spot(frame.left + (frame.right - frame.left) * share, (frame.top + frame.bottom) / 2)
    : spot(frame.left + (frame.right - frame.left) * 0.3, frame.top + (frame.bottom - frame.top) * share);
}

function labels(source: string, frame: Frame, cut: string): DrawnText[] {
  const x = (frame.left + frame.right) / 2;
  const high = frame.bottom - frame.top > 150;
  const y = frame.top + (frame.bottom - frame.top) * (high ? 0.42 : 0.3);
  const size = high ? 9 : 5;
  const words = high ? [source, 'Harbour skirt', 'ferrywoman', cut] : [`${source}, ${cut}`];
  return words.map((text, i) => ({
    role: i === 0 ? 'title' : 'detail',
    source,
    text,
    at: spot(high ? x : x - 90, y + i * size * 1.7),
    size: i === 0 ? size : size * 0.7,
    turn: 0,
  }));
}

function endOf(stretches: readonly Stretch[]): Spot {
  const last = stretches[stretches.length - 1]!;
  return spot(last[last.length - 2]!, last[last.length - 1]!);
}

/** A mitred outline outside of a clockwise one; good enough for a picture, no model for the engine. */
function offset(start: Spot, edges: readonly Edge[]): Spot[] {
  const sides = edges.flatMap((edge, i) => {
    const from = i === 0 ? start : endOf(edges[i - 1]!.stretches);
    const spots = flattened(from, edge.stretches);
    return spots.slice(1).map((b, j) => moved(spots[j]!, b, edge.allow));
  });
  return sides.map((side, i) => meeting(sides[(i + sides.length - 1) % sides.length]!, side));
}

function flattened(start: Spot, stretches: readonly Stretch[]): Spot[] {
  const spots = [start];
  for (const s of stretches) {
    const a = spots[spots.length - 1]!;
    if (s.length === 2) spots.push(spot(s[0], s[1]));
    else for (let i = 1; i <= 12; i++) spots.push(bezier(a, s, i / 12));
  }
  return spots;
}

function bezier(a: Spot, s: readonly [number, number, number, number, number, number], t: number): Spot {
  const u = 1 - t;
  const at = (p: number, q: number, r: number, e: number) =>
    u ** 3 * p + 3 * u * u * t * q + 3 * u * t * t * r + t ** 3 * e;
  return spot(at(a.x, s[0], s[2], s[4]), at(a.y, s[1], s[3], s[5]));
}

interface Side {
  readonly a: Spot;
  readonly b: Spot;
}

function moved(a: Spot, b: Spot, by: number): Side {
  const long = Math.hypot(b.x - a.x, b.y - a.y);
  const nx = ((b.y - a.y) / long) * by;
  const ny = (-(b.x - a.x) / long) * by;
  return { a: spot(a.x + nx, a.y + ny), b: spot(b.x + nx, b.y + ny) };
}

function meeting(p: Side, q: Side): Spot {
  const [ux, uy, vx, vy] = [p.b.x - p.a.x, p.b.y - p.a.y, q.b.x - q.a.x, q.b.y - q.a.y];
  const cross = ux * vy - uy * vx;
  if (Math.abs(cross) < 1e-6) return q.a;
  const t = ((q.a.x - p.a.x) * vy - (q.a.y - p.a.y) * vx) / cross;
  return spot(Math.round((p.a.x + ux * t) * 1000) / 1000, Math.round((p.a.y + uy * t) * 1000) / 1000);
}

/** A drawing of many pieces in rows, for the speed of the preview. */
export function manyPieces(count: number): Drawing {
  const pieces = Array.from({ length: count }, (_, i) =>
    renamed(i % 2 ? skirtFront() : skirtBack(), `piece-${i + 1}`),
  );
  const placements = pieces.map(({ name, frame }, i) => ({
    piece: name,
    by: spot((i % 6) * 380 - frame.left, Math.floor(i / 6) * 790 - frame.top),
  }));
  const frame = { left: 0, top: 0, right: 6 * 380, bottom: Math.ceil(count / 6) * 790 };
  return drawing(pieces, { placements, frame });
}

function renamed(from: PieceDrawing, name: string): PieceDrawing {
  const source = (path: string) => path.replace(/^[^/]*/, name);
  return {
    ...from,
    name,
    source: name,
    spoken: from.spoken.replace(/^[^,]*/, name),
    lines: from.lines.map((l) => ({ ...l, source: source(l.source) })),
    dots: from.dots.map((d) => ({ ...d, source: source(d.source) })),
    texts: from.texts.map((t, i) => ({ ...t, source: source(t.source), text: i === 0 ? name : t.text })),
  };
}

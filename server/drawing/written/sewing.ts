/** The sewing order as a sheet: what is sewn when, how long it is, what to mind, and why it comes there. */
import type { Pattern, Piece, Seam, SewnEdge } from '../../drafting/model';
import { NO_SHAPING } from '../../drafting/shaping-model';
import { printLength } from '../../drafting/values/quantity';
import { lengthText } from './lengths';
import { courseOf } from './measured';
import { timesRound } from '../../drafting/sewing/ring';
import { sewingOrder, type FinishStep, type SeamStep } from './order';
import { headingOf, leftOut, type Cell, type Given, type WrittenSheet } from './sheet';

export function sewingSheet(pattern: Pattern, given: Given): WrittenSheet {
  const steps = [
    ...shapingSteps(pattern),
    ...sewingOrder(pattern).map((step) =>
      step.kind === 'seam' ? seamStep(step, pattern) : finishStep(step, pattern),
    ),
    ...lastSteps(pattern),
  ];
  return {
    kind: 'sewing',
    heading: headingOf('Sewing order', pattern, given),
    words: [
      `Lengths in ${pattern.unit}. An order that works, after common practice: change it where the cloth or the fitting asks for it.`,
    ],
    tables:
      steps.length === 0
        ? []
        : [
            {
              columns: ['', 'step', 'edges', 'long', 'mind', 'why here'].map((head) => ({
                ...{ head },
                ...(['', 'long'].includes(head) && { figures: true }),
              })),
              rows: steps.map((cells, i) => ({ cells: [`${i + 1}`, ...cells] })),
            },
          ],
    after: [
      ...(steps.length === 0 ? ['No seam and no finish is written down yet.'] : []),
      ...leftOut(pattern),
    ],
  };
}

type Cells = readonly Cell[];

/** One of each name: the two sides of an uneven piece are worked alike. */
const onceEach = ({ pieces }: Pattern): readonly Piece[] => [
  ...new Map(pieces.filter(({ cut }) => cut !== undefined).map((piece) => [piece.base, piece])).values(),
];

function shapingSteps(pattern: Pattern): readonly Cells[] {
  const why = 'before any seam takes the edge';
  const step = (what: string, piece: Piece, names: readonly string[], mind: string): Cells[] =>
    names.length === 0 ? [] : [[what, `${piece.base}: ${names.join(', ')}`, '', mind, why]];
  return onceEach(pattern).flatMap((piece) => {
    const { fishDarts, pleats, gathers } = piece.shaping ?? NO_SHAPING;
    const darts = [...piece.darts, ...fishDarts].map(({ name }) => name);
    const threads = gathers.map(({ name }) => name);
    return [
      ...step(darts.length === 1 ? 'sew the dart' : 'sew the darts', piece, darts, pressedWords(piece)),
      ...step(
        'lay the pleats',
        piece,
        pleats.map(({ name }) => name),
        'baste across the edge',
      ),
      ...step('run the gathering threads', piece, threads, drawnUp(piece, pattern)),
    ];
  });
}

function pressedWords({ darts }: Piece): string {
  const said = darts.flatMap(
    ({ statement }) => /\bpressed\s+([^,#\n]+)/.exec(statement.text)?.[1]?.trim() ?? [],
  );
  return said.length === 0 ? '' : `press ${[...new Set(said)].join(', ')}`;
}

const drawnUp = ({ shaping }: Piece, { unit }: Pattern): string =>
  (shaping?.gathers ?? [])
    .map(({ flat, gathered }) => `${printLength(flat, unit)} to ${printLength(gathered, unit)}`)
    .join(', ');

const edgesOf = (side: readonly SewnEdge[]): string =>
  side.map(({ piece, edge }) => `${piece}.${edge}`).join(' + ');

function seamStep({ seams, why }: SeamStep, pattern: Pattern): Cells {
  const { unit } = pattern;
  const [seam] = seams as readonly [Seam, ...Seam[]];
  const other = seam.itsPair ? 'its pair' : edgesOf(seam.right);
  const lengths = seams.map(
    (one) => `${lengthText(courseOf(one, pattern).length, unit)}${one.side ? ` ${one.side}` : ''}`,
  );
  const { times } = courseOf(seam, pattern);
  const often = times > 2 ? [`${times} times`] : times === 2 ? ['once a side'] : [];
  const open = seam.openings?.some(({ whole }) => whole) === true;
  return [
    open ? `leave ${seam.name} open` : `sew ${seam.name}`,
    `${edgesOf(seam.left)} to ${other}`,
    [...new Set(lengths)].join(', '),
    [...often, ...easeWords(seam, unit), ...openingWords(seam, unit)].join('; '),
    why,
  ];
}

/** Less than this is no ease but rounding, mm. */
const LEAST = 0.5;

function easeWords(
  { statement: { node }, leftLength, rightLength, itsPair, left, right }: Seam,
  unit: Pattern['unit'],
) {
  const by = leftLength - rightLength;
  if (itsPair || node.kind !== 'seam' || Math.abs(by) < LEAST) return [];
  const kinds = node.eases.map(({ kind }) => kind);
  const longer = edgesOf(by > 0 ? left : right);
  const shorter = edgesOf(by > 0 ? right : left);
  const much = printLength(Math.abs(by), unit);
  if (kinds.includes('gathered')) return [`gather ${longer} by ${much}`];
  if (kinds.includes('stretched')) return [`stretch ${shorter} by ${much}`];
  return kinds.includes('easing') ? [`ease in ${longer} by ${much}`] : [];
}

const OPENS = {
  zip: 'for the zip, and put it in',
  buttoned: 'for the buttons',
  laced: 'for the laces',
  hooked: 'for the hooks',
  'left-open': '',
} as const;

const openingWords = ({ openings = [] }: Seam, unit: Pattern['unit']): readonly string[] =>
  openings.map(({ how, from, to, whole, side }) => {
    const open = whole ? '' : `leave ${printLength(to - from, unit)} open`;
    return [open, OPENS[how], side === undefined ? '' : `at the ${side}`].filter(Boolean).join(' ');
  });

const FINISHED: Readonly<Record<FinishStep['finish']['how'], string>> = {
  'turned-up': 'turn up',
  'turned-twice': 'turn twice',
  bound: 'bind',
  faced: 'face',
  rolled: 'roll',
  selvedge: 'leave',
  raw: 'leave',
};

function finishStep({ finish, why }: FinishStep, { unit, pieces }: Pattern): Cells {
  const { how, edges, width, facedBy, name } = finish;
  const with_ = facedBy === undefined ? '' : `with ${facedBy}`;
  const wide = width > 0 ? `${printLength(width, unit)}${how === 'turned-twice' ? ' each time' : ''}` : '';
  const long = edges.reduce((sum, edge) => sum + allRound(edge, pieces), 0);
  return [
    `${FINISHED[how]} ${name}`,
    edgesOf(edges),
    lengthText(long, unit),
    [wide, with_].filter(Boolean).join(', '),
    why,
  ];
}

/** The edge on both sides of the wearer. */
function allRound({ piece, edge, length }: SewnEdge, pieces: readonly Piece[]): number {
  const own = pieces.filter(({ base }) => base === piece);
  if (own.length < 2) return own[0] === undefined ? length : length * timesRound(own[0]);
  return own.reduce((sum, { edges }) => sum + (edges.find(({ name }) => name === edge)?.sewn ?? length), 0);
}

const CLOSING: ReadonlySet<string> = new Set(['button', 'buttonhole', 'eyelet']);

/** Buttons, buttonholes and eyelets go through all layers, so they come after everything. */
function lastSteps(pattern: Pattern): readonly Cells[] {
  return onceEach(pattern).flatMap((piece) =>
    piece.marks
      .filter(({ word }) => CLOSING.has(word))
      .map(({ name, word, points }): Cells => [
        word === 'button' ? 'sew on the buttons' : `work the ${word}s`,
        `${piece.base}: ${name}`,
        '',
        points.length > 1 ? `${points.length} of them` : '',
        'through all layers, after the hems',
      ]),
  );
}

/** The sewing order as a sheet: what is sewn when, how long it is, what to mind, and why it comes there. */
import { say } from '../../../grammar/say';
import type { Pattern, Piece, Seam, SewnEdge } from '../../drafting/model';
import type { SeamOpening } from '../../drafting/sewing-model';
import { NO_SHAPING } from '../../drafting/shaping-model';
import { printLength } from '../../drafting/values/quantity';
import { sideWord } from '../told';
import { lengthText } from './lengths';
import { courseOf } from './measured';
import { timesRound } from '../../drafting/sewing/ring';
import { sewingOrder, type FinishStep, type SeamStep } from './order';
import { columnsFor, headingOf, leftOut, type Cell, type Given, type WrittenSheet } from './sheet';

const titled = ({ title }: Pattern): string =>
  title === '' ? say`Sewing order` : say`Sewing order of ${title}`;

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
    heading: headingOf(titled(pattern), pattern, given),
    words: [
      say`Lengths in ${pattern.unit}. An order that works, after common practice: change it where the cloth or the fitting asks for it.`,
    ],
    tables:
      steps.length === 0
        ? []
        : [
            {
              columns: columnsFor(['', 'step', 'edges', 'long', 'mind', 'why here'], (head) =>
                ['', 'long'].includes(head),
              ),
              rows: steps.map((cells, i) => ({ cells: [`${i + 1}`, ...cells] })),
            },
          ],
    after: [
      ...(steps.length === 0 ? [say`No seam and no finish is written down yet.`] : []),
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
  const why = say`before any seam takes the edge`;
  const step = (what: string, piece: Piece, names: readonly string[], mind: string): Cells[] =>
    names.length === 0 ? [] : [[what, `${piece.base}: ${names.join(', ')}`, '', mind, why]];
  return onceEach(pattern).flatMap((piece) => {
    const { fishDarts, pleats, gathers } = piece.shaping ?? NO_SHAPING;
    const darts = [...piece.darts, ...fishDarts].map(({ name }) => name);
    const threads = gathers.map(({ name }) => name);
    return [
      ...step(darts.length === 1 ? say`sew the dart` : say`sew the darts`, piece, darts, pressedWords(piece)),
      ...step(
        say`lay the pleats`,
        piece,
        pleats.map(({ name }) => name),
        say`baste across the edge`,
      ),
      ...step(say`run the gathering threads`, piece, threads, drawnUp(piece, pattern)),
    ];
  });
}

function pressedWords({ darts }: Piece): string {
  const said = darts.flatMap(
    ({ statement }) => /\bpressed\s+([^,#\n]+)/.exec(statement.text)?.[1]?.trim() ?? [],
  );
  return [...new Set(said)].map(pressWords).join(', ');
}

function pressWords(way: string): string {
  const toward = /^toward\s+(.*)/.exec(way)?.[1];
  if (toward !== undefined) return say`press toward ${toward}`;
  if (way === 'up') return say`press up`;
  return way === 'down' ? say`press down` : say`press open`;
}

const drawnUp = ({ shaping }: Piece, { unit }: Pattern): string =>
  (shaping?.gathers ?? [])
    .map(({ flat, gathered }) => say`${printLength(flat, unit)} to ${printLength(gathered, unit)}`)
    .join(', ');

const edgesOf = (side: readonly SewnEdge[]): string =>
  side.map(({ piece, edge }) => `${piece}.${edge}`).join(' + ');

function seamStep({ seams, why }: SeamStep, pattern: Pattern): Cells {
  const { unit } = pattern;
  const [seam] = seams as readonly [Seam, ...Seam[]];
  const other = seam.itsPair ? say`its pair` : edgesOf(seam.right);
  const lengths = seams.map(
    (one) => `${lengthText(courseOf(one, pattern).length, unit)}${one.side ? ` ${sideWord(one.side)}` : ''}`,
  );
  const { times, areAlike } = courseOf(seam, pattern);
  const often = times > 2 || areAlike ? [say`${times} times`] : times === 2 ? [say`once a side`] : [];
  const open = seam.openings?.some(({ whole }) => whole) === true;
  return [
    open ? say`leave ${seam.name} open` : say`sew ${seam.name}`,
    [edgesOf(seam.left), other].join(say` to `),
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
  if (kinds.includes('gathered')) return [say`gather ${longer} by ${much}`];
  if (kinds.includes('stretched')) return [say`stretch ${shorter} by ${much}`];
  return kinds.includes('easing') ? [say`ease in ${longer} by ${much}`] : [];
}

const opensFor = (how: SeamOpening['how']): string =>
  ({
    zip: say`for the zip, and put it in`,
    buttoned: say`for the buttons`,
    laced: say`for the laces`,
    hooked: say`for the hooks`,
    'left-open': '',
  })[how];

const openingWords = ({ openings = [] }: Seam, unit: Pattern['unit']): readonly string[] =>
  openings.map(({ how, from, to, whole, side }) => {
    const open = whole ? '' : say`leave ${printLength(to - from, unit)} open`;
    const words = [open, opensFor(how)].filter(Boolean).join(' ');
    if (side === undefined) return words;
    return words === '' ? say`at the ${sideWord(side)}` : say`${words} at the ${sideWord(side)}`;
  });

const finishTold = ({ how, name }: FinishStep['finish']): string =>
  ({
    'turned-up': say`turn up ${name}`,
    'turned-twice': say`turn twice ${name}`,
    bound: say`bind ${name}`,
    faced: say`face ${name}`,
    rolled: say`roll ${name}`,
    selvedge: say`leave ${name}`,
    raw: say`leave ${name}`,
  })[how];

function finishStep({ finish, why }: FinishStep, { unit, pieces }: Pattern): Cells {
  const { how, edges, width, facedBy } = finish;
  const with_ = facedBy === undefined ? '' : say`with ${facedBy}`;
  const much = printLength(width, unit);
  const wide = width > 0 ? (how === 'turned-twice' ? say`${much} each time` : much) : '';
  const long = edges.reduce((sum, edge) => sum + allRound(edge, pieces), 0);
  return [
    finishTold(finish),
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

function closingTold(word: string): string {
  if (word === 'button') return say`sew on the buttons`;
  return word === 'buttonhole' ? say`work the buttonholes` : say`work the eyelets`;
}

/** Buttons, buttonholes and eyelets go through all layers, so they come after everything. */
function lastSteps(pattern: Pattern): readonly Cells[] {
  return onceEach(pattern).flatMap((piece) =>
    piece.marks
      .filter(({ word }) => CLOSING.has(word))
      .map(({ name, word, points }): Cells => [
        closingTold(word),
        `${piece.base}: ${name}`,
        '',
        points.length > 1 ? say`${points.length} of them` : '',
        say`through all layers, after the hems`,
      ]),
  );
}

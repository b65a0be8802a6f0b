/** The cutting list: a table a cloth, with what is cut of it, how it lies, and how much cloth it takes. */
import { isEnglish, say } from '../../../grammar/say';
import type { CutLayer, Pattern, Piece } from '../../drafting/model';
import { areaOf, type Path } from '../../geometry';
import { areaText, areaUnit } from './lengths';
import {
  columnsFor,
  headingOf,
  leftOut,
  type Given,
  type Head,
  type Row,
  type Table,
  type WrittenSheet,
} from './sheet';

interface Cut {
  readonly piece: Piece;
  readonly layer: CutLayer;
}

export function cuttingList(pattern: Pattern, given: Given): WrittenSheet {
  const cuts = pattern.pieces.flatMap((piece) =>
    (piece.cut?.layers ?? []).map((layer) => ({ piece, layer })),
  );
  const cloths = [...new Set(cuts.map(({ layer }) => layer.cloth))];
  const steps = pattern.pieces.filter(({ cut }) => cut === undefined).map(({ name }) => name);
  return {
    kind: 'cutting',
    heading: headingOf(titled(pattern), pattern, given),
    words: [
      say`Areas are within the cutting line, without what falls between the pieces, in ${areaUnit(pattern.unit)}.`,
      ...(cuts.some(({ layer }) => layer.as === 'fold') ? [ofFolds()] : []),
    ],
    tables: cloths.map((cloth) =>
      tableOf(
        cloth,
        cuts.filter(({ layer }) => layer.cloth === cloth),
        pattern,
      ),
    ),
    after: [
      ...(cuts.length === 0 ? [say`No piece says how it is cut.`] : []),
      ...(steps.length === 0 || cuts.length === 0
        ? []
        : [say`Not cut, but steps on the way: ${steps.join(', ')}.`]),
      ...leftOut(pattern),
    ],
  };
}

/** A tube laid flat has two layers and is one piece: whoever counts its layers would cut two of it. */
const ofFolds = (): string =>
  say`A piece on the fold is counted once, as it opens out, and its area is that of both halves.`;

const titled = ({ title }: Pattern): string =>
  title === '' ? say`Cutting list` : say`Cutting list of ${title}`;

const COLUMNS: readonly Head[] = [
  'piece',
  'cut',
  'how',
  'right side up',
  'grain',
  'area each',
  'area',
  'notes',
];
const FIGURES: ReadonlySet<Head> = new Set(['cut', 'area each', 'area']);

function tableOf(cloth: string, cuts: readonly Cut[], { unit }: Pattern): Table {
  const areas = cuts.map(({ piece, layer }) => clothArea(piece, layer) * layer.count);
  const told = areas.filter(Number.isFinite);
  const all = told.length === 0 ? NaN : told.reduce((a, b) => a + b, 0);
  const count = cuts.reduce((sum, { layer }) => sum + layer.count, 0);
  const lacking = cuts.filter((_, i) => Number.isNaN(areas[i])).map(({ piece }) => piece.name);
  const last: Row = {
    cells: [say`in all`, String(count), '', '', '', '', areaText(all, unit), totalNote(lacking, told.length)],
  };
  return {
    heading: cloth === '' ? say`Cloth without a name` : say`In ${cloth}`,
    columns: columnsFor(COLUMNS, (head) => FIGURES.has(head)),
    rows: [
      ...cuts.map(({ piece, layer }, i): Row => ({
        cells: [
          piece.name,
          String(layer.count),
          howWords(layer),
          piece.cut?.rightSideUp === true ? say`yes` : '',
          grainWords(piece),
          areaText(areas[i]! / layer.count, unit),
          areaText(areas[i]!, unit),
          notes(piece, areas[i]!),
        ],
      })),
      last,
    ],
  };
}

/** A sum that lacks pieces would be too little cloth, bought by whoever trusts it. */
function totalNote(lacking: readonly string[], told: number): string {
  if (lacking.length === 0) return '';
  return told === 0
    ? say`not known: no piece has a cutting line`
    : say`without ${lacking.join(', ')}: no cutting line yet`;
}

const howWords = ({ as }: CutLayer): string =>
  ({
    pairs: say`in pairs`,
    alike: say`all alike`,
    open: say`open, drafted as a half`,
    fold: say`on the fold`,
    left: say`for the left`,
    right: say`for the right`,
    single: say`single`,
  })[as];

/** One copy as it lies on the table: what is drafted as a half counts twice. NaN where there is no cutting line. */
function clothArea(piece: Piece, { as }: CutLayer): number {
  if (piece.cutting === undefined) return NaN;
  return areaOf(piece.cutting) * (piece.fold !== undefined && (as === 'fold' || as === 'open') ? 2 : 1);
}

/** Longer words than these say where points lie, not how a piece is laid. */
const LONGEST = 32;

/** As its line says it; without a line of its own, the straight edge that it runs along. */
function grainWords(piece: Piece): string {
  const line = piece.statement.block?.find(({ node }) => node.kind === 'grain');
  const said = line?.text
    .trim()
    .replace(/^grain\s+/, '')
    .replace(/\s*#.*$/s, '');
  const short = said !== undefined && said.length <= LONGEST ? said : undefined;
  const inWords = short === undefined ? undefined : lineWords(short);
  if (inWords !== undefined) return inWords;
  if (piece.grain === undefined) return say`none`;
  if (piece.grain.bias) return say`on the bias`;
  const along = piece.edges.find(({ path }) => runsAlong(path, piece.grain!));
  return along === undefined ? (short ?? say`as drawn`) : say`along ${along.name}`;
}

/** What the line says, in the person's words; other lines than these are words of English. */
function lineWords(said: string): string | undefined {
  const along = /^along (\S+)$/.exec(said)?.[1];
  if (along !== undefined) return say`along ${along}`;
  const [, from, to] = /^from (\S+) to (\S+)$/.exec(said) ?? [];
  if (from !== undefined && to !== undefined) return say`from ${from} to ${to}`;
  return isEnglish() ? said : undefined;
}

/** A degree is the usual tolerance of a grain line on the table (*common practice*); this only tells edges apart. */
const PARALLEL = Math.sin((0.1 * Math.PI) / 180);

function runsAlong(path: Path, { from, to }: NonNullable<Piece['grain']>): boolean {
  if (!path.isStraight(0.01)) return false;
  const along = path.tangentAt(0);
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  return Math.abs(along.x * (to.y - from.y) - along.y * (to.x - from.x)) < PARALLEL * long;
}

function notes(piece: Piece, area: number): string {
  return [
    ...piece.remarks,
    ...piece.labels.map(({ text }) => text),
    ...((piece.inlays?.size ?? 0) > 0 ? [say`inlay at ${[...piece.inlays!.keys()].join(', ')}`] : []),
    ...(Number.isNaN(area) ? [say`no cutting line yet`] : []),
  ].join('; ');
}

/** What a person reads when pointing at a name: what it is, what it comes to, and what its author wrote about it. */
import { inWords, say } from '../../grammar/say';
import type { DefinitionInfo, Edge, Pattern, Piece, Seam, Shape } from '../drafting/model';
import { areaOf as area, type Path } from '../geometry';
import { everyEdge } from '../drafting/shapes/parts';
import {
  dartInWords,
  dartTruedInWords,
  fishDartInWords,
  gathersInWords,
  pleatsInWords,
} from '../drafting/pieces/told';
import { openingName } from '../drafting/sewing/opening-ends';
import { print, printLength } from '../drafting/values/quantity';
import { markTold } from '../drawing/marks';
import { code, plain } from './markdown';
import { infoOfMeaning } from './meaning-info';
import type { Names } from './names';
import { occurrenceAt } from './occurrences';
import { pictureOf, type Picture } from './picture';
import { pathAt, wordAt } from './words';

export interface Hover {
  readonly from: number;
  readonly to: number;
  readonly markdown: string;
  /** Made when somebody can show it. */
  picture(): Picture | undefined;
}

/** The hover at an offset of a file; undefined where no known name stands. */
export function hover(pattern: Pattern, names: Names, text: string, offset: number): Hover | undefined {
  const word = wordAt(text, offset);
  if (word === undefined) return undefined;
  const info = namedAt(pattern, names.uri, text, offset) ?? meantAt(pattern, names, offset);
  return (
    info && {
      ...{ from: word.from, to: word.to, markdown: describe(pattern, info) },
      picture: () => pictureOf(pattern, info),
    }
  );
}

/** What a name means that leads to no definition round it: a body, a row of one, a piece in a clause of a seam. */
function meantAt(pattern: Pattern, names: Names, offset: number): DefinitionInfo | undefined {
  const found = occurrenceAt(names, offset);
  return found && infoOfMeaning(pattern, names, found.meaning);
}

/**
 * The definition that the name at an offset stands for. A word that only stands inside a definition (`let`, `to`) is
 * not its name; of `skirt.hip` both names stand for the hip.
 */
export function namedAt(
  pattern: Pattern,
  uri: string,
  text: string,
  offset: number,
): DefinitionInfo | undefined {
  const word = wordAt(text, offset);
  if (word === undefined) return undefined;
  const path = pathAt(text, word).map((name) => name.normalize('NFC'));
  for (const source of pattern.sourcesAt(uri, offset)) {
    const info = pattern.info(source);
    if (info !== undefined && path.includes(info.name)) return info;
  }
  return undefined;
}

/** A headline, the figures one a line, and the documentation comment. */
export function describe(pattern: Pattern, info: DefinitionInfo): string {
  const headline = [`**${plain(info.name)}**`, inWords(info.kind), valueOf(pattern, info)]
    .filter(Boolean)
    .join(' · ');
  const paragraphs = [headline, figures(pattern, info).join('  \n'), documentation(info)];
  return paragraphs.filter(Boolean).join('\n\n');
}

function valueOf(pattern: Pattern, { value, shape }: DefinitionInfo): string {
  if (value !== undefined) return code(value.kind === 'text' ? value.text : print(value, pattern.unit));
  return shape === undefined ? '' : shapeFigure(pattern, shape);
}

function shapeFigure(pattern: Pattern, shape: Shape): string {
  if (shape.kind !== 'point') return code(printLength(shape.path.length, pattern.unit));
  const { x, y } = shape.point;
  return say`${printLength(x, pattern.unit)} across, ${printLength(y, pattern.unit)} down`;
}

function figures(pattern: Pattern, info: DefinitionInfo): readonly string[] {
  return [...ofPart(pattern, info), ...ofForm(pattern, info.shape)];
}

/** How a straight line slopes, and what a closed curve holds. */
function ofForm({ unit }: Pattern, shape: Shape | undefined): readonly string[] {
  if (shape?.kind === 'line') return [slopeInWords(shape.path, unit)];
  if (shape?.kind !== 'curve' || !shape.closed) return [];
  return [say`${print({ kind: 'area', amount: Math.abs(area([shape.path])) }, unit)} within`];
}

/** Clockwise from right, as drawn: what `slope` of the language comes to. */
function slopeInWords({ start, end }: Path, unit: Pattern['unit']): string {
  const amount = (Math.atan2(end.y - start.y, end.x - start.x) * 180) / Math.PI;
  const off = Math.abs(amount % 90);
  if (Math.min(off, 90 - off) > LEVEL_DEG) return say`slope ${plain(print({ kind: 'angle', amount }, unit))}`;
  return Math.abs(Math.abs(amount) - 90) < 1 ? say`upright` : say`level`;
}

/** A line this near to level or upright is so: a twentieth of a millimetre in a metre. */
const LEVEL_DEG = 0.003;

function ofPart(pattern: Pattern, info: DefinitionInfo): readonly string[] {
  const piece = pattern.pieces.find(({ source }) => source === info.source);
  if (piece !== undefined) return pieceFigures(pattern, piece);
  const seam = pattern.seams.find(({ source }) => source === info.source);
  if (seam !== undefined) return seamFigures(pattern, seam);
  for (const owner of pattern.pieces) {
    const edge = everyEdge(owner).find(({ source }) => source === info.source);
    if (edge !== undefined) return edgeFigures(pattern, owner, edge);
    const mark = owner.marks.find(({ source }) => source === info.source);
    if (mark !== undefined) return [plain(markTold(mark, pattern).slice(mark.name.length + 2))];
    const hole = owner.holes.find(({ source }) => source === info.source);
    if (hole !== undefined) return [say`${print({ kind: 'area', amount: hole.area }, pattern.unit)} cut out`];
    const shaping = shapingFigures(owner, info.source, pattern.unit);
    if (shaping !== undefined) return shaping.map(plain);
  }
  return [];
}

/** A dart and what truing did to its edge, a fish dart, pleats or gathers. */
function shapingFigures(piece: Piece, source: string, unit: Pattern['unit']): string[] | undefined {
  const named = (one: { readonly source: string }): boolean => one.source === source;
  const { fishDarts = [], pleats = [], gathers = [] } = piece.shaping ?? {};
  const dart = piece.darts.find(named);
  if (dart !== undefined) return [dartInWords(dart, unit), dartTruedInWords(piece, dart, unit) ?? []].flat();
  const [fish, row, one] = [fishDarts.find(named), pleats.find(named), gathers.find(named)];
  if (fish !== undefined) return [fishDartInWords(fish, unit)];
  if (row !== undefined) return [pleatsInWords(row, unit)];
  return one && [gathersInWords(one, unit)];
}

function pieceFigures(pattern: Pattern, piece: Piece): string[] {
  const names = piece.edges.map(({ name }) => code(name)).join(', ');
  return [
    plain(piece.cut?.text ?? say`not cut: a step on the way to another piece`),
    say`${print({ kind: 'area', amount: piece.area }, pattern.unit)} within the sewing line`,
    say`edges ${names}`,
  ];
}

function edgeFigures(pattern: Pattern, piece: Piece, edge: Edge): string[] {
  const { unit } = pattern;
  const sewn = say`${printLength(edge.sewn, unit)} when sewn`;
  const drawn =
    Math.abs(edge.drawn - edge.sewn) < 0.005
      ? ''
      : say`, ${printLength(edge.drawn, unit)} drawn, ${isFull(piece, edge) ? say`flat` : say`with the darts`}`;
  const allowance = piece.allowances.get(edge.name);
  const partners = pattern.seams.flatMap((seam) => partnersIn(seam, piece, edge));
  return [
    sewn + drawn,
    ...(allowance === undefined ? [] : [say`allowance ${printLength(allowance, unit)}`]),
    ...partners,
  ];
}

const isFull = ({ shaping }: Piece, { name }: Edge): boolean =>
  [...(shaping?.pleats ?? []), ...(shaping?.gathers ?? [])].some(({ edge }) => edge === name);

/** "sewn to `back.side` in seam side", once for each seam that takes the edge. */
function partnersIn(seam: Seam, piece: Piece, edge: Edge): string[] {
  const holds = (side: Seam['left']) =>
    side.some((sewn) => sewn.piece === piece.name && sewn.edge === edge.name);
  const name = (side: Seam['left']) =>
    side.map((sewn) => code(`${sewn.piece}.${sewn.edge}`)).join(say` and `);
  const where = say`in seam ${plain(seam.name)}`;
  if (seam.itsPair && holds(seam.left)) return [say`sewn to its pair ${where}`];
  if (holds(seam.left)) return [say`sewn to ${name(seam.right)} ${where}`];
  return holds(seam.right) ? [say`sewn to ${name(seam.left)} ${where}`] : [];
}

function seamFigures({ unit }: Pattern, seam: Seam): string[] {
  const openings = openingFigures(seam, unit);
  if (seam.itsPair) return [say`${printLength(seam.leftLength, unit)}, sewn to its pair`, ...openings];
  const lengths = say`${printLength(seam.leftLength, unit)} to ${printLength(seam.rightLength, unit)}`;
  if (!seam.comparable) return [say`its lengths are not compared: a piece of it is not whole yet`];
  return [
    lengths,
    say`apart by ${printLength(Math.abs(seam.difference), unit)}, ${printLength(seam.tolerance, unit)} allowed`,
    ...openings,
  ];
}

/** "opens over 20cm: the zip, at the left" */
const openingFigures = ({ openings = [] }: Seam, unit: Pattern['unit']): string[] =>
  openings.map(({ how, from, to, side }) => {
    const at = side === undefined ? '' : say`, at the ${side}`;
    return say`opens over ${printLength(to - from, unit)}: ${openingName(how)}${at}`;
  });

const documentation = ({ doc }: DefinitionInfo): string => doc.split('\n').map(plain).join('  \n');

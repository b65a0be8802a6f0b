/** The rows that are told of a changed piece, each with its number and, where it has one, its place on the drawing. */
import { say } from '../../grammar/say';
import { printLength } from '../drafting/values/quantity';
import { apply, type Point, type Region } from '../geometry';
import type { Both, PieceChange, Review } from './model';
import { detailWords, deviationWords, lengths, nameOf } from './words';

type Unit = Review['unit'];

/** `1b`, what is told, and where that is, in the old piece's place. */
export interface Row {
  readonly mark: string;
  readonly text: string;
  readonly at?: Point;
}

export function rowsOf(change: PieceChange, unit: Unit): Row[] {
  const rows = [
    ...deviationRow(change, unit),
    ...edgeRows(change, unit),
    ...areaRow(change, unit),
    ...pointRows(change, unit),
    ...detailRows(change, unit),
  ];
  return rows.map((row, i) => ({ mark: `${change.number}${lettered(i)}`, ...row }));
}

type Told = Omit<Row, 'mark'>;

const told = (text: string, at: Point | undefined): Told[] => [at === undefined ? { text } : { text, at }];

/** a to z, then aa, ab … */
const lettered = (i: number): string =>
  (i < 26 ? '' : lettered(Math.floor(i / 26) - 1)) + String.fromCharCode(97 + (i % 26));

/** A place of the new piece where it lies on the old one. */
const laid = ({ anchor }: PieceChange, point: Point | undefined): Point | undefined =>
  point && anchor ? apply(anchor.move, point) : point;

const placeOf = (change: PieceChange, { was, now }: Both<Point>): Point | undefined =>
  laid(change, now) ?? was;

function deviationRow(change: PieceChange, unit: Unit): Told[] {
  const { deviation, anchor } = change;
  if (deviation === undefined || anchor === undefined) return [];
  const { was, now } = deviation.at;
  const at = placeOf(change, { ...(was && { was: was.point }), ...(now && { now: now.point }) });
  return told(say`${deviationWords(deviation, unit)} (held at ${anchor.held})`, at);
}

function edgeRows(change: PieceChange, unit: Unit): Told[] {
  const { was, now } = change.piece;
  const middle = (piece: typeof was, name: string | undefined): Point | undefined => {
    const path = piece?.edges.find((edge) => edge.name === name)?.path;
    return path?.pointAt(path.length / 2);
  };
  return change.edges.flatMap(({ edge, length }) => {
    const name =
      edge.was !== undefined && edge.now !== undefined && edge.was !== edge.now
        ? edge.now + say` (was ${edge.was})`
        : nameOf(edge);
    return told(
      `${name}: ${lengths(length, unit)}`,
      laid(change, middle(now, edge.now)) ?? middle(was, edge.was),
    );
  });
}

function areaRow({ words, lost, gained, lostArea, gainedArea, area }: PieceChange, unit: Unit): Told[] {
  if (!words.includes('reshaped')) return [];
  const per = unit === 'in' ? 645.16 : 100;
  const inUnits = (mm2: number): string => (mm2 / per).toFixed(1);
  const [was, is] = [inUnits(area.was!), inUnits(area.now!)];
  const [more, less] = [inUnits(gainedArea), inUnits(lostArea)];
  const largest = [...lost, ...gained].reduce<Region | undefined>(
    (a, b) => (a && a.area >= b.area ? a : b),
    undefined,
  );
  return told(
    unit === 'in'
      ? say`area ${was} → ${is} square inches: ${more} gained, ${less} lost`
      : say`area ${was} → ${is} square centimetres: ${more} gained, ${less} lost`,
    largest && middleOf(largest.points),
  );
}

const middleOf = (points: readonly Point[]): Point => ({
  x: points.reduce((sum, { x }) => sum + x, 0) / points.length,
  y: points.reduce((sum, { y }) => sum + y, 0) / points.length,
});

function pointRows({ points }: PieceChange, unit: Unit): Told[] {
  if (points.length === 0) return [];
  const each = points.map(({ name, by }) => `${nameOf(name)} ${printLength(by, unit)}`);
  return told(say`points moved: ${each.join(', ')}`, points[0]!.point.now);
}

const detailRows = (change: PieceChange, unit: Unit): Told[] =>
  change.details.flatMap((one) => told(detailWords(one, unit), placeOf(change, one.at)));

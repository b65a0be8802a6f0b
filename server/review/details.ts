/** What is on a piece and about it besides its outline: marks, allowances and words, told where they changed. */
import { say } from '../../grammar/say';
import type { Edge, Piece } from '../drafting/model';
import { pleatCount } from '../drafting/pieces/told';
import { printLength } from '../drafting/values/quantity';
import { markWord } from '../drawing/marks';
import type { DisplayUnit } from '../drafting/model';
import { apply, distance, identity, type Point, type Rigid } from '../geometry';
import { both } from './causes';
import { TOLERANCE, type Detail } from './model';

/** A property: plain words, or a length with what it is a length of. */
type Property = string | Length | Direction;

interface Length {
  readonly mm: number;
  readonly as: (length: string) => string;
}

/** A direction: held against another once the pieces lie on each other, told as the draft has it. */
interface Direction {
  readonly laid: number;
  readonly words: string;
}

interface Thing {
  readonly word: Detail['word'];
  readonly thing: string;
  readonly properties: Readonly<Record<string, Property>>;
  /** Places on the paper that say where it is. */
  readonly points: readonly Point[];
  /** Distances along its edge from both ends: it stays where one of them does. */
  readonly along?: readonly [number, number];
}

/** How edges and pieces of the old side are called now. */
export interface Names {
  readonly edge: (was: string) => string;
}

export function detailsOf(was: Piece, now: Piece, move: Rigid, names: Names, unit: DisplayUnit): Detail[] {
  const stay = (name: string): string => name;
  const [old, fresh] = [thingsOf(was, names.edge, identity), thingsOf(now, stay, move)];
  const keys = [...new Set([...fresh.keys(), ...old.keys()])];
  return keys.flatMap((key) => {
    const [a, b] = [old.get(key), fresh.get(key)];
    return a === undefined || b === undefined ? [oneSided(a, b, unit)] : changed(a, b, move, unit);
  });
}

function oneSided(was: Thing | undefined, now: Thing | undefined, unit: DisplayUnit): Detail {
  const { word, thing } = (was ?? now)!;
  const words = (one: Thing | undefined) => one && (said(Object.values(one.properties), unit) || say`there`);
  return { word, thing, text: both(words(was), words(now)), at: spots(was, now) };
}

function changed(was: Thing, now: Thing, move: Rigid, unit: DisplayUnit): Detail[] {
  const keys = [...new Set([...Object.keys(was.properties), ...Object.keys(now.properties)])];
  const other = keys.filter((key) => !sameProperty(was.properties[key], now.properties[key]));
  const moved = movedBy(was, now, move);
  if (other.length === 0 && moved <= TOLERANCE) return [];
  const words = ({ properties }: Thing) =>
    said(
      other.flatMap((key) => properties[key] ?? []),
      unit,
    );
  return [
    {
      word: now.word,
      thing: now.thing,
      text: other.length === 0 ? {} : { was: words(was), now: words(now) },
      at: spots(was, now),
      ...(moved > TOLERANCE && { moved }),
    },
  ];
}

const spots = (was: Thing | undefined, now: Thing | undefined): Detail['at'] =>
  both(was?.points[0], now?.points[0]);

/** Directions nearer than this, degrees, are one: a millimetre off at the end of a grain line of 60 cm. */
const STRAIGHT = 0.1;

const turnedBy = (a: Direction, b: Direction): number => Math.abs(((a.laid - b.laid + 540) % 360) - 180);

function sameProperty(a: Property | undefined, b: Property | undefined): boolean {
  if (typeof a !== 'object' || typeof b !== 'object') return a === b;
  if ('laid' in a || 'laid' in b) return 'laid' in a && 'laid' in b && turnedBy(a, b) < STRAIGHT;
  return Math.abs(a.mm - b.mm) <= TOLERANCE;
}

const said = (properties: readonly Property[], unit: DisplayUnit): string =>
  properties
    .map((one) =>
      typeof one === 'string' ? one : 'laid' in one ? one.words : one.as(printLength(one.mm, unit)),
    )
    .filter((words) => words !== '')
    .join(', ');

function movedBy(was: Thing, now: Thing, move: Rigid): number {
  if (now.word !== 'marks') return 0;
  if (was.along !== undefined && now.along !== undefined)
    return Math.min(...was.along.map((from, i) => Math.abs(from - now.along![i]!)));
  if (was.points.length !== now.points.length) return 0;
  return Math.max(0, ...was.points.map((p, i) => distance(p, apply(move, now.points[i]!))));
}

type Naming = (edge: string) => string;

function thingsOf(piece: Piece, naming: Naming, move: Rigid): Map<string, Thing> {
  const all = [
    ...notches(piece, naming),
    ...marks(piece),
    ...shaping(piece, naming),
    ...lay(piece, naming, move),
    ...allowances(piece, naming),
    ...wording(piece),
  ];
  return new Map(all.map((one) => [`${one.word} ${one.thing}`, one]));
}

const strokesIn = (count: number): string => ['', say`single`, say`double`, say`triple`][count] ?? '';

const onEdge = (edge: string): string => say`on ${edge}`;

function notches({ notches: all, edges }: Piece, naming: Naming): Thing[] {
  return all.map(({ name, edge, distance: from, count, point }) => ({
    word: 'marks',
    thing: say`notch ${name}`,
    properties: { strokes: strokesIn(count), on: onEdge(naming(edge)) },
    points: [point],
    along: [from, (edges.find((one) => one.name === edge)?.sewn ?? from) - from],
  }));
}

const endsOf = ({ path }: { readonly path: Edge['path'] }): Point[] => [path.start, path.end];

function marks({ marks: all, balance, holes }: Piece): Thing[] {
  return [
    ...all.map(({ name, word, points, paths, size, row }): Thing => ({
      word: 'marks',
      thing: `${markWord(word)} ${name}`,
      properties: {
        ...(row && { count: say`${Math.max(points.length, paths.length)} in a row` }),
        ...(size !== undefined && { size: just(size) }),
      },
      points: [...points, ...paths.flatMap((path) => endsOf({ path }))],
    })),
    ...balance.map((one): Thing => ({
      word: 'marks',
      thing: say`balance line ${one.name}`,
      properties: {},
      points: endsOf(one),
    })),
    ...holes.map(({ name, edges }): Thing => ({
      word: 'marks',
      thing: say`hole ${name}`,
      properties: {},
      points: edges.flatMap(({ path }) => [path.start, path.pointAt(path.length / 2)]),
    })),
  ];
}

function shaping({ darts, shaping: more }: Piece, naming: Naming): Thing[] {
  return [
    ...darts.map((dart): Thing => ({
      word: 'marks',
      thing: say`dart ${dart.name}`,
      properties: {
        on: onEdge(naming(dart.edge)),
        wide: wide(dart.width),
        long: { mm: distance(dart.from, dart.tip), as: (l) => say`${l} long` },
        pressed: pressed(dart.pressed),
      },
      points: [dart.tip],
    })),
    ...(more?.fishDarts ?? []).map((dart): Thing => ({
      word: 'marks',
      thing: say`fish dart ${dart.name}`,
      properties: { wide: wide(dart.width), pressed: pressed(dart.pressed) },
      points: [dart.from, dart.to],
    })),
    ...(more?.pleats ?? []).map((row): Thing => ({
      word: 'marks',
      thing: say`pleats ${row.name}`,
      properties: {
        on: onEdge(naming(row.edge)),
        form: pleatCount(row.form, row.pleats.length),
        taking: { mm: row.taking, as: (l) => say`${l} each` },
        stitched: { mm: row.stitched, as: (l) => say`${l} stitched down` },
      },
      points: row.pleats.map(({ start }) => start.start),
    })),
    ...(more?.gathers ?? []).map((row): Thing => ({
      word: 'marks',
      thing: say`gathers ${row.name}`,
      properties: {
        on: onEdge(naming(row.edge)),
        flat: { mm: row.flat, as: (l) => say`${l} flat` },
        gathered: { mm: row.gathered, as: (l) => say`${l} drawn up` },
      },
      points: [],
    })),
  ];
}

/** A dart's sides are those where its edge comes and goes; a fish dart has a left and a right one. */
function pressed(word: string): string {
  switch (word) {
    case 'open':
      return say`pressed open`;
    case 'from':
      return say`pressed toward the beginning of its edge`;
    case 'to':
      return say`pressed toward the end of its edge`;
    case 'left':
      return say`pressed to the left`;
    case 'right':
      return say`pressed to the right`;
    default:
      return '';
  }
}

const just = (mm: number): Length => ({ mm, as: (length) => length });
const wide = (mm: number): Length => ({ mm, as: (length) => say`${length} wide` });

/** What a piece has one of, by which its drawing looks for it. */
export const grainWord = (): string => say`grain`;

/** How it lies on the cloth: only the grain's direction counts, its length follows the piece. */
function lay({ grain, fold }: Piece, naming: Naming, move: Rigid): Thing[] {
  const found: Thing[] = [];
  if (fold !== undefined)
    found.push({
      word: 'marks',
      thing: say`fold`,
      properties: { on: onEdge(naming(fold.edge)) },
      points: [],
    });
  if (grain !== undefined) {
    const turn = (a: Point, b: Point): number => (Math.atan2(b.y - a.y, b.x - a.x) * 180) / Math.PI;
    const laid = turn(apply(move, grain.from), apply(move, grain.to));
    const properties = {
      bias: grain.bias ? say`on the bias` : '',
      turn: { laid, words: angle(turn(grain.from, grain.to)) },
    };
    found.push({ word: 'marks', thing: grainWord(), properties, points: [] });
  }
  return found;
}

const angle = (degrees: number): string => `${(Math.round(degrees * 10) / 10 || 0).toFixed(1)}deg`;

const turnsIn = (turns: number): string => ['', say`turned up`, say`turned up twice`][turns] ?? '';

function allowances(piece: Piece, naming: Naming): Thing[] {
  const { allowances: all, hems, inlays, running, ruledCorners, cornerCuts } = piece;
  const middle = (edge: string): Point[] => {
    const path = piece.edges.find(({ name }) => name === edge)?.path;
    return path === undefined ? [] : [path.pointAt(path.length / 2)];
  };
  const of = (thing: string, edge: string, properties: Thing['properties']): Thing => ({
    ...{ word: 'allowance', thing, properties, points: middle(edge) },
  });
  return [
    ...[...all].map(([edge, mm]) => of(say`allowance of ${naming(edge)}`, edge, { mm: just(mm) })),
    ...[...hems].map(([edge, turns]) => of(say`hem of ${naming(edge)}`, edge, { turns: turnsIn(turns) })),
    ...[...(inlays ?? [])].map(([edge, mm]) => of(say`inlay of ${naming(edge)}`, edge, { mm: just(mm) })),
    ...running.map(({ edge, widthFrom, widthTo }) =>
      of(say`running allowance of ${naming(edge)}`, edge, {
        from: { mm: widthFrom, as: (l) => say`${l} at the start` },
        to: { mm: widthTo, as: (l) => say`${l} at the end` },
      }),
    ),
    ...(ruledCorners ?? []).map(({ before, after, rule }) =>
      of(say`corner of ${naming(before)} and ${naming(after)}`, '', { rule: cornerWords(rule.how) }),
    ),
    ...cornerCuts.map(({ name, how }) =>
      of(say`corner of ${name === undefined ? say`the outline` : naming(name)}`, name ?? '', {
        how: cornerWords(how),
      }),
    ),
  ];
}

type Corner = Piece['cornerCuts'][number]['how'] | NonNullable<Piece['ruledCorners']>[number]['rule']['how'];

function cornerWords(how: Corner): string {
  switch (how) {
    case 'mitred':
      return say`mitred`;
    case 'squared':
      return say`squared`;
    case 'stepped':
      return say`stepped`;
    case 'folded':
      return say`folded`;
    case 'turned-back':
      return say`turned-back`;
    case 'as-the-seam-folds':
      return say`as-the-seam-folds`;
  }
}

function wording({ cut, labels, facing, remarks, side }: Piece): Thing[] {
  const words = (thing: string, text: string): Thing[] =>
    text === '' ? [] : [{ word: 'wording', thing, properties: { text }, points: [] }];
  return [
    ...words(say`cutting words`, cut?.text ?? ''),
    ...words(say`label`, labels.map(({ text }) => text).join('; ')),
    ...words(say`remark`, remarks.join('; ')),
    ...words(say`facing`, facing === undefined ? '' : say`of ${facing.piece}, ${facing.edges.join(', ')}`),
    ...words(say`side`, side ?? ''),
  ];
}

/** Finds linings of a back that are cut on the fold without the pleat that gives way when the arms reach forward. */
import { say } from '../../grammar/say';
import type { Fix, SourcedFinding } from '../drafting/finding';
import type { Edge, Pattern, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { cross, normalised, subtract, type Point } from '../geometry';
import { byBase } from './around';
import { finding, type Judged } from './check';
import { nameOfPiece } from './places';
import { called } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const PLEAT: Usual = {
  name: 'lining-pleat',
  kind: 'length',
  low: 20,
  high: Infinity,
  standing: 'common practice: at the centre back, in all',
};

export const tightLining: Judged = {
  code: 'tight-lining',
  severity: 'note',
  title: 'A lining without a pleat at the centre back',
  by: 'judgement',
  usual: [PLEAT],
  ofPattern: (pattern) => {
    const linings = pattern.pieces.filter(isJudged);
    return linings.flatMap((lining) => judged(lining, pattern));
  },
};

/** Below the waist nothing reaches forward: only a back with armholes wants the room. */
const isJudged = ({ statement, base, cut, fold, side, edges }: Piece): boolean =>
  statement.node.kind === 'lining' &&
  (called(base, 'back') || called(lined(statement.node.of.path.at(-1)?.text), 'back')) &&
  cut?.layers.some(({ as }) => as === 'fold' || as === 'open') === true &&
  fold !== undefined &&
  side !== 'left' &&
  edges.some(({ name }) => called(name, 'armhole', 'scye'));

const lined = (name: string | undefined): string => name ?? '';

function judged(lining: Piece, pattern: Pattern): readonly SourcedFinding[] {
  const { node } = lining.statement;
  const of = node.kind === 'lining' && node.of.path.length === 1 ? node.of.path[0]!.text : '';
  const piece = byBase(pattern.pieces).get(of)?.[0];
  const [own, other] = [foldOf(lining), piece && foldOf(piece)];
  const pleated = (lining.shaping?.pleats ?? []).length > (piece?.shaping?.pleats ?? []).length;
  if (piece === undefined || own === undefined || other === undefined || pleated) return [];
  const room = 2 * (widthFrom(own, lining) - widthFrom(other, piece));
  const range = usualRange(pattern, PLEAT);
  if (isUsual(range, room, 0.05)) return [];
  const { unit } = pattern;
  const has = room < 0.5 ? say`no pleat` : say`a pleat of ${printLength(room, unit)}`;
  const message = say`${lining.base} has ${has} at the centre back; ${rangeInWords(range, unit)}. Lining gives less than the cloth outside, and tears when the arms reach forward: spread it at its fold (${spreadLine(own, 10, unit) ?? 'spread 1cm along P to Q'} makes a pleat of 2cm).`;
  return [
    {
      source: lining.source,
      finding: finding('tight-lining', nameOfPiece(lining), message, {
        piece: lining.name,
        fixes: widened(lining, own, (range.low - room) / 2, pattern),
      }),
    },
  ];
}

const foldOf = ({ fold, edges }: Piece): Edge | undefined => edges.find(({ name }) => name === fold?.edge);

/** How far a piece reaches from its fold: a pleat may be put in at the fold or beside it. */
function widthFrom({ path: fold }: Edge, { edges }: Piece): number {
  const along = normalised(subtract(fold.end, fold.start));
  if (along === undefined) return 0;
  const away = (p: Point): number => Math.abs(cross(along, subtract(p, fold.start)));
  return Math.max(...edges.flatMap(({ path }) => path.polyline(ACCURACY).map(away)));
}

/** Of curves at the side, mm. */
const ACCURACY = 0.1;

/** A line at the end of the lining's block. */
function widened({ statement }: Piece, fold: Edge, by: number, { unit }: Pattern): readonly Fix[] {
  const last = statement.block?.at(-1);
  const line = spreadLine(fold, by, unit);
  if (last === undefined || last.block !== undefined || line === undefined) return [];
  const end = last.text.length;
  return [
    {
      title: say`Give it a pleat: ${line}`,
      edits: [{ statement: last, at: { from: end, to: end }, text: `\n  ${line}` }],
    },
  ];
}

/** Undefined where an end of the fold has no name, or there is nothing to spread. */
const spreadLine = ({ fromName, toName }: Edge, by: number, unit: Pattern['unit']): string | undefined =>
  fromName === '' || toName === '' || by <= 0
    ? undefined
    : `spread ${printLength(by, unit)} along ${fromName} to ${toName}`;

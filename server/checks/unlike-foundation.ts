/** Finds bodies that differ so much from the size they borrow from that what is borrowed can't be theirs. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { BodySheet, Pattern } from '../drafting/model';
import type { Foundation } from '../drafting/surroundings-model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { ofSheets } from './measurements';

export const unlikeFoundation: Judged = {
  code: 'unlike-foundation',
  severity: 'warning',
  title: 'A body far from the size that lends it the rest of its measurements',
  by: 'judgement',
  ofPattern: ofSheets(unlike),
};

/** By which a person is put into a size, *common practice*. */
const GIRTHS = ['bust', 'waist', 'hip'];
/** How many sizes away a girth may lie before what is borrowed is doubted, *from memory*. */
const MOST_STEPS = 2;

/** A girth of one's own, and where it would stand in the table's row: 0 at the first size, 1 at the second. */
interface Girth {
  readonly name: string;
  readonly mm: number;
  readonly row: readonly number[];
  readonly stands: number;
}

function unlike(sheet: BodySheet, pattern: Pattern): readonly Finding[] {
  const { foundation } = sheet;
  if (foundation === undefined) return [];
  const lender = foundation.sizes.findIndex(({ size }) => size === foundation.size);
  const girths = GIRTHS.flatMap((name) => girthOf(sheet, foundation, name));
  const away = ({ stands }: Girth): number => Math.abs(stands - lender);
  const far = girths.filter((girth) => away(girth) > MOST_STEPS).sort((a, b) => away(b) - away(a))[0];
  if (lender < 0 || far === undefined) return [];
  const nearest = nearestSize(far);
  const { size: better } = foundation.sizes[nearest]!;
  const print = (mm: number): string => printLength(mm, pattern.unit);
  const lends = say`${foundation.table} ${foundation.size}, which lends ${sheet.name} all that was not measured`;
  const next =
    nearest === lender
      ? say`No other size is nearer: measure the rest as well.`
      : say`${better} is nearest, with ${print(far.row[nearest]!)}: borrow from it, or measure the rest as well.`;
  const message = say`The ${far.name} of ${sheet.name} is ${print(far.mm)}, more than two sizes from the ${print(far.row[lender]!)} of ${lends}. ${next}`;
  const mends = girths.every(({ stands }) => Math.abs(stands - nearest) <= MOST_STEPS);
  const { statement } = sheet;
  const edit = { statement, at: foundation.at, text: better };
  const fixes = mends && nearest !== lender ? [{ title: say`Borrow from ${better}`, edits: [edit] }] : [];
  return [finding('unlike-foundation', { statement, at: foundation.at }, message, { fixes })];
}

/** A girth that the body has of its own, where the table has a row for it that rises from size to size. */
function girthOf(sheet: BodySheet, { sizes }: Foundation, name: string): readonly Girth[] {
  const own = sheet.measures.get(name);
  const lent = sizes.map(({ measures }) => measures.get(name));
  if (own?.left.kind !== 'length' || sizes.length < 2 || lent.some((cell) => cell === own)) return [];
  if (!sheet.statement.block?.includes(own.statement)) return [];
  const row = lent.map((cell) => (cell?.left.kind === 'length' ? cell.left.amount : NaN));
  if (!row.slice(1).every((mm, i) => mm > row[i]!)) return [];
  const mm = (own.left.amount + own.right.amount) / 2;
  return [{ name, mm, row, stands: standing(mm, row) }];
}

/** Between the sizes in proportion; beyond the table in steps of its last two sizes. */
function standing(mm: number, row: readonly number[]): number {
  let i = 0;
  while (i < row.length - 2 && mm > row[i + 1]!) i++;
  return i + (mm - row[i]!) / (row[i + 1]! - row[i]!);
}

function nearestSize({ mm, row }: Girth): number {
  const off = row.map((of) => Math.abs(of - mm));
  return off.indexOf(Math.min(...off));
}

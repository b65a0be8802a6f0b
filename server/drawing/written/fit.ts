/**
 * The fit sheet, for the table beside the mirror: control measures with room for what the toile and the body say, what to
 * look at, what can be let out, who fitted when.
 */
import { say } from '../../../grammar/say';
import type { Pattern } from '../../drafting/model';
import { printLength } from '../../drafting/values/quantity';
import { girthsOf, lengthsOf, untold } from './measured';
import { rowsOf } from './finished';
import { lengthText } from './lengths';
import { looksOf } from './looks';
import { bodySheetOf } from './measuring';
import {
  blankRows,
  columnsFor,
  leftOut,
  whom,
  type Given,
  type Head,
  type Row,
  type Table,
  type WrittenSheet,
} from './sheet';

export function fitSheet(pattern: Pattern, given: Given): WrittenSheet {
  const { unit } = pattern;
  const who = [whom(pattern), given.date].filter(Boolean).join(', ') || say`Nobody yet`;
  const taken = bodySheetOf(pattern)?.taken?.date;
  const girths = girthsOf(pattern);
  return {
    kind: 'fit',
    heading: pattern.title === '' ? say`${who}: fit sheet` : say`${who}: fit sheet of ${pattern.title}`,
    words: [
      taken === undefined
        ? say`No day of measuring is written down. Lengths in ${unit}.`
        : say`Measured ${taken}. Lengths in ${unit}.`,
      say`Fitted on ________ by ________  worn over ________________  heel ________`,
    ],
    tables: [...controlTable(pattern, girths), lookTable(pattern), ...letOutTable(pattern), fittingsTable()],
    after: [...untold(pattern, girths), ...leftOut(pattern), say`Signed off on ________ by ________`],
    frames: { heading: say`Sketch what you see`, names: [say`front`, say`side`, say`back`] },
  };
}

function controlTable(pattern: Pattern, girths: ReturnType<typeof girthsOf>): readonly Table[] {
  const compared = [...girths, ...lengthsOf(pattern, girths).filter(({ body }) => body !== undefined)];
  if (compared.length === 0) return [];
  const heads: readonly Head[] = ['', 'finished', 'body', 'ease', 'toile', 'body now', 'change to'];
  return [
    {
      heading: say`Control measures`,
      columns: columnsFor(heads, (head) => head !== ''),
      rows: compared.flatMap((one) =>
        rowsOf(one, pattern.unit).map(({ cells: [name, , , ...figures] }): Row => ({
          cells: [name!, ...figures, null, null, null],
        })),
      ),
    },
  ];
}

function lookTable(pattern: Pattern): Table {
  return {
    heading: say`What to look at`,
    columns: columnsFor(['look at', 'where', 'seen, and what to change']),
    rows: looksOf(pattern).map(({ at, where }) => ({ cells: [at, where, null] })),
  };
}

/** Allowances from here on, mm, are wide enough that something can be let out of them. */
const WORTHWHILE = 20;

function letOutTable(pattern: Pattern): readonly Table[] {
  const rows = pattern.pieces.flatMap((piece) =>
    piece.cut === undefined
      ? []
      : piece.edges.flatMap(({ name }): Row[] => {
          const sewn = pattern
            .seamsOf(piece.base)
            .some(({ left, right }) =>
              [...left, ...right].some((one) => one.piece === piece.base && one.edge === name),
            );
          const [allowance, inlay] = [piece.allowances.get(name) ?? 0, piece.inlays?.get(name) ?? 0];
          if (!sewn || (inlay === 0 && allowance < WORTHWHILE)) return [];
          return [
            {
              cells: [
                `${piece.name}.${name}`,
                lengthText(allowance, pattern.unit),
                inlay > 0 ? lengthText(inlay, pattern.unit) : '',
                null,
              ],
            },
          ];
        }),
  );
  if (rows.length === 0) return [];
  const heads: readonly Head[] = ['', 'allowance', 'inlay', 'let out by'];
  return [
    {
      heading: say`What can be let out, an edge; ${printLength(6, pattern.unit)} must stay beyond the seam`,
      columns: columnsFor(heads, (head) => head !== ''),
      rows,
    },
  ];
}

const fittingsTable = (): Table => ({
  heading: say`Fittings`,
  columns: columnsFor(['date', 'by whom', 'what was changed']),
  rows: blankRows(3, 3),
});

/** The measuring sheet: what a pattern needs, how each is taken, what the body has so far, blanks for the next time. */
import { inWords, say } from '../../../grammar/say';
import type { BodySheet, DisplayUnit, Pattern } from '../../drafting/model';
import { measurementNamed } from '../../drafting/values/measurements';
import { lengthText } from './lengths';
import { columnsFor, headingOf, whom, type Cell, type Given, type Head, type WrittenSheet } from './sheet';

export interface SheetLine {
  readonly name: string;
  /** What it is; empty for a measurement of the pattern's own. */
  readonly definition: string;
  readonly how: string;
  /** Declared by a `measure` line, not well-known. */
  readonly own: boolean;
  /** Millimetres; null where it was not taken. Alike where it was taken once. */
  readonly left: number | null;
  readonly right: number | null;
  readonly sided: boolean;
}

export interface MeasuringSheet {
  readonly title: string;
  readonly unit: DisplayUnit;
  readonly body: string | null;
  /** The day it was taken, as written. */
  readonly taken: string | null;
  readonly lines: readonly SheetLine[];
}

/** The sheet of the body that a pattern is drafted for. */
export const bodySheetOf = ({ bodies, body }: Pattern): BodySheet | undefined =>
  bodies.find(({ name, size }) => name === body?.name && size === body.size);

/** In taking order, then the pattern's own by name. */
export function measuresOf(pattern: Pattern): MeasuringSheet {
  const { title, unit, needs } = pattern;
  const taken = bodySheetOf(pattern);
  return {
    title,
    unit,
    body: whom(pattern) ?? null,
    taken: taken?.taken?.date ?? null,
    lines: needs.map((name) => lineOf(name, pattern, taken)),
  };
}

function lineOf(name: string, { ownMeasurements }: Pattern, body: BodySheet | undefined): SheetLine {
  const known = measurementNamed.get(name);
  const own = ownMeasurements.get(name);
  const taken = body?.measures.get(name);
  const length = (side: 'left' | 'right'): number | null =>
    taken?.[side].kind === 'length' ? taken[side].amount : null;
  return {
    name,
    definition: own === undefined ? inWords(known?.definition ?? '') : '',
    how: own?.words ?? inWords(known?.howToTake ?? ''),
    own: own !== undefined || known === undefined,
    left: length('left'),
    right: length('right'),
    sided: taken?.sided ?? false,
  };
}

const COLUMNS: readonly Head[] = ['', 'measurement', 'left or whole', 'right', 'next: left', 'next: right'];

const BENEATH: readonly Head[] = ['what it is', 'how it is taken'];

export function measuringSheet(pattern: Pattern, given: Given): WrittenSheet {
  const { title, body, taken, lines, unit } = measuresOf(pattern);
  const name = title === '' ? say`Measuring sheet` : say`Measuring sheet of ${title}`;
  const nobody = body === null ? say`, for nobody yet` : '';
  const when = taken === null ? '' : say`, last taken ${taken}`;
  const nothing = lines.length === 0;
  return {
    kind: 'measuring',
    heading: `${headingOf(name, pattern, given)}${nobody}${when}`,
    words: nothing
      ? [title === '' ? say`This pattern needs no measurements.` : say`${title} needs no measurements.`]
      : [say`Lengths in ${unit}`, say`Taken over ________________ on ________ by ________`],
    tables: nothing
      ? []
      : [
          {
            columns: columnsFor(COLUMNS, (head) => head !== 'measurement'),
            rows: lines.map((line, i) => ({
              cells: [String(i + 1), line.name, ...cells(line, unit), null, null],
              beneath: [line.definition, line.how],
            })),
            beneath: BENEATH,
          },
        ],
    after: [],
  };
}

function cells({ left, right, sided }: SheetLine, unit: DisplayUnit): readonly Cell[] {
  const shown = (mm: number | null): Cell => (mm === null ? null : lengthText(mm, unit));
  return [shown(left), sided || left === null ? shown(right) : ''];
}

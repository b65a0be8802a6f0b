/** The measuring sheet of a pattern as plain data: what it needs, how each is taken, and what the body has so far. */
import type { BodySheet, DisplayUnit, Pattern } from '../../drafting/model';
import { measurementNamed } from '../../drafting/values/measurements';
import { bodyName } from './measure-json';

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

/** In taking order, then the pattern's own by name. */
export function sheetOf(pattern: Pattern): MeasuringSheet {
  const { title, unit, body, needs } = pattern;
  const taken = pattern.bodies.find(({ name, size }) => name === body?.name && size === body.size);
  return {
    title,
    unit,
    body: bodyName(pattern),
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
    definition: own === undefined ? (known?.definition ?? '') : '',
    how: own?.words ?? known?.howToTake ?? '',
    own: own !== undefined || known === undefined,
    left: length('left'),
    right: length('right'),
    sided: taken?.sided ?? false,
  };
}

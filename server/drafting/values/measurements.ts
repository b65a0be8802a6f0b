/**
 * The measurements of the body that need no declaration: what each one is, how it is taken, and between which lengths
 * it plausibly lies. The definitions follow ISO 8559-1 in our own words, *from memory*; ranges are *common practice*,
 * wide enough for a child of four and for a large adult, and were held against the 1st and 99th percentiles of
 * ANSUR I (1988) and ANSUR II (2012) where those surveys have the measurement.
 */
import { limbs } from './measurements-limbs';
import { lengths, torso } from './measurements-trunk';

export type MeasurementGroup = 'whole body' | 'girths' | 'widths' | 'lengths' | 'arm' | 'leg';

export interface Measurement {
  /** As it is written in a pattern. */
  readonly name: string;
  /** What it is, in one sentence. */
  readonly definition: string;
  /** How the tape goes, in one or two sentences. */
  readonly howToTake: string;
  /** Plausible range in millimetres, both ends included. */
  readonly low: number;
  readonly high: number;
  readonly group: MeasurementGroup;
  /** Where the definition comes from. */
  readonly source: string;
}

/** Every well-known measurement, in the order in which a person is measured without walking round twice. */
export const measurements: readonly Measurement[] = [...torso, ...lengths, ...limbs];

export const measurementNamed: ReadonlyMap<string, Measurement> = new Map(
  measurements.map((measurement) => [measurement.name, measurement]),
);

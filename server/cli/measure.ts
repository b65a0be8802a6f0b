/** `draftwright measure`: every figure of a drafted pattern, to be read or to be held against a reference. */
import { inDialect } from '../../grammar/dialect';
import { say } from '../../grammar/say';
import { Bench, type Choice } from './open';
import { reportOn } from './check';
import { CLEAN, FAULTY, type Exit, type Io } from './io';
import { dialectIn } from './language';
import { jsonText } from './print/json';
import { measureJson } from './print/measure-json';
import { measureText } from './print/measure-text';
import { countOf } from './print/report';

export interface MeasureOptions extends Choice {
  /** The dialect of the trade. */
  readonly words: string;
  readonly format: 'text' | 'json';
}

/** Prints what can be measured; says on the other stream when errors leave something out. */
export function runMeasure(path: string, options: MeasureOptions, io: Io): Exit {
  const bench = new Bench(io);
  const opened = bench.open(path, options);
  const { pattern } = opened;
  const dialect = dialectIn(options.words, io);
  const said = (words: string): string => inDialect(dialect, words, () => bench.textsOf(pattern));
  io.out(options.format === 'json' ? jsonText(measureJson(pattern)) : said(measureText(pattern)));
  const errors = countOf(reportOn(bench, [opened]), 'error');
  if (errors === 0) return CLEAN;
  io.err(`${unmeasured(path, errors)}\n`);
  return FAULTY;
}

const unmeasured = (path: string, errors: number): string =>
  errors === 1
    ? say`${path} has 1 error; what rests on it is not measured. See draftwright check ${path}.`
    : say`${path} has ${errors} errors; what rests on them is not measured. See draftwright check ${path}.`;

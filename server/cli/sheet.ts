/** `draftwright sheet`: what has to be measured for a pattern, in the order in which it is taken, with blanks for the next time. */
import { check } from '../checks';
import { Bench, type Choice } from './open';
import { CLEAN, FAULTY, type Exit, type Io } from './io';
import { counted } from './print/ink';
import { jsonText } from './print/json';
import { sheetOf } from './print/sheet';
import { sheetJson } from './print/sheet-json';
import { sheetText } from './print/sheet-text';

export interface SheetOptions extends Choice {
  readonly format: 'text' | 'json';
}

/** Faults that a measuring sheet is there to mend. */
const EXPECTED: ReadonlySet<string> = new Set(['missing-measurement', 'nobody-to-draft-for']);

export function runSheet(path: string, options: SheetOptions, io: Io): Exit {
  const { pattern } = new Bench(io).open(path, options);
  const sheet = sheetOf(pattern);
  io.out(options.format === 'json' ? jsonText(sheetJson(sheet)) : sheetText(sheet, io));
  const errors = check(pattern).filter(
    ({ severity, code }) => severity === 'error' && !EXPECTED.has(code),
  ).length;
  if (errors === 0) return CLEAN;
  io.err(
    `${path} has ${counted(errors, 'error')}; what rests on them may need more. See draftwright check ${path}.\n`,
  );
  return FAULTY;
}

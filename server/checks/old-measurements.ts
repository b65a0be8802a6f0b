/** Finds bodies measured long before the cloth is cut or the toile fitted: people change, children fast. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { BodySheet, Pattern } from '../drafting/model';
import { finding, type Judged } from './check';
import { ofSheets, taken, whose } from './measurements';

export const oldMeasurements: Judged = {
  code: 'old-measurements',
  severity: 'warning',
  title: 'Measurements taken long before the cloth is cut',
  by: 'judgement',
  ofPattern: ofSheets(old),
};

const DAY = 24 * 60 * 60 * 1000;
/** Half a year for the grown, six weeks for a child (common practice). */
const GROWN_DAYS = 183;
const CHILD_DAYS = 42;
/** Who is shorter is taken for a child, mm (common practice). */
const CHILD_HEIGHT = 1500;

/** Only days written in the pattern are compared, so that the same file gives the same findings on any day. */
function old(sheet: BodySheet, pattern: Pattern): readonly Finding[] {
  const last = [...pattern.days].sort().pop();
  const isBody = pattern.body?.name === sheet.name;
  if (sheet.taken === undefined || last === undefined || !isBody) return [];
  const child = (taken(sheet, 'height') ?? Infinity) < CHILD_HEIGHT;
  const days = Math.round((Date.parse(last) - Date.parse(sheet.taken.date)) / DAY);
  if (!(days > (child ? CHILD_DAYS : GROWN_DAYS))) return [];
  const { statement } = sheet.taken;
  const message = say`${whose(sheet)} was measured on ${sheet.taken.date}, ${Math.round(days / 7)} weeks before ${last}. ${child ? say`A child grows out of its measurements in six weeks` : say`Bodies change in half a year`}: measure again.`;
  return [finding('old-measurements', { statement, at: statement.node.at }, message)];
}

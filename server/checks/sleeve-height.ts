/** Finds set-in sleeves whose head is too flat or too high for their armhole. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Seam } from '../drafting/model';
import { edgeNamed, sewnPath } from '../drafting/sewing/course';
import { printLength } from '../drafting/values/quantity';
import { dot, normalised, subtract, type Path } from '../geometry';
import { finding, type Judged, type Judging } from './check';
import { setIn } from './sleeve-ease';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const HEIGHT: Usual = {
  name: 'sleeve-height',
  kind: 'ratio',
  low: 0.18,
  high: 0.36,
  standing: 'common practice: shirts 18 to 28% of the armhole ring, dresses and coats 28 to 36%',
};

export const sleeveHeight: Judged = {
  code: 'sleeve-height',
  severity: 'warning',
  title: 'A sleeve head that is too flat or too high for its armhole',
  by: 'judgement',
  usual: [HEIGHT],
  ofSeam: (seam, pattern) => judged(seam, pattern),
};

/** Flatter than this share of the ring it is no set-in sleeve but one cut straight, as shifts have. */
const SET_IN = 0.1;

function judged(seam: Seam, pattern: Judging): readonly Finding[] {
  const set = setIn(seam);
  const [head] = set?.head ?? [];
  const edge = head?.of && edgeNamed(head.of, head.edge);
  if (set === undefined || set.head.length !== 1 || edge === undefined || head!.stretch !== undefined)
    return [];
  // one armhole: the edges of both sides of the body at once would be two
  const pieces = new Set(set.armhole.map(({ piece }) => piece));
  if (pieces.size < 2) return [];
  const height = heightOf(sewnPath(edge));
  const share = height / set.ring;
  const range = usualRange(pattern, HEIGHT);
  if (share < SET_IN || isUsual(range, share)) return [];
  const { unit } = pattern;
  const low = share < range.low;
  const message = say`The head of ${head!.piece} is ${printLength(height, unit)} high over an armhole of ${printLength(set.ring, unit)}: ${Math.round(share * 1000) / 10}%; ${rangeInWords(range, unit)}. ${
    low
      ? say`A flat head lifts well and falls in folds when the arm hangs: raise it and narrow the sleeve, if that is not meant.`
      : say`A high head hangs smoothly and binds when the arm is lifted: lower it and widen the sleeve.`
  }`;
  return [
    finding('sleeve-height', { statement: seam.statement, at: head!.at }, message, { piece: head!.piece }),
  ];
}

/** Farthest from the line through both ends, mm. */
function heightOf(path: Path): number {
  const along = normalised(subtract(path.end, path.start));
  if (along === undefined) return 0;
  const across = { x: -along.y, y: along.x };
  return Math.max(...path.polyline(0.1).map((p) => Math.abs(dot(subtract(p, path.start), across))));
}

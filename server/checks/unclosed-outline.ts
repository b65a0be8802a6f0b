/** Finds outlines with a gap: a run that does not start where the last ended, or an end that is not the start. */
import { say } from '../../grammar/say';
import type { EdgeNode, Run } from '../../grammar/syntax';
import type { Finding, Fix, Related } from '../drafting/finding';
import type { Gap, Pattern, Piece } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { compassWord } from './words';

export const unclosedOutline: Judged = {
  code: 'unclosed-outline',
  severity: 'error',
  title: 'An outline with a gap',
  by: 'judgement',
  firm: true,
  // names the draft's points, which may change while the piece stays the same: judged anew, as gaps are few
  ofPattern: (pattern) =>
    pattern.pieces.flatMap((piece) =>
      piece.gaps.map((gap) => ({ source: piece.source, finding: gapFinding(piece, gap, pattern) })),
    ),
};

function gapFinding(piece: Piece, gap: Gap, pattern: Pattern): Finding {
  const size = printLength(gap.size, pattern.unit);
  const way = compassWord(gap.from, gap.to);
  const whole = gap.hole === undefined ? piece.name : say`the hole ${gap.hole} in ${piece.name}`;
  const message = gap.closing
    ? say`The outline of ${whole} does not come back to its start: after ${gap.before} there is a gap of ${size}, and the start lies ${way}.`
    : say`The outline of ${whole} has a gap of ${size}: ${gap.before} ends, and ${gap.after} goes on ${way}${way.includes('to the') ? say` of it` : say` it`}.`;
  return finding('unclosed-outline', gap, message, {
    piece: piece.name,
    related: ends(piece, gap, pattern),
    fixes: [...fixes(piece, gap, pattern)],
  });
}

/** A named point of the draft. */
interface Named {
  readonly name: string;
  readonly source: string;
}

/** A point lies at an end of the gap when it is no further away than a sharp pencil can tell, mm. */
const THERE = 0.05;

/** The point of the draft that lies at a place, if one does. */
function pointAt(piece: Piece, place: { x: number; y: number }, pattern: Pattern): Named | undefined {
  const key = piece.source.slice(0, piece.source.length - piece.base.length);
  const prefix = `${piece.draft}.`;
  const there = ({ x, y }: { x: number; y: number }): boolean =>
    Math.hypot(x - place.x, y - place.y) <= THERE;
  const corner = piece.corners.find(({ point }) => there(point));
  if (corner !== undefined)
    return { name: corner.name, source: `${key}${prefix.slice(0, -1)}/${corner.name}` };
  for (const [path, shape] of pattern.shapes) {
    if (shape.kind !== 'point' || !path.startsWith(prefix) || !there(shape.point)) continue;
    const name = path.slice(prefix.length);
    return { name, source: `${key}${prefix.slice(0, -1)}/${name}` };
  }
  return undefined;
}

/** Both ends of the gap, by the points that lie there, else by the edges. */
function ends(piece: Piece, gap: Gap, pattern: Pattern): readonly Related[] {
  const edge = (name: string): string => `${piece.source}/${name}`;
  return [
    {
      source: pointAt(piece, gap.from, pattern)?.source ?? edge(gap.before),
      message: say`The outline arrives here.`,
    },
    {
      source: pointAt(piece, gap.to, pattern)?.source ?? edge(gap.after),
      message: gap.closing ? say`It should come back to here.` : say`It goes on from here.`,
    },
  ];
}

function* fixes(piece: Piece, gap: Gap, pattern: Pattern): Iterable<Fix> {
  const to = pointAt(piece, gap.to, pattern)?.name;
  if (to === undefined) return;
  const runsOf = ({ node }: { node: unknown }): EdgeNode['runs'] => (node as EdgeNode).runs;
  if (gap.closing) {
    const runs = runsOf(gap.statement);
    yield addRun(gap, say`Add a straight edge back to ${to}`, `\n    closing straight to ${to}`);
    const last = runs[runs.length - 1]!;
    if (last.kind === 'straight') yield endAt(gap, last, to);
    return;
  }
  const before = everyEdge(piece).find(({ name }) => name === gap.before);
  if (before === undefined || before.statement === gap.statement) return;
  const end = before.statement.text.trimEnd().length;
  yield {
    title: say`Run ${gap.before} straight on to ${to}`,
    edits: [{ statement: before.statement, at: { from: end, to: end }, text: ` then straight to ${to}` }],
  };
  const runs = runsOf(before.statement);
  const last = runs[runs.length - 1]!;
  if (last.kind !== 'straight') return;
  yield {
    title: say`End ${gap.before} at ${to}`,
    edits: [{ statement: before.statement, at: last.to.at, text: to }],
  };
}

function addRun(gap: Gap, title: string, text: string): Fix {
  const end = gap.statement.text.trimEnd().length;
  return { title, edits: [{ statement: gap.statement, at: { from: end, to: end }, text }] };
}

const endAt = (gap: Gap, last: Run, start: string): Fix => ({
  title: say`End ${gap.before} at ${start}`,
  edits: [{ statement: gap.statement, at: last.to.at, text: start }],
});

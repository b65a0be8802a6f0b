/** Finds outlines with a gap: a run that does not start where the last ended, or an end that is not the start. */
import type { EdgeNode, Run } from '../../grammar/syntax';
import type { Finding, Fix, Related } from '../drafting/finding';
import type { Gap, Pattern, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { compassWord } from './words';

export const unclosedOutline: Judged = {
  code: 'unclosed-outline',
  severity: 'error',
  title: 'An outline with a gap',
  by: 'judgement',
  ofPiece: (piece, pattern) => piece.gaps.map((gap) => gapFinding(piece, gap, pattern)),
};

function gapFinding(piece: Piece, gap: Gap, pattern: Pattern): Finding {
  const size = printLength(gap.size, pattern.unit);
  const way = compassWord(gap.from, gap.to);
  const message = gap.closing
    ? `The outline of ${piece.name} does not come back to its start: after ${gap.before} there is a gap of ${size}, and the start lies ${way}.`
    : `The outline of ${piece.name} has a gap of ${size}: ${gap.before} ends, and ${gap.after} goes on ${way} of it.`;
  return finding('unclosed-outline', gap, message, {
    piece: piece.name,
    related: ends(piece, gap),
    fixes: [...fixes(piece, gap)],
  });
}

/** Both ends of the gap, by the points that are nearest to them. */
function ends(piece: Piece, gap: Gap): readonly Related[] {
  return [
    { source: sourceOf(piece, gap.from), message: 'The outline arrives here.' },
    { source: sourceOf(piece, gap.to), message: gap.closing ? 'It should come back to here.' : 'It goes on from here.' },
  ];
}

const nearestCorner = (piece: Piece, to: { x: number; y: number }): string =>
  piece.corners.reduce(
    (best, { name, point }) => {
      const away = Math.hypot(point.x - to.x, point.y - to.y);
      return away < best.away ? { name, away } : best;
    },
    { name: '', away: Infinity },
  ).name;

/** A named corner is a point of the draft. */
const sourceOf = (piece: Piece, point: { x: number; y: number }): string => {
  const key = piece.source.slice(0, piece.source.length - piece.base.length);
  return `${key}${piece.draft}/${nearestCorner(piece, point)}`;
};

function* fixes(piece: Piece, gap: Gap): Iterable<Fix> {
  const node = gap.statement.node as EdgeNode;
  const last = node.runs[node.runs.length - 1]!;
  if (gap.closing) {
    const start = nearestCorner(piece, gap.to);
    yield addRun(gap, `Add a straight edge back to ${start}`, `\n    closing straight to ${start}`);
    yield endAt(gap, last, start);
    return;
  }
  const to = nearestCorner(piece, gap.to);
  const before = piece.edges.find(({ name }) => name === gap.before);
  if (before === undefined || before.statement === gap.statement) return;
  const end = before.statement.text.trimEnd().length;
  yield {
    title: `Run ${gap.before} straight on to ${to}`,
    edits: [{ statement: before.statement, at: { from: end, to: end }, text: ` then straight to ${to}` }],
  };
  const runs = (before.statement.node as EdgeNode).runs;
  const lastBefore = runs[runs.length - 1]!;
  if (lastBefore.kind === 'straight') {
    yield {
      title: `End ${gap.before} at ${to}`,
      edits: [{ statement: before.statement, at: lastBefore.to.at, text: to }],
    };
  }
}

function addRun(gap: Gap, title: string, text: string): Fix {
  const end = gap.statement.text.trimEnd().length;
  return { title, edits: [{ statement: gap.statement, at: { from: end, to: end }, text }] };
}

const endAt = (gap: Gap, last: Run, start: string): Fix => ({
  title: `End ${gap.before} at ${start}`,
  edits: [{ statement: gap.statement, at: last.to.at, text: start }],
});

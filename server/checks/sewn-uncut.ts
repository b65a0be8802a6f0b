/** Finds seams, finishes and notches of a piece that is not cut, because others were made of it. */
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { Notch, Pattern, Piece, SewnEdge } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { finding, type Judged } from './check';
import { replacedBy } from './made-of';
import { nameOfPiece } from './places';
import { listed } from './words';

export const sewnUncut: Judged = {
  code: 'sewn-uncut',
  severity: 'warning',
  title: 'A seam, finish or notch of a piece that is not cut',
  by: 'judgement',
  ofPattern: (pattern) => {
    const steps = stepsOf(pattern.pieces);
    if (steps.size === 0) return [];
    const { seams, finishes } = pattern;
    return [
      ...seams.flatMap(({ left, right, ...seam }) => ofEdges([...left, ...right], seam, steps, ' + ')),
      ...finishes.flatMap(({ edges, ...finish }) => ofEdges(edges, finish, steps, ', ')),
      ...[...steps.values()].flatMap((step) => step.piece.notches.map((notch) => ofNotch(step, notch))),
    ];
  },
};

/** A piece that is not cut, and the pieces that are cut in its place. */
interface Step {
  readonly piece: Piece;
  readonly cut: readonly Piece[];
}

const kept = new WeakMap<readonly Piece[], ReadonlyMap<string, Step>>();

function stepsOf(pieces: readonly Piece[]): ReadonlyMap<string, Step> {
  const before = kept.get(pieces);
  if (before !== undefined) return before;
  const made = new Map<string, Piece[]>();
  for (const piece of pieces.filter(({ side }) => side !== 'left'))
    for (const base of replacedBy(piece.statement.node)) made.set(base, [...(made.get(base) ?? []), piece]);
  const cutOf = (base: string, seen: readonly string[]): readonly Piece[] =>
    (made.get(base) ?? []).flatMap((piece) =>
      piece.cut !== undefined
        ? [piece]
        : seen.includes(piece.base)
          ? []
          : cutOf(piece.base, [...seen, piece.base]),
    );
  const found = new Map<string, Step>();
  for (const piece of pieces) {
    const cut = piece.cut === undefined ? cutOf(piece.base, [piece.base]) : [];
    if (cut.length > 0) found.set(piece.base, { piece, cut: [...new Set(cut)] });
  }
  kept.set(pieces, found);
  return found;
}

type Sewing = Pick<Pattern['seams'][number], 'name' | 'source' | 'statement'>;

function ofEdges(
  edges: readonly SewnEdge[],
  { source, statement }: Sewing,
  steps: ReadonlyMap<string, Step>,
  between: string,
): readonly SourcedFinding[] {
  return edges.flatMap((edge): SourcedFinding[] => {
    const step = steps.get(edge.piece);
    if (step === undefined || statement.node.kind === 'divide') return [];
    const names = inPlaceOf(step, edge.edge);
    const text = names.join(between);
    const message = `${onTheWay(step)}. Name ${listed(names) || 'an edge of it'} instead of ${edge.piece}.${edge.edge}.`;
    const whole = edge.stretch === undefined && (between === ', ' || names.length === 1);
    const fixes =
      names.length > 0 && whole ? [{ title: `Name ${text}`, edits: [{ statement, at: edge.at, text }] }] : [];
    return [{ source, finding: finding('sewn-uncut', { statement, at: edge.at }, message, { fixes }) }];
  });
}

function ofNotch(step: Step, notch: Notch): SourcedFinding {
  const { piece } = step;
  const place = listed(inPlaceOf(step, notch.edge), 'or') || 'what is cut';
  const message = `${onTheWay(step)}, and it has not got the notch ${notch.name}. Place it on ${place} instead of ${piece.base}.${notch.edge}.`;
  const found: Finding = finding('sewn-uncut', nameOfPiece(piece), message, {
    piece: piece.name,
    related: [{ source: notch.source, message: `${notch.name} is placed here.` }],
  });
  return { source: piece.source, finding: found };
}

/** What bears the edge's name on the pieces that are cut, or is what a cut left of it. */
const inPlaceOf = ({ cut }: Step, edge: string): readonly string[] =>
  cut.flatMap((piece) =>
    everyEdge(piece).flatMap(({ name }) =>
      name === edge || name === `${edge}-further` ? [`${piece.base}.${name}`] : [],
    ),
  );

const onTheWay = ({ piece, cut }: Step): string =>
  `${piece.base} is a step on the way: what is cut is ${listed(cut.map(({ base }) => base))}`;

/** Finds seams, finishes and notches of a piece that is not cut, because others were made of it. */
import { say } from '../../grammar/say';
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { Notch, Pattern, SewnEdge } from '../drafting/model';
import { finding, type Judged } from './check';
import { inPlaceOf, stepsOf, type Step } from './made-of';
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
    const names = namesInPlaceOf(step, edge.edge);
    const text = names.join(between);
    const message = say`${onTheWay(step)}. Name ${listed(names) || say`an edge of it`} instead of ${edge.piece}.${edge.edge}.`;
    const whole = edge.stretch === undefined && (between === ', ' || names.length === 1);
    const fixes =
      names.length > 0 && whole
        ? [{ title: say`Name ${text}`, edits: [{ statement, at: edge.at, text }] }]
        : [];
    return [{ source, finding: finding('sewn-uncut', { statement, at: edge.at }, message, { fixes }) }];
  });
}

function ofNotch(step: Step, notch: Notch): SourcedFinding {
  const { piece } = step;
  const place = listed(namesInPlaceOf(step, notch.edge), say`or`) || say`what is cut`;
  const message = say`${onTheWay(step)}, and it has not got the notch ${notch.name}. Place it on ${place} instead of ${piece.base}.${notch.edge}.`;
  const found: Finding = finding('sewn-uncut', nameOfPiece(piece), message, {
    piece: piece.name,
    related: [{ source: notch.source, message: say`${notch.name} is placed here.` }],
  });
  return { source: piece.source, finding: found };
}

const namesInPlaceOf = (step: Step, edge: string): readonly string[] =>
  inPlaceOf(step, edge).map((one) => `${one.piece}.${one.edge}`);

const onTheWay = ({ piece, cut }: Step): string =>
  say`${piece.base} is a step on the way: what is cut is ${listed(cut.map(({ base }) => base))}`;

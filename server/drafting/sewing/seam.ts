/** Reads a seam: both sides' sewn lengths, what is eased, stretched or gathered, and how far the two may differ. */
import { say } from '../../../grammar/say';
import type { Ease, SeamNode } from '../../../grammar/syntax';
import type { Seam } from '../model';
import type { SeamCourse } from '../sewing-model';
import { widthOf } from '../values/arithmetic';
import { report, type Reader } from '../values/reader';
import { sideLength } from './course';
import { askedEase, differenceAfter, sharedEase } from './easing';
import { presentEdges, type TakenEdge } from './edges';
import { readOpenings } from './opening';
import { paired, type PairedEdge, type Runs } from './pairing';
import { isBand, ringLength } from './ring';
import type { NamedNotch } from './seam-places';

export interface SeamRequest {
  readonly name: string;
  readonly source: string;
  /** The file's own `tolerance`, when it has one. */
  readonly tolerance?: number;
  readonly pairedEdge: PairedEdge;
  readonly notch: NamedNotch;
}

/** Two sewn edges may differ by this much, or by a quarter of a hundredth of their length, but never by more than LARGEST (common practice: 1 to 1.5 mm on paper, 3 mm on a long seam). */
const SMALLEST = 1;
const SHARE = 0.0025;
const LARGEST = 3;

export const usualTolerance = (length: number): number =>
  Math.min(LARGEST, Math.max(SMALLEST, SHARE * length));

export function readSeam(reader: Reader, node: SeamNode, request: SeamRequest): Seam | undefined {
  const left = presentEdges(reader, node.left.parts);
  const right = node.right === 'its-pair' ? [] : presentEdges(reader, node.right.parts);
  const within = statedTolerance(reader, node.eases);
  const asked = askedEase(reader, node);
  if (left === undefined || right === undefined || asked === undefined) return undefined;
  if (sewnToItself(reader, left, right)) return undefined;
  const itsPair = node.right === 'its-pair';
  const round = isBand(left) || isBand(right);
  const leftLength = round ? ringOf(left) : sum(left);
  const rightLength = itsPair ? leftLength : round ? ringOf(right) : sum(right);
  const tolerance = within ?? request.tolerance ?? usualTolerance(Math.max(leftLength, rightLength));
  const whole = [...left, ...right].every(
    (edge) => edge.of.unbuilt.length === 0 && edge.of.gaps.length === 0,
  );
  const seam: Seam = {
    name: request.name,
    source: request.source,
    statement: reader.statement,
    left,
    right,
    itsPair,
    leftLength,
    rightLength,
    difference: itsPair ? 0 : differenceAfter(asked, { left, right, leftLength, rightLength }),
    tolerance,
    toleranceStated: within !== undefined || request.tolerance !== undefined,
    comparable: whole,
  };
  if (round) return withoutCourse(reader, node, seam);
  const course = courseOf(reader, node, left, right, request);
  return course === undefined ? withoutCourse(reader, node, seam) : { ...seam, ...course };
}

/** What is sewn on what, and where the seam opens; undefined where its ends can't be told. */
function courseOf(
  reader: Reader,
  node: SeamNode,
  left: readonly TakenEdge[],
  right: readonly TakenEdge[],
  { pairedEdge, notch }: SeamRequest,
): Pick<Seam, 'course' | 'openings'> | undefined {
  const runs = paired(left, right, pairedEdge);
  if (runs === undefined) return undefined;
  const taken = [...left, ...right];
  const course = coursed(reader, node, taken, runs, notch);
  // an opening may be named on the eased side: it ends where the ease puts it on the other
  return course === undefined
    ? {}
    : { course, openings: readOpenings(reader, node, { taken, course, notch }) };
}

function coursed(
  reader: Reader,
  node: SeamNode,
  taken: readonly TakenEdge[],
  runs: Runs,
  notch: NamedNotch,
): SeamCourse | undefined {
  if (node.right !== 'its-pair') {
    const meets = sharedEase(reader, node, taken, runs, notch);
    return meets && { ...runs, meets };
  }
  const length = sideLength(runs.left);
  const meets = [
    { left: 0, right: 0 },
    { left: length, right: length },
  ];
  return { left: runs.left, right: runs.left, meets };
}

/** Says so where the seam asks for something that needs its ends to be told apart. */
function withoutCourse(reader: Reader, node: SeamNode, seam: Seam): Seam {
  const [part] = node.openings.filter(({ from }) => from !== undefined);
  const between = node.eases.find((ease) => ease.kind === 'easing' && ease.between !== undefined);
  const needs = part ?? between;
  if (needs === undefined || seam.right.some(({ of }) => of?.statement.node.kind === 'band')) return seam;
  report(reader, 'which-end', needs.at, whichEnd(seam));
  return seam;
}

/** How to say which ends are sewn together. */
export function whichEnd({ name, left, right }: Seam): string {
  const [a, b] = [left[0]!, right[0] ?? left[0]!];
  return say`It can't be told which end of ${a.piece}.${a.edge} is sewn to which end of ${b.piece}.${b.edge}, so places along ${name} can't be had. Say both ends of each, such as ${a.piece}.${a.edge} from P to Q, or turn one about: ${b.piece}.${b.edge} reversed.`;
}

/** `seam f.side = f.side`: cloth can't be sewn to the very place where it lies. */
function sewnToItself(reader: Reader, left: readonly TakenEdge[], right: readonly TakenEdge[]): boolean {
  const twice = right.find((b) => left.some((a) => a.source === b.source && overlap(a, b)));
  if (twice === undefined) return false;
  const edge = `${twice.piece}.${twice.edge}`;
  report(
    reader,
    'sewn-to-itself',
    twice.at,
    say`${edge} is sewn to itself here. If it is sewn to the same edge of the piece's mirrored twin, write its pair; otherwise name the edge it is sewn to.`,
    {
      fixes:
        left.length === 1 && right.length === 1
          ? [
              {
                title: say`Sew it to its pair`,
                edits: [{ statement: reader.statement, at: twice.at, text: say`its pair` }],
              },
            ]
          : [],
    },
  );
  return true;
}

const overlap = ({ run: a }: TakenEdge, { run: b }: TakenEdge): boolean =>
  Math.min(Math.max(a.from, a.to), Math.max(b.from, b.to)) -
    Math.max(Math.min(a.from, a.to), Math.min(b.from, b.to)) >
  0.05;

const sum = (edges: readonly TakenEdge[]): number => edges.reduce((total, edge) => total + edge.length, 0);

/** Round the body; of a band without what laps under. */
const ringOf = (edges: readonly TakenEdge[]): number =>
  isBand(edges)
    ? edges.reduce((total, edge) => total + edge.length - (edge.of.underlap ?? 0), 0)
    : ringLength(edges);

function statedTolerance(reader: Reader, eases: readonly Ease[]): number | undefined {
  for (const ease of eases) {
    if (ease.kind === 'within') return widthOf(reader, ease.by, 'within');
  }
  return undefined;
}

/** Finds seams whose two sides differ in sewn length by more than can be sewn away. */
import { say } from '../../grammar/say';
import type { SeamNode } from '../../grammar/syntax';
import type { Finding, Fix, Related } from '../drafting/finding';
import type { Pattern, Seam, SewnEdge } from '../drafting/model';
import type { SeamRun } from '../drafting/sewing-model';
import { edgeNamed, sideLength } from '../drafting/sewing/course';
import { printLength, printLengthFine } from '../drafting/values/quantity';
import type { AroundSeam } from './around';
import { finding, type Judged } from './check';
import { notchPairs } from './matched-notches';
import { lineBelow } from './places';
import { listed } from './words';

export const mismatchedSeam: Judged = {
  code: 'mismatched-seam',
  severity: 'error',
  title: 'Two edges that are sewn together but differ in length',
  by: 'judgement',
  ofSewnSeam: (seam, around) => (matches(seam) ? [] : [mismatch(seam, around)]),
};

/** A hair on top of the tolerance, so that a difference of exactly the tolerance passes whatever the rounding. */
const ROUNDING = 1e-6;

export const matches = (seam: Seam): boolean =>
  !seam.comparable || seam.itsPair || Math.abs(seam.difference) <= seam.tolerance + ROUNDING;

const names = (edges: readonly SewnEdge[]): string =>
  edges.map(({ piece, edge }) => `${piece}.${edge}`).join(' + ');

function mismatch(seam: Seam, around: AroundSeam): Finding {
  const { unit } = around;
  const { node } = seam.statement;
  const off = printLength(Math.abs(seam.difference), unit);
  const longer = seam.difference > 0 ? seam.right : seam.left;
  const eased = node.kind === 'seam' && node.eases.some(({ kind }) => kind !== 'within');
  const over = eased ? say`${off} longer than the seam asks for` : say`${off} too long`;
  const tolerance = printLength(seam.tolerance, unit);
  const message = say`${names(seam.left)} is ${printLengthFine(seam.leftLength, unit)} long, ${names(seam.right)} ${printLengthFine(seam.rightLength, unit)}: ${names(longer)} is ${over} (${tolerance} is allowed).${eased ? '' : whereWrong(seam, around)}${halved(seam)}`;
  const found = finding('mismatched-seam', { statement: seam.statement, at: seam.left[0]!.at }, message, {
    piece: seam.left[0]!.piece,
    related: others(seam, unit),
  });
  return withFixes(found, () => (node.kind === 'seam' ? fixes(seam, node, around) : sewnUp(seam, around)));
}

/** A half that lies on the fold, sewn to the whole of something else. */
function halved({ left, right, leftLength, rightLength, tolerance }: Seam): string {
  const [short, long] = leftLength < rightLength ? [left, right] : [right, left];
  const [less, more] = [Math.min(leftLength, rightLength), Math.max(leftLength, rightLength)];
  const onFold = short.filter(({ of }) => of?.fold !== undefined);
  const isHalf = onFold.length === short.length && Math.abs(2 * less - more) <= 2 * tolerance;
  if (!isHalf || long.some(({ of }) => of?.fold !== undefined)) return '';
  const pieces = listed([...new Set(onFold.map(({ piece }) => piece))]);
  return say` ${pieces} lies on the fold and is a half: sew it to half of ${names(long)} (from an end to its middle).`;
}

/** Fixes that are worked out when somebody asks for them: trying lengths costs more than a keystroke may. */
function withFixes(found: Finding, make: () => readonly Fix[]): Finding {
  let made: readonly Fix[] | undefined;
  return {
    ...found,
    get fixes() {
      return (made ??= make());
    },
  };
}

/** Every other edge of the seam, with its length. */
function others(seam: Seam, unit: Pattern['unit']): readonly Related[] {
  const lengths = [...seam.left.slice(1), ...seam.right].map(({ source, piece, edge, length }) => ({
    source,
    message: say`${piece}.${edge} is ${printLengthFine(length, unit)} long.`,
  }));
  return [...lengths, ...movable(seam.difference > 0 ? seam.right : seam.left)];
}

/** The named corners that would move if the longer edges were shortened. */
function movable(longer: readonly SewnEdge[]): readonly Related[] {
  return longer.flatMap(({ source, piece, edge, of }) => {
    const found = of && edgeNamed(of, edge);
    const ends = [found?.fromName ?? '', found?.toName ?? ''].filter((name) => name !== '');
    if (ends.length === 0) return [];
    const which = ends.length === 1 ? say`the named end of` : say`the ends of`;
    return [{ source, message: say`${listed(ends)}: ${which} ${piece}.${edge}, where it can be shortened.` }];
  });
}

/** Less than this between two notches is drawing, not a fault, mm. */
const SLIGHT = 0.5;

/** Where both sides carry notches for each other: the stretches between them that differ, and that the others do not. */
function whereWrong(seam: Seam, around: AroundSeam): string {
  const { course, left, right } = seam;
  const pairs = notchPairs(around, seam).filter((pair) => pair.left.notch.source !== pair.right.notch.source);
  if (course === undefined || pairs.length === 0) return '';
  const [first, last] = [endName(left, course.left[0]!, 'from'), endName(left, course.left.at(-1)!, 'to')];
  const places = [
    { name: first, left: 0, right: 0 },
    ...pairs.map((pair) => ({ name: pair.left.notch.name, left: pair.left.at, right: pair.right.at })),
    { name: last, left: sideLength(course.left), right: sideLength(course.right) },
  ];
  const wrong = places.slice(1).flatMap((to, i) => {
    const from = places[i]!;
    const off = to.right - from.right - (to.left - from.left);
    if (Math.abs(off) < SLIGHT) return [];
    const longer = names(off > 0 ? right : left);
    return [
      say`between ${from.name} and ${to.name}, where ${longer} is ${printLength(Math.abs(off), around.unit)} longer`,
    ];
  });
  return wrong.length === 0 ? '' : say` By their notches it goes wrong ${wrong.join(say`, and `)}.`;
}

function endName(edges: readonly SewnEdge[], run: SeamRun, end: 'from' | 'to'): string {
  const of = edges.find(({ piece, edge }) => piece === run.piece && edge === run.edge)?.of;
  const edge = of && edgeNamed(of, run.edge);
  const name = run[end] < SLIGHT ? edge?.fromName : edge?.toName;
  return name || say`the end`;
}

function fixes(seam: Seam, node: SeamNode, around: AroundSeam): readonly Fix[] {
  const off = Math.abs(seam.difference);
  const end = endOfEdges(node);
  const found: Fix[] = [...around.closingFixes(seam)];
  if (off <= LARGEST_EASE && node.eases.length === 0) {
    const longer = seam.difference > 0 ? seam.right : seam.left;
    if (longer.length === 1) {
      const text = ` easing ${upward(off, around)} of ${longer[0]!.piece}`;
      found.push({
        title: say`Ease the surplus:${text}`,
        edits: [{ statement: seam.statement, at: end, text }],
      });
    }
  }
  if (off <= LARGEST_PASSED && !node.eases.some(({ kind }) => kind === 'within')) {
    const text = ` within ${upward(off, around)}`;
    found.push({
      title: say`Allow the difference:${text}`,
      edits: [{ statement: seam.statement, at: end, text }],
    });
  }
  return found;
}

/** A cut that is sewn up by itself says nothing of ease: a line of its own can. */
function sewnUp({ name, statement, left, right, difference }: Seam, around: AroundSeam): readonly Fix[] {
  const off = Math.abs(difference);
  const [one, other] = [left[0]!, right[0]!];
  if (off > LARGEST_EASE || statement.inside !== 'file') return [];
  const eased = (difference > 0 ? other : one).piece;
  const line = `seam ${name} ${one.piece}.${one.edge} = ${other.piece}.${other.edge} easing ${upward(off, around)} of ${eased}`;
  return [{ title: say`Sew the cut with ease: ${line}`, edits: [lineBelow(statement, line)] }];
}

/** More than this is no difference that can be let pass, mm: it shows on every seam (common practice). */
const LARGEST_PASSED = 10;

/** More than this is no ease but another garment (common practice: a sleeve head takes 2 to 4 cm). */
const LARGEST_EASE = 40;

/** A length rounded up to a tenth of a millimetre, as it would be written. */
function upward(mm: number, { unit }: Pick<Pattern, 'unit'>): string {
  if (unit === 'in') return `${Math.ceil((mm / 25.4) * 1000) / 1000}in`;
  return `${Math.ceil(mm * 10 - 1e-6) / 10}mm`;
}

/** Where ease is written: after the last edge or the ease that is there already. */
function endOfEdges(node: SeamNode): { from: number; to: number } {
  const at =
    node.eases[node.eases.length - 1]?.at.to ?? (node.right === 'its-pair' ? node.at.to : node.right.at.to);
  return { from: at, to: at };
}

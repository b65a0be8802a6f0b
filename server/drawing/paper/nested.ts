/**
 * A nest of sizes as it is printed. What is alike in all sizes is said once; the lengths of an edge are said in the order of
 * the sizes.
 */
import { say } from '../../../grammar/say';
import type { Pattern } from '../../drafting/model';
import { draw } from '../draw';
import type { PieceDrawing } from '../model';
import { nest, type Sized } from '../nest';
import { linesInSizes } from '../nest-label';
import type { EdgeFacts, PieceFacts } from './facts';
import { joined } from './lettering';
import { factsOfAll, letteredWhole, type Printed, type PrintedOptions } from './printed';

/** A pattern as it is printed for one size. */
export interface SizedFacts extends Sized {
  /** By the names of the pieces. */
  readonly facts: ReadonlyMap<string, PieceFacts>;
}

/** @param sizes all of those that will lie on one another */
export function sizedFacts(
  pattern: Pattern,
  size: string,
  sizes: readonly string[],
  options: PrintedOptions,
): SizedFacts {
  const drawing = draw(pattern);
  const table = drawing.body.endsWith(` ${size}`) ? drawing.body.slice(0, -size.length - 1) : drawing.body;
  const facts = factsOfAll(pattern, { ...options, body: say`${table}, sizes ${sizes.join(', ')}` });
  return { size, drawing, facts: new Map(drawing.pieces.map(({ name }, i) => [name, facts[i]!])) };
}

export function nested(sized: readonly SizedFacts[], options: PrintedOptions): Printed {
  return letteredWhole(nest(sized), (piece) => merged(piece, sized), options);
}

/** The words of all sizes, once where they are alike, and their lengths. */
function merged({ name, texts }: PieceDrawing, sized: readonly SizedFacts[]): PieceFacts {
  const having = sized.filter(({ facts }) => facts.has(name));
  const all = having.map(({ facts }) => facts.get(name)!);
  const [first] = all;
  const lines = linesInSizes(
    all.map((one) => one.lines),
    having.map(({ size }) => size),
  );
  const edges = first!.edges.map((edge, i) =>
    mergedEdge(
      edge,
      all.flatMap((one) => one.edges[i] ?? []),
    ),
  );
  const kept = texts.filter(({ role }) => role === 'size' || role === 'note');
  const said = first!.placed.filter(({ role }) => role !== 'note');
  return { ...first!, lines, edges, marks: [], placed: [...kept, ...said] };
}

function mergedEdge(edge: EdgeFacts, all: readonly EdgeFacts[]): EdgeFacts {
  const figure = ({ length }: EdgeFacts): string => length.slice(edge.name.length + 1);
  // without a dart in some of them, each size is told by itself
  const isAlike = new Set(all.map(({ onPaper }) => onPaper === '')).size === 1;
  const lengths = inSizes(all.map((one) => (isAlike ? figure(one) : joined(figure(one), one.onPaper))));
  const onPaper = isAlike ? wordsInSizes(all.map((one) => one.onPaper)) : '';
  const partners = [...new Set(all.map(({ partner }) => partner))];
  // what is sewn to it is alike in all sizes; how much is eased is not
  const partner =
    partners.length === 1 ? partners[0]! : wordsInSizes(all.map(({ plainPartner }) => plainPartner));
  const allowed = wordsInSizes(all.map((one) => one.allowed));
  return { ...edge, length: `${edge.name} ${lengths}`, onPaper, partner, allowed, inLabel: true };
}

/** Once where all sizes are alike, else of each in its order. */
const inSizes = (figures: readonly string[]): string =>
  new Set(figures).size === 1 ? figures[0]! : figures.join(' / ');

/** What is told alike but for its figures is told once with all of these: "a zip over 18.4cm / 19cm / 20cm". */
function wordsInSizes(all: readonly string[]): string {
  const split = all.map((words) => words.split(' '));
  const [first] = split as [string[], ...string[][]];
  const columns = first.map((_, i) => split.map((words) => words[i] ?? ''));
  const areFigures = columns.every(
    (words) => new Set(words).size === 1 || words.every((one) => /\d/.test(one)),
  );
  if (!areFigures || split.some(({ length }) => length !== first.length)) return inSizes(all);
  return columns
    .map((words) =>
      words[0]!.endsWith(',') ? `${inSizes(words.map((one) => one.slice(0, -1)))},` : inSizes(words),
    )
    .join(' ');
}

/** Hands each kind of definition to the floor that reads it. */
import type { Sewn, Statement } from '../../grammar/syntax';
import type { Value } from './model';
import type { Declaration } from './names/declarations';
import type { OwnParts } from './pieces/parts';
import { readPiece } from './pieces/piece';
import { readShare } from './pieces/working/shares';
import { readBand } from './sewing/band';
import { readFinish } from './sewing/finish';
import { readNotch } from './sewing/notch';
import { readSeam } from './sewing/seam';
import { choice, letValue, namedCircle, namedShape } from './shapes/definitions';
import { condition } from './values/conditions';
import { readExpect } from './values/expect';
import { report, type Answer, type Reader } from './values/reader';

export interface Request {
  /** Path over all files. */
  readonly id: string;
  readonly declaration: Declaration;
  readonly parts: OwnParts;
  /** The value a choice was set to from outside. */
  readonly given?: Value | undefined;
  readonly tolerance?: number | undefined;
  /** For a band: the edges it goes round, where it names a seam. */
  readonly bandEdges: readonly Sewn[];
  /** For a piece: the edge that a seam sews to its pair. */
  readonly pairedEdge: string | undefined;
  /** For a notch on a seam: the edges of that seam. */
  readonly seamEdges: readonly Sewn[];
}

/** @returns undefined when the definition has no value; findings say why, or the reading is blocked */
export function compute(reader: Reader, request: Request): Answer | undefined {
  const { statement } = request.declaration;
  const { node } = statement;
  if ('when' in node && node.when !== undefined) {
    const wanted = condition(reader, node.when);
    if (wanted !== true) return wanted === false ? { is: 'absent' } : undefined;
  }
  switch (node.kind) {
    case 'let':
      return letValue(reader, node.value);
    case 'choose':
      return choice(reader, node, request.given);
    case 'solve':
      return report(
        reader,
        'no-solution',
        node.name.at,
        `Nothing on either side depends on ${node.name.text}, so no value of it can make them equal.`,
      );
    case 'shape':
      return namedShape(reader, node);
    case 'circle':
      return namedCircle(reader, node);
    case 'expect':
      return readExpect(reader, node);
    case 'piece':
    case 'divide':
    case 'band':
      return madePiece(reader, request);
    case 'seam':
    case 'finish':
    case 'notch':
      return sewn(reader, request);
    default:
      return later(reader, statement);
  }
}

function madePiece(reader: Reader, request: Request): Answer | undefined {
  const { id: source, parts, declaration } = request;
  const { statement, name } = declaration;
  const { node } = statement;
  const own = { name, source, statement, parts };
  const piece =
    node.kind === 'divide'
      ? readShare(reader, node, own)
      : node.kind === 'band'
        ? readBand(reader, node, { ...own, edges: request.bandEdges })
        : readPiece(reader, { ...own, paired: request.pairedEdge });
  return piece && { is: 'piece', piece };
}

function sewn(reader: Reader, request: Request): Answer | undefined {
  const { id: source, tolerance, declaration } = request;
  const { name, statement } = declaration;
  const { node } = statement;
  if (node.kind === 'seam') {
    const seam = readSeam(reader, node, { name, source, ...(tolerance !== undefined && { tolerance }) });
    return seam && { is: 'seam', seam };
  }
  if (node.kind === 'finish') {
    const finish = readFinish(reader, node, name, source);
    return finish && { is: 'finish', finish };
  }
  if (node.kind !== 'notch') return undefined;
  const notches = readNotch(reader, node, source, request.seamEdges);
  return notches && { is: 'notch', notches };
}

const LATER: ReadonlyMap<Statement['node']['kind'], string> = new Map<Statement['node']['kind'], string>([
  ['lining', 'Linings'],
  ['join', 'Joined pieces'],
  ['facing', 'Facings'],
  ['strip', 'Strips'],
]);

/** Says plainly of a statement that is read and not built. */
function later(reader: Reader, statement: Statement): undefined {
  const { node } = statement;
  const head = headOf(statement);
  const what =
    node.kind === 'later'
      ? `Statements that begin with ${statement.text.slice(head.from, head.to)}`
      : LATER.get(node.kind);
  if (what === undefined) return undefined;
  return report(
    reader,
    'not-built-yet',
    head,
    `${what} are not built yet: this one is read, but nothing is made of it, and what rests on it is not checked.`,
  );
}

/** The first word of a statement. */
const headOf = ({ text, node }: Statement): { from: number; to: number } => {
  const word = /\S+/.exec(text.slice(node.at.from))?.[0] ?? '';
  return { from: node.at.from, to: node.at.from + word.length };
};

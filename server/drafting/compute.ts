/** Hands each kind of definition to the floor that reads it. */
import type { Sewn, Statement } from '../../grammar/syntax';
import { madePiece } from './made-pieces';
import type { Value } from './model';
import type { Declaration } from './names/declarations';
import type { OwnParts } from './pieces/parts';
import { readAccept } from './sewing/accept';
import { readFinish } from './sewing/finish';
import { readNotch } from './sewing/notch';
import type { PairedEdge } from './sewing/pairing';
import { readSeam } from './sewing/seam';
import type { NamedNotch } from './sewing/seam-places';
import { choice, type Blamed, letValue, namedCircle, namedShape } from './shapes/definitions';
import { condition } from './values/conditions';
import { readTolerance } from './values/tolerance';
import { readExpect } from './values/expect';
import { readUsual } from './values/usual';
import { report, type Answer, type Reader } from './values/reader';

export interface Request {
  /** Path over all files. */
  readonly id: string;
  readonly declaration: Declaration;
  readonly parts: OwnParts;
  /** The value a choice was set to from outside. */
  readonly given?: Value | undefined;
  /** The words of a `use` line that set it, to be blamed for what can't be. */
  readonly givenAt?: Blamed;
  readonly tolerance?: number | undefined;
  /** For a band: the edges it goes round, where it names a seam. */
  readonly bandEdges: readonly Sewn[];
  /** For a piece: the edge that a seam sews to its pair. */
  readonly pairedEdge: string | undefined;
  /** For a notch on a seam: the edges of that seam. */
  readonly seamEdges: readonly Sewn[];
  /** For a seam: the edge of a piece that is sewn to its pair, and the notch of a name. */
  readonly pairedEdgeOf: PairedEdge;
  readonly notch: NamedNotch;
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
      return choice(reader, node, request.given, request.givenAt);
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
    case 'usual':
      return readUsual(reader, node);
    case 'tolerance':
      return readTolerance(reader, node.value);
    case 'accept':
      return readAccept(reader, node);
    case 'piece':
    case 'lining':
    case 'divide':
    case 'join':
    case 'facing':
    case 'band':
    case 'strip':
      return made(reader, request);
    case 'seam':
    case 'finish':
    case 'notch':
      return sewn(reader, request);
    default:
      return later(reader, statement);
  }
}

function made(reader: Reader, { id: source, declaration, ...more }: Request): Answer | undefined {
  const { statement, name } = declaration;
  const piece = madePiece(reader, { ...more, name, source, statement });
  return piece && { is: 'piece', piece };
}

function sewn(reader: Reader, request: Request): Answer | undefined {
  const { id: source, tolerance, declaration, notch } = request;
  const { name, statement } = declaration;
  const { node } = statement;
  if (node.kind === 'seam') {
    const limits = tolerance === undefined ? {} : { tolerance };
    const seam = readSeam(reader, node, { name, source, ...limits, pairedEdge: request.pairedEdgeOf, notch });
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

/** Says plainly of a statement that is read and not built. */
function later(reader: Reader, statement: Statement): undefined {
  const { node } = statement;
  const head = headOf(statement);
  if (node.kind !== 'later') return undefined;
  const what = `Statements that begin with ${statement.text.slice(head.from, head.to)}`;
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

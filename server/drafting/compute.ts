/** Hands each kind of definition to the floor that reads it. */
import { say } from '../../grammar/say';
import type { Statement } from '../../grammar/syntax';
import { madePiece } from './made-pieces';
import type { Value } from './model';
import type { Declaration } from './names/declarations';
import type { FileNames } from './names/files';
import { madeOf } from './passed-on';
import { bandEdges, namedNotch, notchedEdges } from './names/links';
import { pairedEdge, selfSewn } from './names/self-sewn';
import type { OwnParts } from './pieces/parts';
import { readAccept } from './sewing/accept';
import { readFinish } from './sewing/finish';
import { readNotch } from './sewing/notch';
import { readSeam } from './sewing/seam';
import { choice, type Blamed, letValue, namedCircle, namedShape } from './shapes/definitions';
import { condition } from './values/conditions';
import { readTolerance } from './values/tolerance';
import { readExpect } from './values/expect';
import { readUsual } from './values/usual';
import { report, type Answer, type Reader } from './values/reader';

export interface Request {
  /** Path over all files. */
  readonly id: string;
  readonly file: FileNames;
  readonly declaration: Declaration;
  readonly parts: OwnParts;
  /** The value a choice was set to from outside. */
  readonly given?: Value | undefined;
  /** The words of a `use` line that set it, to be blamed for what can't be. */
  readonly givenAt?: Blamed;
  readonly tolerance?: number | undefined;
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
        say`Nothing on either side depends on ${node.name.text}, so no value of it can make them equal.`,
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

function made(reader: Reader, { id: source, file, declaration, parts }: Request): Answer | undefined {
  const { statement, name } = declaration;
  const gone = madeOf(statement.node).some((of) => of.kind === 'ref' && reader.isAbsent(of));
  if (gone) return { is: 'absent' };
  const piece = madePiece(reader, {
    name,
    source,
    statement,
    parts,
    bandEdges: bandEdges(file, statement),
    pairedEdge: pairedEdge(file, name),
    selfSewn: selfSewn(file, name),
  });
  return piece && { is: 'piece', piece };
}

function sewn(reader: Reader, request: Request): Answer | undefined {
  const { id: source, file, tolerance, declaration } = request;
  const { name, statement } = declaration;
  const { node } = statement;
  if (node.kind === 'seam') {
    const limits = tolerance === undefined ? {} : { tolerance };
    const seam = readSeam(reader, node, {
      name,
      source,
      ...limits,
      pairedEdge: (piece) => pairedEdge(file, piece),
      notch: (of) => namedNotch(file, of),
    });
    return seam && { is: 'seam', seam };
  }
  if (node.kind === 'finish') {
    const finish = readFinish(reader, node, name, source);
    return finish && { is: 'finish', finish };
  }
  if (node.kind !== 'notch') return undefined;
  const notches = readNotch(reader, node, source, notchedEdges(file, statement));
  return notches && { is: 'notch', notches };
}

/** Says plainly of a statement that is read and not built. */
function later(reader: Reader, statement: Statement): undefined {
  const { node } = statement;
  const head = headOf(statement);
  if (node.kind !== 'later') return undefined;
  const what = say`Statements that begin with ${statement.text.slice(head.from, head.to)}`;
  return report(
    reader,
    'not-built-yet',
    head,
    say`${what} are not built yet: this one is read, but nothing is made of it, and what rests on it is not checked.`,
  );
}

/** The first word of a statement. */
const headOf = ({ text, node }: Statement): { from: number; to: number } => {
  const word = /\S+/.exec(text.slice(node.at.from))?.[0] ?? '';
  return { from: node.at.from, to: node.at.from + word.length };
};

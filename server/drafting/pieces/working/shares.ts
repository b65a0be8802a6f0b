/** Reads a `divide` line, and makes one of the pieces that come of it. */
import { say } from '../../../../grammar/say';
import type { DivideNode, Expr, Statement } from '../../../../grammar/syntax';
import type { Piece } from '../../model';
import { shapeOf } from '../../shapes/phrase';
import { report, wordsOf, type Reader } from '../../values/reader';
import { basePiece } from '../base';
import { unfolded } from '../cut-words';
import { workedOn, type PieceRequest } from '../piece';
import { divided, type Through } from './divide';
import { remember } from './work';

/** The name of the cut's edges where the line gives it none. */
const UNNAMED = 'cut';

/** @param request for the piece that is asked for, by its name */
export function readShare(reader: Reader, node: DivideNode, request: PieceRequest): Piece | undefined {
  if (node.piece.kind !== 'ref')
    return report(reader, 'wrong-kind', node.piece.at, say`Name the piece that is divided.`);
  const piece = basePiece(reader, node.piece);
  if (piece === undefined) return undefined;
  remember(request.parts, piece);
  const through = node.through.map((cut) => cutThrough(reader, piece, cut));
  if (through.some((one) => one === undefined)) return undefined;
  const line = along(reader, node, through as Through[]);
  if (line === undefined) return undefined;
  const divide = node.into.map(({ name }) => name.text).join(' ');
  const parts = divided(
    piece,
    line,
    node.along?.name?.text ?? UNNAMED,
    `${node.piece.path.map(({ text }) => text).join('.')}:${divide}`,
  );
  if ('why' in parts) return report(reader, 'broken-cut', node.through[0]!.at, parts.why);
  const part = chosen(reader, node, parts, request.name);
  if (part === undefined) return undefined;
  const made = workedOn(reader, request, part, shareBlock(request.statement, request.name));
  return made && cutAsBefore(made, piece);
}

/** Cutting words of the divided piece are those of its parts, where they have none of their own. */
function cutAsBefore(part: Piece, whole: Piece): Piece {
  if (part.cut !== undefined || whole.cut === undefined) return part;
  return { ...part, cut: part.fold === undefined ? unfolded(whole.cut) : whole.cut };
}

function cutThrough(reader: Reader, piece: Piece, expr: Expr): Through | undefined {
  const name = expr.kind === 'ref' ? expr.path[0]!.text : '';
  const dart = piece.darts.find((one) => one.name === name);
  if (dart !== undefined) return { dart };
  const shape = shapeOf(reader, expr);
  if (shape === undefined) return undefined;
  if (shape.kind !== 'point')
    return { line: shape.path, name: wordsOf(reader, expr), straight: shape.kind === 'line' };
  return report(
    reader,
    'wrong-kind',
    expr.at,
    say`${wordsOf(reader, expr)} is a point; a piece is divided at a line or at darts.`,
  );
}

/** `along LINE as NAME` leads the cut between two darts; a bare name after `along` only names it. */
function along(
  reader: Reader,
  node: DivideNode,
  through: readonly Through[],
): readonly Through[] | undefined {
  const { along: named } = node;
  const bare =
    named?.line.kind === 'ref' && named.name !== undefined && named.line.at.from === named.name.at.from;
  if (named === undefined || bare) return through;
  const shape = shapeOf(reader, named.line);
  if (shape === undefined) return undefined;
  if (shape.kind === 'point')
    return report(reader, 'wrong-kind', named.line.at, say`A cut goes along a line or curve.`);
  return [
    through[0]!,
    { line: shape.path, name: wordsOf(reader, named.line), straight: shape.kind === 'line' },
    ...through.slice(1),
  ];
}

/** Which part bears a name: the one that holds what its share says; without `holding`, what the other leaves. */
function chosen(
  reader: Reader,
  node: DivideNode,
  parts: readonly [Piece, Piece],
  name: string,
): Piece | undefined {
  const index = node.into.findIndex((share) => share.name.text === name);
  const share = node.into[index]!;
  if (node.into.length !== 2) {
    return report(
      reader,
      'broken-cut',
      node.at,
      say`One cut makes two pieces; ${node.into.length} are named here.`,
    );
  }
  const other = node.into[1 - index]!;
  const mine = share.holding && holder(parts, share.holding);
  const theirs = other.holding && holder(parts, other.holding);
  if (mine !== undefined && mine >= 0) return parts[mine];
  if (theirs !== undefined && theirs >= 0) return parts[1 - theirs];
  const asked = share.holding ?? other.holding;
  if (asked === undefined) {
    return report(
      reader,
      'which-way',
      share.name.at,
      say`Which of the two is ${name}? Say an edge that only it has: ${name} holding EDGE.`,
    );
  }
  return report(
    reader,
    'which-way',
    asked.at,
    say`${wordsOf(reader, asked)} lies on both parts or on neither, so it does not tell them apart.`,
  );
}

/** The part that alone has an edge or corner of a name: 0 or 1; −1 when both or neither have. */
function holder(parts: readonly [Piece, Piece], expr: Expr): number {
  const name = expr.kind === 'ref' ? expr.path[expr.path.length - 1]!.text : '';
  const has = parts.map(({ edges, corners }) => {
    const corner = corners.find((one) => one.name === name);
    const there = corner !== undefined && edges.some(({ path }) => path.locate(corner.point).distance < 0.05);
    return edges.some((edge) => edge.name === name) || there;
  });
  return has[0] === has[1] ? -1 : has[0] ? 0 : 1;
}

/** The block that a share has of its own. */
function shareBlock(statement: Statement, name: string): readonly Statement[] {
  for (const line of statement.block ?? []) {
    if (line.node.kind === 'share' && line.node.name.text === name) return line.block ?? [];
  }
  return [];
}

/** Pieces that say nothing wrong themselves and are not drawn, because they rest on a piece that is not whole: told once. */
import { say } from '../../grammar/say';
import type { Evaluation } from './evaluation';
import type { Finding, SourcedFinding } from './finding';
import type { Declaration } from './names/declarations';
import type { FileNames } from './names/files';
import type { Network } from './names/network';
import { PIECE_KINDS } from './made-pieces';

/** One note for each piece that others wait for, where the first of them is made. */
export function undrawnFindings(root: FileNames, network: Network, evaluation: Evaluation): SourcedFinding[] {
  const waiting = new Map<string, Declaration[]>();
  for (const top of root.ofKinds(PIECE_KINDS)) {
    for (const declaration of root.of(top)) {
      const { id } = declaration;
      if (declaration.statement !== top.statement || !isSilent(evaluation, id)) continue;
      const cause = causeOf(network, evaluation, id);
      if (cause !== undefined) waiting.set(cause, [...(waiting.get(cause) ?? []), declaration]);
    }
  }
  return [...waiting].map(([cause, pieces]) => {
    const name = network.nodes.get(cause)!.declaration.name;
    return { source: pieces[0]!.id, finding: notDrawn(name, cause, pieces) };
  });
}

/** Neither drawn nor left out, and nothing is said of it. */
function isSilent(evaluation: Evaluation, id: string): boolean {
  const { answer, findings } = evaluation.result(id);
  return answer === undefined && findings.length === 0;
}

/** The faulty piece at the end of what a piece rests on; undefined where it rests on no piece that is missing. */
function causeOf(network: Network, evaluation: Evaluation, id: string): string | undefined {
  const seen = new Set([id]);
  let cause: string | undefined;
  for (const one of seen) {
    for (const input of network.nodes.get(one)?.links.inputs ?? []) {
      if (!isPiece(network, input) || isWhole(evaluation, input)) continue;
      cause = input;
      if (isSilent(evaluation, input)) seen.add(input);
      else return input;
    }
  }
  return cause;
}

const isPiece = (network: Network, id: string): boolean =>
  PIECE_KINDS.some((kind) => network.nodes.get(id)?.declaration.statement.node.kind === kind);

function isWhole(evaluation: Evaluation, id: string): boolean {
  const { answer } = evaluation.result(id);
  if (answer?.is === 'absent') return true;
  return answer?.is === 'piece' && answer.piece.unbuilt.length === 0 && answer.piece.gaps.length === 0;
}

function notDrawn(name: string, cause: string, pieces: readonly Declaration[]): Finding {
  const [first, ...others] = pieces as [Declaration, ...Declaration[]];
  const names = pieces.map((piece) => piece.name);
  const list = names.length === 1 ? names[0]! : say`${names.slice(0, -1).join(', ')} and ${names.at(-1)!}`;
  const rest =
    names.length === 1 ? say`is not drawn, because it rests` : say`are not drawn, because they rest`;
  return {
    code: 'not-drawn',
    message: say`${list} ${rest} on ${name}, which is not whole. Mend ${name}, or what it rests on, first.`,
    statement: first.statement,
    at: first.nameAt,
    related: [
      { source: cause, message: say`${name} is made here.` },
      ...others.map(({ id, name: own }) => ({ source: id, message: say`${own} is made here.` })),
    ],
    fixes: [],
  };
}

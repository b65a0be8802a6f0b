/** What is known of one definition: for hover, symbols and completion. */
import { inWords } from '../../grammar/say';
import type { Evaluation } from './evaluation';
import type { Source } from './finding';
import type { DefinitionInfo, Pattern, Piece } from './model';
import type { Declaration } from './names/declarations';
import type { Network } from './names/network';
import { edgeShape, everyEdge } from './shapes/parts';
import { NO_SHAPING } from './shaping-model';
import { measurementNamed } from './values/measurements';

const MEASUREMENT = 'measurement:';

export function infoOf(
  network: Network,
  evaluation: Evaluation,
  pattern: Pattern,
  source: Source,
): DefinitionInfo | undefined {
  if (source.startsWith(MEASUREMENT))
    return measurement(evaluation, source, source.slice(MEASUREMENT.length));
  const node = network.nodes.get(source);
  if (node === undefined) return partInfo(piecesWith(evaluation, pattern, source), source);
  const { declaration } = node;
  const { answer } = evaluation.result(source);
  return {
    source,
    name: declaration.name,
    kind: kindOf(declaration),
    doc: declaration.statement.doc,
    ...(answer?.is === 'value' && { value: answer.value }),
    ...(answer?.is === 'shape' && { shape: answer.shape }),
  };
}

function measurement(evaluation: Evaluation, source: Source, name: string): DefinitionInfo {
  const known = measurementNamed.get(name);
  const value = evaluation.measurement(name);
  const doc = known === undefined ? '' : `${inWords(known.definition)} ${inWords(known.howToTake)}`;
  return { source, name, kind: 'measurement', doc, ...(value !== undefined && { value }) };
}

/** The pieces of the pattern, and that of a used file whose part is asked for. */
function piecesWith(evaluation: Evaluation, { pieces }: Pattern, source: Source): readonly Piece[] {
  const { answer } = evaluation.result(source.slice(0, source.lastIndexOf('/')));
  return answer?.is === 'piece' ? [...pieces, answer.piece] : pieces;
}

/** An edge, a dart, pleats, gathers, a mark or a hole of a piece. */
function partInfo(pieces: readonly Piece[], source: Source): DefinitionInfo | undefined {
  for (const piece of pieces) {
    const edge = everyEdge(piece).find((one) => one.source === source);
    if (edge !== undefined)
      return { source, name: edge.name, kind: 'edge', doc: edge.statement.doc, shape: edgeShape(edge) };
    const mark = piece.marks.find((one) => one.source === source);
    if (mark !== undefined) return { source, name: mark.name, kind: 'mark', doc: mark.statement.doc };
    const balance = piece.balance.find((one) => one.source === source);
    if (balance !== undefined) return { source, name: balance.name, kind: 'balance line', doc: '' };
    const hole = piece.holes.find((one) => one.source === source);
    if (hole !== undefined) return { source, name: hole.name, kind: 'hole', doc: hole.statement.doc };
    const { fishDarts, pleats, gathers } = piece.shaping ?? NO_SHAPING;
    const shapers = { dart: [...piece.darts, ...fishDarts], pleats, gathers };
    for (const kind of ['dart', 'pleats', 'gathers'] as const) {
      const found = shapers[kind].find((one) => one.source === source);
      if (found !== undefined) return { source, name: found.name, kind, doc: found.statement.doc };
    }
  }
  return undefined;
}

function kindOf({ statement, space }: Declaration): DefinitionInfo['kind'] {
  const { node } = statement;
  switch (node.kind) {
    case 'choose':
      return 'choice';
    case 'shape':
      return node.form === 'arc' ? 'curve' : node.form;
    case 'circle':
      return 'curve';
    case 'draft':
    case 'seam':
    case 'finish':
    case 'notch':
    case 'body':
    case 'sizes':
      return node.kind;
    case 'measure':
      return 'measurement';
    default:
      return space === 'block' ? 'piece' : 'value';
  }
}

/** Reads a finish: how the edges that are not sewn are made neat, and the allowance that this takes. */
import type { FinishNode } from '../../../grammar/syntax';
import type { Finish } from '../model';
import { allowance } from '../pieces/cutting';
import type { Reader } from '../values/reader';
import { presentEdges, soundEdges } from './edges';
import { readFaced } from './faced';

export function readFinish(
  reader: Reader,
  node: FinishNode,
  name: string,
  source: string,
): Finish | undefined {
  // a hem that runs on over several pieces is made on those that are whole; a facing wants all that it faces
  const taken = (node.facedBy === undefined ? soundEdges : presentEdges)(reader, node.edges);
  const width = node.width === undefined ? 0 : allowance(reader, node.width, node.how.replace('-', ' '));
  if (width === undefined || taken === undefined) return undefined;
  const faced = node.facedBy === undefined ? {} : readFaced(reader, node.facedBy, taken);
  if (faced === undefined) return undefined;
  return { name, source, statement: reader.statement, edges: taken, how: node.how, width, ...faced };
}

/**
 * The allowance that a finish takes, mm; undefined: as the piece states it. Turned twice takes its width twice; a bound,
 * woven or raw edge ends at the sewing line (common practice).
 */
export function finishAllowance(finish: Finish): number | undefined {
  switch (finish.how) {
    case 'turned-up':
      return finish.width;
    case 'turned-twice':
      return 2 * finish.width;
    case 'rolled':
      return finish.width > 0 ? finish.width : undefined;
    case 'bound':
    case 'selvedge':
    case 'raw':
      return 0;
    case 'faced':
      return undefined;
  }
}

/** The names that a piece has of its own: those of its outline, and those that its block gives. */
import type { Statement } from '../../../grammar/syntax';
import type { Scope } from './resolve';

const NO_NAMES: ReadonlySet<string> = new Set();

/** Edges and corners that the outline of a piece names, which work may have moved from where the draft has them. */
export function outlined(scope: Scope): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { file, name } of scope.blocks.slice(1)) {
    for (const { node, block = [] } of file.get(name)?.statement.block ?? []) {
      if (node.kind !== 'outline') continue;
      if (node.from.kind === 'ref') names.add(node.from.path[0]!.text);
      for (const edge of block) {
        if (edge.node.kind !== 'edge') continue;
        names.add(edge.node.name.text);
        for (const { to } of edge.node.runs) if (to.kind === 'ref') names.add(to.path[0]!.text);
      }
    }
  }
  return names;
}

/** Edges, holes, darts and marks that a piece's own block names. */
export function ownParts(statement: Statement): ReadonlySet<string> {
  if (statement.node.kind !== 'piece' && statement.node.kind !== 'lining') return NO_NAMES;
  const names = new Set<string>();
  for (const { node, block = [] } of statement.block ?? []) {
    if (node.kind === 'outline' || node.kind === 'hole') {
      for (const edge of block) {
        if (edge.node.kind !== 'edge') continue;
        names.add(edge.node.name.text);
        for (const run of edge.node.runs) if (run.kind === 'dart') names.add(run.name.text);
      }
    } else if (
      node.kind === 'dart' ||
      node.kind === 'fish-dart' ||
      node.kind === 'mark' ||
      node.kind === 'marks' ||
      node.kind === 'balance' ||
      node.kind === 'notch' ||
      node.kind === 'pleats' ||
      node.kind === 'gathers'
    ) {
      names.add(node.name.text);
    }
  }
  return names;
}

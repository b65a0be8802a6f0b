/**
 * Values and shapes that nothing speaks of. A file that makes no piece is a block for others, or is still being
 * written: nothing of it is called unused, and no shape of a draft from which no piece of the file is taken.
 */
import type { Declaration } from './declarations';
import type { FileNames } from './files';
import type { Network, Node } from './network';
import { resolveBlock } from './resolve';

/** Definitions of a file that none other in its network takes, in file order. */
export function unusedIn(network: Network, file: FileNames): readonly Declaration[] {
  const taken = draftsTaken(file);
  if (taken === undefined) return [];
  const found: Declaration[] = [];
  for (const id of network.untaken) {
    const node = network.nodes.get(id);
    if (node?.file !== file) continue;
    const { space, scope, statement, name } = node.declaration;
    if (space !== 'value' && space !== 'shape') continue;
    if (scope !== '' && !taken.has(scope)) continue;
    if (statement.node.kind === 'broken' || statement.problems.length > 0) continue;
    if (!isUsed(network, id, name)) found.push(node.declaration);
  }
  return found.sort((a, b) => a.top.offset - b.top.offset || a.statement.start - b.statement.start);
}

/** Drafts and pieces whose shapes are walked along: every piece of the file, and what it is taken from. */
function draftsTaken(file: FileNames): ReadonlySet<string> | undefined {
  const pieces = file.ofKinds(['piece', 'lining', 'facing']);
  if (pieces.length === 0) return undefined;
  const names = new Set<string>();
  for (const { statement } of pieces) {
    const { node } = statement;
    if ('name' in node && node.name !== undefined) names.add(node.name.text);
    if (!('of' in node) || node.of === undefined) continue;
    const draft = resolveBlock({ file, blocks: [] }, node.of);
    if (draft?.file === file) names.add(draft.declaration!.name);
  }
  return names;
}

/** Whether anything takes a definition, or may come to take it: a doubt counts for the name. */
export function isUsed(network: Network, id: string, name: string): boolean {
  for (const other of network.dependents.get(id) ?? []) if (other !== id) return true;
  for (const node of network.mentioning(name)) if (node.id !== id && mayMean(node, name)) return true;
  return false;
}

/** A name that is looked up when its piece is made, that a piece is asked for, or that leads nowhere yet. */
function mayMean({ links: { targets, later, unresolved } }: Node, name: string): boolean {
  if (unresolved) return true;
  for (const ref of later.keys()) if (ref.path.some(({ text }) => text === name)) return true;
  for (const { rest } of targets.values()) if (rest.some(({ text }) => text === name)) return true;
  return false;
}

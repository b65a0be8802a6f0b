/** From definitions to places in the text, and back. */
import { keptFor } from '../../grammar/kept';
import type { Statement, TopLevel } from '../../grammar/syntax';
import type { Source } from './finding';
import type { FileRange } from './model';
import { eachReference } from './names/references';
import type { FileNames } from './names/files';
import type { Network, Node } from './names/network';

/** Where a definition's name stands; for an edge or another line of a piece, where that line names it, or its stretch. */
export function located(network: Network, source: Source): FileRange | undefined {
  const node = network.nodes.get(source);
  if (node !== undefined) return range(node, node.declaration.statement, node.declaration.nameAt);
  const slash = source.lastIndexOf('/');
  const owner = slash < 0 ? undefined : network.nodes.get(source.slice(0, slash));
  if (owner === undefined) return undefined;
  const [name = '', stretch] = source.slice(slash + 1).split('#');
  const line = partOf(owner.declaration.statement, name);
  return line && range(owner, line.statement, stretchAt(line, stretch) ?? line.at);
}

/** One of the stretches of an edge, by its number: `front/side#2`. */
function stretchAt({ statement: { node } }: Part, stretch: string | undefined): Part['at'] | undefined {
  return node.kind === 'edge' && stretch !== undefined ? node.runs[Number(stretch) - 1]?.at : undefined;
}

function range(node: Node, statement: Statement, at: { from: number; to: number }): FileRange {
  const start = node.declaration.top.offset + statement.start;
  return { uri: node.file.uri, from: start + at.from, to: start + at.to };
}

interface Part {
  readonly statement: Statement;
  readonly name: string;
  readonly at: { readonly from: number; readonly to: number };
}

/** The lines of a piece that can be pointed at: edges, notches, marks by name; the grain and the rest by their word. */
const parts = keptFor(partsOf);

function partsOf(statement: Statement): readonly Part[] {
  return (statement.block ?? []).flatMap((line): Part[] => {
    const { node } = line;
    if (node.kind === 'outline' || node.kind === 'hole') {
      const edges = (line.block ?? []).flatMap((edge) =>
        edge.node.kind === 'edge'
          ? [{ statement: edge, name: edge.node.name.text, at: edge.node.name.at }]
          : [],
      );
      // its edges lie within it, and are meant first
      return node.kind === 'hole'
        ? [...edges, { statement: line, name: node.name.text, at: node.name.at }]
        : edges;
    }
    if ('name' in node && node.name !== undefined)
      return [{ statement: line, name: node.name.text, at: node.name.at }];
    return [{ statement: line, name: node.kind, at: node.at }];
  });
}

const partOf = (statement: Statement, name: string): Part | undefined =>
  parts(statement).find((part) => part.name === name);

/** What a place in a file defines or names, innermost first: a mentioned name, the line of a piece, the definition. */
export function sourcesIn(network: Network, file: FileNames, offset: number): readonly Source[] {
  const top = topAt(file.topLevels, offset);
  if (top === undefined) return [];
  const at = offset - top.offset;
  const found: Source[] = [];
  const around = file.of(top).filter(({ statement }) => covers(statement, at));
  for (const declaration of around.reverse()) {
    const node = network.nodes.get(file.key + declaration.id);
    if (node === undefined || node.declaration !== declaration) continue;
    const named = mentioned(node, at);
    if (named !== undefined) found.push(named);
    const part = parts(declaration.statement).find((one) => covers(one.statement, at));
    if (part !== undefined && declaration.space === 'block' && declaration.statement.node.kind !== 'draft') {
      found.push(`${node.id}/${part.name}`);
    }
    found.push(node.id);
  }
  return [...new Set(found)];
}

const covers = (statement: Statement, at: number): boolean => statement.start <= at && at <= statement.end;

/** The definition that a name under the place leads to. */
function mentioned(node: Node, at: number): Source | undefined {
  let found: Source | undefined;
  eachReference(node.declaration.statement, (ref, _, statement) => {
    const here = at - statement.start;
    if (here < ref.at.from || here > ref.at.to) return;
    const target = node.links.targets.get(ref);
    const own = partOf(node.declaration.statement, ref.path[0]!.text);
    if (target === undefined) found ??= own && `${node.id}/${own.name}`;
    else
      found ??=
        target.kind === 'block' && target.rest[0] !== undefined
          ? `${target.id}/${target.rest[0].text}`
          : target.id;
  });
  return found;
}

function topAt(items: readonly TopLevel[], offset: number): TopLevel | undefined {
  let low = 0;
  let high = items.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (items[middle]!.offset <= offset) low = middle;
    else high = middle - 1;
  }
  const top = items[low];
  return top !== undefined && top.offset <= offset && offset <= top.offset + top.text.length
    ? top
    : undefined;
}

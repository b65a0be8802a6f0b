/**
 * Drafts the other half of a piece that is drawn as half: as the whole to be cut open, or point by point, so that the
 * two halves can be changed apart from each other.
 */
import { say } from '../../grammar/say';
import type { EdgeNode, Expr, Statement, TopLevel } from '../../grammar/syntax';
import type { Edge, Pattern, Piece } from '../drafting/model';
import type { Names } from './names';
import { madeFrom } from './owned-names';
import type { Shaping } from './shaping';

type Edit = Shaping['edits'][number];

/** A point this near to the fold lies on it, mm, and is its own mirror. */
const ON_FOLD = 0.01;

/** Offered at the head of a piece that is cut on the fold. */
export function otherHalves(
  pattern: Pattern,
  names: Names,
  text: string,
  offset: number,
): readonly Shaping[] {
  const here = pattern.sourcesAt(pattern.uri, offset)[0];
  const piece = pattern.pieces.find(({ source }) => source === here);
  const top = piece && names.root.topLevels.find(({ statement }) => statement === piece.statement);
  if (piece?.fold === undefined || top === undefined) return [];
  if (offset > top.offset + top.statement.start + top.statement.text.length) return [];
  const cut = lineOf(top, 'cut');
  if (cut === undefined || !ON_THE_FOLD.test(cut.text)) return [];
  const title = say`Draft the other half of ${piece.base}`;
  const opened = replaced(names, top, cut, cut.text.replaceAll(new RegExp(ON_THE_FOLD, 'g'), ' open'));
  const drafted = pointByPoint(pattern, names, text, piece, top, cut);
  return [
    { title: say`${title}: the same, cut open`, kind: 'write', edits: [opened] },
    ...(drafted === undefined
      ? []
      : [{ title: say`${title}: point by point`, kind: 'write' as const, edits: drafted }]),
  ];
}

const ON_THE_FOLD = /\s+on\s+fold\b/;

const lineOf = ({ statement }: TopLevel, kind: string): Statement | undefined =>
  statement.block?.find(({ node }) => node.kind === kind);

function replaced({ uri }: Names, { offset }: TopLevel, line: Statement, by: string): Edit {
  return { uri, from: offset + line.start, to: offset + line.end, text: by };
}

/** Lines that are the same for the whole; what is said of darts, marks and stretches a person has to think about. */
const SAME: ReadonlySet<string> = new Set(['cut', 'outline', 'fold', 'grain', 'allow', 'label']);

function pointByPoint(
  pattern: Pattern,
  names: Names,
  text: string,
  piece: Piece,
  top: TopLevel,
  cut: Statement,
): readonly Edit[] | undefined {
  const fold = piece.edges.findIndex(({ name }) => name === piece.fold?.edge);
  const { fromName: far, toName: near, path, name } = piece.edges[fold]!;
  const lines = top.statement.block!;
  const plain = lines.every(({ node, text: words }) => {
    return SAME.has(node.kind) && !(node.kind === 'allow' && words.split(/[\s,]+/).includes(name));
  });
  const draft = names.root.get(piece.draft);
  const [outlined, folded] = [lineOf(top, 'outline'), lineOf(top, 'fold')];
  // a piece that is worked from another has them there
  if (outlined === undefined || folded === undefined) return undefined;
  if (far === '' || near === '' || !plain || isRestedOn(names, top, piece.base, name)) return undefined;
  if (draft?.statement.node.kind !== 'draft') return undefined;
  const mirror = new Mirror(pattern, names, piece.draft, (point) => path.locate(point).distance <= ON_FOLD);
  const walk = [...piece.edges.slice(fold + 1), ...piece.edges.slice(0, fold)];
  const there = walk.map(written);
  const back = [...walk].reverse().map((edge) => mirror.edge(edge));
  if ([...there, ...back].includes(undefined)) return undefined;
  const end = /\r\n|\r|\n/.exec(text)?.[0] ?? '\n';
  const outline = [`outline from ${near} {`, ...[...there, ...back].map((line) => `    ${line}`), '  }'];
  const at = draft.top.offset + draft.statement.end - 1;
  const made = mirror.lines(`(${far} to ${near})`).map((line) => `  ${line}${end}`);
  return [
    { uri: names.uri, from: at, to: at, text: made.join('') },
    replaced(names, top, cut, cut.text.replace(ON_THE_FOLD, '')),
    replaced(names, top, outlined, outline.join(end)),
    replaced(names, top, folded, `grain from ${far} to ${near}`),
    ...lines.filter(({ node }) => node.kind === 'grain').map((grain) => gone(names, text, top, grain)),
  ];
}

/** Whether another piece is made from this one, which would be whole then as well, or a line speaks of its fold. */
const isRestedOn = ({ root }: Names, own: TopLevel, piece: string, fold: string): boolean =>
  root.topLevels.some(({ statement }) => {
    if (statement === own.statement) return false;
    return madeFrom(statement.node).includes(piece) || namesEdge(statement.text, piece, fold);
  });

const namesEdge = (words: string, piece: string, edge: string): boolean =>
  words.split(/[^\p{L}\p{M}\p{Nd}.-]+/u).some((word) => `${word}.`.startsWith(`${piece}.${edge}.`));

/** A line with its line end, taken out. */
function gone({ uri }: Names, text: string, { offset }: TopLevel, line: Statement): Edit {
  const from = text.lastIndexOf('\n', offset + line.start) + 1;
  const to = text.indexOf('\n', offset + line.end) + 1;
  return { uri, from, to: to === 0 ? text.length : to, text: '' };
}

type Run = Extract<EdgeNode['runs'][number], { kind: 'along' | 'straight' }>;

/** The runs of an edge, where each goes straight or along a named line to a named point. */
function runsOf({ statement: { node } }: Edge): readonly { along?: string; to: string }[] | undefined {
  if (node.kind !== 'edge' || node.untrued) return undefined;
  const runs = node.runs.map((run) => {
    if (run.kind !== 'along' && run.kind !== 'straight') return undefined;
    const [along, to] = [run.kind === 'along' ? nameIn(run.curve) : undefined, nameIn((run as Run).to)];
    if (to === undefined || (run.kind === 'along' && along === undefined)) return undefined;
    return { to, ...(along !== undefined && { along }) };
  });
  return runs.every((run) => run !== undefined) ? runs : undefined;
}

const nameIn = (expr: Expr): string | undefined =>
  expr.kind === 'ref' && expr.path.length === 1 ? expr.path[0]!.text : undefined;

const run = ({ along, to }: { along?: string; to: string }): string =>
  along === undefined ? `straight to ${to}` : `along ${along} to ${to}`;

function written(edge: Edge): string | undefined {
  const runs = runsOf(edge);
  return runs && `${edge.name} ${runs.map(run).join(`\n      then `)}`;
}

/** What the other half is made of: each point and curve of the half once more, under a name of its own. */
class Mirror {
  private readonly made = new Map<string, { readonly other: string; readonly form: string }>();

  constructor(
    private readonly pattern: Pattern,
    private readonly names: Names,
    private readonly draft: string,
    private readonly isOnFold: (point: { x: number; y: number }) => boolean,
  ) {}

  /** The edge walked backwards on the other side. */
  edge(edge: Edge): string | undefined {
    const runs = runsOf(edge);
    if (runs === undefined || edge.fromName === '') return undefined;
    const starts = [edge.fromName, ...runs.map(({ to }) => to)];
    const back = runs.map(({ along }, i) => {
      const to = this.of(starts[i]!);
      const curve = along && this.of(along);
      if (to === undefined || (along !== undefined && curve === undefined)) return undefined;
      return run({ to, ...(curve !== undefined && { along: curve }) });
    });
    if (back.includes(undefined)) return undefined;
    return `other-${edge.name} ${back.reverse().join(`\n      then `)}`;
  }

  /** Undefined for what is not of this draft. */
  private of(name: string): string | undefined {
    const shape = this.pattern.shapes.get(`${this.draft}.${name}`);
    if (shape === undefined) return undefined;
    if (shape.kind === 'point' && this.isOnFold(shape.point)) return name;
    const known = this.made.get(name);
    if (known !== undefined) return known.other;
    let other = `other-${name}`;
    while (this.names.root.get(`${this.draft}/${other}`) !== undefined) other = `other-${other}`;
    this.made.set(name, { other, form: shape.kind });
    return other;
  }

  lines = (axis: string): readonly string[] =>
    [...this.made].map(([name, { other, form }]) => `${form} ${other} = ${name} mirrored across ${axis}`);
}

/** Whether a name is free for a thing: in its own space, and wherever the thing is seen. */
import { say } from '../../grammar/say';
import type { ShapeNode } from '../../grammar/syntax';
import type { Declaration } from '../drafting/names/declarations';
import type { FileNames } from '../drafting/names/files';
import { scopeOf, visibleFiles } from '../drafting/names/resolve';
import { measurementNamed } from '../drafting/values/measurements';
import type { Meaning } from './meaning';
import { memberOf, part } from './members';
import type { Names } from './names';

/** Why a thing can't be called `name`, over the files that speak of it; undefined where it can. */
export function clashWith(meaning: Meaning, name: string, speaking: readonly Names[]): string | undefined {
  for (const names of speaking) {
    const reason =
      measured(meaning, name, names) ?? declared(meaning, name, names) ?? unclear(meaning, name, names);
    if (reason !== undefined) return reason;
  }
  return meaning.kind === 'part' ? member(meaning, name, speaking) : undefined;
}

/** Measurements and values share one space. */
function measured({ kind }: Meaning, name: string, { files }: Names): string | undefined {
  if (kind !== 'value' && kind !== 'measurement' && kind !== 'word') return undefined;
  const known = measurementNamed.has(name) || files.files().some((file) => file.measurements().has(name));
  return known ? say`${name} is a measurement.` : undefined;
}

function declared(meaning: Meaning, name: string, { root }: Names): string | undefined {
  const visible = visibleFiles(root);
  const seen = meaning.uri === '' || visible.some(({ uri }) => uri === meaning.uri);
  for (const file of seen ? visible : []) {
    if (file.uses.some(({ alias }) => alias === name)) return say`A file is used as ${name} here.`;
    for (const other of file.alike(name)) {
      if (other.name === meaning.name) continue;
      if (clash(meaning, file, other)) return say`${said(other)} is called ${other.name} already.`;
    }
  }
  return undefined;
}

/** The block that a value or shape is defined in; '' at top level. */
const scopeIn = ({ key, uri }: Meaning): string => {
  const id = key.slice(uri.length + 1);
  return id.includes('/') ? id.slice(0, id.indexOf('/')) : '';
};

function clash(meaning: Meaning, file: FileNames, other: Declaration): boolean {
  const { space } = other;
  const scope = scopeIn(meaning);
  const here = file.uri === meaning.uri;
  switch (meaning.kind) {
    case 'value':
      if (space === 'block') return true;
      return space === 'value' && (other.scope === '' || (here && (scope === '' || other.scope === scope)));
    case 'shape':
      return space === 'block' || (space === 'shape' && here && sameSheet(file, scope, other));
    case 'draft':
    case 'piece':
    case 'alias':
      return space === 'block' || space === 'value' || space === 'shape';
    case 'measurement':
    case 'word':
      return space === 'value' || space === 'measure';
    case 'part':
      return false;
    default:
      return space === meaning.kind;
  }
}

/** Whether two blocks see each other's names: they are one, or a piece is made from the other. */
function sameSheet(file: FileNames, scope: string, other: Declaration): boolean {
  const block = file.get(scope);
  const sees = (from: Declaration, name: string) =>
    scopeOf(file, from).blocks.some((one) => one.file === file && one.name === name);
  return other.scope === scope || sees(other, scope) || (block !== undefined && sees(block, other.scope));
}

/** Names that lead nowhere yet, or are looked for later, would lead to the thing once it bears them. */
function unclear({ kind }: Meaning, name: string, { network }: Names): string | undefined {
  if (kind === 'finish' || kind === 'body') return undefined;
  for (const { links } of network.mentioning(name)) {
    const lost = links.findings.some(({ message }) =>
      message.startsWith(say`Nothing here is called ${name}.`),
    );
    if (lost)
      return say`A line speaks of ${name} already, though nothing bears that name: it would mean this.`;
  }
  return undefined;
}

/** Parts of a piece are named by all that is made from it, and by the piece that it is made from. */
function member(meaning: Meaning, name: string, speaking: readonly Names[]): string | undefined {
  for (const { root } of speaking) {
    for (const file of visibleFiles(root)) {
      for (const piece of file.all()) {
        if (piece.space !== 'block' || piece.statement.node.kind === 'draft') continue;
        const has = memberOf(file, piece, meaning.name, 'any');
        if (has?.key !== meaning.key) continue;
        // what two joined pieces have of one name becomes one edge: only a piece's own lines can clash further on
        const defines = meaning.key === part(file, piece.name, meaning.name).key;
        const taken = memberOf(file, piece, name, defines ? 'any' : 'own');
        if (taken !== undefined && !isCurve(file, taken))
          return say`The piece ${piece.name} has a ${name} already.`;
      }
    }
  }
  return undefined;
}

/** An edge may bear the name of the line or curve that it runs along. */
function isCurve(file: FileNames, { kind, key, uri }: Meaning): boolean {
  if (kind !== 'shape' || uri !== file.uri) return false;
  const node = file.get(key.slice(uri.length + 1))?.statement.node;
  return node?.kind === 'circle' || (node?.kind === 'shape' && node.form !== 'point');
}

const WORDS: Partial<Record<Declaration['space'], string>> = {
  get value() {
    return say`A value`;
  },
  get block() {
    return say`A draft or piece`;
  },
  get seam() {
    return say`A seam`;
  },
  get finish() {
    return say`A finish`;
  },
  get notch() {
    return say`A notch`;
  },
  get body() {
    return say`A body or size table`;
  },
  get measure() {
    return say`A measurement`;
  },
};

function aShape(form: ShapeNode['form']): string {
  switch (form) {
    case 'point':
      return say`A point`;
    case 'line':
      return say`A line`;
    case 'curve':
      return say`A curve`;
    case 'arc':
      return say`An arc`;
  }
}

function said({ space, statement: { node } }: Declaration): string {
  if (node.kind === 'shape') return aShape(node.form);
  return WORDS[space] ?? say`Something`;
}

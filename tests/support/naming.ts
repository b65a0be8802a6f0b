/** A small workspace of texts, and what following a name in it says; the cursor is marked as in every test of features. */
import assert from 'node:assert/strict';
import { edit, parse } from '../../grammar/index';
import type { SourceFile } from '../../grammar/syntax';
import { builtAt, builtFrom, moves, type Step } from '../../server/features/hierarchy';
import { linked } from '../../server/features/linked';
import { Names } from '../../server/features/names';
import { highlights, meaningAt, references } from '../../server/features/references';
import { prepareRename, rename, type RenameEdit } from '../../server/features/rename';
import { Files, nothingBehind } from '../../server/lsp/files';
import { Lines } from '../../server/features/lines';
import { marked } from './marks';

const folder = 'file:///wardrobe';

/** Texts by name, each as a file that may use the others. */
export class Wardrobe {
  readonly #files = new Files(nothingBehind);
  readonly #sources = new Map<string, SourceFile>();
  readonly names: readonly Names[];

  constructor(texts: Readonly<Record<string, string>>) {
    this.#files.setFolders([folder]);
    for (const [name, text] of Object.entries(texts)) {
      this.#files.setBuffer(uriOf(name), text);
      this.#sources.set(uriOf(name), parse(text));
    }
    const source = (uri: string) => this.#sources.get(uri);
    this.names = Object.keys(texts).map((name) => new Names(uriOf(name), this.#files, source).upToDate());
  }

  of(name: string): Names {
    return this.names.find(({ uri }) => uri === uriOf(name))!;
  }

  text(name: string): string {
    return this.#files.read(uriOf(name))!;
  }

  get texts(): Record<string, string> {
    return Object.fromEntries(this.names.map(({ uri }) => [nameOf(uri), this.#files.read(uri)!]));
  }

  /** Makes edits, which all count in the texts as they are, as an editor would: the names follow. */
  apply(edits: readonly RenameEdit[]): void {
    for (const { uri, from, to, text } of [...edits].sort((a, b) => b.from - a.from)) {
      const { file } = edit(this.#sources.get(uri)!, { from, to, text });
      this.#sources.set(uri, file);
      this.#files.setBuffer(uri, file.text);
    }
    this.names.forEach((names) => names.upToDate());
  }
}

export const uriOf = (name: string): string => `${folder}/${name}`;
export const nameOf = (uri: string): string => uri.slice(folder.length + 1);

const MAIN = 'under-test.draft';

interface Place {
  readonly wardrobe: Wardrobe;
  readonly names: Names;
  readonly text: string;
  readonly offset: number;
}

function placed(text: string, beside: Readonly<Record<string, string>>): Place {
  const place = marked(text);
  const wardrobe = new Wardrobe({ [MAIN]: place.text, ...beside });
  return { wardrobe, names: wardrobe.names[0]!, ...place };
}

/** The lines that name what the marked name stands for, counted from one; `*` where it is defined. */
export function checkReferences(
  text: string,
  expected: readonly string[],
  beside: Readonly<Record<string, string>> = {},
): void {
  const { wardrobe, names, offset } = placed(text, beside);
  const meaning = meaningAt(names, offset);
  const found = meaning === undefined ? [] : references(meaning, wardrobe.names);
  const written = found.map(({ uri, from, defines }) => {
    const name = nameOf(uri);
    const { line } = new Lines(wardrobe.text(name)).position(from);
    return `${name === MAIN ? '' : `${name} `}${line + 1}${defines ? '*' : ''}`;
  });
  assert.deepEqual(written, expected);
}

/** The lines of the file itself that are lit with the marked name. */
export function checkHighlights(text: string, expected: readonly string[]): void {
  const { names, offset, text: clean } = placed(text, {});
  const lines = new Lines(clean);
  const found = highlights(names, offset).map(({ from, defines }) => {
    return `${lines.position(from).line + 1}${defines ? '*' : ''}`;
  });
  assert.deepEqual(found, expected);
}

/** The lines whose places of the marked name are typed in together; none: they are not. */
export function checkLinked(
  text: string,
  expected: readonly string[],
  beside: Readonly<Record<string, string>> = {},
): void {
  const { wardrobe, names, text: clean, offset } = placed(text, beside);
  const lines = new Lines(clean);
  const found = linked(names, clean, offset, wardrobe.names)?.places ?? [];
  assert.deepEqual(
    found.map(({ from }) => `${lines.position(from).line + 1}`),
    expected,
  );
}

/** The text after giving the marked name another, or the reason why that can't be; `besideAfter`: other files then. */
export function checkRename(
  text: string,
  wanted: string,
  expected: string,
  beside: Readonly<Record<string, string>> = {},
  besideAfter: Readonly<Record<string, string>> = beside,
): void {
  const { wardrobe, names, text: clean, offset } = placed(text, beside);
  const found = rename(names, clean, offset, wanted, wardrobe.names);
  if (found === undefined || 'refused' in found) return assert.equal(found?.refused, expected);
  wardrobe.apply(found);
  assert.deepEqual(wardrobe.texts, { [MAIN]: expected, ...besideAfter });
}

/** The name that is offered for change at the mark, or why it can't be changed. */
export function checkPrepared(text: string, expected: string | undefined): void {
  const { names, text: clean, offset } = placed(text, {});
  const found = prepareRename(names, clean, offset);
  assert.equal(found && ('refused' in found ? found.refused : found.name), expected);
}

/** What the marked name's definition is built from and what it moves, as `kind name (lines of the text)`. */
export function checkBuilt(
  text: string,
  expected: {
    readonly itself: string | undefined;
    readonly from: readonly string[];
    readonly moves: readonly string[];
  },
  beside: Readonly<Record<string, string>> = {},
): void {
  const { wardrobe, names, offset } = placed(text, beside);
  const one = builtAt(names, offset, wardrobe.names);
  const told = (steps: readonly Step[], uri?: string): string[] =>
    steps.map(({ other, places }) => {
      const lines = new Lines(wardrobe.text(nameOf(uri ?? other.uri)));
      const stands = places.map(({ from }) => lines.position(from).line + 1).join(' ');
      const file = other.uri === names.uri ? '' : `${nameOf(other.uri)} `;
      return `${file}${other.kind} ${other.name} (${stands})`;
    });
  assert.equal(one && `${one.name}: ${one.detail}`, expected.itself);
  const from = one && builtFrom(wardrobe.of(nameOf(one.uri)), one, wardrobe.names);
  assert.deepEqual(told(from ?? [], one?.uri), expected.from);
  assert.deepEqual(told(one ? moves(one, wardrobe.names) : []), expected.moves);
}

/** A text after edits, which all count in the text as it was. */
export const applied = (
  text: string,
  edits: readonly { readonly from: number; readonly to: number; readonly text: string }[],
): string =>
  [...edits]
    .sort((a, b) => b.from - a.from)
    .reduce((now, { from, to, text: put }) => now.slice(0, from) + put + now.slice(to), text);

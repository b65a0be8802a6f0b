/** Holds the rooms of the house apart: reads every import and compares it with what the room may know. */
import assert from 'node:assert/strict';
import { existsSync } from 'node:fs';
import { join, posix } from 'node:path';
import { read, root, sources } from './support/sources';

interface Import {
  /** The importing file and what it imports, from the top of the repository; packages by their name. */
  readonly from: string;
  readonly to: string;
  readonly typesOnly: boolean;
}

const STATEMENT =
  /^\s*(import|export)\s(type\s)?[^'";]*?from\s*'([^']+)'|^\s*import\s*'([^']+)'|\bimport\('([^']+)'\)/gm;

/** The file that a relative import means, from the top of the repository. */
function resolveImport(from: string, to: string): string {
  if (!to.startsWith('.')) return to;
  const path = posix.normalize(posix.join(posix.dirname(from), to));
  const found = [path, `${path}.ts`, `${path}/index.ts`].find(
    (candidate) => existsSync(join(root, candidate)) && candidate.includes('.'),
  );
  return found ?? path;
}

function importsOf(from: string): Import[] {
  const matches = [...read(from).matchAll(STATEMENT)];
  return matches.map(([, , type, named, bare, dynamic]) => ({
    from,
    to: resolveImport(from, (named ?? bare ?? dynamic)!),
    typesOnly: type !== undefined,
  }));
}

const all = sources().filter((path) => /^(client|server|grammar)\//.test(path) && path.endsWith('.ts'));
const imports = all.flatMap(importsOf);
const within = (folder: string) => (path: string) => path.startsWith(folder);
const told = (found: readonly Import[]) => found.map(({ from, to }) => `${from} imports ${to}`);
const isPackage = (to: string) => !/^(client|server|grammar|tests|samples|package\.json)(\/|$)/.test(to);

/** Asserts that nothing in a room imports what `allowed` refuses. */
function onlyImports(room: string, allowed: (found: Import) => boolean): void {
  assert.deepEqual(told(imports.filter((found) => within(room)(found.from) && !allowed(found))), []);
}

/** The rooms in the order in which data walks; a room imports from those before it and from itself. */
const WALK = [
  'grammar',
  'server/geometry',
  'server/drafting',
  'server/checks',
  'server/drawing',
  'server/lay',
  'server/review',
  'server/features',
  'server/lsp',
  'server/cli',
];

describe('the rooms of the house', () => {
  it('the imports of the sources are found, packages and files alike', () => {
    assert.ok(imports.some(({ from, to }) => from === 'client/activate.ts' && to === 'client/features.ts'));
    assert.ok(imports.some(({ from, to }) => from === 'client/extension.ts' && to === 'vscode'));
  });

  it('geometry knows numbers alone and imports nothing of ours and no package', () => {
    onlyImports('server/geometry/', ({ to }) => to.startsWith('server/geometry/') || to === 'clipper2-ts');
  });

  it('the grammar imports its parser library and itself', () => {
    onlyImports(
      'grammar/',
      ({ from, to }) =>
        to === 'chevrotain' ||
        to.startsWith('grammar/') ||
        (from === 'grammar/generate.ts' && to.startsWith('node:')),
    );
  });

  it('data walks one way from text to person', () => {
    const rank = (path: string) => WALK.findIndex((room) => path.startsWith(`${room}/`));
    const against = imports.filter(({ from, to }) => rank(from) >= 0 && rank(to) > rank(from));
    assert.deepEqual(told(against), []);
  });

  it('the grammar and the geometry do not know of each other', () => {
    onlyImports('server/geometry/', ({ to }) => !to.startsWith('grammar/'));
    onlyImports('grammar/', ({ to }) => !to.startsWith('server/'));
  });

  it('checks, drawing, features, review and drafting know no protocol and do no input or output', () => {
    const doors = ['server/drawing/png.ts', 'server/drawing/bundled.ts'];
    const outside = /^(vscode|node:|fs$|path$|os$|child_process$)/;
    for (const room of [
      'server/drafting/',
      'server/checks/',
      'server/drawing/',
      'server/features/',
      'server/geometry/',
      'server/review/',
    ]) {
      onlyImports(room, ({ from, to }) => doors.includes(from) || !outside.test(to));
    }
  });

  it('the client never imports the drafting', () => {
    onlyImports('client/', ({ to }) => !/^server\/(drafting|checks|geometry|features|lsp|cli)\//.test(to));
  });

  it('the server knows of the client what previews are told and its German words, and nothing else', () => {
    const known = 'client/preview/protocol.ts';
    const words = 'client/l10n/bundle.l10n.de.json';
    onlyImports('server/', ({ from, to }) => {
      return !to.startsWith('client/') || to === known || (from === 'server/lsp/tongue.ts' && to === words);
    });
    onlyImports('server/features/', ({ to, typesOnly }) => to !== known || typesOnly);
  });

  it('the preview view takes types and line types from the drawing and nothing else of the server', () => {
    const may = ['server/drawing/model.ts', 'server/drawing/lines.ts'];
    onlyImports('client/preview/view/', ({ to }) => !to.startsWith('server/') || may.includes(to));
    onlyImports('client/preview/view/', ({ to }) => !isPackage(to) || to.endsWith('.css'));
  });

  it('only the language server room knows the server side of the protocol', () => {
    const protocol = imports.filter(({ to }) => /^vscode-(languageserver|jsonrpc)/.test(to));
    assert.deepEqual(told(protocol.filter(({ from }) => !from.startsWith('server/lsp/'))), []);
  });

  it('only the client knows the editor', () => {
    const editor = imports.filter(({ to }) => to === 'vscode' || to.startsWith('vscode-languageclient'));
    assert.deepEqual(told(editor.filter(({ from }) => !from.startsWith('client/'))), []);
  });

  it('only the PNG printer knows the picture engine', () => {
    const engine = imports.filter(({ to }) => to.startsWith('@resvg/'));
    assert.deepEqual(told(engine.filter(({ from }) => from !== 'server/drawing/png.ts')), []);
  });

  it('only the PDF printer knows the PDF library', () => {
    const PAPER = new Set(['server/drawing/paper/document.ts', 'server/drawing/paper/font.ts']);
    const library = imports.filter(({ to }) => to.startsWith('@cantoo/') || to === 'fontkit');
    assert.deepEqual(told(library.filter(({ from }) => !PAPER.has(from))), []);
  });

  it('only the command line prints', () => {
    const prints = /\bconsole\.\w+\(|process\.std(out|err)\b/;
    assert.deepEqual(
      all.filter((path) => !path.startsWith('server/cli/') && prints.test(read(path))),
      [],
    );
  });

  it('nothing evaluates text as a program or asks the network', () => {
    const forbidden =
      /\beval\(|new Function\(|from 'node:vm'|\bfetch\(|XMLHttpRequest|WebSocket\(|from 'node:(https?|net|dns|tls)'/;
    assert.deepEqual(
      all.filter((path) => forbidden.test(read(path))),
      // which asks Node for its collector by one fixed word
      ['server/lsp/machine.ts'],
    );
  });

  it('the floors of the drafting import downwards alone', () => {
    const floors = ['values', 'shapes', 'pieces', 'sewing'].map((floor) => `server/drafting/${floor}/`);
    const floorOf = (path: string) => floors.findIndex((floor) => path.startsWith(floor));
    const upwards = imports.filter(({ from, to, typesOnly }) => {
      return !typesOnly && floorOf(from) >= 0 && floorOf(to) > floorOf(from);
    });
    assert.deepEqual(told(upwards), []);
  });

  it('files of different rooms do not import each other in a circle', () => {
    const runs = imports.filter(({ typesOnly }) => !typesOnly);
    const reached = new Map(all.map((path) => [path, reachableFrom(path, runs)]));
    const circles = runs.filter(({ from, to }) => {
      return posix.dirname(from) !== posix.dirname(to) && reached.get(to)?.has(from);
    });
    assert.deepEqual(told(circles), []);
  });
});

/** Every file that a file leads to by imports. */
function reachableFrom(start: string, runs: readonly Import[]): Set<string> {
  const found = new Set<string>();
  const open = [start];
  for (let path = open.pop(); path !== undefined; path = open.pop()) {
    for (const { to } of runs.filter(({ from }) => from === path)) {
      if (!found.has(to)) open.push(to);
      found.add(to);
    }
  }
  return found;
}

/** Keeps the sources tidy: what each file opens with, how long things are, what is left out, what lists must agree. */
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import ts from 'typescript';
import { files, read, root, sources } from './support/sources';

const FILE_LINES = 400;
const FUNCTION_LINES = 50;

/** Files that may be longer, each with its reason. */
const LONG_FILES: Readonly<Record<string, string>> = {
  'grammar/syntax.ts': 'the whole syntax tree is read as one page, one interface a construct',
};

/** Functions that may be longer, as `file name`, each with its reason. */
const LONG_FUNCTIONS: Readonly<Record<string, string>> = {};

const TOP_LEVEL = [
  'CHANGELOG.md',
  'DEVELOPERS.md',
  'LICENSE',
  'README.md',
  'client',
  'grammar',
  'package-lock.json',
  'package.json',
  'samples',
  'server',
  'tests',
  'tsconfig.json',
];

/** What the installation and the build put beside them. */
const BUILT = ['node_modules', 'dist', 'out', 'package.nls.json', 'package.nls.de.json'];

const own = sources();
const trees = new Map(
  own.map((path) => [path, ts.createSourceFile(path, read(path), ts.ScriptTarget.Latest, true)]),
);

/** The number of lines that a file or a piece of it takes. */
const lineCount = (text: string) => text.trimEnd().split('\n').length;

/** Every function with a body in a tree, with the name that it is known by. */
function functionsOf(tree: ts.SourceFile): { name: string; lines: number }[] {
  const found: { name: string; lines: number }[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node) && 'body' in node && node.body) {
      found.push({ name: nameOf(node), lines: lineCount(node.getText(tree)) });
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

function nameOf(node: ts.SignatureDeclaration): string {
  if (node.name) return node.name.getText();
  const { parent } = node;
  return ts.isVariableDeclaration(parent) || ts.isPropertyAssignment(parent)
    ? parent.name.getText()
    : 'a callback';
}

/** A call such as `it('…')` or `describe.only('…')`, as its words and its first argument. */
function callsOf(tree: ts.SourceFile): { called: string; title: string | undefined }[] {
  const found: { called: string; title: string | undefined }[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node)) {
      const [first] = node.arguments;
      const title = first && ts.isStringLiteralLike(first) ? first.text : undefined;
      found.push({ called: node.expression.getText(tree), title });
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

/** Tests and stories; a callback of `describe` holds a whole suite, so its length says nothing. */
const isTest = (path: string) => /\.(test|story)\.ts$/.test(path);

describe('tidiness of the sources', () => {
  it('every source file opens with a sentence of purpose', () => {
    const opening = /^(#!.*\n)?\/\*\*[\s*]+[^*][\s\S]*?[.:!?`)]\s*\*\//;
    assert.deepEqual(
      own.filter((path) => !opening.test(read(path))),
      [],
    );
  });

  it('a file of over 400 lines has a listed reason', () => {
    const long = own.filter((path) => lineCount(read(path)) > FILE_LINES && !(path in LONG_FILES));
    assert.deepEqual(long, []);
  });

  it('a function of over 50 lines has a listed reason', () => {
    const long = own
      .filter((path) => !isTest(path))
      .flatMap((path) => functionsOf(trees.get(path)!).map((found) => ({ path, ...found })))
      .filter(({ path, name, lines }) => lines > FUNCTION_LINES && !(`${path} ${name}` in LONG_FUNCTIONS))
      .map(({ path, name, lines }) => `${path} ${name}: ${lines} lines`);
    assert.deepEqual(long, []);
  });

  it('a listed reason for length belongs to something that is still long', () => {
    const shrunk = Object.keys(LONG_FILES).filter((path) => lineCount(read(path)) <= FILE_LINES);
    const functions = own.flatMap((path) =>
      functionsOf(trees.get(path)!)
        .filter(({ lines }) => lines > FUNCTION_LINES)
        .map(({ name }) => `${path} ${name}`),
    );
    assert.deepEqual(
      [...shrunk, ...Object.keys(LONG_FUNCTIONS).filter((key) => !functions.includes(key))],
      [],
    );
  });

  it('no test is singled out or left out', () => {
    const found = own.filter(isTest).flatMap((path) =>
      callsOf(trees.get(path)!)
        .filter(({ called }) =>
          /^(x?(it|describe)|test|suite|context)\.(only|skip)$|^x(it|describe)$/.test(called),
        )
        .map(({ called, title }) => `${path}: ${called} ${title}`),
    );
    assert.deepEqual(found, []);
  });

  it('no source leaves work for later in a remark', () => {
    const remark = new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'X' + 'XX', 'HA' + 'CK'].join('|')})\\b`);
    assert.deepEqual(
      own.filter((path) => remark.test(read(path))),
      [],
    );
  });

  it('every test title stands once in the whole suite', () => {
    const titles = own.filter(isTest).flatMap((path) =>
      callsOf(trees.get(path)!)
        .filter(({ called, title }) => called === 'it' && title !== undefined)
        .map(({ title }) => title!),
    );
    assert.deepEqual(
      titles.filter((title, at) => titles.indexOf(title) !== at),
      [],
    );
  });

  it('the top level holds the agreed files and folders alone', () => {
    const there = readdirSync(root).filter((name) => !name.startsWith('.') && !name.endsWith('.vsix'));
    const extra = there.filter((name) => ![...BUILT, ...TOP_LEVEL].includes(name));
    assert.deepEqual(extra, []);
  });

  it('no file names a folder of one machine', () => {
    const machine = new RegExp(`(^|[\\s'"\`(=])/(${['work', 'tmp', 'root', 'home'].join('|')})/`, 'm');
    const texts = files().filter((path) => /\.(ts|mjs|cjs|json|md|draft|txt)$/.test(path));
    assert.deepEqual(
      texts.filter((path) => machine.test(read(path))),
      [],
    );
  });

  it('the lock file names no host', () => {
    assert.doesNotMatch(read('package-lock.json'), /"resolved": "[a-z]+:\/\//);
  });

  it('every package is pinned to one version', () => {
    const { dependencies, devDependencies } = JSON.parse(read('package.json'));
    const loose = Object.entries<string>({ ...dependencies, ...devDependencies });
    assert.deepEqual(
      loose.filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version)),
      [],
    );
  });
});

describe('the manifest of the extension', () => {
  const manifest = JSON.parse(read('package.json'));

  it('the commands of the manifest are those of the table of features', () => {
    const lists = [...read('client/features.ts').matchAll(/commands: \[([^\]]*)\]/g)].map(
      ([, list]) => list!,
    );
    const table = lists.flatMap((list) => [...list.matchAll(/'([^']+)'/g)].map(([, command]) => command!));
    const listed: string[] = manifest.contributes.commands.map(({ command }: { command: string }) => command);
    assert.deepEqual(table.sort(), listed.sort());
  });

  it('menus and key bindings run commands of the manifest', () => {
    const listed = new Set(manifest.contributes.commands.map(({ command }: { command: string }) => command));
    const { menus, keybindings } = manifest.contributes;
    const used: { command: string; alt?: string }[] = [
      ...Object.values<never[]>(menus).flat(),
      ...keybindings,
    ];
    const named = used.flatMap(({ command, alt }) => (alt === undefined ? [command] : [command, alt]));
    assert.deepEqual(
      named.filter((command) => !listed.has(command)),
      [],
    );
  });

  it('every file that the manifest names is there', () => {
    const { languages, grammars } = manifest.contributes;
    const named = [manifest.icon, languages[0].configuration, grammars[0].path] as string[];
    const there = new Set(files());
    assert.deepEqual(
      named.map((path) => path.replace(/^\.\//, '')).filter((path) => !there.has(path)),
      [],
    );
  });

  it('key bindings of the extension act in a draft or a preview alone', () => {
    for (const { when } of manifest.contributes.keybindings)
      assert.match(when, /editorLangId == draftwright|activeWebviewPanelId == draftwright\.preview/);
  });
});

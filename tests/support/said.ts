/** Every text that a person is told in their own language, read off the sources: for whoever compares them with a bundle. */
import ts from 'typescript';
import { read, sources } from './sources';
import { keptInTables } from './tables';

export interface Said {
  readonly path: string;
  /** As a bundle has it: `{0}` for what is told. */
  readonly key: string;
  /** Asked for when the file is loaded, when nobody knows the language yet. */
  readonly early: boolean;
}

const RUNS_LATER = [
  ts.isArrowFunction,
  ts.isFunctionDeclaration,
  ts.isFunctionExpression,
  ts.isMethodDeclaration,
  ts.isGetAccessor,
  ts.isConstructorDeclaration,
  ts.isPropertyDeclaration,
];

function keyOf(template: ts.TemplateLiteral): string {
  if (ts.isNoSubstitutionTemplateLiteral(template)) return template.text;
  const { head, templateSpans } = template;
  return templateSpans.reduce((key, { literal }, i) => `${key}{${i}}${literal.text}`, head.text);
}

/** `vscode.l10n.t('…')`: the extension's own host knows its language from the start. */
function askedOfEditor(node: ts.Node): ts.StringLiteralLike | undefined {
  if (!ts.isCallExpression(node) || !/\bl10n\.t$/.test(node.expression.getText())) return undefined;
  const [text] = node.arguments;
  return text !== undefined && ts.isStringLiteralLike(text) ? text : undefined;
}

function saidIn(path: string): readonly Said[] {
  const found: Said[] = [];
  const visit = (node: ts.Node, early: boolean): void => {
    const asked = askedOfEditor(node);
    if (asked !== undefined) found.push({ path, key: asked.text, early: false });
    if (ts.isTaggedTemplateExpression(node) && node.tag.getText() === 'say')
      found.push({ path, key: keyOf(node.template), early });
    const later = RUNS_LATER.some((is) => is(node));
    ts.forEachChild(node, (child) => visit(child, early && !later));
  };
  visit(ts.createSourceFile(path, read(path), ts.ScriptTarget.Latest, true), true);
  return found;
}

/** In the order of the files. */
export const everythingSaid = (): readonly Said[] =>
  sources()
    .filter((path) => /^(client|grammar|server)\//.test(path) && /\b(say`|l10n\.t\()/.test(read(path)))
    .flatMap(saidIn);

/** Where findings and repairs are made. */
const MAKING = /^(grammar|server\/(checks|drafting|features))\//;
/** Where somebody is told something at once: there plain texts are looked at as well. */
const TELLING = /^server\/(review|cli|drawing|lsp\/versions)\/|^server\/lsp\/comparing\.ts$/;
/** Titles of exports, which an editor looks up itself; the bundle has them. */
const LOOKED_UP = 'server/cli/exports.ts';

/** A sentence, or the title of a repair, that tells something and is English whatever the person speaks. */
function unasked(path: string): readonly string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTemplateExpression(node) && !ts.isTaggedTemplateExpression(node.parent)) {
      const key = keyOf(node);
      const shown =
        ts.isPropertyAssignment(node.parent) && /^(title|message)$/.test(node.parent.name.getText());
      if (
        /[a-z]{2}/.test(key) &&
        (shown || /\w{2} .*[.?]$/.test(key) || isTold(path, key.replace(/\{\d+\}/g, 'it')))
      )
        found.push(`${path}: ${key}`);
    }
    if (
      ts.isStringLiteralLike(node) &&
      !ts.isTaggedTemplateExpression(node.parent) &&
      isTold(path, node.text)
    )
      found.push(`${path}: ${node.text}`);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, read(path), ts.ScriptTarget.Latest, true));
  return found;
}

/** What ends as an operator of a PDF does is drawn, not read. */
const PDF = /\b(re [fSW]( it|n)?|cm)$/;

/** What a table keeps in English is put into words where it is shown. */
const kept = new Set(keptInTables());

/** Three words or more that are neither markup nor a style, a script or a command for another program. */
const isTold = (path: string, text: string): boolean =>
  TELLING.test(path) &&
  path !== LOOKED_UP &&
  !kept.has(text) &&
  /^[^<>{}$'\n]*$/.test(text) &&
  !PDF.test(text) &&
  /(\b[A-Za-z]{2,}\b[,:;]? ){3}/.test(`${text} `);

export const everythingUnasked = (): readonly string[] =>
  sources()
    .filter((path) => (MAKING.test(path) || TELLING.test(path)) && path.endsWith('.ts'))
    .flatMap(unasked);

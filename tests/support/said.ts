/** Every text that a person is told in their own language, read off the sources: for whoever compares them with a bundle. */
import ts from 'typescript';
import { read, sources } from './sources';

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

/** A sentence, or the title of a repair, that tells something and is English whatever the person speaks. */
function unasked(path: string): readonly string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTemplateExpression(node) && !ts.isTaggedTemplateExpression(node.parent)) {
      const key = keyOf(node);
      const shown =
        ts.isPropertyAssignment(node.parent) && /^(title|message)$/.test(node.parent.name.getText());
      if (/[a-z]{2}/.test(key) && (shown || /\w{2} .*[.?]$/.test(key))) found.push(`${path}: ${key}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, read(path), ts.ScriptTarget.Latest, true));
  return found;
}

/** Where findings and repairs are made. */
export const everythingUnasked = (): readonly string[] =>
  sources()
    .filter((path) => /^(grammar|server\/(checks|drafting|features))\//.test(path) && path.endsWith('.ts'))
    .flatMap(unasked);

/** Code actions: repairs of what was found, and changes of the words that a person asks for. */
import {
  CodeActionKind,
  CodeActionRequest,
  type CodeAction,
  type CodeActionParams,
} from 'vscode-languageserver';
import { choosings } from '../features/conflicts';
import { dividings } from '../features/dividing';
import { fixAll, fixesAt } from '../features/fixes';
import type { Meaning } from '../features/meaning';
import { otherHalves } from '../features/other-half';
import { references } from '../features/references';
import { finishings, sewings } from '../features/sewing';
import { shapings, type Shaping } from '../features/shaping';
import { annotatedEdit, workspaceEdit } from './convert';
import type { Desk } from './desk';
import type { OpenDocument } from './documents';
import { aboutText, service, type Service } from './service';

function repairsAt({ key, lines }: OpenDocument, params: CodeActionParams, desk: Desk): CodeAction[] {
  const { start, end } = params.range;
  const problems = desk.problems(desk.pattern(key));
  const here = fixesAt(problems, key, lines.offset(start), lines.offset(end));
  const repairs = here.map(({ finding, fix, preferred }) => ({
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    isPreferred: preferred,
    diagnostics: params.context.diagnostics.filter(
      ({ code, message }) => code === finding.code && message === finding.message,
    ),
    edit: workspaceEdit(fix, desk),
  }));
  const codes = [...new Set(here.map(({ finding }) => finding.code))];
  const all = codes.flatMap((code) => {
    const found = fixAll(problems, key, code);
    return found === undefined
      ? []
      : [
          {
            title: found.fix.title,
            kind: CodeActionKind.QuickFix,
            edit: annotatedEdit(found.fix, desk),
          },
        ];
  });
  return [...repairs, ...all];
}

/** Of two versions that git left: the person chooses, so none is preferred. */
function choosingsAt({ key, lines }: OpenDocument, params: CodeActionParams, desk: Desk): CodeAction[] {
  return choosings(lines, lines.offset(params.range.start)).map(({ title, edits }) => ({
    title,
    kind: CodeActionKind.QuickFix,
    diagnostics: params.context.diagnostics.filter(({ code }) => code === 'conflict-mark'),
    edit: workspaceEdit(
      { edits: edits.map(({ from, to, text }) => ({ place: { uri: key, from, to }, text })) },
      desk,
    ),
  }));
}

const KINDS: Readonly<Record<Shaping['kind'], CodeActionKind>> = {
  extract: CodeActionKind.RefactorExtract,
  inline: CodeActionKind.RefactorInline,
  write: CodeActionKind.RefactorRewrite,
};

function shapingsAt({ key, text, lines }: OpenDocument, params: CodeActionParams, desk: Desk): CodeAction[] {
  const span = { from: lines.offset(params.range.start), to: lines.offset(params.range.end) };
  const elsewhere = (meaning: Meaning) => references(meaning, desk.tied(key)).some(({ uri }) => uri !== key);
  const [pattern, names] = [desk.pattern(key), desk.names(key)];
  const offered = [
    ...shapings(pattern, names, text, span, elsewhere),
    ...sewings(pattern, names, text, span),
    ...finishings(pattern, names, text, span),
    ...dividings(pattern, names, text, span.from),
    ...otherHalves(pattern, names, text, span.from),
  ];
  return offered.map(({ title, kind, edits }) => ({
    title: desk.said(pattern, title),
    kind: KINDS[kind],
    edit: annotatedEdit({ title, edits: edits.map((place) => ({ place, text: place.text })) }, desk),
  }));
}

/** Who asks for some kinds alone (`refactor`, or what is to run when a file is saved) is offered no others. */
const actionsAt = aboutText((document, params: CodeActionParams, desk): CodeAction[] => {
  const { only } = params.context;
  const wanted = (kind: CodeActionKind): boolean =>
    only === undefined ||
    only.some((one) => one === CodeActionKind.Empty || kind === one || kind.startsWith(`${one}.`));
  const repairs = wanted(CodeActionKind.QuickFix)
    ? [...repairsAt(document, params, desk), ...choosingsAt(document, params, desk)]
    : [];
  const shaped = Object.values(KINDS).some(wanted) ? shapingsAt(document, params, desk) : [];
  return [...repairs, ...shaped.filter(({ kind }) => wanted(kind!))];
});

export const actionServices: readonly Service[] = [
  service(
    CodeActionRequest.method,
    'checks',
    { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, ...Object.values(KINDS)] } },
    actionsAt,
  ),
];

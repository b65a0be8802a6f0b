/**
 * The table of requests: what each one is called, how fresh a model it needs, and what it announces of itself at the
 * start. The server's capabilities are made from this table alone.
 */
import {
  CodeActionKind,
  CodeActionRequest,
  CompletionRequest,
  DefinitionRequest,
  DocumentDiagnosticRequest,
  DocumentFormattingRequest,
  DocumentOnTypeFormattingRequest,
  DocumentRangeFormattingRequest,
  DocumentSymbolRequest,
  FoldingRangeRequest,
  HoverRequest,
  MarkupKind,
  type CodeAction,
  type CodeActionParams,
  type CompletionItem,
  type DocumentDiagnosticParams,
  type DocumentDiagnosticReport,
  type DocumentOnTypeFormattingParams,
  type DocumentRangeFormattingParams,
  type FoldingRange,
  type Hover,
  type Location,
  type ServerCapabilities,
  type TextDocumentPositionParams,
  type TextEdit,
} from 'vscode-languageserver';
import { methods } from '../../client/preview/protocol';
import { format, formatEdits } from '../../grammar';
import { explain } from '../checks';
import { completions } from '../features/completion';
import { definition } from '../features/definition';
import { fixAll, fixesAt } from '../features/fixes';
import { folds } from '../features/folding';
import { layoutEdits, type LayoutEdit } from '../features/formatting';
import { INDENTING, indentation } from '../features/indenting';
import { hover } from '../features/hover';
import type { Meaning } from '../features/meaning';
import { withoutMarks } from '../features/markdown';
import { asMarkdown } from '../features/picture';
import { references } from '../features/references';
import { outline } from '../features/outline';
import { shapings } from '../features/shaping';
import { completionItem, documentSymbol, foldingRange, location, workspaceEdit } from './convert';
import type { Desk } from './desk';
import type { OpenDocument } from './documents';
import { buildingServices } from './building';
import { colouringServices } from './colouring';
import { lookingServices } from './looking';
import { namingServices } from './naming';
import { previewServices } from './preview-services';
import { aboutText, offsetOf, service, type AboutText, type Room, type Service } from './service';

const hoverAt = aboutText((document, params: TextDocumentPositionParams, desk): Hover | null => {
  const pattern = desk.pattern(document.key);
  const found = hover(pattern, document.key, document.text, offsetOf(document, params));
  if (found === undefined) return null;
  const picture = desk.shows.pictures ? found.picture() : undefined;
  const drawn = picture === undefined ? '' : `\n\n${asMarkdown(picture)}`;
  const contents = desk.shows.layout
    ? { kind: MarkupKind.Markdown, value: found.markdown + drawn }
    : { kind: MarkupKind.PlainText, value: withoutMarks(found.markdown) };
  return { contents, range: document.lines.range(found.from, found.to) };
});

const definitionAt = aboutText((document, params: TextDocumentPositionParams, desk): Location | null => {
  const { key, text } = document;
  const pattern = desk.pattern(key);
  const place = definition(pattern, key, text, offsetOf(document, params), desk.read(pattern));
  return place === undefined ? null : location(place, desk);
});

const symbolsOf = aboutText((document, _params: AboutText, desk) => {
  const file = desk.workshop.source(document.key);
  return file === undefined ? null : outline(file).map((symbol) => documentSymbol(symbol, document.lines));
});

const foldsOf = aboutText((document, _params: AboutText, desk): FoldingRange[] | null => {
  const file = desk.workshop.source(document.key);
  return file === undefined ? null : folds(file, document.lines).map(foldingRange);
});

const textEdits = ({ lines }: OpenDocument, edits: readonly LayoutEdit[]): TextEdit[] =>
  edits.map(({ from, to, text }) => ({ range: lines.range(from, to), newText: text }));

/** The layout is the same for everybody: an editor's tab size has no say in it. */
const layoutOf = aboutText((document, _params: AboutText, desk) => {
  const { key, text } = document;
  return textEdits(document, layoutEdits(text, format(text, desk.workshop.source(key))));
});

const layoutWithin = aboutText((document, { range }: DocumentRangeFormattingParams, desk) => {
  const { key, text, lines } = document;
  const [from, to] = [lines.offset(range.start), lines.offset(range.end)];
  return textEdits(document, formatEdits(text, { from, to }, desk.workshop.source(key)));
});

const indentedAt = aboutText((document, { position, ch }: DocumentOnTypeFormattingParams, desk) => {
  const file = desk.workshop.source(document.key);
  return file === undefined
    ? null
    : textEdits(document, indentation(file, document.lines.offset(position), ch));
});

const completionsAt = aboutText((document, params: TextDocumentPositionParams, desk): CompletionItem[] => {
  const { key, text, lines } = document;
  const pattern = desk.pattern(key);
  const sources = desk.read(pattern).map(({ file }) => file);
  const items = completions(pattern, sources, text, offsetOf(document, params));
  return items.map((item, index) => completionItem(item, index, lines));
});

const repairsAt = (document: OpenDocument, params: CodeActionParams, desk: Desk): CodeAction[] => {
  const { key, lines } = document;
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
      : [{ title: found.fix.title, kind: CodeActionKind.QuickFix, edit: workspaceEdit(found.fix, desk) }];
  });
  return [...repairs, ...all];
};

/** Changes of the words that change nothing of what they come to. */
function shapingsAt(
  { key, text, lines }: OpenDocument,
  { range }: CodeActionParams,
  desk: Desk,
): CodeAction[] {
  const span = { from: lines.offset(range.start), to: lines.offset(range.end) };
  const elsewhere = (meaning: Meaning) => references(meaning, desk.tied(key)).some(({ uri }) => uri !== key);
  const kinds = { extract: CodeActionKind.RefactorExtract, inline: CodeActionKind.RefactorInline };
  return shapings(desk.pattern(key), desk.names(key), text, span, elsewhere).map(
    ({ title, kind, edits }) => ({
      title,
      kind: kinds[kind],
      edit: workspaceEdit({ edits: edits.map((place) => ({ place, text: place.text })) }, desk),
    }),
  );
}

const actionsAt = aboutText((document, params: CodeActionParams, desk): CodeAction[] => [
  ...repairsAt(document, params, desk),
  ...shapingsAt(document, params, desk),
]);

/** What there is to say of a text; of one that is not open, nothing. */
function problemsAt(params: DocumentDiagnosticParams, { desk, diagnostics }: Room): DocumentDiagnosticReport {
  const document = desk.documents.get(params.textDocument.uri);
  if (document === undefined) return { kind: 'full', items: [] };
  return diagnostics.answer(document, desk.pattern(document.key), params.previousResultId);
}

export const services: readonly Service[] = [
  service(DocumentSymbolRequest.method, 'text', { documentSymbolProvider: true }, symbolsOf),
  service(FoldingRangeRequest.method, 'text', { foldingRangeProvider: true }, foldsOf),
  service(DocumentFormattingRequest.method, 'text', { documentFormattingProvider: true }, layoutOf),
  service(
    DocumentRangeFormattingRequest.method,
    'text',
    { documentRangeFormattingProvider: true },
    layoutWithin,
  ),
  service(
    DocumentOnTypeFormattingRequest.method,
    'text',
    {
      documentOnTypeFormattingProvider: {
        firstTriggerCharacter: INDENTING.first,
        moreTriggerCharacter: [...INDENTING.more],
      },
    },
    indentedAt,
  ),
  ...namingServices,
  ...lookingServices,
  ...colouringServices,
  ...buildingServices,
  service(DefinitionRequest.method, 'names', { definitionProvider: true }, definitionAt),
  service(
    CompletionRequest.method,
    'names',
    { completionProvider: { triggerCharacters: ['.'] } },
    completionsAt,
  ),
  service(HoverRequest.method, 'geometry', { hoverProvider: true }, hoverAt),
  service(
    CodeActionRequest.method,
    'checks',
    {
      codeActionProvider: {
        codeActionKinds: [
          CodeActionKind.QuickFix,
          CodeActionKind.RefactorExtract,
          CodeActionKind.RefactorInline,
        ],
      },
    },
    actionsAt,
  ),
  ...previewServices,
  service(
    DocumentDiagnosticRequest.method,
    'checks',
    // of files that are not open, `draftwright check` tells
    { diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: false } },
    problemsAt,
  ),
  service(methods.explain, 'nothing', {}, ({ code }: { code: string }, { desk }) => {
    return explain(code, desk.files.page) ?? null;
  }),
];

/** What the server says of itself at the start; that it can be asked for problems, only to a client that will. */
export function announced(asksForProblems: boolean): ServerCapabilities {
  const { diagnosticProvider, ...others } = Object.assign(
    {},
    ...services.map(({ announces }) => announces),
  ) as ServerCapabilities;
  return asksForProblems && diagnosticProvider !== undefined ? { ...others, diagnosticProvider } : others;
}

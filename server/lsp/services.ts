/**
 * The table of requests: what each one is called, how fresh a model it needs, and what it announces of itself at the
 * start. The server's capabilities are made from this table alone.
 */
import {
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
  type ClientCapabilities,
  type CompletionItem,
  type CompletionParams,
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
import { pageInDialect } from '../../grammar/dialect';
import { isEnglish } from '../../grammar/say';
import { explain } from '../checks';
import { completions } from '../features/completion';
import { definition } from '../features/definition';
import { folds } from '../features/folding';
import { layoutEdits, type LayoutEdit } from '../features/formatting';
import { INDENTING, indentation } from '../features/indenting';
import { hover } from '../features/hover';
import { withoutMarks } from '../features/markdown';
import { asMarkdown } from '../features/picture';
import { usedFiles } from '../features/used-names';
import { completionItem, foldingRange, location } from './convert';
import { outlineFor } from './outlining';
import type { OpenDocument } from './documents';
import { actionServices } from './actions';
import { buildingServices } from './building';
import { colouringServices } from './colouring';
import { lookingServices } from './looking';
import { namingServices } from './naming';
import { previewServices } from './preview-services';
import { sweepingServices } from './sweeping';
import { aboutText, offsetOf, service, type AboutText, type Room, type Service } from './service';

const hoverAt = aboutText((document, params: TextDocumentPositionParams, desk): Hover | null => {
  const pattern = desk.pattern(document.key);
  const found = hover(pattern, desk.names(document.key), document.text, offsetOf(document, params));
  if (found === undefined) return null;
  const picture = desk.shows.pictures ? found.picture() : undefined;
  const drawn = picture === undefined ? '' : `\n\n${asMarkdown(picture)}`;
  const markdown = desk.said(pattern, found.markdown);
  const contents = desk.shows.layout
    ? { kind: MarkupKind.Markdown, value: markdown + drawn }
    : { kind: MarkupKind.PlainText, value: withoutMarks(markdown) };
  return { contents, range: document.lines.range(found.from, found.to) };
});

const definitionAt = aboutText((document, params: TextDocumentPositionParams, desk): Location | null => {
  const { key, text } = document;
  const pattern = desk.pattern(key);
  const following = { names: desk.names(key), tied: () => desk.tied(key) };
  const place = definition(pattern, key, text, offsetOf(document, params), desk.read(pattern), following);
  return place === undefined ? null : location(place, desk);
});

const symbolsOf = aboutText((document, _params: AboutText, desk) => {
  const file = desk.workshop.source(document.key);
  return file === undefined ? null : outlineFor(document, file, desk);
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

/** Signs that a path may go on after; anywhere else, typing them asks for nothing. */
const IN_PATHS = ['"', '/'];

const completionsAt = aboutText((document, params: CompletionParams, desk): CompletionItem[] => {
  const { key, text, lines } = document;
  const pattern = desk.pattern(key);
  const read = desk.read(pattern);
  const sources = read.map(({ file }) => file);
  const addressOf = (from: string, path: string): string | undefined => {
    const found = desk.files.resolve(from, path);
    return 'uri' in found ? found.uri : undefined;
  };
  const inPath = IN_PATHS.includes(params.context?.triggerCharacter ?? '');
  const around = { paths: () => desk.files.pathsFrom(key), used: () => usedFiles(read, addressOf) };
  const { items, from, to } = completions(pattern, sources, text, offsetOf(document, params), around);
  const range = lines.range(from, to);
  return items
    .filter(({ kind, snippet }) => (inPath ? kind === 'file' : desk.shows.snippets || snippet === undefined))
    .map((item, index) => completionItem(item, index, range));
});

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
    { completionProvider: { triggerCharacters: ['.', ...IN_PATHS] } },
    completionsAt,
  ),
  service(HoverRequest.method, 'geometry', { hoverProvider: true }, hoverAt),
  ...actionServices,
  ...sweepingServices,
  ...previewServices,
  service(
    DocumentDiagnosticRequest.method,
    'checks',
    // of files that are not open, `draftwright check` tells
    { diagnosticProvider: { interFileDependencies: true, workspaceDiagnostics: false } },
    problemsAt,
  ),
  service(methods.explain, 'nothing', {}, ({ code }: { code: string }, { desk }) => {
    const page = explain(code, desk.files.page);
    if (page === undefined) return null;
    return isEnglish() ? pageInDialect(desk.dialect, page) : page;
  }),
];

/**
 * What the server says of itself at the start; that it can be asked for problems, only to a client that will, and that a
 * name is looked at before it is changed, only to one that knows of it.
 */
export function announced(
  asksForProblems: boolean,
  { textDocument }: ClientCapabilities,
): ServerCapabilities {
  const { diagnosticProvider, ...others } = Object.assign(
    {},
    ...services.map(({ announces }) => announces),
  ) as ServerCapabilities;
  return {
    ...others,
    ...(textDocument?.rename?.prepareSupport !== true && { renameProvider: true }),
    ...(asksForProblems && diagnosticProvider !== undefined && { diagnosticProvider }),
  };
}

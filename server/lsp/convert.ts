/** From the engine's plain data to the protocol's: places, severities, symbols. */
import { say } from '../../grammar/say';
import {
  CompletionItemKind,
  DiagnosticSeverity,
  FoldingRangeKind,
  InsertTextFormat,
  InsertTextMode,
  SymbolKind,
  type CompletionItem,
  type FoldingRange,
  type Location,
  type Range,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import type { FileRange, PlacedFix } from '../drafting/model';
import type { Severity } from '../drafting/finding';
import type { Item } from '../features/completion-item';
import type { Fold } from '../features/folding';
import type { Lines } from '../features/lines';
import type { SymbolKind as Kind } from '../features/outline';

export const severities: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  note: DiagnosticSeverity.Information,
};

export const symbolKinds: Readonly<Record<Kind, SymbolKind>> = {
  pattern: SymbolKind.File,
  value: SymbolKind.Variable,
  choice: SymbolKind.Constant,
  body: SymbolKind.Struct,
  draft: SymbolKind.Namespace,
  shape: SymbolKind.Field,
  piece: SymbolKind.Class,
  edge: SymbolKind.Property,
  mark: SymbolKind.Event,
  seam: SymbolKind.Interface,
};

const completionKinds: Readonly<Record<Item['kind'], CompletionItemKind>> = {
  word: CompletionItemKind.Keyword,
  value: CompletionItemKind.Variable,
  choice: CompletionItemKind.Constant,
  measurement: CompletionItemKind.Field,
  shape: CompletionItemKind.Reference,
  piece: CompletionItemKind.Class,
  draft: CompletionItemKind.Module,
  edge: CompletionItemKind.Property,
  seam: CompletionItemKind.Interface,
  body: CompletionItemKind.Struct,
  function: CompletionItemKind.Function,
  statement: CompletionItemKind.Snippet,
  file: CompletionItemKind.File,
};

/** Looks up the lines and the client's address of a file. */
export interface Addresses {
  lines(uri: string): Lines | undefined;
  clientUri(uri: string): string;
}

/** A place as the client knows it; the start of the file where its text can't be read any more. */
export function location({ uri, from, to }: FileRange, addresses: Addresses): Location {
  const start = { line: 0, character: 0 };
  return {
    uri: addresses.clientUri(uri),
    range: addresses.lines(uri)?.range(from, to) ?? { start, end: start },
  };
}

/** Edits, with the line ends that each file has already. */
export function workspaceEdit({ edits }: Pick<PlacedFix, 'edits'>, addresses: Addresses): WorkspaceEdit {
  const changes: NonNullable<WorkspaceEdit['changes']> = {};
  for (const { place, text } of edits) {
    const { uri, range } = location(place, addresses);
    const newText = text.includes('\n') ? text.replace(LINE_END, lineEndOf(place.uri, addresses)) : text;
    (changes[uri] ??= []).push({ range, newText });
  }
  return { changes };
}

const LINE_END = /\r\n|\r|\n/g;

const lineEndOf = (uri: string, addresses: Addresses): string =>
  /\r\n|\r|\n/.exec(addresses.lines(uri)?.text ?? '')?.[0] ?? '\n';

/**
 * Edits of which those that stand elsewhere than the first are shown to the person before they are made, where the
 * client can do that: nobody should have to look for what else was changed.
 */
export function annotatedEdit(fix: Pick<PlacedFix, 'edits' | 'title'>, desk: Annotating): WorkspaceEdit {
  const { changes = {} } = workspaceEdit(fix, desk);
  const ranges = Object.values(changes).flatMap((edits) => edits.map(({ range }) => range));
  const lines = ranges.map(({ start }) => start.line);
  const several = Object.keys(changes).length > 1 || Math.max(...lines) - Math.min(...lines) > NEAR_LINES;
  if (!several || !desk.annotates) return { changes };
  const places = say`${ranges.length} places`;
  const annotation = { label: fix.title, description: places, needsConfirmation: true };
  return {
    changeAnnotations: { [SEVERAL]: annotation },
    documentChanges: Object.entries(changes).map(([uri, edits]) => ({
      textDocument: { uri, version: desk.documents.get(uri)?.version ?? null },
      edits: edits.map((edit) => ({ ...edit, annotationId: SEVERAL })),
    })),
  };
}

/** What edits that are shown first need to know. */
interface Annotating extends Addresses {
  /** Whether the client shows annotated changes before they are made. */
  readonly annotates: boolean;
  readonly documents: { get(uri: string): { readonly version: number } | undefined };
}

const SEVERAL = 'several-places';

/** Edits no further apart than this are seen together, in lines. */
const NEAR_LINES = 3;

export function foldingRange({ startLine, endLine, kind }: Fold): FoldingRange {
  return { startLine, endLine, ...(kind === 'comment' ? { kind: FoldingRangeKind.Comment } : {}) };
}

/** Its further lines stand in as far as the one that it begins on. */
const SNIPPET = {
  insertTextFormat: InsertTextFormat.Snippet,
  insertTextMode: InsertTextMode.adjustIndentation,
};

/** Texts that sort as their numbers do. */
const inOrder: string[] = [];

/** @param range what accepting it replaces */
export function completionItem(item: Item, index: number, range: Range): CompletionItem {
  const { label, detail, doc, typed, snippet } = item;
  const sortText = (inOrder[index] ??= String(index).padStart(5, '0'));
  const textEdit = { range, newText: snippet ?? label };
  const kind = completionKinds[item.kind];
  // nearly all: a long draft has thousands
  if (doc === '' && typed === undefined && snippet === undefined)
    return { label, kind, detail, sortText, textEdit };
  return {
    ...{ label, kind, detail },
    ...(doc === '' ? {} : { documentation: doc }),
    ...{ sortText, textEdit },
    ...(typed !== undefined && { filterText: typed }),
    ...(snippet !== undefined && SNIPPET),
  };
}

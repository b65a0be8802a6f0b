/** The open texts: kept in step with the editor, change by change, and handed on to the workshop as offsets. */
import { TextDocument } from 'vscode-languageserver-textdocument';
import type {
  DidChangeTextDocumentParams,
  TextDocumentContentChangeEvent,
  TextDocumentItem,
} from 'vscode-languageserver';
import { Lines, type Encoding } from '../features/lines';
import type { Files } from './files';
import { canonical } from './uris';

export interface TextEdit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** What the documents tell of their changes: the workshop's side of editing. */
export interface TextKeeper {
  setText(uri: string, text: string): void;
  edit(uri: string, changes: readonly TextEdit[]): void;
  close(uri: string): void;
}

/** An open text, under the address that its client gave. */
export interface OpenDocument {
  readonly key: string;
  readonly clientUri: string;
  readonly version: number;
  readonly text: string;
  readonly lines: Lines;
}

export class Documents {
  /** What the client counts characters in, agreed at the start. */
  encoding: Encoding = 'utf-16';
  readonly #open = new Map<string, { clientUri: string; document: TextDocument; lines: Lines | undefined }>();

  constructor(
    private readonly files: Files,
    private readonly keeper: TextKeeper,
  ) {}

  /** Keys of the open texts in the order of their opening. */
  keys(): readonly string[] {
    return [...this.#open.keys()];
  }

  get(uri: string): OpenDocument | undefined {
    const key = canonical(uri);
    const held = this.#open.get(key);
    if (held === undefined) return undefined;
    const text = held.document.getText();
    held.lines ??= new Lines(text, this.encoding);
    return { key, clientUri: held.clientUri, version: held.document.version, text, lines: held.lines };
  }

  open({ uri, languageId, version, text }: TextDocumentItem): string {
    const key = canonical(uri);
    const document = TextDocument.create(uri, languageId, version, text);
    this.#open.set(key, { clientUri: uri, document, lines: undefined });
    this.files.setBuffer(key, text);
    this.keeper.setText(key, text);
    return key;
  }

  /** Applies the changes in their order; undefined for a text that is not open. */
  change({ textDocument, contentChanges }: DidChangeTextDocumentParams): string | undefined {
    const key = canonical(textDocument.uri);
    const held = this.#open.get(key);
    if (held === undefined) return undefined;
    const edits = contentChanges.map((change) =>
      apply(held.document, inCodeUnits(held.document, change, this.encoding), textDocument.version),
    );
    held.lines = undefined;
    const text = held.document.getText();
    this.files.setBuffer(key, text);
    const known = edits.filter((edit) => edit !== undefined);
    if (known.length === edits.length) this.keeper.edit(key, known);
    else this.keeper.setText(key, text);
    return key;
  }

  close(uri: string): string {
    const key = canonical(uri);
    this.#open.delete(key);
    this.files.dropBuffer(key);
    this.keeper.close(key);
    return key;
  }
}

/** A change as our texts count, which is in UTF-16. */
function inCodeUnits(
  document: TextDocument,
  change: TextDocumentContentChangeEvent,
  encoding: Encoding,
): TextDocumentContentChangeEvent {
  if (encoding === 'utf-16' || !('range' in change)) return change;
  const lines = new Lines(document.getText(), encoding);
  const at = (position: { line: number; character: number }) => document.positionAt(lines.offset(position));
  return { range: { start: at(change.range.start), end: at(change.range.end) }, text: change.text };
}

/** Applies one change and gives it in offsets of the text before it; undefined when it replaces the whole text. */
function apply(
  document: TextDocument,
  change: TextDocumentContentChangeEvent,
  version: number,
): TextEdit | undefined {
  const edit = 'range' in change ? offsets(document, change) : undefined;
  TextDocument.update(document, [change], version);
  return edit;
}

function offsets(
  document: TextDocument,
  change: TextDocumentContentChangeEvent & { range: unknown },
): TextEdit {
  const { range, text } = change as Extract<TextDocumentContentChangeEvent, { range: unknown }>;
  const ends = [document.offsetAt(range.start), document.offsetAt(range.end)];
  return { from: Math.min(...ends), to: Math.max(...ends), text };
}

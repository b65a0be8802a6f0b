/** What a request is to the server: its name, how fresh a model it needs, what it announces, and who answers it. */
import type { ServerCapabilities, TextDocumentPositionParams } from 'vscode-languageserver';
import type { Desk } from './desk';
import type { Diagnostics } from './diagnostics';
import type { OpenDocument } from './documents';
import type { Previews } from './previews';

/** How much of the model a request waits for. */
export type Needs = 'nothing' | 'text' | 'names' | 'geometry' | 'checks';

export interface Room {
  readonly desk: Desk;
  readonly previews: Previews;
  readonly diagnostics: Diagnostics;
}

/** While a long piece of work runs: whether it is still wanted, and how far it is. */
export interface During {
  readonly cancelled: () => boolean;
  /** Begins to tell a client that shows it; `report` and `done` do nothing for another. */
  begin(title: string): void;
  report(share: number, words: string): void;
  done(): void;
}

export interface Service {
  readonly method: string;
  readonly needs: Needs;
  readonly announces: Partial<ServerCapabilities>;
  /** Answers a request, at once or by and by; whatever the params hold, the answer is data or null. */
  handle(params: never, room: Room, during?: During): unknown;
}

export type AboutText = { readonly textDocument: { readonly uri: string } };

/** A request about an open text: null where the text is not open. */
export const aboutText =
  <P extends AboutText, R>(work: (document: OpenDocument, params: P, desk: Desk) => R) =>
  (params: P, { desk }: Room): R | null => {
    const document = desk.documents.get(params.textDocument.uri);
    return document === undefined ? null : work(document, params, desk);
  };

/** Lets waiting messages in: a cancellation, or a newer text. A worker of a browser has no immediate. */
export const breathe = (): Promise<void> =>
  new Promise((resolve) => {
    if (typeof setImmediate === 'function') setImmediate(resolve);
    else setTimeout(resolve, 0);
  });

export const offsetOf = ({ lines }: OpenDocument, { position }: TextDocumentPositionParams) =>
  lines.offset(position);

export const service = <P>(
  method: string,
  needs: Needs,
  announces: Partial<ServerCapabilities>,
  handle: (params: P, room: Room, during?: During) => unknown,
): Service => ({ method, needs, announces, handle });

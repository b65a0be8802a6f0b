/** What the preview needs of the language client, so that it can be tried without one. */
import type { Disposable } from 'vscode';

export interface LanguageClientLike {
  sendRequest<R>(method: string, params: unknown): Promise<R>;
  sendNotification(method: string, params: unknown): Promise<void>;
  onNotification<P>(method: string, handler: (params: P) => void): Disposable;
  onDidChangeState(listener: (event: { readonly newState: number }) => void): Disposable;
}

/** The state of a client that answers, as vscode-languageclient counts them. */
export const RUNNING = 2;

/** A client of the language server in this process: opens, types, asks, and keeps what it is told. */
import { PassThrough } from 'node:stream';
import {
  ConfigurationRequest,
  createConnection,
  createProtocolConnection,
  DidChangeConfigurationNotification,
  DidChangeTextDocumentNotification,
  DidChangeWatchedFilesNotification,
  DidCloseTextDocumentNotification,
  DidOpenTextDocumentNotification,
  ExitNotification,
  FileChangeType,
  InitializedNotification,
  InitializeRequest,
  LogMessageNotification,
  PublishDiagnosticsNotification,
  RegistrationRequest,
  ShutdownRequest,
  WorkDoneProgress,
  StreamMessageReader,
  StreamMessageWriter,
  type CancellationToken,
  type ClientCapabilities,
  type Diagnostic,
  type InitializeResult,
  type ProtocolConnection,
  type PublishDiagnosticsParams,
  type Range,
} from 'vscode-languageserver/node';
import { methods, type Sheet } from '../../client/preview/protocol';
import { Lines } from '../../server/features/lines';
import { compareServices } from '../../server/lsp/comparing';
import { nothingBehind, type Behind } from '../../server/lsp/files';
import { dropCancelled, serve } from '../../server/lsp/server';

export interface Start {
  readonly behind?: Behind;
  /** Gives memory back. */
  readonly collect?: () => void;
  readonly folders?: readonly string[];
  readonly pages?: string;
  /** Severities that come with the greeting. */
  readonly severity?: Readonly<Record<string, string>>;
  /** What a client that can be asked for its settings answers. */
  readonly settings?: () => unknown;
  /** What the client says that it can do. */
  readonly capabilities?: ClientCapabilities;
  /** The language of the person, as the protocol has it. */
  readonly locale?: string;
}

/** What a server may ask of a client that said so. */
const ASKED_BY_SERVER = [
  'workspace/diagnostic/refresh',
  'workspace/codeLens/refresh',
  'workspace/inlayHint/refresh',
  'window/workDoneProgress/create',
];

/** Longest that an answer may take before the test gives up, ms. */
const PATIENCE = 8000;

export class TestClient {
  readonly published: PublishDiagnosticsParams[] = [];
  readonly sheets: Sheet[] = [];
  /** What the server wrote into the client's log: faults of ours, caught at its edge. */
  readonly faults: string[] = [];
  readonly texts = new Map<string, string>();
  readonly #versions = new Map<string, number>();
  readonly #waiting = new Set<() => void>();

  private constructor(
    readonly connection: ProtocolConnection,
    readonly answer: InitializeResult,
    /** Requests of the server, by their methods: that it wants to be asked again, for one. */
    readonly asked: readonly string[],
  ) {}

  /** A running server with this client at its other end. */
  static async start(how: Start = {}): Promise<TestClient> {
    const { behind = nothingBehind, collect } = how;
    const [toServer, toClient] = [new PassThrough(), new PassThrough()];
    const server = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(toClient), {
      connectionStrategy: dropCancelled,
    });
    serve(server, { behind, services: compareServices, ...(collect && { collect }) });
    return TestClient.connect(toClient, toServer, how);
  }

  /** A client for a server at the other end of two streams. */
  static async connect(
    input: NodeJS.ReadableStream,
    output: NodeJS.WritableStream,
    { folders = [], pages, severity, settings, capabilities = {}, locale }: Start = {},
  ): Promise<TestClient> {
    const connection = createProtocolConnection(
      new StreamMessageReader(input),
      new StreamMessageWriter(output),
    );
    if (settings !== undefined) {
      connection.onRequest(ConfigurationRequest.type, ({ items }) => items.map(settings));
      connection.onRequest(RegistrationRequest.type, () => undefined);
    }
    const asked: string[] = [];
    const told: { now: (mark?: string) => void } = { now: () => undefined };
    for (const method of ASKED_BY_SERVER) {
      connection.onRequest(method, (params: { readonly token?: string } | null) => {
        asked.push(method);
        told.now(params?.token);
        return null;
      });
    }
    connection.listen();
    const workspaceFolders = folders.map((uri) => ({ uri, name: uri }));
    const answer = await connection.sendRequest(InitializeRequest.type, {
      processId: null,
      rootUri: null,
      ...(locale !== undefined && { locale }),
      capabilities:
        settings === undefined
          ? capabilities
          : { workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } } },
      workspaceFolders,
      initializationOptions: { pages, severity },
    });
    const client = new TestClient(connection, answer, asked);
    told.now = (mark) => {
      if (mark !== undefined) client.follow(mark);
      client.#told();
    };
    client.#listen();
    await connection.sendNotification(InitializedNotification.type, {});
    return client;
  }

  /** Progress as it was told: `begin TITLE`, `report MESSAGE`, `end`. */
  readonly progress: string[] = [];

  /** Follows the progress under a mark that the client or the server gave. */
  follow(mark: string | number): void {
    this.connection.onProgress(WorkDoneProgress.type, mark, ({ kind, ...told }) => {
      const { title, message } = told as { title?: string; message?: string };
      this.progress.push([kind, title ?? message].filter(Boolean).join(' '));
      this.#told();
    });
  }

  #listen(): void {
    this.connection.onNotification(PublishDiagnosticsNotification.type, (params) => {
      this.published.push(params);
      this.#told();
    });
    this.connection.onNotification(
      LogMessageNotification.type,
      ({ message }) => void this.faults.push(message),
    );
    this.connection.onNotification(methods.sheet, (sheet: Sheet) => {
      this.sheets.push(sheet);
      this.#told();
    });
  }

  #told(): void {
    [...this.#waiting].forEach((look) => look());
  }

  /** Waits until the server has told something that `find` sees. */
  async until<T>(what: string, find: () => T | undefined): Promise<T> {
    const found = find();
    if (found !== undefined) return found;
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        this.#waiting.delete(look);
        reject(new Error(`no word of ${what}`));
      }, PATIENCE);
      const look = () => {
        const seen = find();
        if (seen === undefined) return;
        clearTimeout(timer);
        this.#waiting.delete(look);
        resolve(seen);
      };
      this.#waiting.add(look);
    });
  }

  async open(uri: string, text: string): Promise<void> {
    this.texts.set(uri, text);
    this.#versions.set(uri, 1);
    const textDocument = { uri, languageId: 'draftwright', version: 1, text };
    await this.connection.sendNotification(DidOpenTextDocumentNotification.type, { textDocument });
  }

  /** Replaces the first stretch of the text that reads `words`, as an editor would. */
  async type(uri: string, words: string, others: string): Promise<void> {
    const text = this.texts.get(uri)!;
    const from = text.indexOf(words);
    if (from < 0) throw new Error(`the text does not say: ${words}`);
    const range = new Lines(text).range(from, from + words.length);
    await this.change(uri, range, others, text.slice(0, from) + others + text.slice(from + words.length));
  }

  async change(uri: string, range: Range, text: string, after: string): Promise<void> {
    const version = this.#versions.get(uri)! + 1;
    this.#versions.set(uri, version);
    this.texts.set(uri, after);
    const params = { textDocument: { uri, version }, contentChanges: [{ range, text }] };
    await this.connection.sendNotification(DidChangeTextDocumentNotification.type, params);
  }

  async close(uri: string): Promise<void> {
    await this.connection.sendNotification(DidCloseTextDocumentNotification.type, { textDocument: { uri } });
  }

  async configure(severity?: unknown): Promise<void> {
    const settings = severity === undefined ? null : { draftwright: { severity } };
    await this.connection.sendNotification(DidChangeConfigurationNotification.type, { settings });
  }

  /** Sends settings of ours anew. */
  async set(settings: object): Promise<void> {
    await this.connection.sendNotification(DidChangeConfigurationNotification.type, {
      settings: { draftwright: settings },
    });
  }

  async fileChanged(uri: string, type: FileChangeType = FileChangeType.Changed): Promise<void> {
    await this.connection.sendNotification(DidChangeWatchedFilesNotification.type, {
      changes: [{ uri, type }],
    });
  }

  /** The diagnostics of the present version of an open text, as soon as they are told. */
  async diagnostics(uri: string): Promise<readonly Diagnostic[]> {
    const version = this.#versions.get(uri);
    return this.until(`diagnostics of ${uri} ${version}`, () => {
      const last = this.published.filter((params) => params.uri === uri).at(-1);
      return last?.version === version ? last?.diagnostics : undefined;
    });
  }

  /** Waits for a request of the server beyond those that were counted already. */
  async heard(method: string, after: number): Promise<void> {
    await this.until(method, () => (this.asked.slice(after).includes(method) ? true : undefined));
  }

  /** The next sheet after those that were counted already. */
  async sheetAfter(count: number): Promise<Sheet> {
    return this.until(`sheet ${count + 1}`, () => this.sheets[count]);
  }

  ask<T>(method: string, params: unknown, token?: CancellationToken): Promise<T> {
    return token === undefined
      ? this.connection.sendRequest(method, params)
      : this.connection.sendRequest(method, params, token);
  }

  /** The position of the first stretch that reads `words`, `into` characters into it. */
  at(uri: string, words: string, into = 0): { textDocument: { uri: string }; position: Range['start'] } {
    const text = this.texts.get(uri)!;
    return { textDocument: { uri }, position: new Lines(text).position(text.indexOf(words) + into) };
  }

  /** Ends the conversation, but not the process that the server runs in. */
  async leave(): Promise<void> {
    await this.connection.sendRequest(ShutdownRequest.type);
    this.connection.dispose();
  }

  /** Tells a server in its own process to end. */
  async dismiss(): Promise<void> {
    await this.connection.sendRequest(ShutdownRequest.type);
    await this.connection.sendNotification(ExitNotification.type);
  }
}

/** The language server: wires a connection to the desk, the services, the diagnostics and the previews. */
import {
  CodeLensRefreshRequest,
  ErrorCodes,
  FileOperationPatternKind,
  LSPErrorCodes,
  Message,
  ResponseError,
  TextDocumentSyncKind,
  type CancellationToken,
  type Connection,
  type ConnectionStrategy,
  type InitializeError,
  type InitializeParams,
  type InitializeResult,
  type PublishDiagnosticsParams,
  type ResponseMessage,
} from 'vscode-languageserver';
import { methods, type Laid, type Sheet, type Trial, type Want } from '../../client/preview/protocol';
import type { Pattern } from '../drafting/model';
import { ENCODINGS, type Encoding } from '../features/lines';
import { Desk } from './desk';
import { Diagnostics } from './diagnostics';
import type { Behind } from './files';
import { Grace } from './grace';
import { guarded, guardedLater } from './guard';
import { Idle } from './idle';
import { Previews, type Seat } from './previews';
import { duringRequest, readWorkspace } from './progress';
import { Rounds } from './rounds';
import type { Room, Service } from './service';
import { announced, services } from './services';
import { ClientSettings } from './settings';
import { shown } from './shown';
import { speakTo } from './tongue';
import { Told, type ToldFile } from './told';
import { canonical } from './uris';

/** What a client may tell at the start beyond the protocol. */
export interface StartOptions {
  /** The beginning of the address of a code's page; the code and `.md` follow. Without it, codes lead nowhere. */
  readonly pages?: string;
  /** How grave each problem is, by code, for clients that can't be asked for their settings. */
  readonly severity?: Readonly<Record<string, string>>;
  /** Whether a hover may hold pictures; without it, what the client says of its Markdown decides. */
  readonly pictures?: boolean;
}

/** Files and folders of which we want to hear before they get other names. */
const MOVING = [
  { pattern: { glob: '**/*.draft', matches: FileOperationPatternKind.file } },
  { pattern: { glob: '**', matches: FileOperationPatternKind.folder } },
];

/** The first way of counting characters in a client's list that we know as well. */
const known = (offered: readonly string[]): Encoding | undefined =>
  offered.flatMap((one) => ENCODINGS.find((ours) => ours === one) ?? [])[0];

const cancelled = () => new ResponseError(LSPErrorCodes.RequestCancelled, 'No longer wanted.');

/** Before the greeting and after the farewell nothing is answered, as the specification has it. */
const outOfTurn = (stage: 'waiting' | 'leaving') =>
  stage === 'waiting'
    ? new ResponseError(ErrorCodes.ServerNotInitialized, 'Nobody has said yet who is asking.')
    : new ResponseError(ErrorCodes.InvalidRequest, 'The server has been told to stop.');

/** A server is greeted once: its texts would be another client's. */
const alreadyGreeted = () =>
  new ResponseError<InitializeError>(ErrorCodes.InvalidRequest, 'The server has been greeted already.', {
    retry: false,
  });

const pointless = (method: string) =>
  new ResponseError(ErrorCodes.InvalidParams, `${method} has to say what it is about.`);

/** Answers a request that was cancelled while it still waited, so that no work is done for it. */
export const dropCancelled: ConnectionStrategy = {
  cancelUndispatched: (message) => {
    if (!Message.isRequest(message)) return undefined;
    const answer: ResponseMessage = { jsonrpc: '2.0', id: message.id, error: cancelled().toJson() };
    return answer;
  },
};

/** What the server stands on. */
export interface Machine {
  readonly behind: Behind;
  /** What only a machine with a disk can render. */
  readonly services?: readonly Service[];
  /** Gives memory back. It is called while nobody works. */
  readonly collect?: () => void;
}

/** Serves one client until it leaves. */
export function serve(connection: Connection, machine: Machine): void {
  const told = new Told(machine.behind);
  new Server(connection, new Desk(told), told, machine).listen();
}

class Server {
  readonly #previews: Previews;
  readonly #diagnostics: Diagnostics;
  readonly #rounds: Rounds;
  readonly #grace = new Grace(() => this.#problemsAnew());
  readonly #idle: Idle;
  readonly #room: Room;
  readonly #settings: ClientSettings;
  #pages: string | undefined;

  constructor(
    private readonly connection: Connection,
    private readonly desk: Desk,
    private readonly told: Told,
    private readonly machine: Machine,
  ) {
    const { collect } = machine;
    this.#idle = new Idle(collect && (() => this.#guarded('Giving memory back', collect)));
    const page = (code: string) => (this.#pages === undefined ? undefined : `${this.#pages}${code}.md`);
    const show = (message: Sheet | Laid) => void connection.sendNotification(methods[message.type], message);
    this.#previews = new Previews(desk, show, this.#grace);
    const send = (params: PublishDiagnosticsParams) => void connection.sendDiagnostics(params);
    this.#diagnostics = new Diagnostics(send, desk, page, this.#grace);
    this.#rounds = new Rounds({ files: () => this.#watched(), update: (uri) => this.#update(uri) });
    this.#room = { desk, previews: this.#previews, diagnostics: this.#diagnostics };
    this.#settings = new ClientSettings(connection, {
      severities: (set) => {
        if (desk.judgeBy(set)) this.#problemsAnew();
      },
      hints: (kinds) => {
        desk.hintKinds = kinds;
        this.#askAgain();
      },
      fading: (wanted) => {
        if (wanted === desk.fadesUnused) return;
        desk.fadesUnused = wanted;
        this.#problemsAnew();
      },
      dialect: (wanted) => {
        if (wanted === desk.dialect) return;
        desk.dialect = wanted;
        this.#problemsAnew();
      },
    });
  }

  listen(): void {
    this.connection.onInitialize((params) =>
      this.#stage === 'waiting' ? this.#initialize(params) : alreadyGreeted(),
    );
    this.connection.onInitialized(() => {
      this.#followFolders();
      this.#settings.follow();
      // a client that refuses to show it has no use for it
      readWorkspace(this.connection, this.desk, this.#capabilities).catch(() => undefined);
    });
    this.#settings.listen();
    this.connection.onShutdown(() => {
      this.#stage = 'leaving';
      this.#rounds.stop();
      this.#grace.stop();
      this.#idle.stop();
    });
    this.#followTexts();
    this.#followFiles();
    this.connection.onNotification(methods.closePreview, (seat: Seat) => this.#previews.close(seat));
    this.connection.onNotification(methods.tryOut, (tried: Seat & { readonly trial: Trial }) =>
      this.#guarded('Trying other values', () => this.#previews.tryOut(tried)),
    );
    this.connection.onNotification(methods.want, (wanted: Seat & { readonly want: Want }) =>
      this.#guarded('Showing more', () => this.#previews.wants(wanted)),
    );
    for (const service of [...services, ...(this.machine.services ?? [])]) this.#answer(service);
    this.connection.listen();
  }

  #initialize(params: InitializeParams): InitializeResult {
    speakTo(params.locale);
    const folders =
      params.workspaceFolders?.map(({ uri }) => uri) ?? (params.rootUri ? [params.rootUri] : []);
    this.#folders = new Set(folders);
    this.desk.files.setFolders(folders);
    this.#pages = (params.initializationOptions as StartOptions | undefined)?.pages;
    this.#stage = 'serving';
    this.#capabilities = params.capabilities;
    this.#settings.greet(params);
    this.#diagnostics.greet(params.capabilities);
    this.desk.shows = shown(params);
    const { documentChanges, changeAnnotationSupport } = params.capabilities.workspace?.workspaceEdit ?? {};
    this.desk.annotates = documentChanges === true && changeAnnotationSupport !== undefined;
    const offered = params.capabilities.general?.positionEncodings ?? [];
    this.desk.documents.encoding = known(offered) ?? 'utf-16';
    this.#refreshes = {
      hints: params.capabilities.workspace?.inlayHint?.refreshSupport === true,
      lenses: params.capabilities.workspace?.codeLens?.refreshSupport === true,
    };
    this.#hearsFolders = params.capabilities.workspace?.workspaceFolders === true;
    return {
      serverInfo: { name: 'draftwright', version: process.env.DRAFTWRIGHT_VERSION ?? 'from source' },
      capabilities: {
        textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
        positionEncoding: this.desk.documents.encoding,
        workspace: {
          workspaceFolders: { supported: true, changeNotifications: true },
          fileOperations: { willRename: { filters: MOVING } },
        },
        ...announced(this.#diagnostics.asked, params.capabilities),
      },
    };
  }

  #stage: 'waiting' | 'serving' | 'leaving' = 'waiting';
  #capabilities: InitializeParams['capabilities'] = {};
  #folders = new Set<string>();
  #hearsFolders = false;

  #followFolders(): void {
    if (!this.#hearsFolders) return;
    this.connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      removed.forEach(({ uri }) => this.#folders.delete(uri));
      added.forEach(({ uri }) => this.#folders.add(uri));
      this.desk.files.setFolders([...this.#folders]);
      this.#everythingAgain();
    });
  }

  #followTexts(): void {
    this.connection.onDidOpenTextDocument(({ textDocument }) =>
      this.#guarded('Opening a text', () => {
        this.desk.filesMoved();
        this.#rounds.touch(this.desk.documents.open(textDocument));
      }),
    );
    this.connection.onDidChangeTextDocument((params) =>
      this.#guarded('Following an edit', () => {
        const key = this.desk.documents.change(params);
        if (key === undefined) return;
        this.#typedIn = key;
        this.#grace.follow(params.contentChanges);
        this.#rounds.touch(key);
      }),
    );
    this.connection.onDidCloseTextDocument(({ textDocument: { uri } }) =>
      this.#guarded('Closing a text', () => {
        const key = this.desk.documents.close(uri);
        this.desk.filesMoved();
        this.#diagnostics.clear(key, uri);
        this.#drafted.delete(key);
        this.#rounds.touch(key);
      }),
    );
  }

  #followFiles(): void {
    this.connection.onNotification(methods.files, ({ files }: { files: readonly ToldFile[] }) =>
      this.#guarded('Taking files', () => this.#changed(this.told.take(files))),
    );
    this.connection.onDidChangeWatchedFiles(({ changes }) =>
      this.#guarded('Following files on disk', () => this.#changed(changes.map(({ uri }) => canonical(uri)))),
    );
  }

  /** Of an open file the buffer counts, and saving it changes nothing. */
  #changed(keys: readonly string[]): void {
    const closed = keys.filter((key) => this.desk.documents.get(key) === undefined);
    for (const key of closed) this.desk.workshop.refresh(key);
    this.desk.filesMoved();
    this.#rounds.touch('');
  }

  /** After the workspace changed, what a `use` means may have changed with it. */
  #everythingAgain(): void {
    for (const key of this.desk.documents.keys()) this.desk.workshop.refresh(key);
    this.desk.filesMoved();
    this.#rounds.touch('');
  }

  /** The text that was edited last: its client asks again by itself. */
  #typedIn = '';
  readonly #drafted = new Map<string, Pattern>();

  #refreshes: { hints: boolean; lenses: boolean } = { hints: false, lenses: false };

  /** Has the client ask again for figures that rest on more than the text they stand in. */
  #askAgain(): void {
    const { languages } = this.connection;
    if (this.#refreshes.hints) void languages.inlayHint.refresh();
    if (this.#refreshes.lenses) void this.connection.sendRequest(CodeLensRefreshRequest.type);
    if (this.#diagnostics.asked) languages.diagnostics.refresh();
  }

  /** What is said of problems is another, though no text is. */
  #problemsAnew(): void {
    if (this.#diagnostics.asked && this.desk.documents.keys().length > 0)
      this.connection.languages.diagnostics.refresh();
    this.#rounds.touch('');
  }

  /** Files that somebody looks at, as texts or as drawings. */
  #watched(): readonly string[] {
    return [...new Set([...this.desk.documents.keys(), ...this.#previews.keys()])];
  }

  #update(key: string): void {
    this.#idle.stir();
    this.#guarded(`Drafting ${key}`, () => {
      const pattern = this.desk.pattern(key);
      const document = this.desk.documents.get(key);
      const before = this.#drafted.get(key);
      if (document !== undefined) this.#drafted.set(key, pattern);
      const outdated =
        (before !== undefined && before !== pattern) || this.#diagnostics.isOutdated(key, pattern);
      if (outdated && key !== this.#typedIn) this.#askAgain();
      if (document !== undefined) this.#diagnostics.publish(document, pattern);
      this.#previews.update(key);
    });
  }

  #answer({ method, handle }: Service): void {
    const { console } = this.connection;
    // of a request without parameters the connection hands over the token alone
    this.connection.onRequest(method, (params: never, token?: CancellationToken) => {
      if (this.#stage !== 'serving') return outOfTurn(this.#stage);
      if (token === undefined) return pointless(method);
      if (token.isCancellationRequested) return cancelled();
      this.#idle.stir();
      return guardedLater<unknown>(console, method, null, () =>
        handle(params, this.#room, duringRequest(this.connection, params, token)),
      );
    });
  }

  #guarded(what: string, work: () => void): void {
    guarded(this.connection.console, what, undefined, work);
  }
}

/** What a client sets: how grave each problem is, which hints it wants, what it fades, whose words it wants. Asked for where the client can be asked, else taken as it is sent. */
import {
  DidChangeConfigurationNotification,
  type Connection,
  type InitializeParams,
} from 'vscode-languageserver';
import { readSettings, type Severities } from '../checks';
import { readDialect, type Dialect } from '../../grammar/dialect';
import type { HintKinds } from '../features/hints';

/** The section of a client's configuration. */
const SECTION = 'draftwright';

export class ClientSettings {
  #asks = false;
  #registers = false;

  /** @param take is handed what is set whenever it may have changed */
  constructor(
    private readonly connection: Connection,
    private readonly take: {
      severities(set: Severities): void;
      hints(kinds: HintKinds): void;
      fading(wanted: boolean): void;
      dialect(wanted: Dialect): void;
    },
  ) {}

  /** Before anything is asked: what came with the greeting. */
  greet({ capabilities: { workspace }, initializationOptions }: InitializeParams): void {
    this.#asks = workspace?.configuration === true;
    this.#registers = workspace?.didChangeConfiguration?.dynamicRegistration === true;
    this.#read(part(initializationOptions, 'severity'));
    this.take.hints(hintKinds(part(initializationOptions, 'inlayHints')));
    this.take.fading(part(initializationOptions, 'fadeUnused') !== false);
    this.take.dialect(readDialect(part(initializationOptions, 'dialect')));
  }

  listen(): void {
    this.connection.onDidChangeConfiguration(({ settings }: { settings: unknown }) => {
      if (this.#asks) this.#ask();
      else {
        this.#read(part(part(settings, SECTION), 'severity'));
        this.take.hints(hintKinds(part(part(settings, SECTION), 'inlayHints')));
        this.take.fading(part(part(settings, SECTION), 'fadeUnused') !== false);
        this.take.dialect(readDialect(part(part(settings, SECTION), 'dialect')));
      }
    });
  }

  follow(): void {
    if (this.#registers) void this.connection.client.register(DidChangeConfigurationNotification.type);
    if (this.#asks) this.#ask();
  }

  #ask(): void {
    void this.connection.workspace
      .getConfiguration(`${SECTION}.severity`)
      .then((severity: unknown) => this.#read(severity));
    void this.connection.workspace
      .getConfiguration(`${SECTION}.inlayHints`)
      .then((kinds: unknown) => this.take.hints(hintKinds(kinds)));
    void this.connection.workspace
      .getConfiguration(`${SECTION}.fadeUnused`)
      .then((fade: unknown) => this.take.fading(fade !== false));
    void this.connection.workspace
      .getConfiguration(`${SECTION}.dialect`)
      .then((dialect: unknown) => this.take.dialect(readDialect(dialect)));
  }

  /** A setting that can't be followed is told in the client's log, and the others hold. */
  #read(severity: unknown): void {
    const { severities, refusals } = readSettings(Object.entries(isRecord(severity) ? severity : {}));
    const { console: log } = this.connection;
    for (const refusal of refusals) log.warn(`${SECTION}.severity: ${refusal}`);
    this.take.severities(severities);
  }
}

/** Whatever is not set is shown. */
const hintKinds = (set: unknown): HintKinds => {
  const wanted = (name: keyof HintKinds): boolean => part(set, name) !== false;
  return {
    enabled: wanted('enabled'),
    edges: wanted('edges'),
    seams: wanted('seams'),
    values: wanted('values'),
  };
};

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const part = (value: unknown, name: string): unknown => (isRecord(value) ? value[name] : undefined);

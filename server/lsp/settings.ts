/** What a client sets: how grave each problem is. Asked for where the client can be asked, else taken as it is sent. */
import {
  DidChangeConfigurationNotification,
  type Connection,
  type InitializeParams,
} from 'vscode-languageserver';
import { readSettings, type Severities } from '../checks';

/** The section of a client's configuration. */
const SECTION = 'draftwright';

export class ClientSettings {
  #asks = false;
  #registers = false;

  /** @param take is handed the severities whenever they may have changed */
  constructor(
    private readonly connection: Connection,
    private readonly take: (severities: Severities) => void,
  ) {}

  /** Before anything is asked: what came with the greeting. */
  greet({ capabilities: { workspace }, initializationOptions }: InitializeParams): void {
    this.#asks = workspace?.configuration === true;
    this.#registers = workspace?.didChangeConfiguration?.dynamicRegistration === true;
    this.#read(part(initializationOptions, 'severity'));
  }

  listen(): void {
    this.connection.onDidChangeConfiguration(({ settings }: { settings: unknown }) => {
      if (this.#asks) this.#ask();
      else this.#read(part(part(settings, SECTION), 'severity'));
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
  }

  /** A setting that can't be followed is told in the client's log, and the others hold. */
  #read(severity: unknown): void {
    const { severities, refusals } = readSettings(Object.entries(isRecord(severity) ? severity : {}));
    for (const refusal of refusals) this.connection.console.warn(`${SECTION}.severity: ${refusal}`);
    this.take(severities);
  }
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const part = (value: unknown, name: string): unknown => (isRecord(value) ? value[name] : undefined);

/** The guard at the server's outer edge: a fault of ours is told to the client's log and never ends the server. */

export interface Log {
  error(message: string): void;
}

/** Runs one piece of work; where it breaks, says so in the log and answers `otherwise`. */
export function guarded<T>(log: Log, what: string, otherwise: T, work: () => T): T {
  try {
    return work();
  } catch (fault) {
    log.error(`${what} broke. ${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}`);
    return otherwise;
  }
}

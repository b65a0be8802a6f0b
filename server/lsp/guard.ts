/** The guard at the server's outer edge: a fault of ours is told to the client's log and never ends the server. */

export interface Log {
  error(message: string): void;
}

/** Runs one piece of work; where it breaks, says so in the log and answers `otherwise`. */
export function guarded<T>(log: Log, what: string, otherwise: T, work: () => T): T {
  try {
    return work();
  } catch (fault) {
    told(log, what, fault);
    return otherwise;
  }
}

/** The same for work that goes on by and by, where the answer is a promise. */
export function guardedLater<T>(log: Log, what: string, otherwise: T, work: () => T): T | Promise<T> {
  const answer = guarded(log, what, otherwise, work);
  if (!(answer instanceof Promise)) return answer;
  return (answer as Promise<T>).catch((fault: unknown) => {
    told(log, what, fault);
    return otherwise;
  });
}

function told(log: Log, what: string, fault: unknown): void {
  log.error(`${what} broke. ${fault instanceof Error ? (fault.stack ?? fault.message) : String(fault)}`);
}

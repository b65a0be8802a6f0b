/** Asks again only after the last answer came, and then once, however often it was called meanwhile: the newest wins. */
export function newestWins<A extends readonly unknown[]>(
  ask: (...args: A) => Promise<void>,
): (...args: A) => void {
  let running = false;
  let waiting: A | undefined;

  const run = async (args: A): Promise<void> => {
    running = true;
    await ask(...args).catch(() => undefined); // who asks has said so already, or will be asked again
    running = false;
    const next = waiting;
    waiting = undefined;
    if (next) void run(next);
  };

  return (...args) => {
    if (running) waiting = args;
    else void run(args);
  };
}

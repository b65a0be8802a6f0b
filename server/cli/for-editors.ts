/**
 * The command line's door for an editor: over the channel of the process that started it, it says what can be exported of a
 * pattern and runs command lines, with the texts as they are open. A process of its own, so that nobody waits at the keys.
 */
import type { FromExporter, OpenText, Ran, ToExporter } from '../drawing/exporting';
import { uriOfPath } from '../lsp/disk';
import { commandsFor, run } from './commands';
import { exportTargets } from './exports';
import { UNABLE, type Io } from './io';
import { inItsLanguage, LANGUAGE_FLAG } from './language';
import { Bench } from './open';

/** Lines of a message are wrapped by the editor. */
const WIDTH = 1000;

export async function answerEditor(asked: ToExporter): Promise<FromExporter> {
  const { id } = asked;
  if (asked.ask === 'run') return { id, ran: await ranWith(asked.args, asked.folder, asked.texts) };
  const { io } = world(asked.folder, asked.texts);
  const { pattern } = await inItsLanguage([LANGUAGE_FLAG, asked.language], () =>
    Promise.resolve().then(() => new Bench(io).open(asked.file, { set: new Map() })),
  );
  // in English, which the form tells in the words of its editor
  return { id, targets: exportTargets(commandsFor(io), pattern) };
}

async function ranWith(args: readonly string[], folder: string, texts: readonly OpenText[]): Promise<Ran> {
  const { io, printed } = world(folder, texts);
  const exit = await run(args, io);
  return { exit: exit ?? UNABLE, ...printed };
}

/** What a command sees of the world: nothing of a terminal, and open texts before the disk. */
function world(cwd: string, texts: readonly OpenText[]): { io: Io; printed: { out: string; err: string } } {
  const printed = { out: '', err: '' };
  const io: Io = {
    cwd,
    out: (text) => void (printed.out += text),
    err: (text) => void (printed.err += text),
    width: WIDTH,
    colour: false,
    texts: new Map(texts.map(({ path, text }) => [uriOfPath(path), text])),
  };
  return { io, printed };
}

/** Answers every message of the parent, and ends with it. */
export function serveEditor(channel: NodeJS.Process): void {
  channel.on('disconnect', () => channel.exit());
  channel.on('message', (asked: ToExporter) => {
    const failed = (fault: unknown): FromExporter => ({
      id: asked.id,
      ran: { exit: UNABLE, out: '', err: fault instanceof Error ? fault.message : String(fault) },
    });
    void answerEditor(asked)
      .catch(failed)
      .then((answer) => channel.send?.(answer));
  });
}

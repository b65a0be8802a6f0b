/** How far long work is, told to a client that shows it; and the reading of a large workspace, which is such work. */
import { say } from '../../grammar/say';
import type {
  CancellationToken,
  Connection,
  InitializeParams,
  WorkDoneProgressReporter,
} from 'vscode-languageserver';
import type { Desk } from './desk';
import { breathe, type During } from './service';

/** Progress of one request, under the mark that the client gave for it. */
export function duringRequest(connection: Connection, params: unknown, token: CancellationToken): During {
  const mark = (params as { workDoneToken?: string | number } | undefined)?.workDoneToken;
  const reporter = mark === undefined ? undefined : connection.window.attachWorkDoneProgress(mark);
  return during(reporter, () => token.isCancellationRequested);
}

const during = (reporter: WorkDoneProgressReporter | undefined, cancelled: () => boolean): During => ({
  cancelled,
  begin: (title) => reporter?.begin(title, 0, '', true),
  report: (share, words) => reporter?.report(Math.round(share * 100), words),
  done: () => reporter?.done(),
});

/** From so many files on, reading them takes long enough to be told. */
const MANY = 40;
/** Files that are read between two looks at what else is wanted: a few milliseconds. */
const AT_ONCE = 4;
/** Files beyond these are read when somebody asks for them: all at once they would take more memory than they are worth. */
const MOST = 400;

/**
 * Reads the files of a large workspace before anybody asks, so that the first search for a name answers at once. A
 * person may stop it, and loses nothing by it.
 */
export async function readWorkspace(
  connection: Connection,
  desk: Desk,
  { window }: InitializeParams['capabilities'],
): Promise<void> {
  if (window?.workDoneProgress !== true) return;
  const files = desk.files.all().slice(0, MOST);
  if (files.length < MANY) return;
  const reporter = await connection.window.createWorkDoneProgress();
  reporter.begin(say`Reading patterns`, 0, say`0 of ${files.length}`, true);
  for (let i = 0; i < files.length && !reporter.token.isCancellationRequested; i += AT_ONCE) {
    for (const uri of files.slice(i, i + AT_ONCE)) desk.workshop.source(uri);
    reporter.report(Math.round((i / files.length) * 100), say`${i} of ${files.length}`);
    await breathe();
  }
  reporter.done();
}

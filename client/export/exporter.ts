/** The process that exports: started for one export, told the texts as they are open, and ended when it is done or stopped. */
import { fork, type ChildProcess } from 'node:child_process';
import { readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { say, tongue } from '../../grammar/say';
import {
  EXPORTER,
  type ExportTarget,
  type FromExporter,
  type OpenText,
  type Ran,
  type ToExporter,
} from '../../server/drawing/exporting';

/** The program and how Node is to load it. */
export interface Program {
  readonly module: string;
  readonly execArgv?: readonly string[];
}

/** What an export sees of the editor. */
export interface Desk {
  /** The folder that the pattern's `use` lines may not leave. */
  readonly folder: string;
  readonly texts: readonly OpenText[];
}

/** Stopped by the person, which is no fault. */
export class Stopped extends Error {}

export class Exporter {
  private readonly child: ChildProcess;
  private readonly waiting = new Map<
    number,
    { done(answer: FromExporter): void; failed(why: Error): void }
  >();
  private count = 0;
  private said = '';
  private stopped = false;

  constructor({ module, execArgv = [] }: Program) {
    this.child = fork(module, [EXPORTER], {
      execArgv: [...execArgv],
      env: { ...process.env, ELECTRON_RUN_AS_NODE: '1' },
      stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
    });
    this.child.stderr?.on('data', (text: Buffer) => (this.said = (this.said + text.toString()).slice(-2000)));
    this.child.on('message', (answer: FromExporter) => this.waiting.get(answer.id)?.done(answer));
    this.child.on('error', (fault) => this.end(fault));
    this.child.on('exit', () =>
      this.end(new Error(this.said.trim() || say`The program that exports ended by itself.`)),
    );
  }

  async targets(file: string, desk: Desk): Promise<readonly ExportTarget[]> {
    const answer = await this.ask({ ...desk, ask: 'targets', file, language: tongue() });
    if ('targets' in answer) return answer.targets;
    throw new Error(answer.ran.err.trim());
  }

  async run(args: readonly string[], desk: Desk): Promise<Ran> {
    const answer = await this.ask({ ...desk, ask: 'run', args });
    if ('ran' in answer) return answer.ran;
    throw new Error(say`The program that exports answered something else.`);
  }

  /** Ends it in the middle of whatever it does; what was half written in the folder is taken away. */
  stop(folder?: string): void {
    this.stopped = true;
    this.child.kill();
    if (folder !== undefined) this.child.once('exit', () => this.sweep(folder));
  }

  private sweep(folder: string): void {
    try {
      readdirSync(folder)
        .filter((name) => name.endsWith(`.${this.child.pid}.part`))
        .forEach((name) => rmSync(join(folder, name), { force: true }));
    } catch {
      return; // no such folder: nothing was written
    }
  }

  private ask(question: DistributiveOmit<ToExporter, 'id'>): Promise<FromExporter> {
    const id = ++this.count;
    return new Promise<FromExporter>((done, failed) => {
      this.waiting.set(id, { done, failed });
      this.child.send({ ...question, id }, (fault) => fault && failed(this.stopped ? new Stopped() : fault));
    }).finally(() => this.waiting.delete(id));
  }

  private end(why: Error): void {
    for (const { failed } of this.waiting.values()) failed(this.stopped ? new Stopped() : why);
  }
}

type DistributiveOmit<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;

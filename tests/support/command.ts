/** Runs the command line as a function, in a folder of its own, and keeps what it prints. */
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { run } from '../../server/cli/commands';

export interface Ran {
  readonly exit: number | undefined;
  readonly out: string;
  readonly err: string;
}

export class CommandFolder {
  readonly path = realpathSync(mkdtempSync(join(tmpdir(), 'draftwright-')));

  constructor(files: Readonly<Record<string, string | Uint8Array>> = {}) {
    Object.entries(files).forEach(([name, text]) => this.write(name, text));
  }

  write(name: string, text: string | Uint8Array): void {
    const path = join(this.path, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }

  /** Runs one command line here; lines are wrapped at 80 columns, without colour. */
  async run(...args: readonly string[]): Promise<Ran> {
    let [out, err] = ['', ''];
    const exit = await run(args, {
      cwd: this.path,
      out: (text) => (out += text),
      err: (text) => (err += text),
      width: 80,
      colour: false,
    });
    return { exit, out, err };
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}

/** Runs a test in a folder with these files, which is gone afterwards. */
export async function inFolder(
  files: Readonly<Record<string, string | Uint8Array>>,
  story: (folder: CommandFolder) => Promise<void>,
): Promise<void> {
  const folder = new CommandFolder(files);
  try {
    await story(folder);
  } finally {
    folder.remove();
  }
}

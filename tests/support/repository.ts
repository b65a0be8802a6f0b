/** A git repository made by a test: files written, committed under fixed names and dates, gone afterwards. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, renameSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { CommandFolder } from './command';

/** Nothing of the machine's own settings, nobody's name, always the same day. */
const ENVIRONMENT = {
  GIT_CONFIG_NOSYSTEM: '1',
  GIT_CONFIG_GLOBAL: '/dev/null',
  GIT_AUTHOR_NAME: 'wardrobe',
  GIT_AUTHOR_EMAIL: 'wardrobe@theatre.invalid',
  GIT_COMMITTER_NAME: 'wardrobe',
  GIT_COMMITTER_EMAIL: 'wardrobe@theatre.invalid',
  GIT_AUTHOR_DATE: '2026-09-14T10:00:00Z',
  GIT_COMMITTER_DATE: '2026-09-14T10:00:00Z',
};

export class Repository extends CommandFolder {
  constructor(files: Readonly<Record<string, string>> = {}) {
    super(files);
    this.git('init', '--quiet', '--initial-branch=main');
  }

  git(...args: readonly string[]): string {
    const env = { ...process.env, ...ENVIRONMENT };
    return execFileSync('git', [...args], {
      cwd: this.path,
      env,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  }

  /** Commits everything as it stands. */
  commit(subject: string): void {
    this.git('add', '--all');
    this.git('commit', '--quiet', '--allow-empty', '-m', subject);
  }

  move(from: string, to: string): void {
    mkdirSync(dirname(join(this.path, to)), { recursive: true });
    renameSync(join(this.path, from), join(this.path, to));
  }

  /** Runs a script here as a pipeline does; whether it succeeded. */
  shell(script: string, environment: Readonly<Record<string, string>>): boolean {
    const env = { ...process.env, ...ENVIRONMENT, ...environment };
    const { status } = spawnSync('bash', ['-e', '-o', 'pipefail', '-c', script], { cwd: this.path, env });
    return status === 0;
  }
}

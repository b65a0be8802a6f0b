/** The drawing as it would be exported, for the clipboard: as the text of an SVG, or as the bytes of a picture. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Trial } from '../preview/protocol';
import { triedAnswers, writtenFiles, type Answers } from './answers';
import type { Copied } from './commands';
import type { Desk, Exporter } from './exporter';

/** What is copied, and the language of its words. */
export interface Copying {
  readonly file: string;
  readonly trial: Trial;
  readonly desk: Desk;
  readonly language: Answers;
}

/** Made in a folder of its own, which is gone afterwards; a reason is empty where none was told. */
export async function drawn(
  exporter: Exporter,
  as: 'svg' | 'png',
  { file, trial, desk, language }: Copying,
): Promise<Copied> {
  const folder = mkdtempSync(join(tmpdir(), 'draftwright-'));
  try {
    const tried = triedAnswers(trial);
    const choices = tried['--set']?.split(';').map((one) => `--set=${one.trim()}`) ?? [];
    const body = tried['--for'] === undefined ? [] : [`--for=${tried['--for']}`];
    const spoken = Object.entries(language).map(([flag, value]) => `${flag}=${value}`);
    const args = ['draw', file, `--format=${as}`, `--out=${folder}`, ...body, ...choices, ...spoken];
    const { out, err } = await exporter.run(args, desk);
    const [made] = writtenFiles(out);
    if (made === undefined) return { reason: err.trim().split('\n')[0]! };
    return { bytes: readFileSync(made) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

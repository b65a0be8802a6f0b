/** What is measured: every garment of the samples, and generated patterns of several lengths. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Door } from '../../server/drafting/model';
import { diskDoor } from '../support/door';
import { garment, longDraft, manyDrafts } from './generate';

/** Milliseconds that a case may take; undefined where nothing is promised. */
export interface Budget {
  readonly whole?: number;
  /** From a keystroke to what is wrong with the text alone: the 95th of a hundred. */
  readonly read?: number;
  /** From a keystroke to the findings, and to the changed drawing: the 95th of a hundred. */
  readonly findings?: number;
  readonly drawing?: number;
  /** From a keystroke in the width of a dart to the changed drawing. */
  readonly dart?: number;
}

export interface Case {
  readonly name: string;
  readonly uri: string;
  readonly text: string;
  readonly budget: Budget;
}

const folder = join(process.cwd(), 'samples');
export const door: Door = diskDoor(folder);
const at = (name: string): string => pathToFileURL(join(folder, name)).href;

const SEED = 1893;

export const samples = (): readonly Case[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.draft'))
    .sort()
    .map((name) => ({ name, uri: at(name), text: readFileSync(join(folder, name), 'utf8'), budget: {} }));

const generatedCase = (name: string, text: string, budget: Budget): Case => ({
  name,
  uri: at(`generated-${name.replace(/\W+/g, '-')}.draft`),
  text,
  budget,
});

export const lines = (count: number): Case => {
  const budget = count > 2000 ? { read: 16, drawing: 50 } : { findings: 16, drawing: 16 };
  return generatedCase(`${count} lines`, manyDrafts(count, SEED), budget);
};

/** One draft, each step of which rests on the one before: what an edit costs that re-reads its whole block. */
export const oneDraft = (count: number): Case =>
  generatedCase(`one draft of ${count} lines`, longDraft(count, SEED), {});

export const generated = (): readonly Case[] => [
  lines(200),
  generatedCase('garment of 35 pieces', garment(5, SEED), { whole: 60, findings: 16, drawing: 16, dart: 16 }),
  lines(2000),
  lines(10000),
  oneDraft(2000),
  oneDraft(10000),
];

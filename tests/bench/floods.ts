/** A megabyte of anything is read to its end: what that takes, beside what it may. */
import { parse } from '../../grammar';
import { FLOODS } from '../support/floods';
import { timed } from './figures';
import { judged, type Say } from './whole';

/** Milliseconds for a megabyte, whatever it holds. */
const BUDGET = 2000;

export function measureFloods(say: Say): void {
  say('\nReading a megabyte of what nobody means, milliseconds');
  for (const [title, text] of Object.entries(FLOODS)) {
    const written = text();
    const { ms } = timed(() => parse(written));
    say(`  ${title.padEnd(42)} ${judged(ms, BUDGET)}`);
  }
}

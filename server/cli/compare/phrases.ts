/** What a comparison on the command line is called, and what a pattern of one side alone holds. */
import { say } from '../../../grammar/say';
import { errorsIn, piecesIn } from '../../review';
import type { Compared, Comparison } from './run';

/** `skirt.draft: main → HEAD`, with the old name where it had one. */
export function titleWords(
  { file: { was, now } }: Compared,
  { before, after }: Pick<Comparison, 'before' | 'after'>,
): string {
  const name =
    was !== undefined && now !== undefined && was !== now ? now + say` (was ${was})` : (now ?? was)!;
  return before === was && after === now ? `${before} → ${after}` : `${name}: ${before} → ${after}`;
}

export const noneDiffers = (before: string, after: string): string =>
  say`No pattern differs between ${before} and ${after}.`;

/** Of a pattern that is on one side alone: what it holds. */
export function listOfPieces({ was, now }: Compared): string {
  const one = (now ?? was)!;
  const names = one.pieces.map(({ name }) => name).join(', ');
  const holds = one.pieces.length === 0 ? say`no pieces` : `${piecesIn(one.pieces.length)}: ${names}`;
  const errors = one.findings.filter(({ severity }) => severity === 'error').length;
  const faulty = now !== undefined && errors > 0 ? `; ${errorsIn(errors)}` : '';
  return now === undefined ? say`Pattern removed, ${holds}.` : say`Pattern added, ${holds + faulty}.`;
}

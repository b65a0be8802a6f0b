/** `draftwright compare FROM..TO --each`: the history commit by commit, one line of judgement for each pattern that changed. */
import { say } from '../../../grammar/say';
import { isSame, verdict } from '../../review';
import { Refusal } from '../../lsp/versions/tree';
import { TwoSided } from '../../lsp/versions/two-sided';
import { CLEAN, FAULTY, type Exit, type Io } from '../io';
import { harmless, inkFor, wrapped } from '../print/ink';
import { noneDiffers, titleWords } from './phrases';
import { comparedSides, hasNewErrors, type Compared, type CompareOptions, type Wanted } from './run';
import type { Sides } from './sides';

/** Commits that touch no pattern are passed over. What one commit left is what the next begins with: nothing is read twice. */
export function runEach(sides: Sides, wanted: Wanted & Pick<CompareOptions, 'failOn'>, io: Io): Exit {
  if (sides.range === undefined)
    throw new Refusal(say`With --each two revisions are named, as in draftwright compare main..HEAD --each.`);
  const { repository, from, to } = sides.range;
  const ink = inkFor(io.colour);
  const bench = new TwoSided();
  let before = repository.revision(from);
  let [told, failed] = [0, false];
  for (const { id, short, subject } of repository.commits(from, to)) {
    const after = { ...repository.revision(id), name: short };
    const { patterns } = comparedSides({ before, after, path: sides.path }, wanted, bench);
    const changed = patterns.filter(isChanged);
    before = after;
    if (changed.length === 0) continue;
    told++;
    failed ||= wanted.failOn === 'differences' || hasNewErrors({ before: '', after: '', patterns: changed });
    io.out(`${ink.bold(short)} ${harmless(subject)}\n`);
    for (const one of changed) io.out(`${wrapped(harmless(lineOf(one)), io.width, '  ', '    ')}\n`);
  }
  if (told === 0) io.out(`${noneDiffers(from, to)}\n`);
  return failed ? FAULTY : CLEAN;
}

/** A file that was named is compared at every commit, also where nothing touched it. */
const isChanged = ({ review, file }: Compared): boolean =>
  review === undefined || !isSame(review) || review.textChanged || file.was !== file.now;

function lineOf(compared: Compared): string {
  const { review, now } = compared;
  const name = titleWords(compared, { before: '', after: '' }).replace(/:  → $/, '');
  if (review === undefined) return `${name}: ${now === undefined ? say`removed` : say`added`}.`;
  const same = isSame(review) && !review.textChanged;
  return `${name}: ${same ? say`the same under another name.` : verdict(review)}`;
}

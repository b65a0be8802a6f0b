/** The catalogue's entries for faults that are found while the text is read and drafted, before any check is made. */
import { SYNTAX_PROBLEMS } from '../../grammar/problems';
import type { Severity } from '../drafting/finding';
import type { Raised } from './check';

const FIRM = { firm: true } as const;

const entries = (
  by: Raised['by'],
  titles: Readonly<Record<string, string | readonly [Severity, string]>>,
): readonly Raised[] =>
  Object.entries(titles).map(([code, entry]) => {
    const [severity, title] = typeof entry === 'string' ? (['error', entry] as const) : entry;
    return { code, severity, title, by, ...(severity === 'error' && FIRM) };
  });

const syntax: readonly Raised[] = Object.entries(SYNTAX_PROBLEMS).map(([code, { title, severity }]) => ({
  code,
  severity: (severity as string) === 'notice' ? 'note' : (severity as Severity),
  title: title.replace(/\.$/, ''),
  by: 'syntax',
  ...FIRM,
}));

export const raised: readonly Raised[] = [
  ...syntax,
  ...entries('names', {
    'unknown-name': 'A name that leads nowhere',
    'defined-twice': 'A name that is given twice',
    circle: 'Definitions that need each other in a circle',
    'other-sheet': 'A point or line of another draft, used as if it lay here',
    'hidden-name': ['warning', 'A name that hides another'],
    'missing-file': 'A used file that can’t be read',
    'outside-workspace': 'A used file outside the workspace',
    'circular-use': 'Files that use each other in a circle',
  }),
  ...entries('values', {
    'wrong-kind': 'Something of another kind than is needed here',
    'missing-unit': 'A number without a unit where a length or an angle is due',
    'no-such-number': 'A number that can’t be used here',
    'choice-out-of-range': ['warning', 'A choice outside its own range'],
    'range-turned-about': ['warning', 'A range whose higher end comes first'],
    'uneven-table': 'A size table with a row that does not fit its sizes',
    'missing-measurement': 'A measurement that is needed and was not taken',
    'nobody-to-draft-for': 'A pattern that needs measurements and names nobody',
    'expectation-missed': 'An expectation that does not hold',
    'no-solution': 'An unknown for which no value fits',
  }),
  ...entries('shapes', {
    'never-meet': 'Lines that never meet',
    'several-places': 'A meeting in more than one place',
    'out-of-reach': 'A place that lies beyond what was drawn',
    'other-way': 'A point that lies the other way',
    'not-on-line': 'A point that does not lie on its line',
    'which-way': 'A place that could be counted either way',
    'place-without-start': 'A place that is counted from nowhere',
    'no-direction': 'A point that gives no direction',
    'no-length': 'A line or curve that goes nowhere',
    'arc-radii-differ': 'An arc whose ends lie at different distances from its centre',
    'arc-without-centre': 'An arc without its centre',
    'run-with-gap': 'Runs that do not join end to end',
  }),
  ...entries('pieces', {
    'no-outline': 'A piece without an outline',
    'not-drawn': ['note', 'A piece that rests on one that is not whole'],
    'empty-outline': 'An outline without edges',
    'negative-dart': 'A dart that comes to less than nothing',
    'dart-without-width': 'A dart that does not say how wide it is',
    'dart-without-length': 'A dart that does not say how long it is',
    'darts-overlap': 'Darts that run into each other or off their edge',
    'incomplete-pleats': 'Pleats that leave out what makes them',
    'pleats-off-edge': 'Pleats that don’t fit on their edge',
    'broken-cut': 'A division whose cut does not go through',
    'broken-join': 'Pieces that can’t be joined edge to edge',
    'fold-not-straight': 'A fold along an edge that bends',
    'overlapping-allowances': ['warning', 'Two allowances for one stretch of an edge'],
    'not-built-yet': ['warning', 'A statement that is read and not yet built'],
  }),
  ...entries('acceptance', {
    'acceptance-refused': 'A finding that can’t be accepted so',
    'stale-acceptance': ['warning', 'An accepted finding that is found no more'],
  }),
  ...entries('sewing', {
    'which-end': 'A seam whose ends can’t be told apart',
    'sewn-to-itself': 'An edge that is sewn to itself',
    'opening-too-long': 'An opening that is longer than its seam',
    'empty-opening': ['warning', 'An opening that opens nothing'],
  }),
  ...entries('sweep', {
    'rise-and-fall': ['warning', 'A length that grows and then shrinks from size to size'],
  }),
  ...entries('sewing', { 'internal-fault': ['note', 'A check that broke'] }),
];

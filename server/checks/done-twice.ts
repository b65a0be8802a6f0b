/** Finds edges that two finishes are to finish, and edges that two seams sew to one and the same. */
import { keptFor } from '../../grammar/kept';
import { say } from '../../grammar/say';
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { Finish, Seam, SewnEdge } from '../drafting/model';
import { finding, type Judged } from './check';

export const doneTwice: Judged = {
  code: 'done-twice',
  severity: 'warning',
  title: 'An edge that is finished twice, or sewn twice to the same',
  by: 'judgement',
  ofPattern: ({ finishes, seams }) => [...finishedTwice(finishes), ...sewnTwice(seams)],
};

const keyOf = ({ piece, edge }: SewnEdge): string => `${piece}.${edge}`;

const finishedTwice = keptFor((all: readonly Finish[]): readonly SourcedFinding[] => {
  const before = new Map<string, { readonly finish: Finish; readonly taken: SewnEdge }[]>();
  return all.flatMap((finish) =>
    finish.edges.flatMap((taken): SourcedFinding[] => {
      const known = before.get(keyOf(taken)) ?? [];
      const other = known.find((one) => overlaps(one.taken, taken));
      before.set(keyOf(taken), [...known, { finish, taken }]);
      if (other === undefined) return [];
      const { name, source } = other.finish;
      const message = say`${keyOf(taken)} is finished by ${name} already: an edge is turned, bound or faced once. Take it out of one of the two.`;
      return [told(finish, taken, message, [{ source, message: say`${name} finishes it here.` }])];
    }),
  );
});

const sewnTwice = keptFor((all: readonly Seam[]): readonly SourcedFinding[] => {
  const before = new Map<string, Seam[]>();
  return all.flatMap((seam): SourcedFinding[] => {
    const key = [...seam.left, ...seam.right].map(keyOf).sort().join(' ');
    const known = before.get(key) ?? [];
    before.set(key, [...known, seam]);
    const other = known.find((one) => one.name !== seam.name && sameStretches(one, seam));
    if (other === undefined || seam.left[0] === undefined) return [];
    const message = say`${seam.name} sews what ${other.name} has sewn already. Take one of the two out, or correct its edges.`;
    const related = [{ source: other.source, message: say`${other.name} sews it here.` }];
    return [told(seam, seam.left[0], message, related)];
  });
});

/** Every edge of one is taken over some of the same stretch by the other. */
function sameStretches(one: Seam, other: Seam): boolean {
  const there = [...other.left, ...other.right];
  return [...one.left, ...one.right].every((taken) =>
    there.some((also) => keyOf(also) === keyOf(taken) && overlaps(also, taken)),
  );
}

/** Two stretches that touch, mm, have nothing in common. */
const TOUCH = 0.05;

function overlaps({ stretch: a }: SewnEdge, { stretch: b }: SewnEdge): boolean {
  if (a === undefined || b === undefined) return true;
  const from = Math.max(Math.min(a.from, a.to), Math.min(b.from, b.to));
  return Math.min(Math.max(a.from, a.to), Math.max(b.from, b.to)) - from > TOUCH;
}

function told(
  { source, statement }: Pick<Finish, 'source' | 'statement'>,
  { at, piece }: SewnEdge,
  message: string,
  related: Finding['related'],
): SourcedFinding {
  return { source, finding: finding('done-twice', { statement, at }, message, { piece, related }) };
}

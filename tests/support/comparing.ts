/** A comparison as lines that a test can hold: what was decided, what became of the pieces, seams and problems. */
import {
  causeWords,
  changeWords,
  nameOf,
  rowsOf,
  seamWords,
  verdict,
  type Both,
  type Review,
} from '../../server/review';

export function told(review: Review): string[] {
  const { unit } = review;
  return [
    verdict(review),
    ...review.causes.map(causeWords),
    ...review.pieces.flatMap((one) => [
      `${nameOf(one.name)}: ${changeWords(one)}`,
      ...rowsOf(one, unit).map(({ text }) => `  ${text}`),
    ]),
    ...review.seams.map((one) => `seam ${seamWords(one, unit)}`),
    ...review.problems.map(
      ({ problem: { was, now } }) =>
        `${was && now ? 'still' : now ? 'new' : 'cleared'} ${(now ?? was)!.code}`,
    ),
  ];
}

const TENTH = 1e5;
const round = (value: number): number => Math.round(value * TENTH) / TENTH || 0;
const turned = <T>({ was, now }: Both<T>): Both<T> => ({
  ...(now !== undefined && { was: now }),
  ...(was !== undefined && { now: was }),
});

/** Everything that a comparison reports, in an order of its own, so that two directions can be held together. */
export function reported(review: Review, swap = false): unknown {
  const ends = <T>(of: Both<T>): Both<T> => (swap ? turned(of) : { ...of });
  const numbers = ({ was, now }: Both<number>): Both<number> =>
    ends({ ...(was !== undefined && { was: round(was) }), ...(now !== undefined && { now: round(now) }) });
  const kinds: Readonly<Record<string, string>> = swap ? { added: 'removed', removed: 'added' } : {};
  const sorted = <T>(list: readonly T[]): T[] =>
    [...list].sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
  const all = {
    causes: sorted(review.causes.map(({ kind, text }) => ({ kind: kinds[kind] ?? kind, text: ends(text) }))),
    followed: sorted(review.followed.map(({ text }) => ends(text))),
    pieces: sorted(
      review.pieces.map((one) => ({
        ...{ name: ends(one.name), words: one.words, area: numbers(one.area) },
        by: one.deviation && round(one.deviation.by),
        on: one.deviation && ends(one.deviation.edge),
        at: one.deviation && ends({ was: one.deviation.at.was?.edge, now: one.deviation.at.now?.edge }),
        areas: numbers({ was: one.lostArea, now: one.gainedArea }),
        edges: sorted(one.edges.map(({ edge, length }) => [ends(edge), numbers(length)])),
        points: sorted(one.points.map(({ by }) => round(by))),
        details: sorted(
          one.details.map(({ word, text, moved }) => [word, ends(text), moved && round(moved)]),
        ),
      })),
    ),
    seams: sorted(
      review.seams.map(({ name, seam }) => [
        ends(name),
        ends({
          was: seam.was && [seam.was.verdict, round(seam.was.difference)],
          now: seam.now && [seam.now.verdict, round(seam.now.difference)],
        }),
      ]),
    ),
    problems: sorted(
      review.problems.map(({ problem }) => ends({ was: problem.was?.message, now: problem.now?.message })),
    ),
    undrafted: ends(review.undrafted),
  };
  return JSON.parse(JSON.stringify(all)); // without what is undefined
}

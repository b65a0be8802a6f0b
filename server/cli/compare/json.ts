/** A comparison as JSON for other programs. FORMATS.md describes every field; `version` tells a change. */
import {
  isSame,
  verdict,
  type Both,
  type PieceChange,
  type Review,
  type SeamSide,
  type SizeChange,
} from '../../review';
import { jsonText, rounded } from '../print/json';
import { Places } from '../../lsp/versions/places';
import type { Compared, Comparison } from './run';
import { listOfPieces } from './phrases';

const VERSION = 1;

export const compareJson = ({ before, after, patterns }: Comparison): string =>
  jsonText({ version: VERSION, before, after, patterns: patterns.map(pattern) });

function pattern(compared: Compared): unknown {
  const { file, review } = compared;
  if (review === undefined) return { file, same: false, verdict: listOfPieces(compared) };
  const places = new Places(compared);
  const { causes, followed, body, undrafted, unmatchedSizes, sizes, textChanged } = review;
  return {
    file,
    same: isSame(review),
    verdict: verdict(review),
    ...{ body, textChanged },
    causes: causes.map(({ kind, name, text, place }) => ({ kind, name, ...text, place: places.both(place) })),
    followed: followed.map(({ name, text }) => ({ name, ...text })),
    pieces: review.pieces.map((one) => piece(one, places)),
    ...measured(review, places),
    sizes: sizes.map((one) => ({ size: one.size, pieces: one.pieces.map(part), ...measured(one, places) })),
    ...{ undrafted, unmatchedSizes },
  };
}

const numbers = ({ was, now }: Both<number>) => ({
  ...(was !== undefined && { was: rounded(was) }),
  ...(now !== undefined && { now: rounded(now) }),
});

/** What is told of a piece for every size. */
const part = ({ name, words, deviation, edges, area }: SizeChange['pieces'][number]) => ({
  ...{ name, changes: words },
  ...(deviation && {
    deviation: { by: rounded(deviation.by), edge: deviation.edge, at: atOf(deviation.at) },
  }),
  edges: edges.map(({ edge, length }) => ({ edge, ...numbers(length) })),
  area: numbers(area),
});

function atOf({ was, now }: NonNullable<PieceChange['deviation']>['at']) {
  const spot = (one: typeof was) =>
    one && {
      edge: one.edge,
      along: rounded(one.along),
      from: one.from,
      point: [rounded(one.point.x), rounded(one.point.y)],
    };
  return { ...(was && { was: spot(was) }), ...(now && { now: spot(now) }) };
}

function piece(change: PieceChange, places: Places): unknown {
  const { number, anchor, lostArea, gainedArea, points, details, place } = change;
  return {
    number,
    ...part(change),
    ...(anchor && anchor.held !== '' && { held: anchor.held }),
    ...{ lost: rounded(lostArea), gained: rounded(gainedArea) },
    points: points.map(({ name, by }) => ({ name, by: rounded(by) })),
    details: details.map(({ word, thing, text, moved }) => ({
      word,
      thing,
      ...text,
      ...(moved !== undefined && { moved: rounded(moved) }),
    })),
    place: places.both(place),
  };
}

const measured = ({ seams, problems }: Pick<Review, 'seams' | 'problems'>, places: Places) => ({
  seams: seams.map(({ name, seam: { was, now } }) => ({
    name,
    ...(was && { was: side(was) }),
    ...(now && { now: side(now) }),
    place: places.both({ ...(was?.place && { was: was.place }), ...(now?.place && { now: now.place }) }),
  })),
  problems: problems.map(({ problem: { was, now } }) => ({
    ...(was && { was: problemOf(was) }),
    ...(now && { now: problemOf(now) }),
    place: places.both({ ...(was && { was: was.place }), ...(now && { now: now.place }) }),
  })),
});

const side = ({ left, right, difference, tolerance, verdict: of }: SeamSide) => ({
  ...{
    left: rounded(left),
    right: rounded(right),
    difference: rounded(difference),
    tolerance: rounded(tolerance),
  },
  verdict: of,
});

const problemOf = ({ code, severity, message }: { code: string; severity: string; message: string }) => ({
  code,
  severity,
  message,
});

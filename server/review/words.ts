/** A comparison in sentences: one line that judges it, and a line for every row of it. The same words in every print. */
import { printLength } from '../drafting/values/quantity';
import { isSame } from './compare';
import type {
  Both,
  Cause,
  Deviation,
  Detail,
  EdgePlace,
  PieceChange,
  PieceWord,
  Review,
  SeamChange,
  SeamSide,
  SizeChange,
} from './model';

type Unit = Review['unit'];

export const nameOf = ({ was, now }: Both<string>): string => now ?? was ?? '';

const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;

/** `+6mm`, `−1.2cm`: a difference always bears its sign. */
export const signed = (mm: number, unit: Unit): string =>
  `${mm < 0 ? '−' : '+'}${printLength(Math.abs(mm), unit)}`;

/** The whole comparison in one line. */
export function verdict(review: Review): string {
  if (isSame(review)) {
    const unfinished = review.undrafted.now ?? review.undrafted.was;
    if (unfinished)
      return `Nothing that could be drafted differs; ${counted(unfinished.length, 'piece')} could not be.`;
    return review.textChanged
      ? 'Text only: comments, layout or order changed; what is drafted is the same.'
      : 'No difference.';
  }
  const parts = [
    piecesPart(review),
    ...seamParts(review),
    ...sizeParts(review),
    ...problemParts(review),
    ...undraftedPart(review),
  ];
  return `${parts.join('; ')}.`;
}

function piecesPart({ pieces, pieceCount, causes }: Review): string {
  if (pieces.length === 0) {
    const lines = causes.length === 0 ? '' : `${counted(causes.length, 'decision')} changed, `;
    return `${lines}no piece did`;
  }
  const changed = pieces.filter(({ name }) => name.was !== undefined && name.now !== undefined).length;
  const came = pieces.filter(({ name }) => name.was === undefined).length;
  const went = pieces.length - changed - came;
  const some = [
    ...(changed > 0 ? [`${changed} of ${counted(pieceCount.now ?? 0, 'piece')} changed`] : []),
    ...(came > 0 ? [`${counted(came, 'piece')} added`] : []),
    ...(went > 0 ? [`${counted(went, 'piece')} removed`] : []),
  ];
  return some.join(', ');
}

const cameApart = ({ seam: { was, now } }: SeamChange): boolean =>
  now?.verdict === 'apart' && was?.verdict !== 'apart';
const cameTogether = ({ seam: { was, now } }: SeamChange): boolean =>
  was?.verdict === 'apart' && now?.verdict === 'matches';

function seamParts({ seams, unit }: Review): string[] {
  const list = (some: readonly SeamChange[], by: boolean) =>
    some
      .map(({ name, seam }) => nameOf(name) + (by ? `, ${signed(seam.now!.difference, unit)}` : ''))
      .join(' and ');
  const told = (some: readonly SeamChange[], words: string, many: string, by: boolean): string[] =>
    some.length === 0
      ? []
      : [`${counted(some.length, 'seam')} ${some.length === 1 ? words : many}: ${list(some, by)}`];
  return [
    ...told(seams.filter(cameApart), 'no longer matches', 'no longer match', true),
    ...told(seams.filter(cameTogether), 'matches again', 'match again', false),
  ];
}

/** What a size that is not drafted here has of its own to tell. */
function sizeParts({ pieces, seams, sizes }: Review): string[] {
  const apart = new Set(seams.filter(cameApart).map(({ name }) => nameOf(name)));
  const changed =
    pieces.length > 0 ? [] : sizes.filter((one) => one.pieces.length > 0).map(({ size }) => size);
  const parted = sizes.flatMap(({ size, seams: all }) =>
    all
      .filter((one) => cameApart(one) && !apart.has(nameOf(one.name)))
      .map(({ name }) => `in size ${size} the seam ${nameOf(name)} no longer matches`),
  );
  const pieceWords = changed.length === 0 ? [] : [`pieces of size ${changed.join(', ')} did`];
  return [...pieceWords, ...parted];
}

function problemParts({ problems }: Review): string[] {
  const parts: string[] = [];
  for (const [severity, word] of [
    ['error', 'error'],
    ['warning', 'warning'],
  ] as const) {
    const fresh = problems.filter(({ problem: { was, now } }) => !was && now?.severity === severity).length;
    const cleared = problems.filter(({ problem: { was, now } }) => !now && was?.severity === severity).length;
    if (fresh > 0) parts.push(counted(fresh, `new ${word}`));
    if (cleared > 0) parts.push(`${counted(cleared, word)} cleared`);
  }
  return parts;
}

function undraftedPart({ undrafted: { was, now } }: Review): string[] {
  const names = new Set([...(was ?? []), ...(now ?? [])].map(({ name }) => name));
  return names.size === 0
    ? []
    : [`${counted(names.size, 'piece')} could not be compared: ${[...names].join(', ')}`];
}

/** `hip-ease: 4cm → 5cm`, `front: allow 1cm → allow 1.5cm`. */
export function causeWords({ kind, name, text: { was, now } }: Cause): string {
  const lead = name === '' ? '' : `${name}: `;
  switch (kind) {
    case 'body':
      return `drafted for: ${trimmed(was)} → ${trimmed(now)}`;
    case 'renamed':
      return `renamed: ${name.slice(0, name.length - (now?.length ?? 0))}${was} → ${now}`;
    case 'order':
      return `${lead}order ${was} → ${now}`;
    case 'added':
      return `added${name === '' ? '' : ` ${name}`}: ${now}`;
    case 'removed':
      return `removed${name === '' ? '' : ` ${name}`}: ${was}`;
    default:
      return `${lead}${was} → ${now}`;
  }
}

const trimmed = (words: string | undefined): string => (words ?? '').replace(/^drafted for /, '') || 'nobody';

const PIECE_WORDS: Readonly<Record<PieceWord, string>> = {
  renamed: 'renamed',
  moved: 'moved on the paper',
  reshaped: 'reshaped',
  marks: 'marks',
  allowance: 'allowance',
  wording: 'wording',
};

/** `reshaped, marks`, `allowance only`, `added`. */
export function changeWords({ name, words }: Pick<PieceChange, 'name' | 'words'>): string {
  if (name.was === undefined) return 'added';
  if (name.now === undefined) return 'removed';
  const told = words.map((word) => PIECE_WORDS[word]);
  const renamed = words.includes('renamed') ? ` (was ${name.was})` : '';
  return `${told.join(', ')}${words.length === 1 && words[0] !== 'reshaped' && words[0] !== 'renamed' ? ' only' : ''}${renamed}`;
}

/** `by up to 6mm on side, 12cm from hip-side`. */
export function deviationWords({ by, edge, at }: Deviation, unit: Unit): string {
  const places = [at.now, at.was].flatMap((place) => place ?? []);
  const place = places.find(({ along }) => along < AT_END) ?? places[0];
  return `by up to ${printLength(by, unit)} on ${nameOf(edge)}${place === undefined ? '' : whereWords(place, unit)}`;
}

/** Nearer an end than this, mm, it is the end. */
const AT_END = 0.5;

function whereWords({ along, from }: EdgePlace, unit: Unit): string {
  if (from === '') return along < AT_END ? ', at its end' : `, ${printLength(along, unit)} from its end`;
  return along < AT_END ? `, at ${from}` : `, ${printLength(along, unit)} from ${from}`;
}

export function lengths({ was, now }: Both<number>, unit: Unit): string {
  if (was === undefined) return `new, ${printLength(now!, unit)}`;
  if (now === undefined) return `gone, was ${printLength(was, unit)}`;
  return `${printLength(was, unit)} → ${printLength(now, unit)}, ${signed(now - was, unit)}`;
}

export function detailWords({ thing, text: { was, now }, moved }: Detail, unit: Unit): string {
  const by = moved === undefined ? '' : `moved ${printLength(moved, unit)}`;
  if (was === undefined && now === undefined) return `${thing}: ${by}`;
  if (was === undefined) return `${thing}: new, ${now}`.replace(/, there$/, '');
  if (now === undefined) return `${thing}: gone, was ${was}`.replace(/, was there$/, '');
  return `${thing}: ${was || 'nothing said'} → ${now || 'nothing said'}${by && `, ${by}`}`;
}

/** `side: 38.2cm to 38.2cm, matches → 37.6cm to 38.2cm, no longer matches: +6mm`. */
export function seamWords({ name, seam: { was, now } }: SeamChange, unit: Unit): string {
  const lead =
    name.was !== undefined && name.now !== undefined && name.was !== name.now ? ` (was ${name.was})` : '';
  const judged =
    was === undefined
      ? `new, ${sideWords(now!, unit)}`
      : now === undefined
        ? `gone, was ${sideWords(was, unit)}`
        : `${pairWords(was, unit)} → ${pairWords(now, unit)}, ${judgement(was, now, unit)}`;
  return `${nameOf(name)}${lead}: ${judged}`;
}

const pairWords = ({ left, right, verdict: of }: SeamSide, unit: Unit): string =>
  of === 'its pair' ? printLength(left, unit) : `${printLength(left, unit)} to ${printLength(right, unit)}`;

function sideWords(side: SeamSide, unit: Unit): string {
  const off = side.verdict === 'apart' ? `${signed(side.difference, unit)} apart` : side.verdict;
  return `${pairWords(side, unit)}${side.verdict === 'its pair' ? ' to its pair' : `, ${off}`}`;
}

function judgement(was: SeamSide, now: SeamSide, unit: Unit): string {
  const off = signed(now.difference, unit);
  const allowed = `${printLength(now.tolerance, unit)} is allowed`;
  if (now.verdict === 'apart')
    return was.verdict === 'apart'
      ? `still apart: ${signed(was.difference, unit)} → ${off}`
      : `no longer matches: ${off}, ${allowed}`;
  if (now.verdict === 'not compared') return 'can no longer be compared';
  if (now.verdict === 'its pair') return 'sewn to its pair';
  return was.verdict === 'apart' ? 'matches again' : was.verdict === 'matches' ? 'still matches' : 'matches';
}

/** `size L: front by up to 8mm; seam side no longer matches: +6mm`. */
export function sizeWords({ size, pieces, seams, problems }: SizeChange, unit: Unit): string {
  const parts = [
    ...pieces.map(
      (one) =>
        `${nameOf(one.name)} ${one.deviation ? deviationWords(one.deviation, unit) : changeWords(one)}`,
    ),
    ...seams
      .filter((one) => cameApart(one) || cameTogether(one))
      .map(
        (one) => `seam ${nameOf(one.name)} ${judgement(one.seam.was ?? one.seam.now!, one.seam.now!, unit)}`,
      ),
    ...(problems.length === 0 ? [] : [counted(problems.length, 'problem') + ' changed']),
  ];
  return `size ${size}: ${parts.join('; ')}`;
}

/** A comparison in sentences: one line that judges it, and a line for every row of it. The same words in every print. */
import { say } from '../../grammar/say';
import { printLength } from '../drafting/values/quantity';
import type { Severity } from '../drafting/finding';
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

/** `+6mm`, `−1.2cm`: a difference always bears its sign. */
export const signed = (mm: number, unit: Unit): string =>
  `${mm < 0 ? '−' : '+'}${printLength(Math.abs(mm), unit)}`;

/** The whole comparison in one line. */
export function verdict(review: Review): string {
  if (isSame(review)) {
    const unfinished = review.undrafted.now ?? review.undrafted.was;
    if (unfinished) return unfinishedWords(unfinished.length);
    return review.textChanged
      ? say`Text only: comments, layout or order changed; what is drafted is the same.`
      : say`No difference.`;
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

const unfinishedWords = (n: number): string =>
  n === 1
    ? say`Nothing that could be drafted differs; 1 piece could not be.`
    : say`Nothing that could be drafted differs; ${n} pieces could not be.`;

function piecesPart({ pieces, pieceCount, causes }: Review): string {
  if (pieces.length === 0) return causesAlone(causes.length);
  const changed = pieces.filter(({ name }) => name.was !== undefined && name.now !== undefined).length;
  const came = pieces.filter(({ name }) => name.was === undefined).length;
  const went = pieces.length - changed - came;
  const all = pieceCount.now ?? 0;
  const ofAll = all === 1 ? say`${changed} of 1 piece changed` : say`${changed} of ${all} pieces changed`;
  const some = [
    ...(changed > 0 ? [ofAll] : []),
    ...(came > 0 ? [came === 1 ? say`1 piece added` : say`${came} pieces added`] : []),
    ...(went > 0 ? [went === 1 ? say`1 piece removed` : say`${went} pieces removed`] : []),
  ];
  return some.join(', ');
}

function causesAlone(n: number): string {
  if (n === 0) return say`no piece did`;
  return n === 1 ? say`1 decision changed, no piece did` : say`${n} decisions changed, no piece did`;
}

const cameApart = ({ seam: { was, now } }: SeamChange): boolean =>
  now?.verdict === 'apart' && was?.verdict !== 'apart';
const cameTogether = ({ seam: { was, now } }: SeamChange): boolean =>
  was?.verdict === 'apart' && now?.verdict === 'matches';

function seamParts({ seams, unit }: Review): string[] {
  const [apart, together] = [seams.filter(cameApart), seams.filter(cameTogether)];
  const off = apart.map(({ name, seam }) => `${nameOf(name)}, ${signed(seam.now!.difference, unit)}`);
  const again = together.map(({ name }) => nameOf(name));
  return [
    ...(off.length === 0 ? [] : [apartWords(off.length, off.join(say` and `))]),
    ...(again.length === 0 ? [] : [againWords(again.length, again.join(say` and `))]),
  ];
}

const apartWords = (n: number, names: string): string =>
  n === 1 ? say`1 seam no longer matches: ${names}` : say`${n} seams no longer match: ${names}`;

const againWords = (n: number, names: string): string =>
  n === 1 ? say`1 seam matches again: ${names}` : say`${n} seams match again: ${names}`;

/** What a size that is not drafted here has of its own to tell. */
function sizeParts({ pieces, seams, sizes }: Review): string[] {
  const apart = new Set(seams.filter(cameApart).map(({ name }) => nameOf(name)));
  const changed =
    pieces.length > 0 ? [] : sizes.filter((one) => one.pieces.length > 0).map(({ size }) => size);
  const parted = sizes.flatMap(({ size, seams: all }) =>
    all
      .filter((one) => cameApart(one) && !apart.has(nameOf(one.name)))
      .map(({ name }) => say`in size ${size} the seam ${nameOf(name)} no longer matches`),
  );
  const pieceWords = changed.length === 0 ? [] : [say`pieces of size ${changed.join(', ')} did`];
  return [...pieceWords, ...parted];
}

function problemParts({ problems }: Review): string[] {
  const fresh = (severity: Severity): number =>
    problems.filter(({ problem: { was, now } }) => !was && now?.severity === severity).length;
  const cleared = (severity: Severity): number =>
    problems.filter(({ problem: { was, now } }) => !now && was?.severity === severity).length;
  const told = (n: number, one: string, many: string): string[] => (n === 0 ? [] : [n === 1 ? one : many]);
  const [errors, mended] = [fresh('error'), cleared('error')];
  const [warnings, quieted] = [fresh('warning'), cleared('warning')];
  return [
    ...told(errors, say`1 new error`, say`${errors} new errors`),
    ...told(mended, say`1 error cleared`, say`${mended} errors cleared`),
    ...told(warnings, say`1 new warning`, say`${warnings} new warnings`),
    ...told(quieted, say`1 warning cleared`, say`${quieted} warnings cleared`),
  ];
}

function undraftedPart({ undrafted: { was, now } }: Review): string[] {
  const names = [...new Set([...(was ?? []), ...(now ?? [])].map(({ name }) => name))];
  const [n, list] = [names.length, names.join(', ')];
  if (n === 0) return [];
  return [
    n === 1 ? say`1 piece could not be compared: ${list}` : say`${n} pieces could not be compared: ${list}`,
  ];
}

/** `hip-ease: 4cm → 5cm`, `front: allow 1cm → allow 1.5cm`. */
export function causeWords({ kind, name, text: { was, now } }: Cause): string {
  const lead = name === '' ? '' : `${name}: `;
  switch (kind) {
    case 'body':
      return say`drafted for: ${trimmed(was)} → ${trimmed(now)}`;
    case 'renamed':
      return say`renamed: ${name.slice(0, name.length - (now?.length ?? 0)) + was} → ${now ?? ''}`;
    case 'order':
      return lead + say`order ${was ?? ''} → ${now ?? ''}`;
    case 'added':
      return name === '' ? say`added: ${now ?? ''}` : say`added ${name}: ${now ?? ''}`;
    case 'removed':
      return name === '' ? say`removed: ${was ?? ''}` : say`removed ${name}: ${was ?? ''}`;
    default:
      return `${lead}${was} → ${now}`;
  }
}

const trimmed = (words: string | undefined): string =>
  (words ?? '').replace(/^drafted for /, '') || say`nobody`;

function pieceWord(word: PieceWord): string {
  switch (word) {
    case 'renamed':
      return say`renamed`;
    case 'moved':
      return say`moved on the paper`;
    case 'reshaped':
      return say`reshaped`;
    case 'marks':
      return say`marks`;
    case 'allowance':
      return say`allowance`;
    case 'wording':
      return say`wording`;
  }
}

/** `reshaped, marks`, `allowance only`, `added`. */
export function changeWords({ name, words }: Pick<PieceChange, 'name' | 'words'>): string {
  if (name.was === undefined) return say`added`;
  if (name.now === undefined) return say`removed`;
  const told = words.map(pieceWord).join(', ');
  const alone = words.length === 1 && words[0] !== 'reshaped' && words[0] !== 'renamed';
  return (alone ? say`${told} only` : told) + (words.includes('renamed') ? say` (was ${name.was})` : '');
}

/** `by up to 6mm on side, 12cm from hip-side`. */
export function deviationWords({ by, edge, at }: Deviation, unit: Unit): string {
  const places = [at.now, at.was].flatMap((place) => place ?? []);
  const place = places.find(({ along }) => along < AT_END) ?? places[0];
  const where = place === undefined ? '' : whereWords(place, unit);
  return say`by up to ${printLength(by, unit)} on ${nameOf(edge)}` + where;
}

/** Nearer an end than this, mm, it is the end. */
const AT_END = 0.5;

function whereWords({ along, from }: EdgePlace, unit: Unit): string {
  const far = printLength(along, unit);
  if (from === '') return along < AT_END ? say`, at its end` : say`, ${far} from its end`;
  return along < AT_END ? say`, at ${from}` : say`, ${far} from ${from}`;
}

export function lengths({ was, now }: Both<number>, unit: Unit): string {
  if (was === undefined) return say`new, ${printLength(now!, unit)}`;
  if (now === undefined) return say`gone, was ${printLength(was, unit)}`;
  return `${printLength(was, unit)} → ${printLength(now, unit)}, ${signed(now - was, unit)}`;
}

export function detailWords({ thing, text: { was, now }, moved }: Detail, unit: Unit): string {
  const by = moved === undefined ? '' : say`moved ${printLength(moved, unit)}`;
  if (was === undefined && now === undefined) return `${thing}: ${by}`;
  if (was === undefined) return `${thing}: ${now === say`there` ? say`new` : say`new, ${now!}`}`;
  if (now === undefined) return `${thing}: ${was === say`there` ? say`gone` : say`gone, was ${was}`}`;
  return `${thing}: ${was || say`nothing said`} → ${now || say`nothing said`}${by && `, ${by}`}`;
}

/** `side: 38.2cm to 38.2cm, matches → 37.6cm to 38.2cm, no longer matches: +6mm`. */
export function seamWords({ name, seam: { was, now } }: SeamChange, unit: Unit): string {
  const lead =
    name.was !== undefined && name.now !== undefined && name.was !== name.now ? say` (was ${name.was})` : '';
  const judged =
    was === undefined
      ? say`new, ${sideWords(now!, unit)}`
      : now === undefined
        ? say`gone, was ${sideWords(was, unit)}`
        : `${pairWords(was, unit)} → ${pairWords(now, unit)}, ${judgement(was, now, unit)}`;
  return `${nameOf(name)}${lead}: ${judged}`;
}

const pairWords = ({ left, right, verdict: of }: SeamSide, unit: Unit): string =>
  of === 'its pair'
    ? printLength(left, unit)
    : say`${printLength(left, unit)} to ${printLength(right, unit)}`;

function sideWords(side: SeamSide, unit: Unit): string {
  const pair = pairWords(side, unit);
  switch (side.verdict) {
    case 'its pair':
      return say`${pair} to its pair`;
    case 'apart':
      return say`${pair}, ${signed(side.difference, unit)} apart`;
    case 'matches':
      return say`${pair}, matches`;
    case 'not compared':
      return say`${pair}, not compared`;
  }
}

function judgement(was: SeamSide, now: SeamSide, unit: Unit): string {
  const off = signed(now.difference, unit);
  if (now.verdict === 'apart')
    return was.verdict === 'apart'
      ? say`still apart: ${signed(was.difference, unit)} → ${off}`
      : say`no longer matches: ${off}, ${printLength(now.tolerance, unit)} is allowed`;
  if (now.verdict === 'not compared') return say`can no longer be compared`;
  if (now.verdict === 'its pair') return say`sewn to its pair`;
  if (was.verdict === 'apart') return say`matches again`;
  return was.verdict === 'matches' ? say`still matches` : say`matches`;
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
        (one) =>
          say`seam ${nameOf(one.name)} ${judgement(one.seam.was ?? one.seam.now!, one.seam.now!, unit)}`,
      ),
    ...(problems.length === 0 ? [] : [problemsChanged(problems.length)]),
  ];
  return say`size ${size}: ${parts.join('; ')}`;
}

const problemsChanged = (n: number): string =>
  n === 1 ? say`1 problem changed` : say`${n} problems changed`;

/** Runs the checks over a pattern, each thing once while it stays the same. */
import { say } from '../../grammar/say';
import type { Finding, Severity, SourcedFinding } from '../drafting/finding';
import type { Pattern, Piece, PlacedFinding, Seam } from '../drafting/model';
import { sameAround, sameList, surroundings, type AroundPiece, type AroundSeam } from './around';
import type { Judged, Judging } from './check';
import { settled } from './acceptance';
import { catalogue, isFirm, severityOf } from './catalogue';
import { RISE_AND_FALL } from './rise-and-fall';

const judged = catalogue.filter((entry): entry is Judged => entry.by === 'judgement');

/** What was found of a piece or seam, and which checks broke on it. */
interface Judgement {
  readonly findings: readonly Finding[];
  readonly broken: readonly string[];
}

/** One question of a check, and the check that breaks where asking it throws. */
interface Question<T, Around> {
  readonly code: string;
  readonly ask: (thing: T, around: Around) => readonly Finding[];
}

/** What was found of things, kept while they and what it rests on stay the same. */
class Kept<T extends object, Key, Around = Key> {
  readonly #kept = new WeakMap<T, { readonly key: Key; readonly judgement: Judgement }>();

  constructor(
    private readonly same: (a: Key, b: Key) => boolean,
    private readonly questions: readonly Question<T, Around>[],
  ) {}

  /** @param key what lies around the thing, to be compared */
  of(thing: T, key: Key, around: Around): Judgement {
    const before = this.#kept.get(thing);
    if (before !== undefined && this.same(before.key, key)) return before.judgement;
    const findings: Finding[] = [];
    const broken: string[] = [];
    for (const { code, ask } of this.questions) {
      try {
        for (const finding of ask(thing, around)) findings.push(finding);
      } catch {
        // a check that breaks becomes a notice that names it, and the others still report
        broken.push(code);
      }
    }
    const judgement = { findings, broken };
    this.#kept.set(thing, { key, judgement });
    return judgement;
  }
}

type By = 'ofPiece' | 'ofSeam' | 'ofSewnPiece' | 'ofSewnSeam' | 'ofPattern';

const asked = <K extends By>(by: K): { code: string; ask: NonNullable<Judged[K]> }[] =>
  judged.flatMap((check) => {
    const ask = check[by];
    return ask === undefined ? [] : [{ code: check.code, ask: ask as NonNullable<Judged[K]> }];
  });

const sameUnits = (a: Judging, b: Judging): boolean => a.unit === b.unit && a.usual === b.usual;

const pieces = new Kept<Piece, Judging>(sameUnits, asked('ofPiece'));
const sewnPieces = new Kept<Piece, AroundPiece>(sameAround, asked('ofSewnPiece'));
const seams = new Kept<Seam, Judging>(sameUnits, asked('ofSeam'));
const sewnSeams = new Kept<Seam, readonly unknown[], AroundSeam>(sameList, asked('ofSewnSeam'));
const wholes = asked('ofPattern');

/** What the checks find, before severity and place; and those that broke. */
function judgements(pattern: Pattern): {
  readonly found: readonly SourcedFinding[];
  readonly broken: ReadonlySet<string>;
} {
  const found: SourcedFinding[] = [];
  const broken: string[] = [];
  const add = (source: string, judgement: Judgement): void => {
    for (const finding of judgement.findings) found.push({ source, finding });
    broken.push(...judgement.broken);
  };
  const { unit, usual } = pattern;
  const [units, around] = [{ unit, usual }, surroundings(pattern)];
  for (const piece of pattern.pieces) {
    const beside = around.ofPiece(piece);
    add(piece.source, pieces.of(piece, units, units));
    add(piece.source, sewnPieces.of(piece, beside, beside));
  }
  for (const seam of pattern.seams) {
    add(seam.source, seams.of(seam, units, units));
    add(seam.source, sewnSeams.of(seam, around.keyOfSeam(seam), around.ofSeam));
  }
  for (const { code, ask } of wholes) {
    try {
      found.push(...ask(pattern));
    } catch {
      broken.push(code);
    }
  }
  return { found, broken: new Set(broken) };
}

const RANK: Readonly<Record<Severity, number>> = { error: 0, warning: 1, note: 2 };

const inOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/**
 * In a file, by place. What is said twice comes with the innermost thing first, whichever was found first: that hangs on
 * the edits before.
 */
const inFile = (a: PlacedFinding, b: PlacedFinding): number =>
  a.place.from - b.place.from ||
  RANK[a.severity] - RANK[b.severity] ||
  inOrder(a.code, b.code) ||
  inOrder(a.message, b.message) ||
  a.place.to - b.place.to ||
  b.source.length - a.source.length ||
  inOrder(a.source, b.source);

const CODES = {
  all: catalogue.map(({ code }) => code),
  acceptable: (code: string) => !isFirm(code) && code !== 'stale-acceptance',
  swept: (code: string) => code === RISE_AND_FALL,
};

/** Findings beside those of one drafting, as the pattern's own lines accept them. */
export const accepted = (pattern: Pattern, findings: readonly PlacedFinding[]): readonly PlacedFinding[] =>
  settled(pattern, findings, CODES).findings;

const placedKept = new WeakMap<Pattern, readonly PlacedFinding[]>();

/** Everything found of a pattern: syntax, names, geometry, checks; in order of place. */
export function check(pattern: Pattern): readonly PlacedFinding[] {
  const before = placedKept.get(pattern);
  if (before !== undefined) return before;
  const { found, broken } = judgements(pattern);
  const place = (one: SourcedFinding & { severity?: Severity }): PlacedFinding =>
    pattern.place(one, one.severity ?? severityOf(one.finding.code));
  const { findings, more } = settled(pattern, [...pattern.findings, ...found].map(place), CODES);
  const all = [...findings, ...more.map(place)];
  all.push(...[...broken].map((code) => internalFault(pattern, code)));
  const order = new Map(pattern.files.map((uri, i) => [uri, i]));
  const fileOf = ({ place: { uri } }: PlacedFinding): number => order.get(uri) ?? 0;
  all.sort((a, b) => fileOf(a) - fileOf(b) || inFile(a, b));
  const once = all.filter((one, i) => i === 0 || !sameWords(one, all[i - 1]!));
  placedKept.set(pattern, once);
  return once;
}

/** A line that makes two pieces may find its fault twice, and so do a block that can’t be read and its lines: told once. */
const sameWords = (a: PlacedFinding, b: PlacedFinding): boolean =>
  a.code === b.code &&
  a.message === b.message &&
  a.place.uri === b.place.uri &&
  a.place.from === b.place.from &&
  a.place.to === b.place.to;

const internalFault = (pattern: Pattern, code: string): PlacedFinding => ({
  code: 'internal-fault',
  severity: 'note',
  message: say`The check ${code} broke on this pattern, so it says nothing; the others still do. This is a fault of ours: please report it with the file, if you may share it.`,
  place: { uri: pattern.uri, from: 0, to: 0 },
  source: '',
  related: [],
  fixes: [],
});

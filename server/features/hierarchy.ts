/** What a point, a value, an edge or a piece is built from, and what moves with it: one step either way. */
import type { Statement, TopLevel } from '../../grammar/syntax';
import type { FileRange } from '../drafting/model';
import { definedBy } from './defining';
import type { Meaning, MeaningKind } from './meaning';
import type { Names } from './names';
import { occurrenceAt, occurrencesMeeting, occurrencesOf, topAt, type Occurrence } from './occurrences';
import type { SymbolKind } from './outline';
import { speakingOf } from './references';

/** A definition as one entry of a tree. */
export interface Built extends FileRange {
  readonly meaning: Meaning;
  readonly name: string;
  readonly kind: SymbolKind;
  /** The line that defines it. */
  readonly detail: string;
  readonly nameFrom: number;
  readonly nameTo: number;
}

/** One step: what stands at its other end, and the places in the text that make the step. */
export interface Step {
  readonly other: Built;
  readonly places: readonly { readonly from: number; readonly to: number }[];
}

const KINDS: Partial<Record<MeaningKind, SymbolKind>> = {
  value: 'value',
  measurement: 'value',
  shape: 'shape',
  draft: 'draft',
  piece: 'piece',
  part: 'edge',
  seam: 'seam',
  finish: 'seam',
  notch: 'mark',
  body: 'body',
};

/** The definition that the name at an offset stands for. */
export function builtAt(names: Names, offset: number, tied: readonly Names[]): Built | undefined {
  const found = occurrenceAt(names, offset);
  return found && definitionOf(found.meaning, [names, ...tied]);
}

function definitionOf(meaning: Meaning, tied: readonly Names[]): Built | undefined {
  const found = definedBy(meaning, tied);
  const statement = found && lineageAt(found.names, found.name.from).at(-1);
  return statement && entry(found.names, found.name, statement);
}

interface Standing {
  readonly top: TopLevel;
  readonly statement: Statement;
}

function entry({ uri }: Names, { meaning, from, to }: Occurrence, at: Standing): Built | undefined {
  const kind = KINDS[meaning.kind];
  if (kind === undefined) return undefined;
  const { top, statement } = at;
  const start = top.offset + statement.start;
  const detail = statement.text.split(/[\r\n]/, 1)[0]!.replace(/\s*\{\s*$/, '');
  return {
    ...{ uri, from: start, to: top.offset + statement.end },
    ...{ meaning, name: meaning.name, kind, detail, nameFrom: from, nameTo: to },
  };
}

/** The statements round an offset, the outermost first. */
function lineageAt(names: Names, offset: number): readonly Standing[] {
  const top = topAt(names.root.topLevels, offset);
  const found: Standing[] = [];
  const holds = ({ start, end }: Statement): boolean =>
    top!.offset + start <= offset && offset <= top!.offset + end;
  for (let at = top?.statement; at !== undefined; at = at.block?.find(holds))
    found.push({ top: top!, statement: at });
  return found;
}

/** What a definition is built from: everything that its own words name. */
export function builtFrom(names: Names, one: Built, tied: readonly Names[]): readonly Step[] {
  const top = topAt(names.root.topLevels, one.from);
  if (top === undefined) return [];
  const named = occurrencesMeeting(names, top, one).filter(
    ({ from, to, defines, meaning }) =>
      !defines && one.from <= from && to <= one.to && meaning.key !== one.meaning.key,
  );
  const steps = [...grouped(named, ({ meaning }) => meaning.key).values()].flatMap((places) => {
    const other = definitionOf(places[0]!.meaning, [names, ...tied]);
    return other === undefined ? [] : [{ other, places }];
  });
  // a draft is not built from its own points
  return steps.filter(
    ({ other }) => !(other.uri === one.uri && one.from <= other.from && other.to <= one.to),
  );
}

/** What moves with a definition: everything whose words name it. */
export function moves({ meaning }: Built, tied: readonly Names[]): readonly Step[] {
  return speakingOf(meaning, tied).flatMap((names) => {
    const places = occurrencesOf(names, meaning).filter(({ defines }) => !defines);
    const owned = places.flatMap((place) => {
      const other = ownerOf(names, place);
      return other === undefined || other.meaning.key === meaning.key ? [] : [{ other, place }];
    });
    return [...grouped(owned, ({ other }) => other.meaning.key).values()].map((all) => ({
      other: all[0]!.other,
      places: all.map(({ place }) => place),
    }));
  });
}

/** The innermost definition whose words a place stands in. */
function ownerOf(names: Names, { from }: Occurrence): Built | undefined {
  const lineage = lineageAt(names, from);
  if (lineage.length === 0) return undefined;
  for (const at of [...lineage].reverse()) {
    const start = at.top.offset + at.statement.start;
    const own = occurrencesMeeting(names, at.top, { from: start, to: start }).find(
      (one) => one.defines && start <= one.from && one.to <= start + at.statement.text.length,
    );
    const found = own && entry(names, own, at);
    if (found !== undefined) return found;
  }
  return undefined;
}

function grouped<T>(all: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) groups.set(keyOf(one), [...(groups.get(keyOf(one)) ?? []), one]);
  return groups;
}

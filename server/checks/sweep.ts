/** Checks a pattern for every size and both ends of every choice, and says each fault once: for whom it holds and for whom not. */
import type { Choice } from '../drafting/workshop';
import type { Pattern, PatternChoice, PlacedFinding } from '../drafting/model';
import { check } from './judge';
import { listed } from './words';

/** A choice to be tried, and what a person calls it: `size L`, `bust-ease 6cm`. */
export interface Variant extends Choice {
  readonly size: string;
  readonly change: string;
}

/** As the file is drafted, then every size, and for every size both ends of every choice. */
export function variantsOf(pattern: Pattern, base: Choice): readonly Variant[] {
  const sizes = pattern.sizes.length === 0 || pattern.body === undefined ? [undefined] : pattern.sizes;
  const changes = pattern.choices.flatMap(endsOf).filter(({ path }) => base.set?.has(path) !== true);
  return sizes.flatMap((size) => {
    const body = size === undefined ? base.for : { name: pattern.body!.name, size };
    const of = { ...base, ...(body && { for: body }), size: size ?? '', change: '' };
    return [
      of,
      ...changes.map(({ path, text }) => ({ ...of, set: new Map([...(base.set ?? []), [path, text]]), change: `${path} ${text}` })),
    ];
  });
}

const endsOf = ({ path, low, high, among }: PatternChoice): readonly { path: string; text: string }[] =>
  [low, high, ...among].filter((text): text is string => text !== undefined).map((text) => ({ path, text }));

interface Gathered {
  readonly finding: PlacedFinding;
  readonly variants: Variant[];
}

/**
 * All findings, those of the file as it stands first in their own words; those that hold for other sizes or choices only
 * say for which.
 *
 * @param asItStands findings of the pattern as drafted
 * @param each shows the pattern of every variant, one after the other
 */
export function sweep(
  asItStands: readonly PlacedFinding[],
  variants: readonly Variant[],
  each: (visit: (pattern: Pattern, variant: Variant) => void) => void,
): readonly PlacedFinding[] {
  const here = new Set(asItStands.map(keyOf));
  const gathered = new Map<string, Gathered>();
  each((pattern, variant) => {
    for (const finding of check(pattern)) {
      const key = keyOf(finding);
      const before = gathered.get(key);
      if (before !== undefined) before.variants.push(variant);
      else gathered.set(key, { finding: { ...finding, fixes: [] }, variants: [variant] });
    }
  });
  const elsewhere = [...gathered].filter(([key]) => !here.has(key)).map(([, one]) => merged(one, variants));
  return [...asItStands, ...elsewhere];
}

/** The same fault at the same place, whatever its numbers. */
const keyOf = ({ code, place }: PlacedFinding): string => `${code} ${place.uri} ${place.from} ${place.to}`;

/** "size L: …; S, M agree" */
function merged({ finding, variants }: Gathered, all: readonly Variant[]): PlacedFinding {
  const plain = variants.filter(({ change }) => change === '');
  const shown = plain.length > 0 ? plain : variants;
  const sizes = [...new Set(shown.map(({ size }) => size))].filter((size) => size !== '');
  const changes = plain.length > 0 ? [] : [...new Set(shown.map(({ change }) => change))];
  const tried = [...new Set(all.map(({ size }) => size))].filter((size) => size !== '' && !sizes.includes(size));
  const when = [
    ...(sizes.length > 0 && (tried.length > 0 || changes.length > 0) ? [`size ${listed(sizes)}`] : []),
    ...(changes.length > 0 ? [`with ${changes.slice(0, 4).join(', or ')}`] : []),
  ].join(' ');
  const rest = tried.length > 0 && changes.length === 0 ? ` (${listed(tried)} ${tried.length === 1 ? 'agrees' : 'agree'}.)` : '';
  return { ...finding, message: when === '' ? finding.message : `${when}: ${finding.message}${rest}` };
}

/** Checks a pattern for every size and both ends of every choice, and says each fault once: for whom it holds and for whom not. */
import { say } from '../../grammar/say';
import type { Choice } from '../drafting/workshop';
import type { Pattern, PatternChoice, PlacedFinding } from '../drafting/model';
import { staleEverywhere } from './acceptance';
import { accepted, check } from './judge';
import { Growth } from './rise-and-fall';
import { restated } from './restated';
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
      ...changes.map(({ path, text }) => ({
        ...of,
        set: new Map([...(base.set ?? []), [path, text]]),
        change: `${path} ${text}`,
      })),
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
 * All findings, each said once: those of the file as it stands first, with their fixes; those that hold for other sizes or
 * choices only behind them. Where sizes differ, a finding says for which it holds and which agree.
 *
 * @param asItStands findings of the pattern as drafted
 * @param each shows the pattern of every variant, one after the other
 */
export function sweep(
  asItStands: readonly PlacedFinding[],
  variants: readonly Variant[],
  each: (visit: (pattern: Pattern, variant: Variant) => void) => void,
): readonly PlacedFinding[] {
  const swept = new Sweep(asItStands, variants);
  each((pattern, variant) => swept.note(pattern, variant));
  return swept.findings();
}

/** A sweep that goes from one variant to the next as its caller likes. */
export class Sweep {
  private readonly gathered = new Map<string, Gathered>();
  private readonly growth = new Growth();
  private last: Pattern | undefined;

  constructor(
    private readonly asItStands: readonly PlacedFinding[],
    private readonly variants: readonly Variant[],
  ) {}

  /** Takes over what is found for one variant. */
  note(pattern: Pattern, variant: Variant): void {
    this.last = pattern;
    if (variant.change === '' && variant.size !== '') this.growth.note(pattern, variant.size);
    for (const finding of check(pattern)) {
      const key = keyOf(finding);
      const before = this.gathered.get(key);
      if (before !== undefined) before.variants.push(variant);
      else this.gathered.set(key, { finding: restated(finding, {}, () => []), variants: [variant] });
    }
  }

  /** What is to be said once every variant was noted. */
  findings(): readonly PlacedFinding[] {
    const { gathered, variants } = this;
    const everywhere = ({ variants: of }: Gathered): boolean => of.length === variants.length;
    for (const [key, one] of gathered)
      if (one.finding.code === STALE && !everywhere(one)) gathered.delete(key);
    const here = this.asItStands.flatMap((finding) => {
      const found = gathered.get(keyOf(finding));
      gathered.delete(keyOf(finding));
      if (finding.code === STALE)
        return found === undefined ? [] : [restated(finding, staleEverywhere(finding))];
      return [found === undefined ? finding : said(finding, found.variants, variants)];
    });
    const turned = this.growth.finding();
    return [
      ...here,
      ...[...gathered.values()].map(({ finding, variants: of }) => said(finding, of, variants)),
      ...(turned === undefined ? [] : accepted(this.last!, [turned])),
    ];
  }
}

/** The same fault at the same place, whatever its numbers. */
const keyOf = ({ code, place }: PlacedFinding): string => `${code} ${place.uri} ${place.from} ${place.to}`;

/** `size L: … (S and M agree.)`; nothing is added where it holds for all as they stand. */
function said(finding: PlacedFinding, found: readonly Variant[], all: readonly Variant[]): PlacedFinding {
  const plain = found.filter(({ change }) => change === '');
  const shown = plain.length > 0 ? plain : found;
  const sizes = sizesIn(shown);
  const changes = plain.length > 0 ? [] : [...new Set(shown.map(({ change }) => change))];
  const agreeing = sizesIn(all).filter((size) => !sizes.includes(size));
  const when = [
    ...(sizes.length > 0 && agreeing.length > 0 ? [say`size ${listed(sizes)}`] : []),
    ...(changes.length > 0 ? [say`with ${changes.slice(0, MOST).join(say`, or `)}`] : []),
  ].join(' ');
  if (when === '') return finding;
  const rest =
    agreeing.length === 0 || changes.length > 0
      ? ''
      : agreeing.length === 1
        ? say` (${agreeing[0]!} agrees.)`
        : say` (${listed(agreeing)} agree.)`;
  const message = `${when}: ${finding.message}${rest}`;
  return restated(finding, { message });
}

/** A line accepts nothing only where it accepts nothing for any size and choice. */
const STALE = 'stale-acceptance';

/** More changes than these say nothing more. */
const MOST = 4;

const sizesIn = (variants: readonly Variant[]): readonly string[] =>
  [...new Set(variants.map(({ size }) => size))].filter((size) => size !== '');

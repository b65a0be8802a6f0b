/** What a pattern's `accept` lines make of its findings, and what there is to say of these lines themselves. */
import { say } from '../../grammar/say';
import type { Severity, SourcedFinding } from '../drafting/finding';
import type { Acceptance, Pattern, PlacedFinding } from '../drafting/model';
import { nearest } from '../drafting/names/spelling';
import { finding } from './check';
import { restated } from './restated';

/** What an acceptance has to know of the catalogue. */
export interface Codes {
  readonly all: readonly string[];
  /** Whether a person may let findings of this code stand. */
  readonly acceptable: (code: string) => boolean;
  /** Whether such a finding shows only where every size is tried: no single drafting tells that a line is stale. */
  readonly swept: (code: string) => boolean;
}

export interface Settled {
  /** The findings, those that are accepted as notes with the reason. */
  readonly findings: readonly PlacedFinding[];
  /** What is wrong with the lines. */
  readonly more: readonly Judgement[];
}

/** A finding, and how grave it is where that is not as the catalogue says. */
interface Judgement extends SourcedFinding {
  readonly severity?: Severity;
}

export function settled(pattern: Pattern, findings: readonly PlacedFinding[], codes: Codes): Settled {
  const lines = pattern.acceptances;
  if (lines.length === 0) return { findings, more: [] };
  const more: Judgement[] = [];
  const by = new Map<PlacedFinding, Acceptance>();
  // where something can't be drafted, not everything was judged: then nobody knows what a line would accept
  const whole = findings.every(({ severity, code }) => severity !== 'error' || codes.acceptable(code));
  for (const line of lines) {
    const refusal = refused(line, codes);
    const taken =
      refusal === undefined
        ? findings.filter((one) => one.code === line.code && concerns(pattern, one, line))
        : [];
    for (const one of taken) if (!by.has(one)) by.set(one, line);
    if (refusal !== undefined) more.push(refusal);
    else if (taken.length === 0 && whole && !isLost(line) && !codes.swept(line.code))
      more.push(stale(pattern, line));
  }
  if (by.size === 0) return { findings, more };
  return { findings: findings.map((one) => accepted(pattern, one, by.get(one))), more };
}

/** The name of what it concerns leads nowhere, which has been said. */
const isLost = ({ of }: Acceptance): boolean => of !== undefined && of.source === undefined;

function accepted(pattern: Pattern, found: PlacedFinding, line: Acceptance | undefined): PlacedFinding {
  if (line === undefined) return found;
  const reason = line.reason.trim().replace(/[.\s]+$/, '');
  const place = pattern.locate(line.source);
  const here = place === undefined ? [] : [{ place, message: say`It is accepted here.` }];
  return restated(found, {
    severity: 'note',
    message: say`${found.message} Accepted because ${reason}.`,
    accepted: reason,
    related: [...found.related, ...here],
  });
}

/** Whether a finding is of what the line names: it stands there, is made of it, or speaks of that piece. */
function concerns(pattern: Pattern, found: PlacedFinding, { of }: Acceptance): boolean {
  if (of === undefined) return true;
  const wanted = of.source;
  if (wanted === undefined) return false;
  if (pattern.pieces.some(({ source, name }) => source === wanted && name === found.piece)) return true;
  const owners = pattern.pieces.filter(({ source }) => wanted.startsWith(`${source}/`));
  if (owners.length === 0 && isWithin(found.source, wanted)) return true;
  const seam = pattern.seams.find(({ source }) => source === found.source);
  if (seam !== undefined && [...seam.left, ...seam.right].some(({ source }) => source === wanted))
    return true;
  const here = pattern.sourcesAt(found.place.uri, found.place.from);
  if (found.piece === undefined || owners.length === 0 || seam !== undefined)
    return here.some((one) => isWithin(one, wanted));
  const owner = owners.find(({ name }) => name === found.piece);
  if (owner === undefined) return false;
  // a piece made from another has no line of its own for an edge: there the message names it
  if (here[0] === owner.source) return namesWhole(found.message, `${found.piece}.${nameOf(wanted)}`);
  return here.some((one) => nameOf(one) === nameOf(wanted));
}

/** The last name of a path: `foot` of `sack/foot`. */
const nameOf = (source: string): string => source.slice(source.lastIndexOf('/') + 1);

/** Whether a message has a name that does not go on: `two.hem` is not in `two.hem-back`. */
const namesWhole = (message: string, name: string): boolean =>
  message
    .split(name)
    .slice(1)
    .some((rest) => !/^[\p{L}\p{M}\d-]/u.test(rest));

const isWithin = (source: string, of: string): boolean => source === of || source.startsWith(`${of}/`);

// ------------------------------------------------------------------------------------------- the lines themselves

function refused({ source, statement, code, codeAt, reason }: Acceptance, codes: Codes) {
  const told = (message: string, extra?: Parameters<typeof finding>[3]): SourcedFinding => ({
    source,
    finding: finding('acceptance-refused', { statement, at: codeAt }, message, extra),
  });
  if (!codes.all.includes(code)) {
    const near = nearest(code, codes.all.filter(codes.acceptable));
    if (near === undefined)
      return told(
        say`No finding is called ${code}. The code stands beside a message, and draftwright explain CODE shows its page.`,
      );
    const edits = [{ statement, at: codeAt, text: near }];
    return told(say`No finding is called ${code}. Did you mean ${near}?`, {
      fixes: [{ title: say`Change to ${near}`, edits }],
    });
  }
  if (!codes.acceptable(code))
    return told(
      say`${code} can't be accepted: where it is found, something can't be read or drawn, and what rests on it is not checked. Mend what its message says.`,
    );
  if (reason.trim() !== '') return undefined;
  return told(
    say`Give the reason between the quotes: whoever reads this later should know why it was accepted.`,
  );
}

function stale(pattern: Pattern, { source, statement, code, of }: Acceptance): Judgement {
  const { at } = statement.node;
  const what = of === undefined ? code : `${code} at ${of.text}`;
  const varies = mayVary(pattern);
  const message = varies ? notNow(what) : noMore(what);
  const fixes = [{ title: say`Take the line out`, edits: [{ statement, at, text: '' }] }];
  const found = finding('stale-acceptance', { statement, at }, message, { fixes });
  return { source, finding: found, ...(varies && { severity: 'note' as const }) };
}

const notNow = (what: string): string =>
  say`No ${what} is found as this is drafted now. If no other size or choice needs the line, take it out: draftwright check tries them all.`;
const noMore = (what: string): string =>
  say`No ${what} is found. Take the line out, so that a later finding is not accepted unseen.`;

/** Splits what is said now where the thing stands that was not found. */
const MARK = '\u0000';

/** How a line is spoken of once every size and choice was tried and it accepts nothing. */
export function staleEverywhere({
  message,
  severity,
}: PlacedFinding): Pick<PlacedFinding, 'message' | 'severity'> {
  const [before = '', after = ''] = notNow(MARK).split(MARK);
  // a pattern that can't vary was told so at once
  if (!message.endsWith(after)) return { message, severity };
  return {
    message: noMore(message.slice(before.length, message.length - after.length)),
    severity: 'warning',
  };
}

/** Another size or choice may show what this drafting does not. */
const mayVary = ({ sizes, choices }: Pattern): boolean =>
  sizes.length > 1 || choices.some(({ low, among }) => low !== undefined || among.length > 0);

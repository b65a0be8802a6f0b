/**
 * Tells the editor what was found: one set of diagnostics a file and version. A client that can ask does so, and is
 * told when to ask again; to any other they are sent, and cleared when the text is closed.
 */
import { say } from '../../grammar/say';
import {
  DiagnosticSeverity,
  DiagnosticTag,
  type ClientCapabilities,
  type Diagnostic,
  type DocumentDiagnosticReport,
  type PublishDiagnosticsParams,
} from 'vscode-languageserver';
import type { Pattern, PlacedFinding } from '../drafting/model';
import type { Lines } from '../features/lines';
import { unusedMessage, type Unused } from '../features/unused';
import { severities } from './convert';
import type { Desk } from './desk';
import type { OpenDocument } from './documents';
import { Grace } from './grace';
import { besideIt, withinIt } from './related';

/** The address of a code's page; undefined where the client has no way to show one. */
export type PageAddress = (code: string) => string | undefined;

/** Most findings that an editor is told of one file. */
const MOST = 1000;

interface Told {
  readonly findings: readonly PlacedFinding[];
  readonly faded: readonly Unused[];
  readonly version: number;
}

interface Answered {
  readonly id: string;
  readonly said: string;
  readonly codes: readonly string[];
  readonly pattern: Pattern;
}

export class Diagnostics {
  /** The client asks for what was found: then nothing is sent to it, or it would show everything twice. */
  asked = false;
  /** The client fades what is tagged so; another would tell it as a problem. */
  fades = false;
  /** The client shows other places beside a problem; another is told them within its words. */
  relates = false;
  /** What was told last, by key. */
  readonly #told = new Map<string, Told>();
  /** What was answered last, by key, and under which mark. */
  readonly #answered = new Map<string, Answered>();
  #count = 0;

  constructor(
    private readonly send: (params: PublishDiagnosticsParams) => void,
    private readonly desk: Desk,
    private readonly page: PageAddress,
    private readonly grace: Grace = new Grace(),
  ) {}

  /** Learns how this client wants to be told. */
  greet({ textDocument, workspace }: ClientCapabilities): void {
    // without being told when to ask again, a client would show old problems of files that others changed
    this.asked = textDocument?.diagnostic !== undefined && workspace?.diagnostics?.refreshSupport === true;
    const able = this.asked ? textDocument?.diagnostic : textDocument?.publishDiagnostics;
    this.fades = able?.tagSupport?.valueSet.includes(DiagnosticTag.Unnecessary) === true;
    // a client of before 3.18 that asks says so with what it is sent
    this.relates =
      (able?.relatedInformation ?? textDocument?.publishDiagnostics?.relatedInformation) === true;
  }

  /** Sends what there is to say of an open text, unless it has to wait or was said of the same version. */
  publish(document: OpenDocument, pattern: Pattern): void {
    if (this.asked || !this.#isNew(document, pattern)) return;
    const { clientUri, version } = document;
    this.send({ uri: clientUri, version, diagnostics: this.#all(document, pattern) });
  }

  /** Whether there is something else to say than the last time; remembers it as said. */
  #isNew({ key, version }: OpenDocument, pattern: Pattern): boolean {
    const now = { findings: this.desk.problems(pattern), faded: this.#faded(pattern), version };
    const last = this.#told.get(key);
    if (last !== undefined && this.grace.waits(codesOf(last), codesOf(now))) return false;
    this.#told.set(key, now);
    const alike = last?.version === version && same(last.findings, now.findings);
    return !alike || !same(last.faded, now.faded);
  }

  /** Answers a client that asks, shortly where nothing changed since it asked last. */
  answer(document: OpenDocument, pattern: Pattern, previous?: string): DocumentDiagnosticReport {
    const last = this.#answered.get(document.key);
    const asked = last !== undefined && last.id === previous;
    const codes = codesOf({ findings: this.desk.problems(pattern), faded: this.#faded(pattern) });
    if (asked && this.grace.waits(last.codes, codes)) return { kind: 'unchanged', resultId: last.id };
    const items = this.#all(document, pattern);
    const said = JSON.stringify(items);
    const unchanged = asked && last.said === said;
    const id = unchanged ? last.id : String(++this.#count);
    this.#answered.set(document.key, { id, said, codes, pattern });
    return unchanged ? { kind: 'unchanged', resultId: id } : { kind: 'full', resultId: id, items };
  }

  /** Whether the client asked last when the pattern was another. */
  isOutdated(key: string, pattern: Pattern): boolean {
    const last = this.#answered.get(key);
    return last !== undefined && last.pattern !== pattern;
  }

  clear(key: string, clientUri: string): void {
    this.#told.delete(key);
    this.#answered.delete(key);
    if (!this.asked) this.send({ uri: clientUri, diagnostics: [] });
  }

  #all({ lines }: OpenDocument, pattern: Pattern): Diagnostic[] {
    const findings = this.desk.problems(pattern);
    const diagnostics = findings.slice(0, MOST).map((finding) => this.#diagnostic(finding, lines));
    if (findings.length > MOST) diagnostics.push(more(findings.length - MOST, diagnostics[MOST - 1]!));
    return [...diagnostics, ...this.#faded(pattern).map((one) => faded(one, lines))];
  }

  #faded(pattern: Pattern): readonly Unused[] {
    return this.fades && this.desk.fadesUnused ? this.desk.unused(pattern).slice(0, MOST) : [];
  }

  #diagnostic(finding: PlacedFinding, lines: Lines): Diagnostic {
    const { code, severity, place } = finding;
    const href = this.page(code);
    return {
      range: lines.range(place.from, place.to),
      severity: severities[severity],
      code,
      ...(href === undefined ? {} : { codeDescription: { href } }),
      source: 'draftwright',
      ...(this.relates ? besideIt(finding, this.desk) : withinIt(finding, this.desk)),
    };
  }
}

/** What is told, by codes: what nothing speaks of counts as well, since a half-typed name leaves its fellow unused. */
const codesOf = ({ findings, faded }: Pick<Told, 'findings' | 'faded'>): readonly string[] => [
  ...findings.map(({ code }) => code),
  ...faded.map(() => 'unused'),
];

/** A name that nothing speaks of: nothing is wrong with it, so it is no problem to be listed. */
const faded = (one: Unused, lines: Lines): Diagnostic => ({
  range: lines.range(one.place.from, one.place.to),
  severity: DiagnosticSeverity.Hint,
  tags: [DiagnosticTag.Unnecessary],
  source: 'draftwright',
  message: unusedMessage(one),
});

/** Said where the last that is told stands: with thousands an editor would be slow, and nobody reads them. */
function more(count: number, last: Diagnostic): Diagnostic {
  const message =
    count === 1
      ? say`1 more is not told here: mend what is told first.`
      : say`${count} more are not told here: mend what is told first.`;
  return { range: last.range, severity: severities.note, source: 'draftwright', message };
}

const same = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

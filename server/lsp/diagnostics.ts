/** Tells the editor what was found: one set of diagnostics a file and version, cleared when the text is closed. */
import type { Diagnostic, PublishDiagnosticsParams } from 'vscode-languageserver';
import type { PlacedFinding } from '../drafting/model';
import type { Lines } from '../features/lines';
import { location, severities, type Addresses } from './convert';
import type { OpenDocument } from './documents';

/** The address of a code's page; undefined where the client has no way to show one. */
export type PageAddress = (code: string) => string | undefined;

/** Most findings that an editor is told of one file. */
const MOST = 1000;

export class Diagnostics {
  /** What was published last, by key: the findings and the version they were placed in. */
  readonly #published = new Map<string, { findings: readonly PlacedFinding[]; version: number }>();

  constructor(
    private readonly send: (params: PublishDiagnosticsParams) => void,
    private readonly addresses: Addresses,
    private readonly page: PageAddress,
  ) {}

  /** Publishes the findings of an open text, unless the same were published for the same version. */
  publish(document: OpenDocument, findings: readonly PlacedFinding[]): void {
    const last = this.#published.get(document.key);
    if (last !== undefined && last.version === document.version && sameFindings(last.findings, findings))
      return;
    this.#published.set(document.key, { findings, version: document.version });
    const diagnostics = findings.slice(0, MOST).map((finding) => this.#diagnostic(finding, document.lines));
    if (findings.length > MOST) diagnostics.push(more(findings.length - MOST, diagnostics[MOST - 1]!));
    this.send({ uri: document.clientUri, version: document.version, diagnostics });
  }

  clear(key: string, clientUri: string): void {
    this.#published.delete(key);
    this.send({ uri: clientUri, diagnostics: [] });
  }

  #diagnostic(finding: PlacedFinding, lines: Lines): Diagnostic {
    const { code, severity, message, place, related } = finding;
    const href = this.page(code);
    return {
      range: lines.range(place.from, place.to),
      severity: severities[severity],
      code,
      ...(href === undefined ? {} : { codeDescription: { href } }),
      source: 'draftwright',
      message,
      relatedInformation: related.map((other) => ({
        location: location(other.place, this.addresses),
        message: other.message,
      })),
    };
  }
}

/** Said where the last that is told stands: with thousands an editor would be slow, and nobody reads them. */
function more(count: number, last: Diagnostic): Diagnostic {
  const message = `${count} more ${count === 1 ? 'is' : 'are'} not told here: mend what is told first.`;
  return { range: last.range, severity: severities.note, source: 'draftwright', message };
}

function sameFindings(a: readonly PlacedFinding[], b: readonly PlacedFinding[]): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}

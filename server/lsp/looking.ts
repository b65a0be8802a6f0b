/** Requests for what an editor shows round and between the words: lenses, hints, forms, links, selections, symbols. */
import {
  CodeLensRequest,
  DocumentLinkRequest,
  InlayHintKind,
  InlayHintRequest,
  MarkupKind,
  SelectionRangeRequest,
  SignatureHelpRequest,
  SignatureHelpTriggerKind,
  WorkspaceSymbolRequest,
  type CodeLens,
  type DocumentLink,
  type InlayHint,
  type InlayHintParams,
  type SelectionRange,
  type SelectionRangeParams,
  type SignatureHelp,
  type SignatureHelpParams,
  type SymbolInformation,
  type WorkspaceSymbolParams,
} from 'vscode-languageserver';
import { hints } from '../features/hints';
import { lenses } from '../features/lenses';
import { links } from '../features/links';
import { selections } from '../features/selection';
import { formAt, functionAt, type Signature } from '../features/signature';
import { workspaceSymbols } from '../features/workspace-symbols';
import { location, symbolKinds } from './convert';
import { aboutText, offsetOf, service, type AboutText, type Room, type Service } from './service';

const lensesOf = aboutText(({ key, lines }, _params: AboutText, desk): CodeLens[] => {
  const pattern = desk.pattern(key);
  return lenses(pattern, desk.problems(pattern)).map(({ from, to, words }) => ({
    range: lines.range(from, to),
    command: { title: words, command: '' },
  }));
});

const hintsWithin = aboutText(({ key, lines }, { range }: InlayHintParams, desk): InlayHint[] | null => {
  const file = desk.workshop.source(key);
  if (file === undefined) return null;
  const span = { from: lines.offset(range.start), to: lines.offset(range.end) };
  return hints(desk.pattern(key), file, span, desk.hintKinds).map(({ offset, words }) => ({
    position: lines.position(offset),
    label: words,
    kind: InlayHintKind.Type,
    paddingLeft: true,
  }));
});

/** A form comes when it is asked for; while a call is typed, its parameters come by themselves. */
const signatureAt = aboutText((document, params: SignatureHelpParams, desk): SignatureHelp | null => {
  const offset = offsetOf(document, params);
  const asked = params.context?.triggerKind !== SignatureHelpTriggerKind.TriggerCharacter;
  const found =
    functionAt(document.text, offset) ??
    (asked ? formAt(desk.workshop.source(document.key), document.text, offset) : undefined);
  return found === undefined ? null : signatureHelp(found, desk.shows.stretches);
});

function signatureHelp({ label, doc, parameters, active }: Signature, stretches: boolean): SignatureHelp {
  const signature = {
    label,
    documentation: { kind: MarkupKind.PlainText, value: doc },
    parameters: parameters.map(([from, to]) => ({
      label: stretches ? ([from, to] as [number, number]) : label.slice(from, to),
    })),
  };
  return {
    signatures: [signature],
    activeSignature: 0,
    ...(active !== undefined && { activeParameter: active }),
  };
}

const linksOf = aboutText(({ key, lines }, _params: AboutText, desk): DocumentLink[] => {
  const file = desk.workshop.source(key);
  return (file === undefined ? [] : links(file)).flatMap(({ from, to, path }) => {
    const found = desk.files.resolve(key, path);
    const there = 'uri' in found && desk.workshop.source(found.uri) !== undefined;
    return there ? [{ range: lines.range(from, to), target: desk.clientUri(found.uri) }] : [];
  });
});

const selectionsAt = aboutText(
  ({ key, text, lines }, { positions }: SelectionRangeParams, desk): SelectionRange[] | null => {
    const file = desk.workshop.source(key);
    if (file === undefined) return null;
    return positions.map((position) => {
      const spans = selections(file, text, lines.offset(position));
      const range = spans.reduceRight<SelectionRange | undefined>(
        (parent, { from, to }) => ({ range: lines.range(from, to), ...(parent !== undefined && { parent }) }),
        undefined,
      );
      return range ?? { range: { start: position, end: position } };
    });
  },
);

function symbolsNamed({ query }: WorkspaceSymbolParams, { desk }: Room): SymbolInformation[] {
  const files = desk.files.all().flatMap((uri) => {
    const file = desk.workshop.source(uri);
    return file === undefined ? [] : [{ uri, file }];
  });
  return workspaceSymbols(files, query).map(({ uri, symbol, from, to, container }) => ({
    name: symbol.name,
    kind: symbolKinds[symbol.kind],
    location: location({ uri, from, to }, desk),
    ...(container !== '' && { containerName: container }),
  }));
}

export const lookingServices: readonly Service[] = [
  service(CodeLensRequest.method, 'checks', { codeLensProvider: {} }, lensesOf),
  service(InlayHintRequest.method, 'geometry', { inlayHintProvider: true }, hintsWithin),
  service(
    SignatureHelpRequest.method,
    'text',
    { signatureHelpProvider: { triggerCharacters: ['(', ','] } },
    signatureAt,
  ),
  service(DocumentLinkRequest.method, 'text', { documentLinkProvider: {} }, linksOf),
  service(SelectionRangeRequest.method, 'text', { selectionRangeProvider: true }, selectionsAt),
  service(WorkspaceSymbolRequest.method, 'text', { workspaceSymbolProvider: true }, symbolsNamed),
];

/** Requests that follow a name: where it is named, lighting it up, and giving another. */
import {
  DocumentHighlightKind,
  DocumentHighlightRequest,
  LinkedEditingRangeRequest,
  LSPErrorCodes,
  PrepareRenameRequest,
  ReferencesRequest,
  RenameRequest,
  ResponseError,
  WillRenameFilesRequest,
  type DocumentHighlight,
  type LinkedEditingRanges,
  type Location,
  type PrepareRenameResult,
  type ReferenceParams,
  type RenameFilesParams,
  type RenameParams,
  type TextDocumentPositionParams,
  type WorkspaceEdit,
} from 'vscode-languageserver';
import { mendedUses } from '../features/file-rename';
import { linked } from '../features/linked';
import { highlights, meaningAt, references } from '../features/references';
import { prepareRename, rename, type Refused } from '../features/rename';
import { location, workspaceEdit } from './convert';
import { aboutText, offsetOf, service, type Room, type Service } from './service';
import { canonical } from './uris';

const referencesTo = aboutText((document, params: ReferenceParams, desk): Location[] => {
  const meaning = meaningAt(desk.names(document.key), offsetOf(document, params));
  if (meaning === undefined) return [];
  return references(meaning, desk.tied(document.key))
    .filter(({ defines }) => params.context.includeDeclaration || !defines)
    .map((place) => location(place, desk));
});

const highlightsAt = aboutText((document, params: TextDocumentPositionParams, desk): DocumentHighlight[] =>
  highlights(desk.names(document.key), offsetOf(document, params)).map(({ from, to, defines }) => ({
    range: document.lines.range(from, to),
    kind: defines ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  })),
);

const linkedAt = aboutText(
  ({ key, text, lines }, { position }: TextDocumentPositionParams, desk): LinkedEditingRanges | null => {
    const found = linked(desk.names(key), text, lines.offset(position), desk.tied(key));
    if (found === undefined) return null;
    const ranges = found.places.map(({ from, to }) => lines.range(from, to));
    return { ranges, wordPattern: found.pattern };
  },
);

/** An answer that the editor shows to the person as it stands. */
const refusal = ({ refused }: Refused) => new ResponseError(LSPErrorCodes.RequestFailed, refused);

const preparedAt = aboutText(
  (document, params: TextDocumentPositionParams, desk): PrepareRenameResult | ResponseError | null => {
    const found = prepareRename(desk.names(document.key), document.text, offsetOf(document, params));
    if (found === undefined) return null;
    if ('refused' in found) return refusal(found);
    return { range: document.lines.range(found.from, found.to), placeholder: found.name };
  },
);

const renamed = aboutText((document, params: RenameParams, desk): WorkspaceEdit | ResponseError | null => {
  const { key, text } = document;
  const found = rename(desk.names(key), text, offsetOf(document, params), params.newName, desk.tied(key));
  if (found === undefined) return null;
  if ('refused' in found) return refusal(found);
  return workspaceEdit({ edits: found.map((place) => ({ place, text: place.text })) }, desk);
});

/** Before files get other names: the `use` lines that would lead nowhere afterwards. */
function beforeFilesMove({ files }: RenameFilesParams, { desk }: Room): WorkspaceEdit | null {
  const renamings = files.map(({ oldUri, newUri }) => ({ from: canonical(oldUri), to: canonical(newUri) }));
  const all = desk.files.all().flatMap((uri) => {
    const file = desk.workshop.source(uri);
    return file === undefined ? [] : [{ uri, file }];
  });
  const edits = mendedUses(all, renamings, (from, path) => {
    const found = desk.files.resolve(from, path);
    return 'uri' in found ? found.uri : undefined;
  });
  return workspaceEdit({ edits: edits.map((place) => ({ place, text: place.text })) }, desk);
}

export const namingServices: readonly Service[] = [
  service(ReferencesRequest.method, 'names', { referencesProvider: true }, referencesTo),
  service(DocumentHighlightRequest.method, 'names', { documentHighlightProvider: true }, highlightsAt),
  service(LinkedEditingRangeRequest.method, 'names', { linkedEditingRangeProvider: true }, linkedAt),
  service(PrepareRenameRequest.method, 'names', {}, preparedAt),
  service(WillRenameFilesRequest.method, 'text', {}, beforeFilesMove),
  service(RenameRequest.method, 'names', { renameProvider: { prepareProvider: true } }, renamed),
];

/** Requests of every kind about one open text, at places that a seed chooses. */
import { methods } from '../../client/preview/protocol';
import { Lines } from '../../server/features/lines';

export type Ask = readonly [method: string, params: object];

const WORD = /[\p{L}\d][\p{L}\d.-]*/gu;

/** What is asked of a text in one place. */
export function everyRequest(uri: string, text: string, below: (limit: number) => number): readonly Ask[] {
  const lines = new Lines(text);
  const words = [...text.matchAll(WORD)];
  const somewhere = () => (words.length === 0 ? 0 : words[below(words.length)]!.index + below(2));
  const textDocument = { uri };
  const at = () => ({ textDocument, position: lines.position(somewhere()) });
  const from = below(text.length + 1);
  const range = lines.range(from, Math.min(text.length, from + below(400)));
  const context = { diagnostics: [], includeDeclaration: true };
  const about = (names: readonly string[], params: () => object): readonly Ask[] =>
    names.map((name) => [`textDocument/${name}`, params()]);
  const seat = 'asked';
  return [
    ...about(['documentSymbol', 'foldingRange', 'codeLens', 'documentLink'], () => ({ textDocument })),
    ...about(['semanticTokens/full', 'formatting', 'diagnostic'], () => ({ textDocument, options: {} })),
    ...about(['semanticTokens/range', 'rangeFormatting', 'codeAction'], () => ({
      ...{ textDocument, range, context, options: {} },
    })),
    ...about(['inlayHint'], () => ({ textDocument, range: lines.range(0, text.length) })),
    ...about(['hover', 'completion', 'definition', 'documentHighlight', 'signatureHelp'], at),
    ...about(['prepareRename', 'linkedEditingRange', 'prepareCallHierarchy'], at),
    ...about(['references', 'rename', 'onTypeFormatting'], () => ({
      ...at(),
      ...{ context, newName: 'quite-new', ch: '\n', options: {} },
    })),
    ...about(['selectionRange'], () => ({ textDocument, positions: [at().position, at().position] })),
    ['workspace/symbol', { query: 'f' }],
    ['workspace/willRenameFiles', { files: [{ oldUri: uri, newUri: uri.replace('.draft', '-ö.draft') }] }],
    [methods.openPreview, { uri, seat, want: { construction: true, whole: true } }],
    [methods.layable, { uri, seat }],
    [methods.sourcesAt, { uri, position: at().position }],
    [methods.writeTrial, { uri, trial: { set: {} } }],
  ];
}

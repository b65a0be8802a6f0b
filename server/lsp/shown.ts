/** What a client said it can show: it is sent nothing else. */
import { MarkupKind, type InitializeParams } from 'vscode-languageserver';

export interface Shown {
  /** Hovers with layout, or as plain words. */
  readonly layout: boolean;
  /** Pictures in a hover. */
  readonly pictures: boolean;
  /** Completions with places to fill in. */
  readonly snippets: boolean;
  /** An outline as a tree, or as a list. */
  readonly tree: boolean;
  /** Parameters as stretches of the form they stand in, or as words. */
  readonly stretches: boolean;
}

export const ALL_BUT_PICTURES: Shown = {
  layout: true,
  pictures: false,
  snippets: false,
  tree: true,
  stretches: true,
};

/**
 * A client that names what it reads Markdown with has a page to show it on; a terminal would print a picture as a thousand letters,
 * unless it says at the start that it knows better.
 */
export function shown({ capabilities, initializationOptions }: InitializeParams): Shown {
  const { textDocument, general } = capabilities;
  const formats = textDocument?.hover?.contentFormat;
  const layout = formats === undefined || formats.includes(MarkupKind.Markdown);
  const { pictures } = (initializationOptions ?? {}) as { readonly pictures?: boolean };
  const form = textDocument?.signatureHelp?.signatureInformation?.parameterInformation;
  return {
    layout,
    pictures: layout && (pictures ?? general?.markdown !== undefined),
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    tree: textDocument?.documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    stretches: form?.labelOffsetSupport === true,
  };
}

/** The page of a preview: set once, with nothing in it but where the view is built and what it may load. */

export interface PageParts {
  /** Where the webview's own files come from, for its content security policy. */
  readonly source: string;
  readonly script: string;
  readonly style: string;
  /** Said once by the policy and once by the script, so that no other script runs. */
  readonly nonce: string;
  /** File of the pattern, remembered with the page so that a reload finds it. */
  readonly uri: string;
  /** Text that was saved as this file, where the page showed that before. */
  readonly was?: string;
  /** Which preview of the file it is. */
  readonly seat: string;
  /** The editor's language, and what is said in it where it is not English. */
  readonly language: string;
  readonly words?: Readonly<Record<string, string>>;
}

export function previewPage(parts: PageParts): string {
  const { source, script, style, nonce, uri, was, seat, language, words } = parts;
  const policy = `default-src 'none'; style-src ${source}; script-src 'nonce-${nonce}'`;
  const before = was === undefined ? '' : ` data-was="${quoted(was)}"`;
  const said = words === undefined ? '' : ` data-words="${quoted(JSON.stringify(words))}"`;
  return `<!DOCTYPE html>
<html lang="${quoted(language)}">
  <head>
    <meta charset="UTF-8">
    <meta http-equiv="Content-Security-Policy" content="${quoted(policy)}">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <link rel="stylesheet" href="${quoted(style)}">
    <title>Preview</title>
  </head>
  <body>
    <div class="preview" id="preview" data-uri="${quoted(uri)}"${before} data-seat="${quoted(seat)}"${said}></div>
    <script nonce="${quoted(nonce)}" src="${quoted(script)}"></script>
  </body>
</html>
`;
}

function quoted(value: string): string {
  return value.replace(/[&"<>]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

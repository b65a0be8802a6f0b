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
  /** Which preview of the file it is. */
  readonly seat: string;
}

export function previewPage({ source, script, style, nonce, uri, seat }: PageParts): string {
  const policy = `default-src 'none'; style-src ${source}; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="en">
  <head>
    <meta charset="UTF-8">
    <meta http-equiv="Content-Security-Policy" content="${quoted(policy)}">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <link rel="stylesheet" href="${quoted(style)}">
    <title>Preview</title>
  </head>
  <body>
    <div class="preview" id="preview" data-uri="${quoted(uri)}" data-seat="${quoted(seat)}"></div>
    <script nonce="${quoted(nonce)}" src="${quoted(script)}"></script>
  </body>
</html>
`;
}

function quoted(value: string): string {
  return value.replace(/[&"<>]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

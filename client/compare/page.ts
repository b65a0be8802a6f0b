/** The page of the comparison's panel: the rows and the drawing as the server has them, in the colours of the editor. */
import { tongue } from '../../grammar/say';
import { pageScript } from '../../server/review/page-script';
import { PAGE_STYLE } from '../../server/review/page-style';

/** The editor's colours in place of the page's own; what an editor's theme lacks falls back to its ink. */
const EDITOR_STYLE = `
:root { color-scheme: inherit; --ground: var(--vscode-editor-background); --ink: var(--vscode-editor-foreground); --faint: var(--vscode-descriptionForeground, var(--vscode-editor-foreground)); --rule: var(--vscode-contrastBorder, var(--vscode-widget-border, var(--vscode-editorWidget-border, var(--vscode-editor-foreground)))); --raised: var(--vscode-editorWidget-background); }
body { font: var(--vscode-font-size, 13px)/1.45 var(--vscode-font-family, sans-serif); }
[tabindex]:focus-visible, button:focus-visible, input:focus-visible { outline-color: var(--vscode-focusBorder); }
.columns { grid-template-columns: minmax(15rem, 2fr) 3fr; }
@media (max-width: 60rem) { .columns { grid-template-columns: minmax(0, 1fr); } }
.vscode-high-contrast .same, .vscode-high-contrast-light .same { opacity: 1; }
.vscode-high-contrast .chosen, .vscode-high-contrast-light .chosen { outline: 1px solid var(--vscode-contrastActiveBorder, var(--ink)); }
[data-place]:hover { text-decoration: underline; }
.refusal { font-size: 1.1em; max-width: 40rem; }
`;

/** A row with a place in the texts leads there. */
const EDITOR_SCRIPT = `
const editor = acquireVsCodeApi();
const go = (event) => {
  if (event.type === 'keydown' && event.key !== 'Enter') return;
  const row = event.target.closest('[data-place]');
  if (row !== null) editor.postMessage({ type: 'go', place: JSON.parse(row.dataset.place) });
};
document.addEventListener('click', go);
document.addEventListener('keydown', go);
`;

export interface PanelParts {
  readonly title: string;
  /** As the server wrote it: every name in it is escaped there. */
  readonly html: string;
  readonly nonce: string;
}

export function panelPage({ title, html, nonce }: PanelParts): string {
  const policy = `default-src 'none'; style-src 'nonce-${nonce}'; script-src 'nonce-${nonce}'`;
  return `<!DOCTYPE html>
<html lang="${tongue()}">
  <head>
    <meta charset="UTF-8">
    <meta http-equiv="Content-Security-Policy" content="${quoted(policy)}">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <style nonce="${quoted(nonce)}">${PAGE_STYLE}${EDITOR_STYLE}</style>
    <title>${quoted(title)}</title>
  </head>
  <body>
    <main><h1>${quoted(title)}</h1>
${html}
    </main>
    <script nonce="${quoted(nonce)}">${pageScript()}${EDITOR_SCRIPT}</script>
  </body>
</html>
`;
}

/** Why there is no comparison. */
export const refusalHtml = (words: string): string => `<p class="refusal">${quoted(words)}</p>`;

function quoted(value: string): string {
  return value.replace(/[&"<>]/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

/** Hover, completion, definition, outline and folding, asked for as the editor asks. */
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { fileUri, forget, hoverAt, pocket, rangeOf, replace, show } from './editor';

const ask = <T>(command: string, ...args: unknown[]) => vscode.commands.executeCommand<T>(command, ...args);

describe('services in the editor', () => {
  let document: vscode.TextDocument;

  beforeEach(async () => {
    document = await show(fileUri('pocket.draft'), pocket);
  });

  afterEach(forget);

  it('hovering over a name tells its value', async () => {
    assert.match(await hoverAt(document, 'width = 16cm'), /16cm/);
  });

  it('hovering tells the value of the unsaved text', async () => {
    await replace(document, '16cm', '17.5cm');
    assert.match(await hoverAt(document, 'width = 17.5cm'), /17\.5cm/);
    assert.equal(document.isDirty, true);
  });

  it('completion offers the names that the draft knows', async () => {
    const at = rangeOf(document, 'right width').end;
    const { items } = await ask<vscode.CompletionList>(
      'vscode.executeCompletionItemProvider',
      document.uri,
      at,
    );
    const labels = items.map(({ label }) => (typeof label === 'string' ? label : label.label));
    assert.ok(labels.includes('width'), labels.join(' '));
  });

  it('a name leads to its definition', async () => {
    const at = rangeOf(document, 'mouth-left right').start;
    const found = await ask<(vscode.Location | vscode.LocationLink)[]>(
      'vscode.executeDefinitionProvider',
      document.uri,
      at,
    );
    const [place] = found.map((link) => ('targetUri' in link ? link.targetRange : link.range));
    assert.equal(place?.start.line, 4);
  });

  it('the outline names drafts, pieces and what they hold', async () => {
    const symbols = await ask<vscode.DocumentSymbol[]>('vscode.executeDocumentSymbolProvider', document.uri);
    const names = symbols.map(({ name }) => name);
    assert.ok(names.includes('patch') && names.includes('pocket'), names.join(' '));
  });

  it('blocks can be folded', async () => {
    const folds = await ask<vscode.FoldingRange[]>('vscode.executeFoldingRangeProvider', document.uri);
    assert.ok(folds.some(({ start }) => start === 2));
  });
});

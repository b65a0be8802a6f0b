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

  it('every place of a name is found, and all of them take another', async () => {
    const at = rangeOf(document, 'mouth-left right').start;
    const places = await ask<vscode.Location[]>('vscode.executeReferenceProvider', document.uri, at);
    const before = document.getText();
    const edit = await ask<vscode.WorkspaceEdit>(
      'vscode.executeDocumentRenameProvider',
      document.uri,
      at,
      'mouth-near',
    );
    assert.ok(await vscode.workspace.applyEdit(edit));
    assert.equal(document.getText(), before.replaceAll('mouth-left', 'mouth-near'));
    assert.equal(places.length, before.split('mouth-left').length - 1);
  });

  it('lengths are shown between the words, and cutting words above the piece', async () => {
    const whole = new vscode.Range(0, 0, document.lineCount, 0);
    const hints = await ask<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, whole);
    const words = hints.map(({ label }) =>
      typeof label === 'string' ? label : label.map((part) => part.value).join(''),
    );
    assert.ok(
      words.some((word) => /\d(cm|mm)/.test(word)),
      words.join('; '),
    );
    const lenses = await ask<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, 10);
    assert.ok(lenses.length > 0);
  });

  it('words are coloured by what they mean', async () => {
    const tokens = await ask<vscode.SemanticTokens>('vscode.provideDocumentSemanticTokens', document.uri);
    assert.ok(tokens.data.length > 0 && tokens.data.length % 5 === 0);
  });
});

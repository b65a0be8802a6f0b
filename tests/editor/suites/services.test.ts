/** Hover, completion, definition, outline and folding, asked for as the editor asks. */
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { fileUri, forget, hoverAt, pocket, problemsOf, rangeOf, replace, show, until } from './editor';

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

  it('hovering over a piece shows it drawn', async () => {
    const told = await hoverAt(document, 'patch of pocket');
    const [, data] = /!\[patch[^\]]*\]\(data:image\/svg\+xml;base64,([A-Za-z0-9+/=]+)\)/.exec(told) ?? [];
    assert.match(Buffer.from(data ?? '', 'base64').toString(), /^<svg .*<path .*<\/svg>$/s);
  });

  it('a point leads to what it is built from, and to what it moves', async () => {
    const at = rangeOf(document, 'mouth-right = mouth-left').start;
    const [item] = await ask<vscode.CallHierarchyItem[]>('vscode.prepareCallHierarchy', document.uri, at);
    const from = await ask<vscode.CallHierarchyOutgoingCall[]>('vscode.provideOutgoingCalls', item);
    assert.deepEqual(
      from.map(({ to }) => to.name),
      ['mouth-left', 'width'],
    );
    const moves = await ask<vscode.CallHierarchyIncomingCall[]>('vscode.provideIncomingCalls', item);
    assert.deepEqual(
      moves.map((step) => step.from.name),
      ['foot-right', 'mouth'],
    );
  });

  it('a new line stands in as far as its block', async () => {
    await replace(document, '  cut pair\n', '\n  cut pair\n');
    const line = document.positionAt(document.getText().indexOf('\n\n  cut') + 1);
    const edits = await ask<vscode.TextEdit[]>(
      'vscode.executeFormatOnTypeProvider',
      document.uri,
      line,
      '\n',
      { tabSize: 8, insertSpaces: false },
    );
    assert.deepEqual(
      edits.map(({ newText, range }) => [newText, range.start.line]),
      [['  ', line.line]],
    );
  });

  it('a name that nothing uses is faded and no problem, until something uses it', async () => {
    await replace(document, '  let width', '  let spare = 2cm\n  let width');
    const faded = () =>
      problemsOf(document.uri).find(({ tags }) => tags?.includes(vscode.DiagnosticTag.Unnecessary));
    const found = await until('a faded name', faded);
    assert.equal(document.getText(found.range), 'spare');
    assert.equal(found.severity, vscode.DiagnosticSeverity.Hint);
    await replace(document, 'let width = 16cm', 'let width = 16cm + spare');
    await until('the name in full ink', () => faded() === undefined);
  });

  it('an open edge is sewn to the one that bears its name', async () => {
    await replace(document, 'finish edges patch.right-side, ', 'finish edges ');
    const piece = pocket.slice(pocket.indexOf('piece patch'), pocket.indexOf('finish mouth'));
    await replace(document, 'finish mouth', `${piece.replace('piece patch', 'piece lining')}finish mouth`);
    const at = rangeOf(document, 'right-side straight');
    const actions = await ask<vscode.CodeAction[]>(
      'vscode.executeCodeActionProvider',
      document.uri,
      new vscode.Range(at.start, at.start),
      vscode.CodeActionKind.RefactorRewrite.value,
    );
    const sewing = actions.find(({ title }) => title === 'Sew patch.right-side to lining.right-side');
    assert.ok(sewing?.edit, actions.map(({ title }) => title).join('; '));
    assert.ok(await vscode.workspace.applyEdit(sewing.edit));
    assert.match(document.getText(), /\nseam right-side patch\.right-side = lining\.right-side\n/);
  });

  it('a pattern is checked for both ends of its choices at a command', async () => {
    await replace(document, '  let width = 16cm', '  choose width = 16cm in 12cm .. 20cm');
    await until('the choice', () => document.getText().includes('choose width'));
    const swept = await ask<{ variants: number; findings: object[] }>(
      'draftwright.sweep',
      document.uri.toString(),
    );
    assert.deepEqual([swept.variants, swept.findings], [3, []]);
  });

  it('words are coloured by what they mean', async () => {
    const tokens = await ask<vscode.SemanticTokens>('vscode.provideDocumentSemanticTokens', document.uri);
    assert.ok(tokens.data.length > 0 && tokens.data.length % 5 === 0);
  });
});

/** What a client can't do it is not sent: each answer in the form that the client said it knows. */
import assert from 'node:assert/strict';
import type {
  ClientCapabilities,
  CodeAction,
  DocumentSymbol,
  SignatureHelp,
  SymbolInformation,
} from 'vscode-languageserver';
import { apron } from '../support/apron';
import { TestClient } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';
const textDocument = { uri };

async function withClient<T>(
  capabilities: ClientCapabilities,
  story: (client: TestClient) => Promise<T>,
  text = apron,
): Promise<T> {
  const client = await TestClient.start({ folders: ['file:///wardrobe'], capabilities });
  try {
    await client.open(uri, text);
    return await story(client);
  } finally {
    await client.leave();
  }
}

describe('an outline', () => {
  const ask = (capabilities: ClientCapabilities) =>
    withClient(capabilities, (client) =>
      client.ask<(DocumentSymbol | SymbolInformation)[]>('textDocument/documentSymbol', { textDocument }),
    );

  it('is a tree for a client that knows one, and else a list of the same things', async () => {
    const tree = (await ask({
      textDocument: { documentSymbol: { hierarchicalDocumentSymbolSupport: true } },
    })) as DocumentSymbol[];
    const list = (await ask({})) as SymbolInformation[];
    const walked = (symbols: readonly DocumentSymbol[], round: string): string[] =>
      symbols.flatMap(({ name, children = [] }) => [`${name} in ${round}`, ...walked(children, name)]);
    assert.deepEqual(
      list.map(({ name, containerName = '' }) => `${name} in ${containerName}`),
      walked(tree, ''),
    );
    assert.ok(list.every(({ location }) => location.uri === uri));
  });
});

describe('the form of a call', () => {
  const ask = (capabilities: ClientCapabilities) =>
    withClient(
      capabilities,
      async (client) => {
        const at = client.at(uri, 'max(');
        const position = { ...at.position, character: at.position.character + 4 };
        const found = await client.ask<SignatureHelp>('textDocument/signatureHelp', {
          textDocument,
          position,
        });
        return found.signatures[0]!.parameters!.map(({ label }) => label);
      },
      'let a = max(1cm, 2cm)\n',
    );

  it('marks its parameters as stretches or as words, as the client reads them', async () => {
    const signatureInformation = { parameterInformation: { labelOffsetSupport: true } };
    assert.deepEqual(await ask({ textDocument: { signatureHelp: { signatureInformation } } }), [
      [4, 9],
      [11, 16],
    ]);
    assert.deepEqual(await ask({}), ['VALUE', 'VALUE']);
  });
});

describe('looking at a name before it is changed', () => {
  it('is announced to a client that knows of it alone', async () => {
    const announced = (capabilities: ClientCapabilities) =>
      withClient(capabilities, (client) => Promise.resolve(client.answer.capabilities.renameProvider));
    assert.equal(await announced({}), true);
    assert.deepEqual(await announced({ textDocument: { rename: { prepareSupport: true } } }), {
      prepareProvider: true,
    });
  });
});

describe('code actions of some kinds alone', () => {
  const kinds = (text: string, only?: string[]) =>
    withClient(
      {},
      async (client) => {
        const { position } = client.at(uri, '+ 2', 2);
        const range = { start: position, end: { ...position, character: position.character + 1 } };
        const params = { textDocument, range, context: { diagnostics: [], ...(only && { only }) } };
        const found = await client.ask<CodeAction[]>('textDocument/codeAction', params);
        return [...new Set(found.map(({ kind }) => kind))];
      },
      text,
    );

  it('are those that were asked for, with what is under their kind', async () => {
    const unread = 'let whole = 80cm\nlet quarter = whole / 4 + 2\n';
    const all = await kinds(unread);
    assert.ok(all.includes('quickfix') && all.length > 1);
    assert.deepEqual(await kinds(unread, ['quickfix']), ['quickfix']);
    assert.deepEqual(
      await kinds(unread, ['refactor']),
      all.filter((kind) => kind!.startsWith('refactor.')),
    );
    assert.deepEqual(await kinds(unread, ['quickfix.other', 'source.fixAll']), []);
  });

  it('are all of them where the empty kind is asked for, which holds every other', async () => {
    const unread = 'let whole = 80cm\nlet quarter = whole / 4 + 2\n';
    assert.deepEqual(await kinds(unread, ['']), await kinds(unread));
    assert.ok((await kinds(unread, [''])).length > 1);
  });
});

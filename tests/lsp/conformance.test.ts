/**
 * The server as any editor meets it: started by its command, spoken to in bare messages as the protocol's
 * specification writes them, without a library of ours at the other end.
 */
import assert from 'node:assert/strict';
import { spawn, type ChildProcessWithoutNullStreams } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { apron, apronWith } from '../support/apron';
import { root } from '../support/sources';

interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: Record<string, unknown>;
  readonly result?: unknown;
  readonly error?: { readonly code: number };
}

/** Frames and reads messages with nothing but the header that the specification names. */
class Bare {
  readonly heard: Message[] = [];
  private rest = Buffer.alloc(0);
  private count = 0;
  private look: () => void = () => undefined;

  constructor(readonly child: ChildProcessWithoutNullStreams) {
    child.stdout.on('data', (data: Buffer) => {
      this.rest = Buffer.concat([this.rest, data]);
      while (this.take());
      this.look();
    });
  }

  private take(): boolean {
    const end = this.rest.indexOf('\r\n\r\n');
    if (end < 0) return false;
    const length = Number(/Content-Length: (\d+)/i.exec(this.rest.subarray(0, end).toString())![1]);
    if (this.rest.length < end + 4 + length) return false;
    this.heard.push(JSON.parse(this.rest.subarray(end + 4, end + 4 + length).toString()) as Message);
    this.rest = this.rest.subarray(end + 4 + length);
    return true;
  }

  send(message: object): void {
    const body = Buffer.from(JSON.stringify({ jsonrpc: '2.0', ...message }));
    this.child.stdin.write(`Content-Length: ${body.length}\r\n\r\n`);
    this.child.stdin.write(body);
  }

  tell = (method: string, params: object = {}): void => this.send({ method, params });

  async ask(method: string, params: object | null): Promise<Message> {
    const id = ++this.count;
    this.send({ id, method, ...(params === null ? {} : { params }) });
    return this.until((one) => one.id === id && one.method === undefined);
  }

  async until(is: (message: Message) => boolean): Promise<Message> {
    for (;;) {
      const found = this.heard.find(is);
      if (found !== undefined) return found;
      await new Promise<void>((resolve) => (this.look = resolve));
    }
  }
}

const uri = 'untitled:apron';
const position = { line: 3, character: 8 };

describe('a plain client of draftwright lsp --stdio', () => {
  let editor: Bare;

  before(async function () {
    this.timeout(60000);
    const program = ['--import', 'tsx', join(root, 'server', 'cli', 'main.ts'), 'lsp', '--stdio'];
    editor = new Bare(spawn(process.execPath, program, { cwd: root }));
    const early = await editor.ask('textDocument/hover', { textDocument: { uri }, position });
    assert.equal(early.error?.code, -32002);
    const capabilities = { textDocument: { synchronization: {} } };
    const { result } = await editor.ask('initialize', { processId: null, rootUri: null, capabilities });
    const { serverInfo, capabilities: can } = result as { serverInfo: object; capabilities: object };
    assert.deepEqual(Object.keys(serverInfo), ['name', 'version']);
    assert.ok('hoverProvider' in can && 'callHierarchyProvider' in can && !('diagnosticProvider' in can));
    editor.tell('initialized');
  });

  after(() => void editor.child.kill());

  it('is told what is wrong with a text that lies nowhere, and in which version', async () => {
    const textDocument = { uri, languageId: 'draftwright', version: 7, text: apronWith('width', 'wdith') };
    editor.tell('textDocument/didOpen', { textDocument });
    const { params } = await editor.until(({ method }) => method === 'textDocument/publishDiagnostics');
    const { version, diagnostics } = params as { version: number; diagnostics: { code: string }[] };
    assert.equal(version, 7);
    assert.ok(diagnostics.some(({ code }) => code === 'unknown-name'));
  });

  it('may send the whole text anew', async () => {
    const textDocument = { uri, version: 8 };
    editor.tell('textDocument/didChange', { textDocument, contentChanges: [{ text: apron }] });
    const { params } = await editor.until(
      ({ method, params: told }) => method === 'textDocument/publishDiagnostics' && told?.version === 8,
    );
    assert.deepEqual(params?.diagnostics, []);
  });

  it('is answered in the forms of the specification, without what it did not ask for', async () => {
    const hover = await editor.ask('textDocument/hover', { textDocument: { uri }, position });
    const { contents } = hover.result as { contents: { kind: string; value: string } };
    assert.match(contents.value, /^\*\*width\*\*/);
    assert.doesNotMatch(contents.value, /data:/);
    const { result } = await editor.ask('textDocument/documentSymbol', { textDocument: { uri } });
    // a client that does not know a tree of symbols is given a list
    assert.ok((result as object[]).every((one) => 'location' in one && !('children' in one)));
  });

  it('hears that a request is unknown, that a notification is not, and goes on', async () => {
    const { error } = await editor.ask('textDocument/noSuchThing', {});
    assert.equal(error?.code, -32601);
    editor.tell('$/noSuchThing');
    const { result } = await editor.ask('textDocument/definition', { textDocument: { uri }, position });
    assert.notEqual(result, undefined);
  });

  it('is told what is wrong with a greeting that comes twice and a request about nothing', async () => {
    const again = await editor.ask('initialize', { processId: null, rootUri: null, capabilities: {} });
    assert.equal(again.error?.code, -32600);
    const empty = await editor.ask('textDocument/hover', null);
    assert.equal(empty.error?.code, -32602);
    const { result } = await editor.ask('textDocument/hover', { textDocument: { uri }, position });
    assert.notEqual(result, null);
  });

  it('ends it by shutdown and exit, after which nothing more is answered', async () => {
    const ended = once(editor.child, 'exit');
    assert.equal((await editor.ask('shutdown', null)).result, null);
    const { error } = await editor.ask('textDocument/hover', { textDocument: { uri }, position });
    assert.equal(error?.code, -32600);
    editor.tell('exit');
    assert.deepEqual(await ended, [0, null]);
  });
});

/** A language server that dies is started anew, and what was open is looked after as before. */
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { fileUri, forget, hoverAt, pocket, problem, problemGone, replace, show, until } from './editor';

/** The process of the language server, which the extension host started. */
function serverProcess(): number | undefined {
  const lines = execFileSync('ps', ['-A', '-o', 'pid=,ppid=,args='], { encoding: 'utf8' }).split('\n');
  const found = lines
    .map((line) => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line))
    .find((match) => Number(match?.[2]) === process.pid && match![3]!.includes('server.js'));
  return found ? Number(found[1]) : undefined;
}

describe('a language server that dies', () => {
  before(function () {
    if (process.platform !== 'win32') return;
    console.log('  SKIPPED: processes can’t be listed with ps on this platform');
    this.skip();
  });

  afterEach(forget);

  it('is started anew, and the unsaved text is checked as before', async () => {
    const document = await show(fileUri('pocket.draft'), pocket);
    await replace(document, 'mouth-left right width', 'mouth-left right widht');
    await problem(document.uri, 'unknown-name');
    const first = await until('the server', serverProcess);
    process.kill(first, 'SIGKILL');
    await until('another server', () => (serverProcess() ?? first) !== first);
    await replace(document, 'widht', 'width');
    await problemGone(document.uri, 'unknown-name');
    await replace(document, 'width = 16cm', 'width = 15cm');
    // the new server is there before it answers: a person points again
    let told = '';
    for (let i = 0; i < 100 && !/15cm/.test(told); i++) {
      told = await hoverAt(document, 'width = 15cm');
      await new Promise((done) => setTimeout(done, 100));
    }
    assert.match(told, /15cm/);
  });
});

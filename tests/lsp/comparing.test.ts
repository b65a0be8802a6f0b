/** What the panel of a comparison is told: a file against a revision, another file, or itself for another body. */
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { speak } from '../../grammar/say';
import { methods, type Against, type ComparedPanel, type Versions } from '../../client/preview/protocol';
import { diskBehind } from '../../server/lsp/disk';
import { TestClient } from '../support/client';
import { CommandFolder } from '../support/command';
import { Repository } from '../support/repository';
import { read } from '../support/sources';

const skirt = read('samples/harbour-skirt.draft');
const files = { 'harbour-skirt.draft': skirt, 'bodies/company.draft': read('samples/bodies/company.draft') };

describe('comparing in the editor', () => {
  let repository: Repository;
  let client: TestClient;
  const uri = (name: string): string => pathToFileURL(join(repository.path, name)).href;

  beforeEach(async () => {
    repository = new Repository(files);
    repository.commit('The skirt as it was');
    client = await TestClient.start({
      behind: diskBehind(repository.path),
      folders: [pathToFileURL(repository.path).href],
    });
  });
  afterEach(async () => {
    await client.leave();
    assert.deepEqual(client.faults, []);
    repository.remove();
  });

  const asked = (name: string, against: Against): Promise<ComparedPanel> =>
    client.connection.sendRequest(methods.compare, { uri: uri(name), against });

  async function shown(name: string, against: Against) {
    const answer = await asked(name, against);
    assert.ok('html' in answer, JSON.stringify(answer).slice(0, 300));
    return answer;
  }

  it('takes the text as it is open, not as it was saved', async () => {
    await client.open(
      uri('harbour-skirt.draft'),
      skirt.replace('skirt-length = 68cm', 'skirt-length = 62cm'),
    );
    const { title, verdict, html, texts } = await shown('harbour-skirt.draft', {
      kind: 'revision',
      name: 'HEAD',
    });
    assert.equal(title, 'harbour-skirt.draft: HEAD → the text as it is');
    assert.match(verdict, /^2 of 3 pieces changed/);
    assert.ok(html.includes('skirt-length: 68cm → 62cm'));
    assert.equal(texts['harbour-skirt.draft'], skirt);
  });

  it('says where each row stands in both texts', async () => {
    await client.open(
      uri('harbour-skirt.draft'),
      `# a remark\n\n${skirt.replace('skirt-length = 68cm', 'skirt-length = 62cm')}`,
    );
    const { html } = await shown('harbour-skirt.draft', { kind: 'revision', name: 'HEAD' });
    const [, attribute] = /<li data-place="([^"]*)"[^>]*>skirt-length/.exec(html)!;
    const { was, now } = JSON.parse(attribute!.replaceAll('&quot;', '"'));
    const line = skirt.split('\n').findIndex((one) => one.includes('skirt-length = 68cm'));
    assert.deepEqual([was.revision, was.path, was.range.start.line], ['HEAD', 'harbour-skirt.draft', line]);
    assert.deepEqual([now.uri, now.range.start.line], [uri('harbour-skirt.draft'), line + 2]);
  });

  it('compares with another file, and with the same pattern for another body', async () => {
    repository.write(
      'old/skirt.draft',
      skirt.replace('bodies/', '../bodies/').replace('hip-ease = 4cm', 'hip-ease = 6cm'),
    );
    const file = await shown('harbour-skirt.draft', { kind: 'file', uri: uri('old/skirt.draft') });
    assert.ok(file.html.includes('hip-ease: 6cm → 4cm'));
    assert.deepEqual(file.texts, {}, 'both texts lie in files');
    const body = await shown('harbour-skirt.draft', { kind: 'body', name: 'understudy' });
    assert.match(body.html, /drafted for: understudy → ferrywoman/);
    assert.match(body.html, /<li>hip: [\d.]+cm → [\d.]+cm/);
  });

  it('finds a file under the name that it had', async () => {
    repository.move('harbour-skirt.draft', 'river-skirt.draft');
    const { verdict } = await shown('river-skirt.draft', { kind: 'revision', name: 'HEAD' });
    assert.equal(verdict, 'No difference.');
  });

  it('says in a sentence why there is no comparison', async () => {
    const because = async (against: Against, name = 'harbour-skirt.draft') => {
      const answer = await asked(name, against);
      return 'refusal' in answer ? answer.refusal : '';
    };
    assert.match(
      await because({ kind: 'revision', name: 'gone' }),
      /^This repository has no revision called gone/,
    );
    repository.write('new.draft', 'pattern "New"\n');
    assert.match(
      await because({ kind: 'revision', name: 'HEAD' }, 'new.draft'),
      /^new\.draft is not in HEAD/,
    );
    const folder = new CommandFolder({ 'a.draft': skirt });
    const answer: ComparedPanel = await client.connection.sendRequest(methods.compare, {
      uri: pathToFileURL(join(folder.path, 'a.draft')).href,
      against: { kind: 'revision', name: 'HEAD' },
    });
    folder.remove();
    assert.match('refusal' in answer ? answer.refusal : '', /^This file lies in no git repository/);
  });

  it('says that git is missing, and what to do without it', async () => {
    const before = process.env.PATH;
    process.env.PATH = '';
    try {
      const answer = await asked('harbour-skirt.draft', { kind: 'revision', name: 'HEAD' });
      assert.match('refusal' in answer ? answer.refusal : '', /^git can’t be started here\. Install it, or/);
    } finally {
      process.env.PATH = before;
    }
  });

  it('lists what a file can be compared with', async () => {
    repository.git('branch', 'fitting');
    const versions: Versions = await client.connection.sendRequest(methods.versions, {
      uri: uri('harbour-skirt.draft'),
    });
    assert.deepEqual(versions.branches, ['fitting', 'main']);
    assert.deepEqual(
      versions.commits.map(({ subject }) => subject),
      ['The skirt as it was'],
    );
    assert.ok(versions.bodies.some(({ name }) => name === 'understudy'));
  });
});

describe('comparing in an editor that speaks German', () => {
  let repository: Repository;
  let client: TestClient;
  before(async () => {
    repository = new Repository(files);
    repository.commit('The skirt as it was');
    const folders = [pathToFileURL(repository.path).href];
    client = await TestClient.start({ behind: diskBehind(repository.path), folders, locale: 'de' });
  });
  after(async () => {
    await client.leave();
    speak(undefined);
    repository.remove();
  });

  const uri = (): string => pathToFileURL(join(repository.path, 'harbour-skirt.draft')).href;
  const asked = (against: Against): Promise<ComparedPanel> =>
    client.connection.sendRequest(methods.compare, { uri: uri(), against });

  it('tells verdict, rows and drawing in German', async () => {
    await client.open(uri(), skirt.replace('skirt-length = 68cm', 'skirt-length = 62cm'));
    const answer = await asked({ kind: 'revision', name: 'HEAD' });
    assert.ok('html' in answer);
    assert.equal(answer.title, 'harbour-skirt.draft: HEAD → der Text, wie er ist');
    assert.match(answer.verdict, /^2 von 3 Teilen geändert/);
    for (const words of ['>Festgelegt<', '>Teile<', '>Nähte<', '>Nebeneinander<', '>unverändert<', 'Fläche'])
      assert.ok(answer.html.includes(words), words);
    const body = await asked({ kind: 'body', name: 'understudy' });
    assert.match('html' in body ? body.html : '', /gezeichnet für: understudy → ferrywoman/);
  });

  it('refuses in German', async () => {
    const answer = await asked({ kind: 'revision', name: 'gone' });
    assert.equal(
      'refusal' in answer ? answer.refusal : '',
      'Dieses Repository hat keinen Stand namens gone. Welche es gibt, zeigt git log --oneline --all.',
    );
  });
});

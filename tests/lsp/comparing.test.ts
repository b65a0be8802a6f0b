/** What the panel of a comparison is told: a file against a revision, another file, or itself for another body. */
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
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

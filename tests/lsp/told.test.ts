/** Files that the client tells of: where no disk can be read, a pattern is drafted from them all the same. */
import assert from 'node:assert/strict';
import { methods } from '../../client/preview/protocol';
import { TestClient } from '../support/client';

/** Not every address names a host. */
const FOLDERS = ['elsewhere://host/wardrobe', 'attic:/wardrobe'];
const pattern = 'pattern "Skirt"\nuse "bodies/own.draft"\ndrafted for stagehand\nlet quarter = waist / 4\n';
const body = 'body stagehand {\n  waist 80cm\n}\n';

/** Waits for what is told last to be of these codes. */
const comesTo = (client: TestClient, uri: string, ...codes: string[]) =>
  client.until(codes.join(), () => {
    const last = client.published.filter((params) => params.uri === uri).at(-1);
    return last?.diagnostics.map(({ code }) => code).join() === codes.join() ? true : undefined;
  });

describe('files that the client tells of', () => {
  for (const folder of FOLDERS)
    it(`are used in ${folder}, known at their next telling, and missed when they are gone`, async () => {
      const [uri, bodies] = [`${folder}/skirt.draft`, `${folder}/bodies/own.draft`];
      const client = await TestClient.start({ folders: [folder] });
      const tell = (text: string | null) =>
        client.connection.sendNotification(methods.files, { files: [{ uri: bodies, text }] });
      await client.open(uri, pattern);
      await comesTo(client, uri, 'missing-file');
      await tell(body);
      await comesTo(client, uri);
      await tell(body.replace('waist', 'hip'));
      await comesTo(client, uri, 'missing-measurement');
      await tell(null);
      await comesTo(client, uri, 'missing-file');
      assert.deepEqual(client.faults, []);
      await client.leave();
    });
});

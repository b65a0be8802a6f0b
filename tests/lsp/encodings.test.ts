/** How a client counts characters is agreed at the greeting, and holds in both directions. */
import assert from 'node:assert/strict';
import type { Hover } from 'vscode-languageserver';
import { TestClient } from '../support/client';

const URI = 'file:///wardrobe/thread.draft';
const TEXT = `draft spool {
  point größe = origin
  point b = größe right 9cm
  point c = b down 9cm
}
piece reel of spool {
  outline from größe {
    top straight to b
    side straight to c
    slant straight to größe
  }
  label "🧵 é" at größe
}
`;

/** What is agreed when this is offered, and where `größe` is said to stand behind the label. */
async function agreed(offered: readonly string[] | undefined, character: number): Promise<unknown[]> {
  const capabilities = offered === undefined ? {} : { general: { positionEncodings: [...offered] } };
  const client = await TestClient.start({ capabilities });
  try {
    await client.open(URI, TEXT);
    const position = { line: 11, character };
    const hover = await client.ask<Hover>('textDocument/hover', { textDocument: { uri: URI }, position });
    const { start, end } = hover.range!;
    return [client.answer.capabilities.positionEncoding, start.character, end.character];
  } finally {
    await client.leave();
  }
}

describe('counting characters', () => {
  it('goes by bytes, code units or signs, as the client prefers', async () => {
    assert.deepEqual(await agreed(['utf-8', 'utf-16'], 22), ['utf-8', 21, 28]);
    assert.deepEqual(await agreed(['utf-16'], 19), ['utf-16', 18, 23]);
    assert.deepEqual(await agreed(['utf-32', 'utf-8'], 18), ['utf-32', 17, 22]);
  });

  it('goes by code units for a client that says nothing, or nothing that is known here', async () => {
    assert.deepEqual(await agreed(undefined, 19), ['utf-16', 18, 23]);
    assert.deepEqual(await agreed(['utf-7'], 19), ['utf-16', 18, 23]);
  });
});

/** Places in a text: offsets to lines and back, with every kind of line end. */
import assert from 'node:assert/strict';
import { Lines } from '../../server/features/lines';

/** Every offset of a text, taken to a position and back, must return. */
function checkRoundTrip(text: string): void {
  const lines = new Lines(text);
  for (let offset = 0; offset <= text.length; offset++) {
    const position = lines.position(offset);
    const back = lines.offset(position);
    const atLineEnd = /[\r\n]/.test(text[offset] ?? '') || offset === text.length;
    assert.ok(back === offset || atLineEnd, `${offset} came back as ${back}`);
  }
}

describe('lines of a text', () => {
  it('count line ends of every kind once', () => {
    assert.equal(new Lines('a\r\nb\nc\rd').count, 4);
    assert.deepEqual(new Lines('a\r\nb\nc\rd').position(7), { line: 3, character: 0 });
  });

  it('give every offset back, whatever the line ends are', () => {
    ['', '\n', 'one\ntwo', 'one\r\ntwo\r\n', 'a\r\rb\n\nc', 'curve c = a to b # ½ 😀\nx'].forEach(
      checkRoundTrip,
    );
  });

  it('count characters as the protocol does, two for a sign beyond the first plane', () => {
    assert.deepEqual(new Lines('😀a').position(2), { line: 0, character: 2 });
  });

  it('take a position beyond a line to its end, and one beyond the text to the end of the text', () => {
    const lines = new Lines('ab\r\ncd');
    assert.equal(lines.offset({ line: 0, character: 99 }), 2);
    assert.equal(lines.offset({ line: 9, character: 0 }), 6);
    assert.equal(lines.offset({ line: -1, character: 5 }), 0);
  });

  it('give a line without its line end', () => {
    assert.equal(new Lines('ab\r\ncd').line(0), 'ab');
    assert.equal(new Lines('ab').line(5), '');
  });
});

describe('lines of a text, counted as a client wants it', () => {
  const text = 'a½😀b\nc';

  it('count bytes, code units or signs', () => {
    const at = (encoding: 'utf-8' | 'utf-16' | 'utf-32') =>
      new Lines(text, encoding).position(text.indexOf('b')).character;
    assert.deepEqual([at('utf-8'), at('utf-16'), at('utf-32')], [7, 4, 3]);
  });

  it('lead back to the same place, and never into a sign', () => {
    for (const encoding of ['utf-8', 'utf-16', 'utf-32'] as const) {
      const lines = new Lines(text, encoding);
      for (const offset of [0, 1, 2, 4, 5, 6, 7]) assert.equal(lines.offset(lines.position(offset)), offset);
      assert.equal(lines.offset({ line: 0, character: 99 }), 5);
    }
    assert.equal(new Lines(text, 'utf-8').offset({ line: 0, character: 5 }), 2);
  });
});

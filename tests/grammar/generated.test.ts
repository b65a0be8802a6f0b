/** What the editor colours and pairs is made from the word table, and stays so. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { format, getFileInfo, resolveConfig } from 'prettier';
import { generated, textmate } from '../../grammar/generate';
import {
  allHeads,
  CONTEXTUAL,
  FUNCTIONS,
  GIVEN,
  HEADS,
  RESERVED,
  UNITS,
  wordsOf,
  type BlockKind,
} from '../../grammar/words';

interface Rule {
  readonly match?: string;
  readonly name?: string;
  readonly captures?: Record<number, { name: string }>;
}

const rules = (textmate() as { patterns: Rule[] }).patterns;

/** What the first rule that matches at the beginning of the line says of it. */
function scopesOf(line: string): string[] {
  for (const { match, name, captures } of rules) {
    const found = match === undefined ? null : new RegExp(`^(?:${match.replace(/^\^/, '')})`, 'u').exec(line);
    if (!found) continue;
    return captures
      ? Object.entries(captures).flatMap(([i, { name: one }]) => (found[Number(i)] ? [one] : []))
      : [name!];
  }
  return [];
}

const short = (line: string) => scopesOf(line).map((scope) => scope.replace('.draftwright', ''));

describe('what is made from the word table', () => {
  it('is what the files hold, letter for letter', () => {
    for (const [path, text] of Object.entries(generated())) {
      const held = readFileSync(join(process.cwd(), path), 'utf8');
      assert.equal(held, text, `${path}: run \`npx tsx grammar/generate.ts\``);
    }
  });

  it('is laid out as the formatter wants it, where that lays it out', async () => {
    for (const [path, text] of Object.entries(generated())) {
      const { ignored } = await getFileInfo(path, { ignorePath: '.prettierignore' });
      if (ignored) continue;
      assert.equal(text, await format(text, { ...(await resolveConfig(path)), filepath: path }), path);
    }
  });

  it('every word of the language has a colour, unless it is mostly a name', () => {
    const uncoloured = [...RESERVED, ...CONTEXTUAL, ...GIVEN, ...allHeads()].filter(
      (word) => short(word)[0] === undefined,
    );
    assert.deepEqual(uncoloured, []);
  });

  it('colours lines by what their words are', () => {
    assert.deepEqual(short('  point waist-cf = origin'), ['keyword.declaration', 'entity.name.definition']);
    assert.deepEqual(short('    waist along waistline-b to waist-b'), ['entity.name.edge', 'keyword.other']);
    assert.deepEqual(short('grain along centre'), ['keyword.declaration']);
    assert.deepEqual(short('2 1/2in'), ['constant.numeric', 'keyword.other.unit']);
    assert.deepEqual(short('20%'), ['constant.numeric', 'keyword.other.unit']);
    assert.deepEqual(short('length(neckline)'), ['support.function']);
    assert.deepEqual(short('length-of-side'), ['variable.other']);
    assert.deepEqual(short('2026-09-14'), ['constant.other.date']);
    assert.deepEqual(short('# said of it'), ['comment.line.number-sign']);
  });

  it('lists for each kind of block the heads that its lines may begin with', () => {
    for (const kind of Object.keys(HEADS) as BlockKind[]) {
      assert.deepEqual(wordsOf(kind).heads, Object.keys(HEADS[kind]));
      assert.deepEqual([wordsOf(kind).functions, wordsOf(kind).units], [FUNCTIONS, UNITS]);
    }
  });

  it('no word is both reserved and free', () => {
    const reserved = new Set<string>(RESERVED);
    assert.deepEqual(
      CONTEXTUAL.filter((word) => reserved.has(word)),
      [],
    );
  });
});

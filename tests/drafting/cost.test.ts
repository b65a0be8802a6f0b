/** What an edit costs, counted in definitions: what it does not touch is not computed again. */
import assert from 'node:assert/strict';
import { edit, parse } from '../../grammar';
import type { SourceFile } from '../../grammar/syntax';
import { Evaluation } from '../../server/drafting/evaluation';
import { FileSet } from '../../server/drafting/names/files';
import { Network } from '../../server/drafting/names/network';

const PATTERN = `choose ease = 4cm
draft front {
  let half = 20cm + ease
  point top = origin
  point low = top down 30cm
  point side = top right half
}
draft back {
  let half = 22cm
  point top = origin
  point low = top down 31cm
  point side = top right half
  line level = top to low
}
draft sleeve {
  let wide = distance(back.top, back.side)
  point top = origin
  point low = top down wide
}
`;

/** One pattern drafted, edited and drafted again, as the workshop does it, for nobody's body. */
class Bench {
  private file: SourceFile = parse(PATTERN);
  private readonly network: Network;
  private readonly evaluation: Evaluation;

  constructor() {
    const door = { read: () => undefined, resolve: () => ({ outside: true }) as const };
    this.network = new Network(new FileSet('file:///own.draft', door, () => this.file));
    this.evaluation = new Evaluation(this.network, { unit: 'cm', set: new Map() });
    this.evaluation.update(this.network.update(), new Set());
  }

  /**
   * Exchanges some words; answers how many definitions were computed and which came out differently. The draft whose
   * block the words stand in is one of the computed.
   */
  exchange(words: string, others: string): { computed: number; changed: readonly string[] } {
    const from = this.file.text.indexOf(words);
    assert.notEqual(from, -1, `the pattern does not say ${words}`);
    this.file = edit(this.file, { from, to: from + words.length, text: others }).file;
    const changed = this.evaluation.update(this.network.update(), new Set());
    return { computed: this.evaluation.computed, changed: [...changed].sort() };
  }
}

describe('what an edit costs', () => {
  it('a number in a draft is computed with what rests on it, and no other draft is', () => {
    const { computed, changed } = new Bench().exchange('30cm', '29cm');
    assert.deepEqual(changed, ['front/low']);
    assert.equal(computed, 2);
  });

  it('a draft that takes from the edited one is computed as far as it rests on the edit', () => {
    const { computed, changed } = new Bench().exchange('22cm', '23cm');
    assert.deepEqual(changed, ['back/=half', 'back/side', 'sleeve/=wide', 'sleeve/low']);
    assert.equal(computed, 5);
  });

  it('an edit that comes to the same value computes its definition and stops there', () => {
    const { computed, changed } = new Bench().exchange('22cm', '220mm');
    assert.deepEqual(changed, []);
    assert.equal(computed, 2);
  });

  it('a comment computes nothing, not even what it documents', () => {
    const { computed, changed } = new Bench().exchange('  line level', '  # how far it hangs\n  line level');
    assert.deepEqual(changed, []);
    assert.equal(computed, 0);
  });

  it('a name given otherwise in one draft leaves those alone who mean the same name in another', () => {
    const bench = new Bench();
    const { computed, changed } = bench.exchange(
      'point side = top right half\n}',
      'point edge = top right half\n}',
    );
    assert.deepEqual(changed, ['front/edge', 'front/side']);
    assert.equal(computed, 2);
  });

  it('a new statement is placed in the order without computing the others again', () => {
    const bench = new Bench();
    const { computed, changed } = bench.exchange('  line level', '  point deep = low down 2cm\n  line level');
    assert.deepEqual(changed, ['back/deep']);
    assert.equal(computed, 2);
  });

  it('a definition that comes to rest on a later one is computed after it', () => {
    const bench = new Bench();
    const { computed, changed } = bench.exchange(
      'point low = top down 31cm',
      'point low = level-end down 31cm',
    );
    assert.ok(changed.includes('back/low'));
    assert.equal(computed, 2);
    const mended = bench.exchange('  line level', '  point level-end = top down 1cm\n  line level');
    assert.deepEqual(mended.changed, ['back/level', 'back/level-end', 'back/low']);
    assert.equal(mended.computed, 4);
  });

  it('what the whole file chooses computes those who take it, wherever they stand', () => {
    const { computed, changed } = new Bench().exchange('ease = 4cm', 'ease = 5cm');
    assert.deepEqual(changed, ['=ease', 'front/=half', 'front/side']);
    assert.equal(computed, 3);
  });
});

/** Unknowns: how many values are tried for them, that nothing is said of a trial, and that the answer is the same to the bit. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { edit, parse, type SourceFile } from '../../grammar';
import { Evaluation } from '../../server/drafting/evaluation';
import { FileSet } from '../../server/drafting/names/files';
import { Network } from '../../server/drafting/names/network';
import { bodyOf } from '../../server/drafting/values/body';
import { diskDoor } from '../support/door';
import { checkDraft, patternIn } from '../support/drafts';
import { company, patternOf, samples, uriOf } from '../support/faults';
import { Workshop } from '../../server/drafting/workshop';

/** Both ends of the range, and eight between them, for the sleeve of the sample on the ferrywoman. */
const TRIALS = 10;

const HEAD = 'set-in/=head-height';

/** The sample's sleeve, drafted as the workshop does it, so that its trials can be counted. */
class SleeveBench {
  private readonly files = new Map<string, SourceFile>();
  private readonly network: Network;
  private readonly evaluation: Evaluation;
  private readonly uri = uriOf('sleeve.draft');

  constructor() {
    const source = (uri: string): SourceFile => {
      const known = this.files.get(uri) ?? parse(readFileSync(fileURLToPath(uri), 'utf8'));
      this.files.set(uri, known);
      return known;
    };
    this.network = new Network(new FileSet(this.uri, diskDoor(samples), source));
    const table = source(uriOf('bodies/company.draft')).items.map(({ statement }) => statement);
    const find = (name: string) =>
      table.find(({ node }) => 'name' in node && typeof node.name === 'object' && node.name?.text === name);
    const body = bodyOf({ name: 'ferrywoman' }, find, 'cm')!;
    this.evaluation = new Evaluation(this.network, { unit: 'cm', set: new Map(), body });
    this.evaluation.update(this.network.update(), new Set());
  }

  get tried(): number {
    return this.evaluation.tried;
  }

  get headHeight(): unknown {
    return this.evaluation.result(HEAD).answer;
  }

  /** Exchanges some words; answers what was tried then. */
  exchange(words: string, others: string): number {
    const file = this.files.get(this.uri)!;
    const from = file.text.indexOf(words);
    assert.notEqual(from, -1, words);
    this.files.set(this.uri, edit(file, { from, to: from + words.length, text: others }).file);
    this.evaluation.update(this.network.update(), new Set());
    return this.tried;
  }
}

describe('unknowns', () => {
  it('the head of the sample’s sleeve is found with the same number of trials every time', () => {
    const [bench, other] = [new SleeveBench(), new SleeveBench()];
    assert.deepEqual([bench.tried, other.tried], [TRIALS, TRIALS]);
    assert.notEqual(bench.headHeight, undefined);
    assert.deepEqual(bench.headHeight, other.headHeight);
    const found = bench.headHeight;
    bench.exchange('in 9cm .. 20cm', 'in 8cm .. 20cm');
    assert.equal(bench.exchange('in 8cm .. 20cm', 'in 9cm .. 20cm'), TRIALS);
    assert.deepEqual(bench.headHeight, found);
  });

  it('an edit that no unknown rests on tries nothing', () => {
    assert.equal(new SleeveBench().exchange('finish wrist-hem', 'finish wrist-end'), 0);
  });

  it('are found alike to the bit, whoever was drafted for before', () => {
    const workshop = new Workshop(diskDoor(samples));
    const heights = (bodies: typeof company) =>
      bodies.map((body) =>
        workshop.pattern(uriOf('sleeve.draft'), { for: body }).values.get('set-in.head-height'),
      );
    const there = heights(company);
    const [first] = heights(company.slice(0, 1));
    assert.deepEqual(first, there[0]);
    const one = new Workshop(diskDoor(samples));
    let back: unknown[] = [];
    const choices = [...company].reverse().map((body) => ({ for: body }));
    one.forEach(uriOf('sleeve.draft'), choices, (pattern) => {
      back = [pattern.values.get('set-in.head-height'), ...back];
    });
    assert.deepEqual(back, there);
    assert.ok(there.some((found) => found !== undefined));
    assert.deepEqual(patternOf('sleeve.draft').values.get('set-in.head-height'), there[0]);
  });

  it('what fails with every value but the one that is found is said of none', () =>
    checkDraft(`draft sheet {
  solve drop in 1cm .. 20cm so that distance(a, b) = 15cm #= 15.0000cm
  point a = origin
  point b = a down drop
  # with any other drop this would not hold, and the compass would not reach
  expect drop = 15cm within 0.001mm
  line floor = (a down 15cm left 20cm) to (a down 15cm right 20cm)
  point met = a reach drop + 1mm to floor left-hand
}
`));

  it('the other definitions are what they are with the value found, not with the last that was tried', () => {
    const { values, shapes } = patternIn(`draft sleeve {
  solve rise in 1cm .. 20cm so that length(head) = 30cm
  point pit = origin
  point top = pit right 20cm up rise
  curve head = pit to top leaving up arriving right
}
`);
    const rise = values.get('sleeve.rise')!;
    const top = shapes.get('sleeve.top')!;
    assert.equal(top.kind === 'point' && -top.point.y, rise.kind === 'length' && rise.amount);
  });

  it('any number of unknowns may follow each other, each with a range of its own', () =>
    checkDraft(`solve a in 1 .. 2 so that a * a = 2 #= 1.41421
solve b in 1 .. 2 so that b * b = a #= 1.18921
solve c in 1 .. 2 so that c * c = b #= 1.09051
solve d in 1 .. 2 so that d * d = c #= 1.04427
`));
});

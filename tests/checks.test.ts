/** Runs every page of the catalogue: what its examples are marked with is what is found, and every fix mends. */
import assert from 'node:assert/strict';
import { catalogue, check, severityOf } from '../server/checks/index';
import type { Pattern, PlacedFinding } from '../server/drafting/model';
import { withoutAnnotations } from './support/annotations';
import { rangesOf } from './support/ranges';
import { messages, messagesFile } from './support/messages';
import {
  afterFix,
  firstMended,
  madeHere,
  marked,
  pagedCodes,
  pageText,
  readPage,
  tried,
} from './support/pages';

const SECTIONS = ['What it finds', 'Why it matters', 'Example', 'How to fix', 'Limits'];

/** What a finding says and of what, so that it is known again after an edit elsewhere. */
const keyOf = ({ code, message }: PlacedFinding): string => `${code}: ${message}`;

/** The findings that were not there before, each as often as it is new; what is accepted is not new. */
function newOnes(before: readonly PlacedFinding[], after: readonly PlacedFinding[]): readonly string[] {
  const old = before.map(keyOf);
  const told = after.filter(({ accepted }) => accepted === undefined);
  return told.map(keyOf).filter((key) => {
    const at = old.indexOf(key);
    if (at >= 0) old.splice(at, 1);
    return at < 0;
  });
}

describe('the pages of the catalogue', () => {
  for (const code of pagedCodes()) {
    const { examples, sections } = readPage(pageText(code));
    const firing = examples.find(({ section }) => section === 'Example');

    it(`the page of ${code} has its parts in order, with the ranges it judges by`, () => {
      assert.deepEqual(sections, rangesOf(code) === '' ? SECTIONS : [...SECTIONS, 'Ranges']);
      assert.ok(pageText(code).endsWith(rangesOf(code)), 'npx tsx tests/support/write-pages.ts');
    });

    it(`the examples of ${code} are marked with what is found in them, and with nothing else`, () => {
      for (const example of examples) assert.equal(marked(example), example.text);
    });

    it(`the page of ${code} shows the fault, and a pattern without it`, () => {
      const found = examples.map((example) => tried(example).findings);
      assert.ok(
        found.some((findings) => findings.length === 0),
        'no example is silent',
      );
      if (madeHere.has(code)) return;
      assert.ok(
        found[0]?.some((finding) => finding.code === code),
        'the first example does not show the fault',
      );
      assert.ok(found[0]?.every(({ severity, code: of }) => severity === severityOf(of)));
    });

    it(`the page of ${code} shows what becomes of its example by the first fix, where there is one`, () => {
      const after = examples.find(({ section }) => section === 'How to fix');
      const mended = firing && firstMended(firing, code);
      assert.equal(after && withoutAnnotations(after.text), mended);
    });

    it(`every fix for ${code} takes the finding away and brings no other`, () => {
      for (const example of examples) {
        const { findings } = tried(example);
        for (const finding of findings) {
          for (const fix of finding.fixes) {
            const after = tried(example, afterFix(example, fix)).findings;
            assert.deepEqual(newOnes(findings, after), [], fix.title);
            assert.ok(!after.map(keyOf).includes(keyOf(finding)), `${fix.title} mends nothing`);
          }
        }
      }
    });
  }
});

describe('faults that no page can hold', () => {
  const plain = { section: '', beside: new Map<string, string>() };

  it('a statement of thousands of words is left unread and reported at its first word', () => {
    const text = `let width = 1cm${' + 1cm'.repeat(1999)}\n`;
    const [found, ...others] = tried({ ...plain, text }).findings;
    assert.equal(found?.code, 'too-long');
    assert.deepEqual([found.place.from, found.place.to], [0, 3]);
    assert.ok(pageText('too-long').includes(found.message));
    assert.deepEqual(others, []);
  });

  it('a check that breaks is named in a note, and the others still report', () => {
    const { examples } = readPage(pageText('mismatched-seam'));
    const { pattern } = tried(examples[0]!);
    const pieces = pattern.pieces.map((piece) => Object.create(piece, { gaps: { get: () => null } }));
    const broken = Object.create(pattern, { pieces: { value: pieces } }) as Pattern;
    for (const once of [broken, Object.create(broken) as Pattern]) {
      const found = check(once).map(({ code, message }) => `${code}: ${message}`);
      const faults = found.filter((line) => line.startsWith('internal-fault'));
      const others = found.filter((line) => !faults.includes(line));
      assert.ok(
        faults.some((line) => line.includes('unclosed-outline broke')),
        found.join('\n'),
      );
      assert.match(others.join('\n'), /^mismatched-seam: .* too long .*$/);
    }
  });
});

describe('the messages, read as a set', () => {
  it('the page of messages shows every example as it is printed now', () => {
    assert.equal(messagesFile(), messages());
  });

  it('every code of the catalogue has its message on the page of messages', () => {
    const text = messages();
    for (const { code } of catalogue) assert.ok(text.includes(`\n## ${code}\n`), code);
  });

  it('no message ends without a full stop or leaves a hole where a word should be', () => {
    for (const code of pagedCodes()) {
      for (const example of readPage(pageText(code)).examples) {
        for (const { message } of tried(example).findings) {
          assert.match(message, /[.?)]$/, `${code}: ${message}`);
          assert.doesNotMatch(message, /undefined|NaN|Infinity|\[object|\s\s|^\s/, `${code}: ${message}`);
        }
      }
    }
  });
});

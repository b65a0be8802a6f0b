/** A report as a person reads it at a terminal: whole texts, with width and colour as parameters. */
import assert from 'node:assert/strict';
import { checkText } from '../../server/cli/print/check-text';
import { checkJson, jsonText } from '../../server/cli/print/json';
import { gather, type Report } from '../../server/cli/print/report';
import type { PlacedFinding } from '../../server/drafting/model';

const skirt = 'pattern "Skirt"\n\nseam side front.side = back.side\n';
const bodies = 'body ferrywoman {\n\twaist 745mm\n}\n';
const texts: Record<string, string> = { 'file:///skirt.draft': skirt, 'file:///bodies.draft': bodies };

const finding = (more: Partial<PlacedFinding> = {}): PlacedFinding => ({
  code: 'mismatched-seam',
  severity: 'error',
  message: 'The front’s side is 68.4cm and the back’s 68.1cm: they differ by 3mm.',
  place: place('file:///skirt.draft', 'front.side'),
  source: 'seam:side',
  related: [{ place: place('file:///skirt.draft', 'back.side'), message: 'the other side of the seam' }],
  fixes: [{ title: 'ease 3mm of the front', edits: [] }],
  ...more,
});

function place(uri: string, words: string) {
  const from = texts[uri]!.indexOf(words);
  return { uri, from, to: from + words.length };
}

const reportOf = (...findings: PlacedFinding[]): Report =>
  gather(['skirt.draft'], findings, {
    shown: (uri) => uri.replace('file:///', ''),
    text: (uri) => texts[uri],
  });

const plain = { width: 60, colour: false };

describe('a report at a terminal', () => {
  it('shows place, message, line, carets, the other side and one next step', () => {
    assert.equal(
      checkText(reportOf(finding()), plain),
      `skirt.draft:3:11 error mismatched-seam
  The front’s side is 68.4cm and the back’s 68.1cm: they
  differ by 3mm.
  3 | seam side front.side = back.side
    |           ^^^^^^^^^^
  see skirt.draft:3:24: the other side of the seam
  next step: ease 3mm of the front

1 error in 1 file.
`,
    );
  });

  it('says so in one line when there is nothing to mend', () => {
    assert.equal(checkText(reportOf(), plain), 'No problems in 1 file.\n');
  });

  it('counts errors, warnings and notes apart', () => {
    const report = reportOf(
      finding(),
      finding({ severity: 'warning', code: 'unsewn-edge' }),
      finding({ severity: 'warning', code: 'name-hides-another' }),
      finding({ severity: 'note', code: 'dart-trued' }),
    );
    assert.match(checkText(report, plain), /\n1 error, 2 warnings, 1 note in 1 file\.\n$/);
  });

  it('keeps tabs before the carets, so that they stand under the words', () => {
    const waist = finding({ place: place('file:///bodies.draft', 'waist'), related: [], fixes: [] });
    assert.match(checkText(reportOf(waist), plain), / {2}2 \| \twaist 745mm\n {4}\| \t\^{5}\n/);
  });

  it('marks a stretch of several lines to the end of its first line, and an empty place with one caret', () => {
    const long = finding({ place: { uri: 'file:///skirt.draft', from: 8, to: 30 }, related: [], fixes: [] });
    assert.match(checkText(reportOf(long), plain), /pattern "Skirt"\n {4}\| {9}\^{7}\n/);
    const empty = finding({ place: { uri: 'file:///skirt.draft', from: 0, to: 0 }, related: [], fixes: [] });
    assert.match(checkText(reportOf(empty), plain), /pattern "Skirt"\n {4}\| \^\n/);
  });

  it('uses weight and colour only where they are asked for', () => {
    assert.ok(!checkText(reportOf(finding()), plain).includes('\u001b'));
    assert.ok(
      checkText(reportOf(finding()), { ...plain, colour: true }).includes('\u001b[1;31merror\u001b[0m'),
    );
  });

  it('never hands a control sign of the file to the terminal', () => {
    texts['file:///odd.draft'] = 'label "\u001b[2J\u202etxet"\n';
    const odd = finding({
      place: place('file:///odd.draft', 'label'),
      message: 'a \u0007 bell',
      related: [],
    });
    const text = checkText(reportOf(odd), plain);
    assert.ok(text.includes('label "\ufffd[2J\ufffdtxet"') && text.includes('a \ufffd bell'));
  });

  it('says once what two patterns find at one place of a file that both use', () => {
    const shared = finding({ place: place('file:///bodies.draft', 'waist') });
    assert.equal(reportOf(shared, { ...shared }).problems.length, 1);
  });
});

describe('a report as JSON', () => {
  it('holds exactly the documented fields', () => {
    assert.equal(
      jsonText(checkJson(reportOf(finding()))),
      `{
  "version": 1,
  "files": [
    "skirt.draft"
  ],
  "problems": [
    {
      "code": "mismatched-seam",
      "severity": "error",
      "message": "The front’s side is 68.4cm and the back’s 68.1cm: they differ by 3mm.",
      "file": "skirt.draft",
      "range": {
        "start": {
          "line": 2,
          "character": 10
        },
        "end": {
          "line": 2,
          "character": 20
        }
      },
      "related": [
        {
          "message": "the other side of the seam",
          "file": "skirt.draft",
          "range": {
            "start": {
              "line": 2,
              "character": 23
            },
            "end": {
              "line": 2,
              "character": 32
            }
          }
        }
      ]
    }
  ]
}
`,
    );
  });
});
